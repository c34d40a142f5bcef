"""Holds the overview's small crosses against the Plan; the floor line tells the place and the scale."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from templater.geometry import Box, Point
from templater.placement.model import Plan
from templater.verify.model import NEAR_MM, Ink
from templater.verify.nearest import Points
from templater.verify.straight import list_straight
from templater.verify.targets import find_crosses

_FLOOR_WIDTH = 0.7
_WIDTH_OFF = 0.03
_ARM_MM = 1.0


@dataclass(frozen=True, slots=True)
class Elevation:
    """The wall as it is drawn: where its left end at the floor lies on the page, and how small it is."""

    origin: Point
    scale: float
    wall: Box
    crosses: tuple[Point, ...]

    def place(self, point: Point) -> Point:
        """Where a point of the wall lies on the page."""
        return Point(self.origin.x + point.x * self.scale, self.origin.y + point.y * self.scale)


def read_elevation(ink: Ink, plan: Plan) -> Elevation | None:
    """The wall on a page; None where its floor line is not drawn."""
    level, upright = list_straight(ink.strokes)
    floors = [line for line in level if abs(line.width_mm - _FLOOR_WIDTH) <= _WIDTH_OFF]
    if not floors:
        return None
    floor = max(floors, key=lambda line: line.across)
    scale = floor.length_mm / plan.wall.width
    wall = Box(floor.low, floor.across, floor.high, floor.across + plan.wall.height * scale)
    crosses = (cross.at for cross in find_crosses(level, upright, _ARM_MM))
    seen = tuple(cross for cross in crosses if wall.grown(NEAR_MM).has(cross))
    return Elevation(Point(floor.low, floor.across), scale, wall, seen)


def place_holes(elevation: Elevation, plan: Plan) -> dict[str, Point]:
    """Where on the page each hole must be marked, by its name."""
    return {
        f"{piece.slug} hole {number}": elevation.place(mark.hole)
        for piece in plan.pieces
        for number, mark in enumerate(piece.marks, 1)
    }


def check_overview(ink: Ink, plan: Plan) -> Iterator[str]:
    """Whether every hole is marked on the wall that is drawn, and nothing else is."""
    elevation = read_elevation(ink, plan)
    if elevation is None:
        yield "the floor line of the wall is not drawn"
        return
    left = Points(elevation.crosses)
    for name, place in place_holes(elevation, plan).items():
        if left.take(place, NEAR_MM) is None:
            yield f"{name} is not marked at its place"
    for cross in left:
        x, y = (
            (at - start) / elevation.scale for at, start in zip(cross, elevation.origin, strict=True)
        )
        yield f"a hole is marked where the plan has none, at {x:.0f}, {y:.0f} mm of the wall"
