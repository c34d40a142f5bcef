"""Marks of holes made by hand: what is said of one that is off, cut, too small, covered or too many."""

from __future__ import annotations

import pytest

from templater.geometry import Box, Point
from templater.verify.holes import check_holes
from templater.verify.model import Ring
from templater.verify.targets import Cross, Target

CLIP = Box(0.0, 0.0, 200.0, 100.0)
HOLE = Point(60.0, 40.0)


def _target(
    x: float = 60.0, y: float = 40.0, *, seen: Box | None = None, ring: Ring | None = None
) -> Target:
    at = Point(x, y)
    return Target(Cross(at, seen or Box(x - 10, y - 10, x + 10, y + 10)), ring or Ring(at, 5.0, None))


def _told(*targets: Target, hole: Point = HOLE, areas: tuple[Box, ...] = ()) -> list[str]:
    return list(check_holes(targets, [hole], CLIP, areas).faults)


def test_a_mark_at_its_place_and_how_far_its_parts_are_off() -> None:
    found = check_holes(
        [_target(60.003, 40.004, ring=Ring(Point(60.0, 40.006), 5.0, None))], [HOLE], CLIP, ()
    )
    assert found.faults == ()
    assert found.offsets_mm == pytest.approx((0.005, 0.006))  # 3, 4, 5


@pytest.mark.parametrize(
    ("target", "told"),
    [
        (_target(60.0, 40.012), "hole 1 is 0.012 mm off: +0.000 mm across, +0.012 mm up"),
        (_target(58.1), "hole 1 is 1.900 mm off: -1.900 mm across, +0.000 mm up"),
        (
            _target(ring=Ring(Point(60.012, 40.0), 5.0, None)),
            "hole 1's ring is 0.012 mm off: +0.012 mm across, +0.000 mm up",
        ),
        (_target()._replace(ring=None), "hole 1 has a cross and no ring"),
        (_target()._replace(cross=None), "hole 1 has a ring and no cross"),
        (_target(seen=Box(50.1, 30, 70, 50)), "hole 1's cross is partly hidden or too short"),
        (_target(seen=Box(50, 30, 70, 49.9)), "hole 1's cross is partly hidden or too short"),
        (_target(ring=Ring(HOLE, 5.1, None)), "hole 1's ring is 10.20 mm wide, not 10.00 mm"),
        (_target(ring=Ring(HOLE, 4.9, None)), "hole 1's ring is 9.80 mm wide, not 10.00 mm"),
        (_target(ring=Ring(HOLE, 5.0, Box(0, 0, 64.9, 100))), "hole 1's ring is partly hidden"),
    ],
)
def test_what_is_wrong_with_a_mark(target: Target, told: str) -> None:
    assert _told(target) == [told]


def test_what_is_let_be() -> None:
    assert _told(_target(ring=Ring(HOLE, 5.04, None))) == []
    assert _told(_target(seen=Box(50.04, 30, 70, 50))) == []
    assert _told(_target(ring=Ring(HOLE, 5.0, Box(0, 0, 64.96, 100)))) == []
    # A cross and a ring that the sheet's own edge cuts.
    cut = _target(2.0, 40.0, seen=Box(0, 30, 12, 50), ring=Ring(Point(2.0, 40.0), 5.0, CLIP))
    assert _told(cut, hole=Point(2.0, 40.0)) == []


def test_a_mark_too_many_and_one_too_few() -> None:
    none = (
        "a hole is marked where the plan has none, {} mm from the frame's left edge, 40.00 mm above its"
        " lower one"
    )
    assert _told() == ["hole 1 is not marked"]
    assert _told(_target(), _target(90.0)) == [none.format("90.00")]
    assert _told(_target(62.1)) == ["hole 1 is not marked", none.format("62.10")]
    # The nearer of two is taken for it.
    assert _told(_target(61.0), _target()) == [none.format("61.00")]
    assert _told(_target(), _target(61.0)) == [none.format("61.00")]


@pytest.mark.parametrize(
    ("x", "is_demanded", "is_allowed"),
    [(0.03, True, True), (0.01, False, True), (-0.01, False, True), (-0.03, False, False)],
)
def test_a_hole_on_the_edge_of_a_sheet_may_be_seen_or_not(
    x: float, is_demanded: bool, is_allowed: bool
) -> None:
    assert (_told(hole=Point(x, 40.0)) == ["hole 1 is not marked"]) is is_demanded
    assert (_told(_target(x), hole=Point(x, 40.0)) == []) is is_allowed


def test_holes_are_numbered_from_1_with_those_of_other_sheets() -> None:
    elsewhere = Point(300.0, 40.0)
    assert check_holes([], [elsewhere, HOLE], CLIP, ()).faults == ("hole 2 is not marked",)


@pytest.mark.parametrize(
    ("area", "is_covered"),
    [
        (Box(61.4, 39.0, 70.0, 41.0), True),
        (Box(61.6, 39.0, 70.0, 41.0), False),
        (Box(59.0, 30.0, 61.0, 38.6), True),
        (Box(59.0, 30.0, 61.0, 38.4), False),
    ],
)
def test_what_is_filled_near_the_middle_of_a_mark_covers_it(area: Box, is_covered: bool) -> None:
    told = ["hole 1 is covered with black"] if is_covered else []
    assert _told(_target(), areas=(area, area)) == told
