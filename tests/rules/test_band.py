from __future__ import annotations

from math import inf

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.lengths import Unit, parse_length
from templater.rules.band import Band
from templater.rules.model import Verdict

GAP = Band(50.8, 101.6)


@pytest.mark.parametrize(
    ("value", "verdict", "change"),
    [
        (50.8, Verdict.KEPT, 0.0),
        (101.6, Verdict.KEPT, 0.0),
        (50.8 - 1e-7, Verdict.KEPT, 0.0),
        (101.6 + 1e-7, Verdict.KEPT, 0.0),
        (50.7, Verdict.BROKEN, 0.1),
        (101.7, Verdict.BROKEN, -0.1),
        (-10.0, Verdict.BROKEN, 60.8),
    ],
)
def test_both_ends_are_included(value: float, verdict: Verdict, change: float) -> None:
    assert GAP.verdict(value) is verdict
    assert GAP.change(value) == pytest.approx(change)


def test_ends_are_shown_rounded_into_the_range() -> None:
    assert GAP.format_range(Unit.INCH) == "2–4 in"
    assert GAP.format_range(Unit.MILLIMETRE) == "51–101 mm"
    assert Band(1524 - 25.4, 1524 + 25.4).format_range(Unit.METRE) == "1499–1549 mm"
    assert Band(63.5, 88.9).format_range(Unit.FOOT) == "2 1/2–3 1/2 in"


@pytest.mark.parametrize(
    ("band", "shown"),
    [
        (Band(76.2), "3 in or more"),
        (Band(0.0), "0 in or more"),
        (Band(0.0, 6.35), "at most 1/4 in"),
        (Band(-inf, 6.35), "at most 1/4 in"),
        (Band(-inf), "anything"),
    ],
)
def test_ranges_with_one_end(band: Band, shown: str) -> None:
    assert band.format_range(Unit.INCH) == shown


def test_percent() -> None:
    assert Band(60.0, 75.0).format_percents() == "60–75 %"
    assert Band(0.0, 10.0).format_percents() == "at most 10 %"
    assert Band(25.0).format_percents() == "25 % or more"
    # To the nearest, but never to the end of a range that is broken.
    assert [Band(60.0, 75.0).format_percent(value) for value in (57.4, 59.9, 67.5, 75.2, 83.3)] == [
        "57 %",
        "59 %",
        "68 %",
        "76 %",
        "83 %",
    ]


@pytest.mark.parametrize(
    ("value", "units", "shown"),
    [
        (76.2, Unit.INCH, "3 in"),
        (76.5, Unit.INCH, "3 in"),  # kept: to the nearest
        (101.7, Unit.INCH, "4 1/16 in"),  # broken: never shown as the end itself
        (50.7, Unit.INCH, "1 15/16 in"),
        (101.7, Unit.MILLIMETRE, "102 mm"),
        (101.6, Unit.MILLIMETRE, "101 mm"),  # kept, so within what is shown of the range
        (-3.0, Unit.MILLIMETRE, "−3 mm"),
    ],
)
def test_a_value_is_shown_on_its_side_of_the_range(value: float, units: Unit, shown: str) -> None:
    assert GAP.format_value(value, units) == shown


@pytest.mark.parametrize(
    ("value", "mend", "target"),
    [
        (76.2, None, None),
        (25.4, "raise by 1 in (25 mm)", "2 in"),
        (127.0, "lower by 1 in (25 mm)", "4 in"),
        (127.1, "lower by 1 1/16 in (27 mm)", "3 15/16 in"),  # 127.1 - 26.9875 = 100.1 mm
    ],
)
def test_mends(value: float, mend: str | None, target: str | None) -> None:
    assert GAP.format_mend(value, Unit.INCH, more="raise", less="lower") == mend
    assert target is None or GAP.format_target(value, Unit.INCH) == target


@given(st.floats(-1000, 1000), st.sampled_from(Unit))
def test_what_is_shown_agrees_with_the_verdict(value: float, units: Unit) -> None:
    shown = float(parse_length(GAP.format_value(value, units)))
    low, high = GAP.format_range(units).split("–")
    unit = high.rsplit(" ", 1)[1]
    inside = float(parse_length(f"{low} {unit}")) <= shown <= float(parse_length(high))
    assert inside == (GAP.verdict(value) is Verdict.KEPT)
