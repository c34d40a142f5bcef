"""Small walls drawn by hand: each hole marked at its place, and nothing else."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from templater.geometry import Box, Point
from templater.verify.check_overview import check_overview, read_elevation
from templater.verify.model import Ink, Stroke
from tests.verify import gull

# At 1:20 a wall of 2 x 2.5 m is 100 x 125 mm; with its corner at 30, 40 the hole at 400, 1480 mm lies
# at 30 + 20 and 40 + 74.
AT = Point(50.0, 114.0)


def _line(x0: float, y0: float, x1: float, y1: float, width: float = 0.25) -> Stroke:
    return Stroke(Point(x0, y0), Point(x1, y1), width, (), None)


def _cross(x: float, y: float) -> Iterator[Stroke]:
    yield _line(x - 1, y, x + 1, y)
    yield _line(x, y - 1, x, y + 1)


FLOOR = _line(30.0, 40.0, 130.0, 40.0, 0.7)


def _told(*strokes: Stroke) -> list[str]:
    return list(check_overview(Ink(list(strokes)), gull.plan()))


NOT_THERE = "gull hole 1 is not marked at its place"
TOO_MANY = "a hole is marked where the plan has none, at {} mm of the wall"


def test_a_wall_that_is_drawn_rightly() -> None:
    assert _told(FLOOR, *_cross(*AT)) == []
    assert _told(FLOOR, *_cross(50.006, 114.008)) == []  # 0.010 mm off
    ground = _line(0.0, 20.0, 200.0, 20.0, 0.7)  # as thick, and lower
    assert _told(ground, FLOOR, *_cross(*AT)) == []
    thin, thick = _line(0.0, 90.0, 200.0, 90.0, 0.66), _line(0.0, 90.0, 200.0, 90.0, 0.74)
    assert _told(thin, thick, FLOOR, *_cross(*AT)) == []
    elevation = read_elevation(Ink([FLOOR]), gull.plan())
    assert elevation is not None
    assert elevation.wall == pytest.approx(Box(30.0, 40.0, 130.0, 165.0))


@pytest.mark.parametrize(
    ("strokes", "told"),
    [
        ([*_cross(*AT)], ["the floor line of the wall is not drawn"]),
        ([FLOOR], [NOT_THERE]),
        ([FLOOR, *_cross(50.02, 114.0)], [NOT_THERE, TOO_MANY.format("400, 1480")]),
        ([FLOOR, *_cross(50.0, 113.0)], [NOT_THERE, TOO_MANY.format("400, 1460")]),
        ([FLOOR, *_cross(*AT), *_cross(90.0, 70.0)], [TOO_MANY.format("1200, 600")]),
        ([FLOOR, *_cross(*AT), *_cross(20.0, 70.0)], []),  # beside the wall, in a key
        ([FLOOR, *_cross(*AT), *_cross(50.0, 170.0)], []),
        ([FLOOR, *_cross(*AT), *_cross(140.0, 70.0)], []),
        ([FLOOR, *_cross(*AT), *_cross(50.0, 35.0)], []),
    ],
)
def test_a_wall_that_is_not(strokes: list[Stroke], told: list[str]) -> None:
    assert _told(*strokes) == told
