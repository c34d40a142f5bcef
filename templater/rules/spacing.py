"""Measures the clear distances between the parts of a group: which are neighbours, how far apart."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise, takewhile
from math import inf

from templater.geometry import Box
from templater.layout.model import Arrangement
from templater.mounting.amounts import SLACK_MM
from templater.placement.collisions import overlapping_pairs
from templater.placement.model import Plan
from templater.rules.subject import Subject

_IN_LINE = (Arrangement.ROW, Arrangement.COLUMN, Arrangement.STAIR, Arrangement.LEDGE)


@dataclass(frozen=True, slots=True)
class Gap:
    """Two neighbouring parts of a group, the one that comes first named first, and their gap, mm."""

    first: str
    second: str
    mm: float


def measure_gap(a: Box, b: Box) -> float:
    """Clear distance edge to edge, across or up, whichever is more; negative if they overlap, mm."""
    return max(a.x0 - b.x1, b.x0 - a.x1, a.y0 - b.y1, b.y0 - a.y1)


def find_gaps(subject: Subject, plan: Plan, *, low_mm: float) -> tuple[Gap, ...]:
    """The gaps of a group that are to be judged.

    In a line: each part to the next, on stairs along the slope, but for those with something in
    the way between them. Else: each part to the nearest, and all pairs nearer than ``low_mm``.
    """
    if subject.arrange in _IN_LINE:
        return tuple(_gaps_in_line(subject, plan))
    boxes = [box for _, box in subject.parts]
    pairs = set(find_close_pairs(boxes, low_mm))
    everyone = range(len(boxes))
    for index, near in find_nearest(boxes, everyone, everyone).items():
        pairs.add((min(index, near), max(index, near)))
    return tuple(_gap(subject, first, second) for first, second in sorted(pairs))


def measure_grid(boxes: Sequence[Box]) -> list[float]:
    """The gaps between the columns and between the rows of a grid that is filled in reading order."""
    middle = boxes[0].centre.y
    first_row = takewhile(lambda box: abs(box.centre.y - middle) <= SLACK_MM, boxes)
    count = len(list(first_row))
    columns = [Box.around(boxes[column::count]) for column in range(count)]
    rows = [Box.around(boxes[start : start + count]) for start in range(0, len(boxes), count)]
    return [
        *(right.x0 - left.x1 for left, right in pairwise(columns)),
        *(above.y0 - below.y1 for above, below in pairwise(rows)),
    ]


def find_close_pairs(boxes: Sequence[Box], reach_mm: float) -> Iterator[tuple[int, int]]:
    """The indices of all boxes with a gap of no more than so many mm, the lower index first."""
    return overlapping_pairs([box.grown(reach_mm / 2 + SLACK_MM) for box in boxes])


def find_nearest(boxes: Sequence[Box], marks: Sequence[int], indices: Iterable[int]) -> dict[int, int]:
    """For each of these boxes the index of the nearest that bears another mark, if there is any.

    Of boxes equally near the first is taken.
    """
    whole = Box.around(boxes)
    if whole.height > whole.width:
        boxes = [Box(y0, x0, y1, x1) for x0, y0, x1, y1 in boxes]
    order = sorted(range(len(boxes)), key=lambda index: boxes[index].x0)
    ranks = {index: rank for rank, index in enumerate(order)}
    widest = max(box.width for box in boxes)
    found: dict[int, int] = {}
    for index in indices:
        box, mark, limit, nearest = boxes[index], marks[index], inf, -1
        for others in (order[ranks[index] + 1 :], reversed(order[: ranks[index]])):
            for other in others:
                near = boxes[other]
                if near.x0 - box.x1 > limit or box.x0 - near.x0 - widest > limit:
                    break
                if marks[other] != mark:
                    gap = measure_gap(box, near)
                    if gap < limit - 2 * SLACK_MM or (gap <= limit and other < nearest):
                        limit, nearest = gap + SLACK_MM, other
        if nearest >= 0:
            found[index] = nearest
    return found


def find_things_within(subject: Subject, plan: Plan) -> list[Box]:
    """The furniture and the things in the way around which a group hangs."""
    boxes = [*(thing.box for thing in plan.obstacles), *(item.box for item in plan.furniture)]
    return [box for box in boxes if box.meets(subject.box)]


def _gaps_in_line(subject: Subject, plan: Plan) -> Iterator[Gap]:
    things = find_things_within(subject, plan)
    for first, (a, b) in enumerate(pairwise(box for _, box in subject.parts)):
        between = _find_between(a, b)
        if not any(thing.meets(between) for thing in things):
            yield _gap(subject, first, first + 1)


def _find_between(a: Box, b: Box) -> Box:
    """The wall between the facing edges of two boxes, as far as both face it."""
    shared = a.common(b)
    if a.overlap(b).width < a.overlap(b).height:
        return Box(shared.x1, shared.y0, shared.x0, shared.y1)
    return Box(shared.x0, shared.y1, shared.x1, shared.y0)


def _gap(subject: Subject, first: int, second: int) -> Gap:
    (one, a), (other, b) = subject.parts[first], subject.parts[second]
    along = subject.arrange is Arrangement.STAIR
    return Gap(one, other, _measure_along(a, b) if along else measure_gap(a, b))


def _measure_along(a: Box, b: Box) -> float:
    """How far one box can slide toward another, centre to centre, before they touch, mm."""
    dx, dy = abs(a.centre.x - b.centre.x), abs(a.centre.y - b.centre.y)
    far = (dx * dx + dy * dy) ** 0.5
    overlap = a.overlap(b)
    ways = ((-overlap.width, dx), (-overlap.height, dy))
    return max((gap * far / way for gap, way in ways if way > SLACK_MM), default=measure_gap(a, b))
