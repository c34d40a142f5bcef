"""The shortest way for what hangs to get out of a part of the wall that is to be kept free."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from templater.geometry import Box, Point, Size
from templater.layout.model import Obstacle
from templater.mounting.amounts import SLACK_MM
from templater.placement.model import Side
from templater.rules.spacing import measure_gap
from templater.rules.subject import Subject

_Boxes = Sequence[Box]


def find_movers(subject: Subject, obstacle: Obstacle) -> Iterator[tuple[str, _Boxes]]:
    """What is moved as one away from a thing: the whole, or each piece if it hangs around it."""
    if subject.arrange is None or not subject.box.meets(obstacle.box):
        yield subject.name, [piece.box for piece in subject.pieces]
    else:
        yield from ((piece.name, [piece.box]) for piece in subject.pieces)


def measure_free(boxes: _Boxes, zone: Box) -> float:
    """From the nearest of some boxes to a part of the wall, mm; negative if they reach into it."""
    return min(measure_gap(box, zone) for box in boxes)


def find_way_out(boxes: _Boxes, zone: Box, wall: Size, sides: Iterable[Side]) -> Point:
    """The shortest move, mm, to one of some sides after which no box reaches into the zone.

    A move that leaves the wall is taken only if all do.
    """
    moves = [_move(boxes, zone, side) for side in sides]
    return min(moves, key=lambda move: (_leaves(boxes, wall, move), abs(move.x) + abs(move.y)))


def _move(boxes: _Boxes, zone: Box, side: Side) -> Point:
    level = [box for box in boxes if box.overlap(zone).height > SLACK_MM]
    upright = [box for box in boxes if box.overlap(zone).width > SLACK_MM]
    match side:
        case Side.LEFT:
            return Point(-max(box.x1 - zone.x0 for box in level), 0.0)
        case Side.RIGHT:
            return Point(max(zone.x1 - box.x0 for box in level), 0.0)
        case Side.ABOVE:
            return Point(0.0, max(zone.y1 - box.y0 for box in upright))
        case Side.BELOW:
            return Point(0.0, -max(box.y1 - zone.y0 for box in upright))


def _leaves(boxes: _Boxes, wall: Size, move: Point) -> bool:
    whole = Box.around(boxes).moved(*move)
    return not Box(0.0, 0.0, *wall).holds(whole, SLACK_MM)
