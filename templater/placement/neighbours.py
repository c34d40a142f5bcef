"""Finds the nearest piece on each side of every piece."""

from __future__ import annotations

from bisect import bisect_left
from collections import defaultdict
from collections.abc import Callable, Iterator, Mapping, Sequence
from math import floor

from templater.geometry import Box
from templater.mounting.amounts import SLACK_MM
from templater.placement.model import Neighbour, Side

REACH_MM = 600.0
"""How far away a piece may hang and still be called a neighbour."""

MIN_SHARED_MM = 1.0
"""How much of its height (left, right) or width (above, below) a neighbour must share, and more."""

_TURNS: Mapping[Side, Callable[[Box], Box]] = {
    Side.LEFT: lambda box: Box(-box.x1, box.y0, -box.x0, box.y1),
    Side.RIGHT: lambda box: box,
    Side.ABOVE: lambda box: Box(box.y0, box.x0, box.y1, box.x1),
    Side.BELOW: lambda box: Box(-box.y1, box.x0, -box.y0, box.x1),
}
"""How to turn or mirror the wall so that a side comes to lie on the right."""


def find_neighbours(boxes: Mapping[str, Box]) -> dict[str, tuple[Neighbour, ...]]:
    """The neighbours of every piece by its name: left, right, above, below, where there is one.

    Of pieces equally near the first in order is taken.
    """
    names = list(boxes)
    found: dict[str, list[Neighbour]] = {name: [] for name in names}
    for side, turn in _TURNS.items():
        turned = [turn(box) for box in boxes.values()]
        for index, other in enumerate(_find_nearest_right(turned)):
            if other is not None:
                gap = max(0.0, turned[other].x0 - turned[index].x1)
                found[names[index]].append(Neighbour(names[other], side, gap))
    return {name: tuple(neighbours) for name, neighbours in found.items()}


def _find_nearest_right(boxes: Sequence[Box]) -> list[int | None]:
    """The index of each box's nearest one on its right.

    Boxes are looked for lane by lane: a lane is as high as they are on average, so that together
    they lie in no more than about twice as many lanes as there are boxes, however high some are.
    """
    if not boxes:
        return []
    high = max(MIN_SHARED_MM, sum(box.height for box in boxes) / len(boxes))
    lanes: dict[int, list[int]] = defaultdict(list)
    for index in sorted(range(len(boxes)), key=lambda index: boxes[index].x0):
        for lane in _list_lanes(boxes[index], high):
            lanes[lane].append(index)
    starts = {lane: [boxes[index].x0 for index in order] for lane, order in lanes.items()}
    found = []
    for box in boxes:
        near: list[tuple[float, int]] = []
        for lane in _list_lanes(box, high):
            near += _find_near(box, boxes, lanes[lane], starts[lane])
        limit = min(near, default=(0.0, 0))[0] + SLACK_MM
        found.append(min((index for start, index in near if start <= limit), default=None))
    return found


def _list_lanes(box: Box, high: float) -> range:
    """The numbers of the lanes, each so high, that a box lies in."""
    return range(floor(box.y0 / high), floor(box.y1 / high) + 1)


def _find_near(
    box: Box, boxes: Sequence[Box], order: Sequence[int], starts: Sequence[float]
) -> Iterator[tuple[float, int]]:
    """The nearest boxes of a lane that start where a box ends or farther right: starts and indices.

    ``order`` holds the indices of the lane's boxes by their left edges, ``starts`` those edges.
    """
    limit = box.x1 + REACH_MM + SLACK_MM
    is_first = True
    for rank in range(bisect_left(starts, box.x1 - SLACK_MM), len(order)):
        if starts[rank] > limit:
            break
        other = boxes[order[rank]]
        if min(box.y1, other.y1) - max(box.y0, other.y0) > MIN_SHARED_MM:
            if is_first:
                # From here on only what is just as near, but for the arithmetic of floats.
                limit, is_first = starts[rank] + SLACK_MM, False
            yield starts[rank], order[rank]
