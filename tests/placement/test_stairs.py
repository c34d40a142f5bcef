from __future__ import annotations

from dataclasses import replace
from itertools import combinations
from math import atan2, cos, degrees, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.geometry import Point, Size
from templater.layout.model import Arrangement, Layout, LeftRight, Position, Stair
from templater.placement.stairs import arrange_along_stairs, find_nosing_height
from tests.builders import group, inches, layout, piece, plan_of, position

STEEP = Stair(inches(7.75), inches(10), Point(inches(20), inches(7.75)), LeftRight.RIGHT)
"""The steepest stair that IRC R311.7 (2018) allows: riser 7 3/4 in, tread 10 in."""


def test_the_steepest_stair() -> None:
    # atan(7.75 / 10) = 37.776 degrees; 775 mm up for each 1000 mm along.
    centres = [box.centre for box in arrange_along_stairs([Size(300, 400)] * 3, 80.0, STEEP)]
    for first, second in combinations(centres, 2):
        across, up = second.x - first.x, second.y - first.y
        assert up / across == pytest.approx(0.775)
        assert degrees(atan2(up, across)) == pytest.approx(37.776, abs=5e-4)
    assert find_nosing_height(STEEP, inches(20) + 1000) - inches(7.75) == pytest.approx(775)


def test_the_gap_is_measured_along_the_slope() -> None:
    # A slope of 3 in 4: cos 0.8, sin 0.6. Frames of 80 x 90 touch when their centres are
    # 80 / 0.8 = 100 apart along it (their sides) rather than 90 / 0.6 = 150 (top and bottom); with a
    # gap of 20 the next centre is 120 along: 96 across and 72 up.
    stair = Stair(3, 4, Point(0, 0), LeftRight.RIGHT)
    first, second = arrange_along_stairs([Size(80, 90), Size(80, 90)], 20.0, stair)
    assert first.centre == pytest.approx((0, 0))
    assert second.centre == pytest.approx((96, 72))
    # Frames of 80 x 30 touch at min(80 / 0.8, 30 / 0.6) = 50: top and bottom; 70 along is 56 and 42.
    first, second = arrange_along_stairs([Size(80, 30), Size(80, 30)], 20.0, stair)
    assert second.centre == pytest.approx((first.centre.x + 56, first.centre.y + 42))
    assert second.y0 - first.y1 == pytest.approx(12)  # 20 x 0.6


def test_a_small_frame_between_two_large_ones_does_not_let_them_overlap() -> None:
    # 45 degrees: a tall one, 20 x 100, and a wide one, 100 x 20, touch at 60 / cos 45 whatever hangs
    # between them.
    stair = Stair(1, 1, Point(0, 0), LeftRight.RIGHT)
    tall, _, wide = arrange_along_stairs([Size(20, 100), Size(1, 1), Size(100, 20)], 2.0, stair)
    assert wide.centre.x - tall.centre.x == pytest.approx(60 + 2 / 2**0.5)


SIDE = st.floats(40, 900)
STAIRS = st.builds(
    Stair,
    st.floats(100, 220),
    st.floats(200, 350),
    st.just(Point(300.0, 180.0)),
    st.sampled_from(LeftRight),
)


@given(st.lists(st.builds(Size, SIDE, SIDE), min_size=2, max_size=7), st.floats(1, 200), STAIRS)
def test_each_frame_is_a_gap_from_the_first_that_it_would_touch(
    sizes: list[Size], gap: float, stair: Stair
) -> None:
    boxes = arrange_along_stairs(sizes, gap, stair)
    pitch = atan2(stair.rise_mm, stair.run_mm)
    turn = 1 if stair.up is LeftRight.RIGHT else -1
    for number, box in enumerate(boxes[1:], start=1):
        x, y = -gap * cos(pitch), -gap * sin(pitch) * turn
        slid = box.moved(x, y)
        nearest = max(min(slid.overlap(other)) for other in boxes[:number])
        assert nearest == pytest.approx(0, abs=1e-6)  # it just touches


def stair_hall(stair: Stair, place: Position, names: str = "ABC") -> Layout:
    """A wall of 300 x 260 in with a group of different frames along stairs."""
    sizes = {"A": (16, 20), "B": (10, 12), "C": (24, 18)}
    pieces = [piece(name, *(inches(side) for side in sizes[name])) for name in names]
    flight = replace(group("flight", names, arrange=Arrangement.STAIR, place=place), stair=stair)
    return layout(pieces, groups=[flight], width=inches(300), height=inches(260))


@pytest.mark.parametrize("up", LeftRight)
@pytest.mark.parametrize("place", [position(), position(left=inches(100)), position(right=inches(90))])
def test_every_centre_is_the_eye_line_above_the_nosings(up: LeftRight, place: Position) -> None:
    # Nosings from (20, 7 3/4) in, 0.775 up or down along the wall; eye line 60 in.
    start = Point(inches(20), inches(7.75 if up is LeftRight.RIGHT else 120))
    plan = plan_of(stair_hall(replace(STEEP, up=up, start=start), place))
    for each in plan.pieces:
        x, y = each.box.centre
        turn = 1 if up is LeftRight.RIGHT else -1
        assert y == pytest.approx(start.y + turn * 0.775 * (x - start.x) + inches(60))
    xs = [each.box.centre.x for each in plan.pieces]
    assert xs == sorted(xs)


@pytest.mark.parametrize(
    ("place", "left"),
    [
        (position(left=inches(100)), inches(100)),
        (position(centre=inches(150)), None),
        (position(), None),
    ],
)
def test_the_whole_is_put_left_and_right_like_any_group(place: Position, left: float | None) -> None:
    box = plan_of(stair_hall(STEEP, place)).groups[0].box
    assert left is None or box.x0 == pytest.approx(left)
    assert left is not None or box.centre.x == pytest.approx(inches(150))


def test_the_plan_knows_the_flight() -> None:
    plan = plan_of(stair_hall(STEEP, position(left=inches(100))))
    assert [each.stair for each in plan.groups] == [STEEP]


def test_an_eye_line_of_the_group_is_taken_from_the_nosings() -> None:
    lower = plan_of(stair_hall(STEEP, position(left=inches(30), eye_line=inches(57))))
    usual = plan_of(stair_hall(STEEP, position(left=inches(30))))
    for low, high in zip(lower.pieces, usual.pieces, strict=True):
        assert list(high.box) == pytest.approx(list(low.box.moved(0, inches(3))))


def test_stairs_up_to_the_left_are_the_mirror_of_stairs_up_to_the_right() -> None:
    width = inches(300)
    right = plan_of(stair_hall(STEEP, position(left=inches(40))))
    mirrored = replace(STEEP, up=LeftRight.LEFT, start=Point(width - STEEP.start.x, STEEP.start.y))
    left = plan_of(stair_hall(mirrored, position(right=inches(40)), "CBA"))
    boxes = {each.name: each.box for each in left.pieces}
    # Gaps are kept between each frame and those before it, from the left; with three frames that do
    # not reach past their neighbours the mirror gives the same.
    for each in right.pieces:
        x0, y0, x1, y1 = each.box
        assert list(boxes[each.name]) == pytest.approx([width - x1, y0, width - x0, y1])
