"""Tells the circle that four curves make."""

from __future__ import annotations

from collections.abc import Sequence
from math import dist

from templater.geometry import Box, Point
from templater.verify.model import NEAR_MM, Ring, UnreadableError

_OFF = 0.002
"""So much of its radius may a curve be off the circle: four cubic curves come within 0.0003."""

_ROUNDED_MM = NEAR_MM / 2
"""A small circle may be off it so far: large pages are rounded to 0.01 pt by programs that save anew."""


def read_ring(points: Sequence[Point], clip: Box | None) -> Ring:
    """The circle that a start and four curves make. Raises UnreadableError where it is not round."""
    ends = points[3::3]
    centre = Point(sum(end.x for end in ends) / 4, sum(end.y for end in ends) / 4)
    radius = dist(centre, points[0])
    most = max(_OFF * radius, _ROUNDED_MM)
    for first in (0, 3, 6, 9):
        one, two, three, four = points[first : first + 4]
        half = Point(
            (one.x + 3 * two.x + 3 * three.x + four.x) / 8,
            (one.y + 3 * two.y + 3 * three.y + four.y) / 8,
        )
        if max(abs(dist(centre, point) - radius) for point in (half, four)) > most:
            raise UnreadableError("it holds a circle that is not round")
    return Ring(centre, radius, clip)
