"""Finds the marks of holes by their ink alone: two lines that cross at their middles, and a ring."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import dist
from typing import NamedTuple

from templater.geometry import Box, Point
from templater.verify.model import Ring
from templater.verify.straight import Straight

_ARM_OFF = 0.05
"""A cross counts as one of its size if its lines are so much longer or shorter, as a share."""

_RING_OFF = 0.05
_SAME_MM = 0.05
"""So near lie the middles of the two lines of a cross."""

_PAIR_MM = 2.0
"""So near lie a cross and the ring that belongs to it, though one of them is off."""


class Cross(NamedTuple):
    """Two lines that cross at their middles; ``seen`` is as far as its arms can be seen."""

    at: Point
    seen: Box


class Target(NamedTuple):
    """A mark of a hole as found; one of its two parts may be wanting."""

    cross: Cross | None
    ring: Ring | None

    @property
    def at(self) -> Point:
        """Where it is drilled: at the cross."""
        if self.cross is not None:
            return self.cross.at
        return self.ring.centre if self.ring is not None else Point(0.0, 0.0)

    @property
    def points(self) -> tuple[Point, ...]:
        """The middles of its parts."""
        cross = () if self.cross is None else (self.cross.at,)
        return cross if self.ring is None else (*cross, self.ring.centre)


def find_targets(
    level: Sequence[Straight],
    upright: Sequence[Straight],
    rings: Iterable[Ring],
    *,
    arm_mm: float,
    ring_mm: float,
) -> list[Target]:
    """Every mark of a hole of these sizes whose middle is not hidden."""
    crosses = find_crosses(level, upright, arm_mm)
    found: list[Target] = []
    for ring in rings:
        centre, radius, clip = ring
        if abs(radius - ring_mm) > _RING_OFF * ring_mm or not _is_seen(centre, clip):
            continue
        near = [cross for cross in crosses if dist(cross.at, centre) <= _PAIR_MM]
        cross = min(near, key=lambda one: dist(one.at, centre), default=None)
        if cross is not None:
            crosses.remove(cross)
        found.append(Target(cross, ring))
    return [*found, *(Target(cross, None) for cross in crosses)]


def find_crosses(level: Sequence[Straight], upright: Sequence[Straight], arm_mm: float) -> list[Cross]:
    """Where a level and an upright line of two arms' length cross at their middles, and are seen.

    Each line belongs to one cross, the one whose middles lie nearest; holes may be very near.
    """
    across, up = _list_arms(level, 2 * arm_mm), _list_arms(upright, 2 * arm_mm)
    columns: dict[int, list[int]] = {}
    for number, line in enumerate(up):
        columns.setdefault(round(line.across), []).append(number)
    pairs = [
        (max(abs(one.middle - up[other].across), abs(up[other].middle - one.across)), number, other)
        for number, one in enumerate(across)
        for column in range(round(one.middle) - 1, round(one.middle) + 2)
        for other in columns.get(column, ())
    ]
    crosses: dict[int, int] = {}
    taken: set[int] = set()
    for _, number, other in sorted(pair for pair in pairs if pair[0] <= _SAME_MM):
        if number not in crosses and other not in taken:
            crosses[number] = other
            taken.add(other)
    return [_cross(across[number], up[other]) for number, other in crosses.items()]


def _cross(level: Straight, upright: Straight) -> Cross:
    """The cross that two lines make, both of which are seen at their middles."""
    (x0, x1), (y0, y1) = level.seen or (0.0, 0.0), upright.seen or (0.0, 0.0)
    return Cross(Point(upright.across, level.across), Box(x0, y0, x1, y1))


def _list_arms(lines: Iterable[Straight], length_mm: float) -> list[Straight]:
    """The lines of a length that are unbroken, and seen at their middles."""
    least, most = (1 - _ARM_OFF) * length_mm, (1 + _ARM_OFF) * length_mm
    return [
        line
        for line in lines
        if least <= line.high - line.low <= most
        and not line.dashes
        and line.seen is not None
        and line.seen[0] <= line.middle <= line.seen[1]
    ]


def _is_seen(point: Point, clip: Box | None) -> bool:
    return clip is None or clip.has(point)
