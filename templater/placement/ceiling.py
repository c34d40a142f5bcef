"""How high the ceiling is above a stretch of wall, level or sloping."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from templater.geometry import Point


def find_headroom(ceiling: Sequence[Point], height_mm: float, x0: float, x1: float) -> float:
    """The height above the floor of the lowest ceiling between two places along the wall, mm.

    ``ceiling``: points of a sloping ceiling's line from left to right, none if it is level, at
    ``height_mm``. Straight between its points, it is lowest at an end of the stretch or at a point
    within it.
    """
    return min(_find_heights(ceiling, x0, x1), default=height_mm)


def _find_heights(ceiling: Sequence[Point], x0: float, x1: float) -> Iterator[float]:
    """The ceiling's heights at both ends of each straight part that is over a stretch."""
    for left, right in pairwise(ceiling):
        start, end = max(x0, left.x), min(x1, right.x)
        if start <= end:
            slope = (right.y - left.y) / (right.x - left.x)
            yield left.y + slope * (start - left.x)
            yield left.y + slope * (end - left.x)
