"""Holds the overview's small crosses against the Plan; the floor line tells the place and the scale."""

from __future__ import annotations

from collections.abc import Iterator
from math import dist

from templater.geometry import Box, Point
from templater.placement.model import Plan
from templater.verify.model import NEAR_MM, Ink
from templater.verify.straight import list_straight
from templater.verify.targets import find_crosses

_FLOOR_WIDTH = 0.7
_WIDTH_OFF = 0.03
_ARM_MM = 1.0


def check_overview(ink: Ink, plan: Plan) -> Iterator[str]:
    """Whether every hole is marked on the wall that is drawn, and nothing else is.

    Larger views of parts of the wall, which come on pages of their own, are not held against it.
    """
    level, upright = (list_straight(ink.strokes, level=is_level) for is_level in (True, False))
    floors = [line for line in level if abs(line.width_mm - _FLOOR_WIDTH) <= _WIDTH_OFF]
    if not floors:
        yield "the floor line of the wall is not drawn"
        return
    floor = max(floors, key=lambda line: line.across)
    scale = floor.length_mm / plan.wall.width
    wall = Box(floor.low, floor.across, floor.high, floor.across + plan.wall.height * scale)
    left = [cross for cross in find_crosses(level, upright, _ARM_MM) if wall.grown(NEAR_MM).has(cross)]
    for piece in plan.pieces:
        for number, mark in enumerate(piece.marks, 1):
            place = Point(floor.low + mark.hole.x * scale, floor.across + mark.hole.y * scale)
            near = min(left, key=lambda cross: dist(cross, place), default=None)
            if near is None or dist(near, place) > NEAR_MM:
                yield f"{piece.slug} hole {number} is not marked at its place"
            else:
                left.remove(near)
    for cross in left:
        x, y = (cross.x - floor.low) / scale, (cross.y - floor.across) / scale
        yield f"a hole is marked where the plan has none, at {x:.0f}, {y:.0f} mm of the wall"
