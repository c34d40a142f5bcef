from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.geometry import Box, Point
from templater.verify.model import Ring, Stroke
from templater.verify.straight import list_straight
from templater.verify.targets import Cross, Target, find_targets

ARM, RING = 10.0, 5.0


def cross(x: float, y: float, arm: float = ARM, clip: Box | None = None) -> list[Stroke]:
    return [
        Stroke(Point(x - arm, y), Point(x + arm, y), 0.25, (), clip),
        Stroke(Point(x, y + arm), Point(x, y - arm), 0.25, (), clip),
    ]


def find(strokes: list[Stroke], rings: list[Ring]) -> list[Target]:
    level, upright = list_straight(strokes)
    return find_targets(level, upright, rings, arm_mm=ARM, ring_mm=RING)


def test_a_cross_and_its_ring_are_one_target() -> None:
    (target,) = find(cross(40, 30), [Ring(Point(40, 30), RING, None)])
    assert target == Target(Cross(Point(40, 30), Box(30, 20, 50, 40)), Ring(Point(40, 30), RING, None))


@pytest.mark.parametrize(
    ("strokes", "rings", "found"),
    [
        (cross(40, 30), [], [Target(Cross(Point(40, 30), Box(30, 20, 50, 40)), None)]),
        ([], [Ring(Point(40, 30), RING, None)], [Target(None, Ring(Point(40, 30), RING, None))]),
        (cross(40, 30)[:1], [], []),  # one line
        (cross(40, 30, arm=8), [], []),  # too small
        (cross(40, 30)[:1] + cross(41, 30)[1:], [], []),  # do not cross at their middles
        ([], [Ring(Point(40, 30), 4.0, None)], []),
        (cross(40, 30, clip=Box(0, 0, 39, 60)), [Ring(Point(40, 30), RING, Box(0, 0, 39, 60))], []),
        ([line._replace(dash=(1.0, 1.0)) for line in cross(40, 30)], [], []),
    ],
)
def test_what_is_found_of_incomplete_marks(
    strokes: list[Stroke], rings: list[Ring], found: list[Target]
) -> None:
    assert find(strokes, rings) == found


def test_a_mark_at_the_edge_of_its_sheet_counts_while_its_middle_is_seen() -> None:
    clip = Box(39, 0, 90, 60)
    (target,) = find(cross(40, 30, clip=clip), [Ring(Point(40, 30), RING, clip)])
    assert target.at == Point(40, 30)


@given(st.lists(st.tuples(st.integers(0, 400), st.integers(0, 400)), max_size=8, unique=True))
def test_marks_are_told_apart_however_near(places: list[tuple[int, int]]) -> None:
    # In steps of 0.02 mm, so that the lines of one cross meet those of many others.
    points = [Point(100 + x / 50, 100 + y / 50) for x, y in places]
    strokes = [line for point in points for line in cross(*point)]
    found = find(strokes, [])
    assert sorted(target.at for target in found) == [
        pytest.approx(point, abs=1e-9) for point in sorted(points)
    ]


def test_a_row_of_holes_a_hair_apart_is_as_many_marks_as_holes() -> None:
    # Six screws 0.9 mm apart on a wall at 1:50: 0.018 mm on paper.
    points = [Point(100 + 0.018 * number, 50) for number in range(6)]
    found = find([line for point in points for line in cross(*point)], [])
    assert sorted(target.at.x for target in found) == pytest.approx([point.x for point in points])


def _found(*strokes: Stroke, rings: tuple[Ring, ...] = ()) -> list[tuple[bool, bool]]:
    """Whether each mark has a cross, and a ring."""
    return [(each.cross is not None, each.ring is not None) for each in find(list(strokes), list(rings))]


@pytest.mark.parametrize(
    ("arm", "is_found"), [(9.51, True), (9.49, False), (10.49, True), (10.51, False), (10.0, True)]
)
def test_how_long_the_arms_of_a_cross_may_be(arm: float, is_found: bool) -> None:
    level, upright = cross(40, 30, arm)
    true_level, true_upright = cross(40, 30)
    for pair in ((level, upright), (level, true_upright), (true_level, upright)):
        assert bool(_found(*pair)) is is_found


@pytest.mark.parametrize(
    ("radius", "is_found"), [(4.76, True), (4.74, False), (5.24, True), (5.26, False)]
)
def test_how_wide_a_ring_may_be(radius: float, is_found: bool) -> None:
    ring = Ring(Point(40, 30), radius, None)
    assert _found(*cross(40, 30), rings=(ring,)) == [(True, is_found)]
    assert _found(rings=(ring,)) == [(False, True)] * is_found


@pytest.mark.parametrize(
    ("dx", "dy", "is_cross"),
    [(0.04, 0.04, True), (0.06, 0, False), (0, 0.06, False), (-0.06, 0, False), (0, -0.06, False)],
)
def test_how_far_apart_the_middles_of_a_cross_may_lie(dx: float, dy: float, is_cross: bool) -> None:
    for x, y in ((40.0, 30.0), (40.48, 30.48), (40.52, 30.52)):  # in one square millimetre or the next
        level, upright = cross(x, y)[0], cross(x + dx, y + dy)[1]
        found = find([level, upright], [])
        assert [each.at for each in found] == ([pytest.approx(Point(x + dx, y))] if is_cross else [])


@pytest.mark.parametrize(("away", "is_one"), [(1.9, True), (2.1, False)])
def test_how_far_a_ring_may_lie_from_its_cross(away: float, is_one: bool) -> None:
    ring = Ring(Point(40 + away, 30), RING, None)
    assert _found(*cross(40, 30), rings=(ring,)) == (
        [(True, True)] if is_one else [(False, True), (True, False)]
    )


def test_each_cross_belongs_to_the_ring_that_is_nearest() -> None:
    one, other = Point(40, 30), Point(41.5, 30)
    rings = [Ring(other, RING, None), Ring(one, RING, None)]
    found = find([*cross(*one), *cross(*other)], rings)
    assert [(each.cross and each.cross.at, each.ring and each.ring.centre) for each in found] == [
        (other, other), (one, one),
    ]  # fmt: skip
    assert [each.points for each in found] == [(other, other), (one, one)]
    assert Target(None, rings[0]).points == (other,)
    assert (Target(None, rings[0]).at, Target(found[1].cross, rings[0]).at) == (other, one)


@pytest.mark.parametrize(
    ("clip", "is_seen"),
    [
        (Box(40, 0, 90, 60), True), (Box(40.1, 0, 90, 60), False), (Box(0, 0, 39.9, 60), False),
        (Box(0, 30.1, 90, 60), False), (Box(0, 0, 90, 29.9), False), (Box(0, 0, 90, 30), True),
    ],
)  # fmt: skip
def test_a_mark_whose_middle_is_hidden_is_none(clip: Box, is_seen: bool) -> None:
    assert _found(*cross(40, 30, clip=clip)) == [(True, False)] * is_seen
    assert _found(rings=(Ring(Point(40, 30), RING, clip),)) == [(False, True)] * is_seen


def test_as_far_as_the_arms_of_a_cross_are_seen() -> None:
    (target,) = find(cross(40, 30, clip=Box(35, 28, 90, 31)), [])
    assert target.cross == Cross(Point(40, 30), Box(35, 28, 50, 31))


def test_a_ring_of_another_size_ends_no_search() -> None:
    other, own = Ring(Point(90, 30), 1.0, None), Ring(Point(40, 30), RING, None)
    assert _found(*cross(40, 30), rings=(other, own)) == [(True, True)]


@pytest.mark.parametrize("off", [0.03, -0.03])
def test_a_line_belongs_to_the_cross_whose_middles_lie_nearest(off: float) -> None:
    level, upright = cross(40, 30)
    for others in ([cross(40 + off, 30)[1], upright], [upright, cross(40 + off, 30)[1]]):
        assert [each.at for each in find([level, *others], [])] == [Point(40, 30)]
    for others in ([cross(40, 30 + off)[0], level], [level, cross(40, 30 + off)[0]]):
        assert [each.at for each in find([upright, *others], [])] == [Point(40, 30)]
