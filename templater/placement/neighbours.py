"""Finds the nearest piece on each side of every piece."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Mapping, Sequence

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
    """The index of each box's nearest one on its right."""
    order = sorted(range(len(boxes)), key=lambda index: boxes[index].x0)
    starts = [boxes[index].x0 for index in order]
    return [_find_nearest(box, boxes, order, starts) for box in boxes]


def _find_nearest(
    box: Box, boxes: Sequence[Box], order: Sequence[int], starts: Sequence[float]
) -> int | None:
    """The index of the nearest box that starts where this one ends or farther right.

    ``order`` holds the indices of the boxes by their left edges, ``starts`` those edges.
    """
    nearest: int | None = None
    limit = REACH_MM + SLACK_MM
    for rank in range(bisect_left(starts, box.x1 - SLACK_MM), len(order)):
        if starts[rank] - box.x1 > limit:
            break
        index = order[rank]
        other = boxes[index]
        if min(box.y1, other.y1) - max(box.y0, other.y0) > MIN_SHARED_MM:
            if nearest is None:
                # From here on only what is just as near, but for the arithmetic of floats.
                limit = starts[rank] - box.x1 + SLACK_MM
            nearest = index if nearest is None else min(nearest, index)
    return nearest
