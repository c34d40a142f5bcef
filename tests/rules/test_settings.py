from __future__ import annotations

from math import inf

import pytest

from templater.rules.band import Band
from templater.rules.settings import find_band, is_on
from tests.rules.plans import setting, wall

USUAL = Band(50.0, 100.0)


@pytest.mark.parametrize(
    ("low", "high", "band"),
    [
        (None, None, Band(50.0, 100.0)),
        (60.0, None, Band(60.0, 100.0)),
        (None, 80.0, Band(50.0, 80.0)),
        (10.0, 20.0, Band(10.0, 20.0)),
        (120.0, None, Band(120.0, inf)),  # past the usual high end, which then asks for nothing
        (None, 40.0, Band(-inf, 40.0)),
    ],
)
def test_the_ends_that_a_layout_sets(low: float | None, high: float | None, band: Band) -> None:
    assert find_band(wall(rules=[setting("gap", low, high)]), "gap", USUAL) == band


def test_each_rule_has_its_own_setting() -> None:
    plan = wall(rules=[setting("clearance", 10.0), setting("gap", is_on=False)])
    assert find_band(plan, "eye-line", USUAL) == USUAL
    assert [is_on(plan, code) for code in ("clearance", "gap", "eye-line")] == [True, False, True]
