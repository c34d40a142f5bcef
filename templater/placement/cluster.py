"""Composes a salon hang: pieces of mixed sizes close together, one true gap between neighbours."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from templater.geometry import Box, Point, Size
from templater.placement.cluster_exact import solve_cluster
from templater.placement.cluster_rounding import add_up
from templater.placement.cluster_score import STEPS_PER_MM, Cell, Task
from templater.placement.cluster_search import search_cluster

MOST_SOLVED = 4
"""Up to so many pieces the best of all clusters is found, beyond a good one."""


def arrange_cluster(sizes: Sequence[Size], gap_mm: float, target: Size | None) -> tuple[Box, ...]:
    """The box of each piece in the order given; origin: the bounding box's bottom-left corner.

    No two pieces are nearer than the gap, and neighbours at exactly the gap, which face each other
    along 20 mm or a third of the shorter edge, join all pieces. Among such clusters the least sum
    of these terms is sought; each is a plain ratio, 0 where it is perfect but for the last:

    - 1.0 × misfit: how far the width and the height of the whole are from ``target``, the natural
      logarithms of both ratios; without a target how far the proportion is outside 0.9 to 1.9;
    - 1.0 × waste: the share of the whole that is neither piece nor the gap that belongs to it;
    - 0.4 × outline: how much longer the outline around all pieces and their gaps is, holes
      included, than that of the whole; it grows with every gap that is not the true one;
    - 0.6 × imbalance: how far the centroid of the pieces by area is from the centre of the whole,
      in halves of its width and of its height;
    - 0.3 × unlined: the share of neighbours of which neither two edges nor the centres line up;
    - 0.3 × mistakes: by piece, the pairs that face each other within 300 mm and nearly line up, or
      hang nearly the gap apart; each counts from 1 for the smallest difference to 0 for 50 mm;
    - 0.3 × eye: how far from the centre of the whole the large pieces are (second moment by
      squared area) against all pieces (by area): the largest want to be in the middle.

    Areas include the gap. Up to four pieces the best is found of all clusters in which, on each
    axis, every piece leads to every other by same edges, same centres or one gap between; beyond,
    the best of some thousands, always the same for the same sizes. The order of the pieces and
    mirror images make no difference to the terms: the whole is hung with its weight low and left.
    """
    order = sorted(range(len(sizes)), key=lambda piece: (sizes[piece], piece), reverse=True)
    task = Task.of([sizes[piece] for piece in order], gap_mm, target)
    hung = _hang_low_and_left(task, _find_cells(task))
    return tuple(
        Box.of(Point(cell.x0 / STEPS_PER_MM, cell.y0 / STEPS_PER_MM), sizes[piece])
        for piece, cell in sorted(zip(order, hung, strict=True))
    )


@lru_cache(maxsize=256)
def _find_cells(task: Task) -> tuple[Cell, ...]:
    """The best cells found; kept, since a search that hangs one group places all others each time."""
    return tuple(solve_cluster(task) if len(task.widths) <= MOST_SOLVED else search_cluster(task))


def _hang_low_and_left(task: Task, cells: Sequence[Cell]) -> list[Cell]:
    """The mirror image with its weight low and left, moved to the origin."""
    lefts = _weigh_down([(cell.x0, cell.x1) for cell in cells], task.areas)
    bottoms = _weigh_down([(cell.y0, cell.y1) for cell in cells], task.areas)
    return [Cell(x0, y0, x1, y1) for (x0, x1), (y0, y1) in zip(lefts, bottoms, strict=True)]


def _weigh_down(spans: Sequence[tuple[int, int]], areas: Sequence[float]) -> list[tuple[int, int]]:
    """Spans on one axis from 0, turned round if their weight lies in the farther half."""
    low, high = min(start for start, _ in spans), max(end for _, end in spans)
    weight = add_up(
        area * (start + end - low - high) for area, (start, end) in zip(areas, spans, strict=True)
    )
    if weight > 0:
        return [(high - end, high - start) for start, end in spans]
    return [(start - low, end - low) for start, end in spans]
