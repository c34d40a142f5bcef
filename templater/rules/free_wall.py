"""Finds the shortest move to where something hangs free: over nothing, behind nothing, on the wall."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

from templater.geometry import Box, Point
from templater.layout.model import LeftRight, Obstacle
from templater.mounting.amounts import SLACK_MM, round_down, round_up, step_mm
from templater.placement.ceiling import find_headroom
from templater.placement.model import PlacedPiece, Plan

MAX_SLANTED = 64
"""So many moves to the side are tried with one up or down: a full wall has hundreds of thousands."""


def list_leaves(plan: Plan) -> list[tuple[Obstacle, Box]]:
    """Each door that folds back against the wall, with what its leaf then covers of it."""
    return [(door, _find_leaf(door, door.swing)) for door in plan.obstacles if door.swing]


def _find_leaf(door: Obstacle, swing: LeftRight) -> Box:
    way = door.box.width if swing is LeftRight.RIGHT else -door.box.width
    return door.box.moved(way, 0.0)


def list_taken(plan: Plan, without: Iterable[PlacedPiece]) -> list[Box]:
    """What nothing else can hang on: furniture, things in the way, doors' leaves, other pieces."""
    moved = {piece.name for piece in without}
    return [
        *(item.box for item in plan.furniture),
        *(thing.box for thing in plan.obstacles),
        *(leaf for _, leaf in list_leaves(plan)),
        *(piece.box for piece in plan.pieces if piece.name not in moved),
    ]


def find_free_move(
    pieces: Sequence[PlacedPiece], zones: Iterable[Box], plan: Plan, count: Callable[[Point], int]
) -> Point | None:
    """The shortest move, mm, after which pieces moved as one hang free, and outside of all zones.

    It is a whole number of the steps that are shown. A move along one axis is taken before one
    along two, and of those along one that with the lowest ``count``, such as of rules that it breaks;
    None where none is found.
    """
    boxes = [piece.box for piece in pieces]
    taken = (*zones, *list_taken(plan, pieces))
    beside = _list_beside(Box.around(boxes), taken)
    if straight := _Moves(boxes, _find_hits(boxes, beside), plan).straight():
        return min(straight, key=lambda move: (count(move), _measure(move)))
    slanted = _Moves(boxes, _find_hits(boxes, taken), plan).slanted()
    return min(slanted, key=_measure, default=None)


def hangs_free(boxes: Sequence[Box], taken: Iterable[Box], plan: Plan) -> bool:
    """Whether boxes are on the wall and over nothing that is taken."""
    return _Moves(boxes, _find_hits(boxes, taken), plan).allows(Point(0.0, 0.0))


def _list_beside(whole: Box, taken: Iterable[Box]) -> list[Box]:
    """What can be in the way of a move along one axis: much less than all that a long wall has."""
    left, bottom, right, top = whole
    return [
        each
        for each in taken
        if (each.y0 < top and bottom < each.y1) or (each.x0 < right and left < each.x1)
    ]


def _find_hits(boxes: Iterable[Box], taken: Iterable[Box]) -> list[Box]:
    """For each box and each part that is taken, the moves that bring one over the other."""
    small = [box.grown(-SLACK_MM) for box in boxes]
    return [
        Box(each.x0 - box.x1, each.y0 - box.y1, each.x1 - box.x0, each.y1 - box.y0)
        for each in taken
        for box in small
    ]


def _measure(move: Point) -> float:
    return abs(move.x) + abs(move.y)


class _Moves:
    """The moves that boxes can make as one on a wall; ``hits`` bring them over something."""

    def __init__(self, boxes: Sequence[Box], hits: Sequence[Box], plan: Plan) -> None:
        self._boxes, self._hits, self._plan = boxes, hits, plan
        self._whole, self._step = Box.around(boxes), step_mm(plan.units)

    def straight(self) -> list[Point]:
        """The nearest move in each of the four directions, where there is one."""
        moves = [*(Point(dx, 0.0) for dx in self._across()), *(Point(0.0, dy) for dy in self._up(0.0))]
        return [move for move in moves if self.allows(move)]

    def slanted(self) -> list[Point]:
        """Moves to the side just past something, each with the nearest up or down from there."""
        ends = {round_up(hit.x1, self._step) for hit in self._hits}
        ends |= {round_down(hit.x0, self._step) for hit in self._hits}
        nearest = sorted(ends, key=lambda dx: (abs(dx), dx))[:MAX_SLANTED]
        low, high = min(nearest, default=0.0), max(nearest, default=0.0)
        hits = [hit for hit in self._hits if hit.x0 < high and low < hit.x1]
        near = _Moves(self._boxes, hits, self._plan)
        moves = (Point(dx, dy) for dx in nearest for dy in near._up(dx))
        return [move for move in moves if near.allows(move)]

    def allows(self, move: Point) -> bool:
        """Whether the boxes, moved so, are on the wall and over nothing."""
        wall = Box(0.0, 0.0, *self._plan.wall)
        return (
            wall.holds(self._whole.moved(*move), SLACK_MM)
            and self._find_excess(move.x) + move.y <= SLACK_MM
            and not any(hit.x0 < move.x < hit.x1 and hit.y0 < move.y < hit.y1 for hit in self._hits)
        )

    def _across(self) -> tuple[float, float]:
        """How far to the right and to the left nothing is in the way."""
        return self._pass_both_ways(
            [(hit.x0, hit.x1) for hit in self._hits if hit.y0 < 0.0 < hit.y1], 0.0
        )

    def _up(self, dx: float) -> tuple[float, float]:
        """How far up and down, after a move to the side, nothing is in the way."""
        spans = [(hit.y0, hit.y1) for hit in self._hits if hit.x0 < dx < hit.x1]
        return self._pass_both_ways(spans, max(0.0, self._find_excess(dx)))

    def _pass_both_ways(self, spans: Sequence[tuple[float, float]], back: float) -> tuple[float, float]:
        """The nearest places along an axis, ahead and at least so far back, that are in no span."""
        behind = [(-high, -low) for low, high in spans]
        return _pass(spans, 0.0, self._step), -_pass(behind, back, self._step)

    def _find_excess(self, dx: float) -> float:
        """How far the boxes, moved to the side, are above the ceiling; negative if below, mm."""
        ceiling, height = self._plan.ceiling, self._plan.wall.height
        moved = (box.moved(dx, 0.0) for box in self._boxes)
        return max(box.y1 - find_headroom(ceiling, height, box.x0, box.x1) for box in moved)


def _pass(spans: Iterable[tuple[float, float]], start: float, step: float) -> float:
    """The first whole step, from a start on, that lies in no span."""
    at = round_up(start, step)
    for low, high in sorted(spans):
        if low < at < high:
            at = round_up(high, step)
    return at
