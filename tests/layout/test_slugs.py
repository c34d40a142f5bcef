import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.layout.slugs import list_slugs


@pytest.mark.parametrize(
    ("names", "slugs"),
    [
        (["Tide chart"], ["tide-chart"]),
        (["Keeper's log, page 1"], ["keeper-s-log-page-1"]),
        (["Überfahrt nach Ærø"], ["uberfahrt-nach-aero"]),
        (["Маяк"], ["maiak"]),
        (["Salt &amp; spray &#38; foam"], ["salt-amp-spray-38-foam"]),
        (["!", "?", "…"], ["piece", "piece-2", "piece-3"]),
        (["Gull", "Gull!", "Gull 2", "Gull?"], ["gull", "gull-2", "gull-2-2", "gull-3"]),
        (
            ["Con", "aux", "NUL", "com1", "LPT9", "Console"],
            ["con-piece", "aux-piece", "nul-piece", "com1-piece", "lpt9-piece", "console"],
        ),
        (["x" * 61, "x" * 62], ["x" * 60, "x" * 58 + "-2"]),
        (["../../etc/passwd", "=1+1"], ["etc-passwd", "1-1"]),
    ],
)
def test_slugs(names: list[str], slugs: list[str]) -> None:
    assert list(list_slugs(names)) == slugs


@given(st.lists(st.text(max_size=70), max_size=12))
def test_slugs_are_different_and_fit_for_any_system(names: list[str]) -> None:
    slugs = list_slugs(names)
    assert len(set(slugs)) == len(names)
    for slug in slugs:
        assert re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", slug)
        assert len(slug) <= 60
