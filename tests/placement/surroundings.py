"""What the placement tests put around pieces: things in the way, inner groups, sloping ceilings."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from templater.errors import Place
from templater.geometry import Box, Point
from templater.layout.model import Layout, Obstacle
from tests.builders import HERE, inches

SLOPE = ((0, 96), (100, 96), (200, 46))
"""Points of a ceiling, inches: level to 100 in, then down by 1 in 2."""


def in_inches(box: Box) -> tuple[float, ...]:
    """A box's sides, inches."""
    return tuple(side / 25.4 for side in box)


def obstacle(name: str, x0: float, y0: float, x1: float, y1: float, *, at: Place = HERE) -> Obstacle:
    """A thing in the way by its sides in inches."""
    return Obstacle(name, name, Box(*(inches(side) for side in (x0, y0, x1, y1))), None, at)


def with_things(wall: Layout, *things: Obstacle) -> Layout:
    """The layout with things in the way."""
    return replace(wall, openings=things)


def with_ceiling(wall: Layout, points: Iterable[tuple[float, float]]) -> Layout:
    """The layout under a sloping ceiling, whose points are in inches."""
    ceiling = tuple(Point(inches(x), inches(y)) for x, y in points)
    return replace(wall, wall=replace(wall.wall, ceiling=ceiling))


def with_inner(wall: Layout, *names: str) -> Layout:
    """The layout with the groups of these names in other groups: they have no place of their own."""
    groups = (replace(group, position=None) if group.name in names else group for group in wall.groups)
    return replace(wall, groups=tuple(groups))
