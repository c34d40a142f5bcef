from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.geometry import Point
from templater.layout.model import LeftRight, Stair
from templater.placement.model import Plan
from tests.builders import inches
from tests.rules.cautions.drilled import brief, told
from tests.rules.plans import box, grouped, hung, wall

CODE = "standing-out"


def beside_walkway(bottom: float, depth: float | None, *, is_walkway: bool | None = True) -> Plan:
    """A piece with its lower edge and depth in inches."""
    stands_out = None if depth is None else inches(depth)
    piece = replace(hung("Bell", box(20, bottom, 10, 10)), stands_out_mm=stands_out)
    return replace(wall([piece], height=120), is_walkway=is_walkway)


@pytest.mark.parametrize(
    ("bottom", "verdict"),
    [
        # The steps' edges are 7 1/2 in up at 30 in and rise 3 in each 4: 37 1/2 in at 70 in, 45 in at
        # 80 in. So a lower edge at 64 1/2 in is up to 27 in above them, one at 72 in at least 27 in; one
        # at 118 in is 73 to 80 1/2 in above them, one at 125 in at least 80 in.
        (64.5, "kept"),
        (72.0, "caution"),
        (118.0, "caution"),
        (125.0, "caution"),
        (125.1, "kept"),
    ],
)
def test_over_stairs_it_is_the_steps_that_people_walk_on(bottom: float, verdict: str) -> None:
    piece = replace(hung("Bell", box(70, bottom, 10, 10)), stands_out_mm=inches(6))
    flight, members = grouped("flight", [("Six gulls", box(60, 80, 5, 5))])
    stairs = Stair(inches(7.5), inches(10), Point(inches(30), inches(7.5)), LeftRight.RIGHT)
    plan = wall([piece], [(replace(flight, stair=stairs), members)], height=150)
    (found,) = (each for each in told(replace(plan, is_walkway=True), CODE) if each.subject == "Bell")
    assert found.verdict.value == verdict


@pytest.mark.parametrize(
    ("bottom", "depth", "verdict"),
    [
        # ADA 2010 Standards, 307.2 (access-board.gov, chapter 3, protruding objects): what has its
        # leading edge more than 27 in and not more than 80 in above the floor: 4 in at most.
        (27.0, 6.0, "kept"),
        (27.01, 4.01, "caution"),
        (27.01, 4.0, "kept"),
        (80.0, 4.01, "caution"),
        (80.01, 6.0, "kept"),
        (60.0, 3.99, "kept"),
    ],
)
def test_the_limits(bottom: float, depth: float, verdict: str) -> None:
    (found,) = told(beside_walkway(bottom, depth), CODE)
    assert found.verdict.value == verdict
    assert found.because == "ADA 2010 Standards, 307.2"


def test_the_limits_in_mm() -> None:
    # 685.8, 2032 and 101.6 mm: the inch is master.
    plan = beside_walkway(27.0, 6.0)
    assert plan.pieces[0].box.y0 == pytest.approx(685.8)
    (found,) = told(beside_walkway(60.0, 4.01), CODE)
    assert brief(found) == ("caution", None, "4 1/16 in from the wall")  # never shown as 4 in
    assert found.band == "at most 4 in"


@pytest.mark.parametrize("bottom", [10.0, 60.0])
def test_a_walkway_must_be_told(bottom: float) -> None:
    (found,) = told(beside_walkway(bottom, 6.0, is_walkway=None), CODE)
    assert brief(found) == ("not checked", None, None)
    assert found.mend == "add 'walkway: yes' or 'walkway: no' to 'wall'"


def test_where_nobody_walks_it_does_not_apply() -> None:
    assert told(beside_walkway(60.0, 6.0, is_walkway=False), CODE) == []


def test_a_depth_must_be_told_where_it_matters() -> None:
    (found,) = told(beside_walkway(60.0, None), CODE)
    assert (found.verdict.value, found.mend) == ("not checked", "add 'stands_out' to the piece")
    (low,) = told(beside_walkway(20.0, None), CODE)
    assert brief(low) == ("kept", None, "lower edge at 20 in")


@given(st.integers(0, 100 * 16), st.integers(0, 10 * 16))
def test_a_caution_if_and_only_if_both_limits_are_passed(bottom: int, depth: int) -> None:
    (found,) = told(beside_walkway(bottom / 16, depth / 16), CODE)
    is_limited = 27 * 16 < bottom <= 80 * 16
    assert (found.verdict.value == "caution") == (is_limited and depth > 4 * 16)
