"""Tells the upright rectangle that straight lines make."""

from __future__ import annotations

from collections.abc import Sequence

from templater.geometry import Box, Point

_OFF_MM = 0.001


def read_rectangle(points: Sequence[Point]) -> Box | None:
    """The rectangle whose corners follow each other and end with the first; None for other shapes."""
    if len(points) != 5 or not _is_same(points[0].x, points[4].x, points[0].y, points[4].y):
        return None
    one, two, three, four = points[:4]
    is_level_first = _is_same(one.y, two.y, two.x, three.x, three.y, four.y, four.x, one.x)
    is_upright_first = _is_same(one.x, two.x, two.y, three.y, three.x, four.x, four.y, one.y)
    if not (is_level_first or is_upright_first):
        return None
    return Box(min(one.x, three.x), min(one.y, three.y), max(one.x, three.x), max(one.y, three.y))


def _is_same(*pairs: float) -> bool:
    """Whether numbers are the same two by two."""
    return all(abs(a - b) < _OFF_MM for a, b in zip(pairs[::2], pairs[1::2], strict=True))
