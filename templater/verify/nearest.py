"""Finds which of many points lies nearest to a place, without looking at all of them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import dist

from templater.geometry import Point


class Points:
    """Points in a grid of square millimetres; each can be taken once."""

    def __init__(self, points: Iterable[Point]) -> None:
        self._cells: dict[tuple[int, int], list[Point]] = {}
        for point in points:
            self._cells.setdefault((round(point.x), round(point.y)), []).append(point)

    def take(self, place: Point, reach_mm: float) -> Point | None:
        """Take out the point nearest to a place, at most so far (under 0.5 mm) from it."""
        near = [
            (dist(point, place), cell, point)
            for column in (-1, 0, 1)
            for row in (-1, 0, 1)
            if (cell := (round(place.x) + column, round(place.y) + row)) in self._cells
            for point in self._cells[cell]
        ]
        away, cell, point = min(near, default=(reach_mm + 1, (0, 0), place))
        if away > reach_mm:
            return None
        self._cells[cell].remove(point)
        return point

    def __iter__(self) -> Iterator[Point]:
        """Those that are left."""
        return (point for points in self._cells.values() for point in points)
