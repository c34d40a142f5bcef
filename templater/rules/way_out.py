"""The shortest way for what hangs to get out of a part of the wall that is to be kept free."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from templater.geometry import Box, Point, Size
from templater.layout.model import Obstacle
from templater.mounting.amounts import SLACK_MM
from templater.placement.model import Side
from templater.rules.spacing import measure_gap
from templater.rules.subject import Subject


@dataclass(frozen=True, slots=True)
class Closeness:
    """How far what is moved as one is from a part of the wall kept free because of some obstacle.

    ``free_mm`` is the clear distance from the nearest of ``boxes``; negative if they reach into it.
    """

    name: str
    boxes: Sequence[Box]
    obstacle: Obstacle
    zone: Box
    free_mm: float


def find_closest(
    subject: Subject, zones: Iterable[tuple[Obstacle, Box]], low_mm: float
) -> tuple[Closeness, ...]:
    """All that are nearer to a zone than so many mm, or else the nearest, if there is any zone.

    A group is moved as one, but for one that hangs around the obstacle: there each piece by itself.
    """
    found = [
        Closeness(name, boxes, obstacle, zone, min(measure_gap(box, zone) for box in boxes))
        for obstacle, zone in zones
        for name, boxes in _find_movers(subject, obstacle)
    ]
    found.sort(key=lambda each: each.free_mm)
    near = tuple(each for each in found if each.free_mm < low_mm - SLACK_MM)
    return near or tuple(found[:1])


def _find_movers(subject: Subject, obstacle: Obstacle) -> list[tuple[str, Sequence[Box]]]:
    """What is moved as one."""
    if subject.arrange is None or not subject.box.meets(obstacle.box):
        return [(subject.name, [piece.box for piece in subject.pieces])]
    return [(piece.name, [piece.box]) for piece in subject.pieces]


def find_way_out(boxes: Sequence[Box], zone: Box, wall: Size, sides: Iterable[Side]) -> Point:
    """The shortest move, mm, to one of some sides after which no box reaches into the zone.

    A move that leaves the wall is taken only if all do.
    """
    moves = [_move(boxes, zone, side) for side in sides]
    return min(moves, key=lambda move: (_leaves(boxes, wall, move), abs(move.x) + abs(move.y)))


def _move(boxes: Sequence[Box], zone: Box, side: Side) -> Point:
    level = [box for box in boxes if box.overlap(zone).height > SLACK_MM / 2]
    upright = [box for box in boxes if box.overlap(zone).width > SLACK_MM / 2]
    match side:
        case Side.LEFT:
            return Point(-max(box.x1 - zone.x0 for box in level), 0.0)
        case Side.RIGHT:
            return Point(max(zone.x1 - box.x0 for box in level), 0.0)
        case Side.ABOVE:
            return Point(0.0, max(zone.y1 - box.y0 for box in upright))
        case Side.BELOW:
            return Point(0.0, -max(box.y1 - zone.y0 for box in upright))


def _leaves(boxes: Sequence[Box], wall: Size, move: Point) -> bool:
    whole = Box.around(boxes).moved(*move)
    return not Box(0.0, 0.0, *wall).holds(whole, SLACK_MM)
