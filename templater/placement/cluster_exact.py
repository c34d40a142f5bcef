"""Finds the best cluster of a few pieces among all there are."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from itertools import combinations
from math import inf
from typing import NamedTuple, TypeAlias

from templater.placement.cluster_score import Cell, Cluster, Task, total_cost

Starts: TypeAlias = tuple[int, ...]
"""Where each piece's cell starts on one axis, in steps from the first."""


class _Axis(NamedTuple):
    """One way to set all pieces on one axis: the length of the whole and the pieces' moments.

    ``moments`` are those of area and squared area, first order, then second.
    """

    starts: Starts
    end: int
    moments: tuple[float, float, float, float]


def solve_cluster(task: Task) -> tuple[Cell, ...]:
    """The best of all clusters in which each axis hangs together, cells in the task's order.

    On each axis every piece leads to every other by steps of five kinds: same start, same end,
    same centre, one gap after, one gap before. That holds every cluster that the search of many
    pieces could find. Meant for up to four pieces: some 40 000 pairs of axes.
    """
    across = _axes(task.widths, task.areas)
    up = _axes(task.heights, task.areas)
    bounds = sorted(
        (bound, first.starts, second.starts) for bound, first, second in _pairs(task, across, up)
    )
    best = inf
    choice: tuple[Cell, ...] = ()
    for bound, xs, ys in bounds:
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


def _axes(lengths: Sequence[int], areas: Sequence[float]) -> dict[int, list[_Axis]]:
    """All ways to set the pieces on an axis, by the pairs that they set apart; no mirror images."""
    found: dict[int, list[_Axis]] = defaultdict(list)
    for starts in sorted(_chains(lengths)):
        end = max(start + length for start, length in zip(starts, lengths, strict=True))
        mirrored = tuple(end - start - length for start, length in zip(starts, lengths, strict=True))
        if starts <= mirrored:
            moments = _moments(starts, lengths, areas)
            found[_apart(starts, lengths)].append(_Axis(starts, end, moments))
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


def _apart(starts: Starts, lengths: Sequence[int]) -> int:
    """The pairs of pieces that do not overlap on this axis, one bit each."""
    bits = 0
    for bit, (one, other) in enumerate(combinations(range(len(starts)), 2)):
        if starts[one] + lengths[one] <= starts[other] or starts[other] + lengths[other] <= starts[one]:
            bits |= 1 << bit
    return bits


def _moments(
    starts: Starts, lengths: Sequence[int], areas: Sequence[float]
) -> tuple[float, float, float, float]:
    """Of area and squared area, first order, then second; centres counted twice."""
    middles = [2 * start + length for start, length in zip(starts, lengths, strict=True)]
    pairs = list(zip(areas, middles, strict=True))
    return (
        sum(area * middle for area, middle in pairs),
        sum(area * area * middle for area, middle in pairs),
        sum(area * middle * middle for area, middle in pairs),
        sum(area * area * middle * middle for area, middle in pairs),
    )


def _pairs(
    task: Task, across: dict[int, list[_Axis]], up: dict[int, list[_Axis]]
) -> Iterator[tuple[float, _Axis, _Axis]]:
    """All pairs of axes without overlapping pieces, with what they cost at least."""
    cluster = Cluster(task)
    every = (1 << len(task.widths) * (len(task.widths) - 1) // 2) - 1
    area, square = sum(task.areas), sum(area * area for area in task.areas)
    border = float(sum(task.widths) + sum(task.heights))
    for apart_across, firsts in across.items():
        for apart_up, seconds in up.items():
            if apart_across | apart_up != every:
                continue
            for first in firsts:
                ax, sx, axx, sxx = first.moments
                for second in seconds:
                    ay, sy, ayy, syy = second.moments
                    sums = (area, square, border, ax, ay, sx, sy, axx, ayy, sxx, syy)
                    box = Cell(0, 0, first.end, second.end)
                    yield cluster.plain_cost(box, sums), first, second
