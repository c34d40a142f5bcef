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
