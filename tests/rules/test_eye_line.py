"""The eye line over stairs, where a height above the floor says nothing, and over what is in the way."""

from __future__ import annotations

from dataclasses import replace

import pytest

from templater.geometry import Point
from templater.layout.model import LeftRight, Stair
from tests.builders import inches
from tests.rules.plans import box, findings_of, grouped, hung, obstacle, wall

# The first edge 7 1/2 in up and 30 in from the left end; from there 7 1/2 in up in each 10 in.
FLIGHT = Stair(inches(7.5), inches(10), Point(inches(30), inches(7.5)), LeftRight.RIGHT)


@pytest.mark.parametrize(
    ("left", "bottom", "mends"),
    [
        # At 80 in the steps' edges are 45 in up: a centre at 105 in is over them, one at 44 in is not.
        (75, 100, []),
        (75, 39, ["raise by 15 in (381 mm)"]),
        # At 10 in there are no steps yet.
        (5, 100, ["lower by 44 in (1118 mm)"]),
    ],
)
def test_over_a_flight_no_height_above_the_floor_is_asked_for(
    left: float, bottom: float, mends: list[str]
) -> None:
    flight, members = grouped("flight", [("Six gulls", box(60, 80, 5, 5))])
    groups = [(replace(flight, stair=FLIGHT), members)]
    plan = wall([hung("Fog bell", box(left, bottom, 10, 10))], groups, height=150)
    found = [each for each in findings_of(plan, "eye-line") if each.subject == "Fog bell"]
    assert [each.mend for each in found] == mends


@pytest.mark.parametrize(
    ("bottom", "mend"),
    [
        # The hatch reaches from 40 to 80 in. A centre at 95 in is 34 in above 61 in, one at 25 in 34 in
        # under 59 in.
        (90, "lower by 34 in (864 mm); then over hatch: hang it elsewhere"),
        (20, "raise by 34 in (864 mm); then over hatch: hang it elsewhere"),
    ],
)
def test_a_mend_that_ends_over_something_says_so(bottom: float, mend: str) -> None:
    hatch = obstacle("hatch", box(70, 40, 30, 40), kind="hatch")
    plan = wall([hung("Fog bell", box(75, bottom, 10, 10))], obstacles=[hatch], height=120)
    assert [each.mend for each in findings_of(plan, "eye-line")] == [mend]


def test_a_mend_that_ends_beside_it_says_nothing_of_it() -> None:
    hatch = obstacle("hatch", box(85, 40, 30, 40), kind="hatch")
    plan = wall([hung("Fog bell", box(75, 90, 10, 10))], obstacles=[hatch], height=120)
    assert [each.mend for each in findings_of(plan, "eye-line")] == ["lower by 34 in (864 mm)"]
