"""Tells the circle that four curves make."""

from __future__ import annotations

from collections.abc import Sequence
from math import dist

from templater.geometry import Box, Point
from templater.verify.model import Ring

_OFF = 0.002
"""So much of its radius may a curve be off the circle: four cubic curves come within 0.0003."""


def read_ring(points: Sequence[Point], clip: Box | None) -> Ring:
    """The circle that a start and four curves make. Raises ValueError where it is not round."""
    ends = points[3::3]
    centre = Point(sum(end.x for end in ends) / 4, sum(end.y for end in ends) / 4)
    radius = dist(centre, points[0])
    for first in (0, 3, 6, 9):
        one, two, three, four = points[first : first + 4]
        half = Point(
            (one.x + 3 * two.x + 3 * three.x + four.x) / 8,
            (one.y + 3 * two.y + 3 * three.y + four.y) / 8,
        )
        if max(abs(dist(centre, point) - radius) for point in (half, four)) > _OFF * radius:
            raise ValueError("four curves that are no circle")
    return Ring(centre, radius, clip)
