"""Finds the best cluster of a few pieces among all there are."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from itertools import combinations
from math import inf
from typing import NamedTuple, TypeAlias

from templater.placement.cluster_rounding import add_up
from templater.placement.cluster_score import (
    NOTHING_HUNG,
    Cell,
    Lie,
    Scale,
    Task,
    extend_axis,
    total_cost,
)

Starts: TypeAlias = tuple[int, ...]
"""Where each piece's cell starts on one axis, in steps from the first."""


class _Way(NamedTuple):
    """One way to set all pieces on one axis."""

    starts: Starts
    lie: Lie


def solve_cluster(task: Task) -> tuple[Cell, ...]:
    """The best of all clusters in which each axis hangs together, cells in the task's order.

    On each axis every piece leads to every other by steps of five kinds: same start, same end,
    same centre, one gap after, one gap before. That holds every cluster that the search of many
    pieces could find. Meant for up to four pieces: some 40 000 pairs of axes.
    """
    scale = Scale(task, add_up(task.areas), add_up(area * area for area in task.areas))
    wide, high = scale.goals or (None, None)
    across = _list_ways(task.widths, task.areas, scale, wide)
    up = _list_ways(task.heights, task.areas, scale, high)
    best = inf
    choice: tuple[Cell, ...] = ()
    for bound, xs, ys in sorted(_pairs(task, across, up, scale)):
        if bound >= best:
            break
        cells = tuple(
            Cell(x, y, x + width, y + height)
            for x, y, width, height in zip(xs, ys, task.widths, task.heights, strict=True)
        )
        cost = total_cost(task, cells)
        if cost < best:
            best, choice = cost, cells
    return choice


def _list_ways(
    lengths: Sequence[int], areas: Sequence[float], scale: Scale, goal: float | None
) -> dict[int, list[_Way]]:
    """All ways to set the pieces on an axis, by the pairs that they set apart; no mirror images."""
    found: dict[int, list[_Way]] = defaultdict(list)
    for starts in sorted(_chains(lengths)):
        ends = [start + length for start, length in zip(starts, lengths, strict=True)]
        if starts <= tuple(max(ends) - end for end in ends):
            axis = NOTHING_HUNG
            for start, end, area in zip(starts, ends, areas, strict=True):
                axis = extend_axis(axis, start, end, area)
            found[_apart(starts, ends)].append(_Way(starts, scale.lie(axis, goal)))
    return found


def _chains(lengths: Sequence[int]) -> set[Starts]:
    """All starts that hang together, the least of them 0."""
    layer: set[tuple[tuple[int, int], ...]] = {((piece, 0),) for piece in range(len(lengths))}
    for _ in lengths[1:]:
        layer = {
            tuple(sorted((*known, (piece, start))))
            for known in layer
            for piece in set(range(len(lengths))).difference(piece for piece, _ in known)
            for other, at in known
            for start in _ties(at, lengths[other], lengths[piece])
        }
    lows = ((min(start for _, start in known), known) for known in layer)
    return {tuple(start - low for _, start in known) for low, known in lows}


def _ties(at: int, other: int, length: int) -> tuple[int, int, int, int, int]:
    """Where a piece may start, tied to another that starts at ``at``."""
    return at, at + other - length, at + (other - length) // 2, at + other, at - length


def _apart(starts: Sequence[int], ends: Sequence[int]) -> int:
    """The pairs of pieces that do not overlap on this axis, one bit each."""
    bits = 0
    for bit, (one, other) in enumerate(combinations(range(len(starts)), 2)):
        if ends[one] <= starts[other] or ends[other] <= starts[one]:
            bits |= 1 << bit
    return bits


def _pairs(
    task: Task, across: dict[int, list[_Way]], up: dict[int, list[_Way]], scale: Scale
) -> Iterator[tuple[float, Starts, Starts]]:
    """All pairs of axes without overlapping pieces, with what they cost at least."""
    every = (1 << len(task.widths) * (len(task.widths) - 1) // 2) - 1
    for apart_across, firsts in across.items():
        for apart_up, seconds in up.items():
            if apart_across | apart_up == every:
                for starts, lie in firsts:
                    for others, other in seconds:
                        yield scale.cost(lie, other), starts, others
