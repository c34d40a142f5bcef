"""Finds the best place for one more piece of a cluster.

What the objective asks of a place follows, but for a few operations, from where it starts on each
axis; and there are far fewer starts than places. What follows from a start is worked out once.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from math import inf
from typing import TypeAlias

from templater.placement.cluster_score import (
    FACING,
    Axis,
    Cell,
    Cluster,
    Lie,
    Scale,
    extend_axis,
    tied_cost,
)

_SLACK = 1e-12
"""How far the arithmetic may put a place's cost under what it costs at least."""

_Place: TypeAlias = tuple[float, float, int, int, int]
"""A free place: its least cost, its cost but for its ties, where it is, and half the whole's outline."""


class _Starts:
    """Where one more piece may start on one axis; ``cells`` are turned so that it is their first.

    ``touched`` holds, for each start at which the piece may touch cells that lie beside it, these.
    """

    __slots__ = ("cells", "gap", "length", "touched")

    def __init__(self, cells: Sequence[Cell], length: int, gap: int) -> None:
        self.cells, self.length, self.gap = cells, length, gap
        self.touched: dict[int, list[Cell]] = {}
        for cell in cells:
            self.touched.setdefault(cell[2], []).append(cell)
            self.touched.setdefault(cell[0] - length, []).append(cell)

    def lies(
        self, starts: set[int], axis: Axis, area: float, scale: Scale, goal: float | None
    ) -> dict[int, Lie]:
        """How all pieces lie on this axis with the piece at each of some starts."""
        length = self.length
        return {
            start: scale.lie(extend_axis(axis, start, start + length, area), goal) for start in starts
        }

    def limits(self, starts: set[int], depth: int) -> dict[int, tuple[int, int]]:
        """For each of some starts how many cells a piece so deep may touch, and how far along."""
        found = {}
        for start in starts:
            sides = self.touched.get(start, ())
            found[start] = len(sides), min(2 * depth, sum(high - low for _, low, _, high in sides))
        return found


def hang_best(cluster: Cluster, piece: int) -> float:
    """Hang a piece at its best place; returns the objective, infinite if there is no place.

    Of places equally good the one that is better but for its ties is taken, then the first from
    the left, then from below.
    """
    width, height = cluster.task.widths[piece], cluster.task.heights[piece]
    cells, gap = list(cluster.cells.values()), cluster.task.gap
    border, count = cluster.border + width + height, len(cells) + 1
    best, choice = (inf, inf, 0, 0), None
    for least, plain, x, y, around in _rank_places(cluster, cells, width, height):
        if least > best[0] + _SLACK:
            break
        ties = cluster.ties.plus(Cell(x, y, x + width, y + height), cells, gap)
        cost = plain + tied_cost(ties, border, around, count)
        if (cost, plain, x, y) < best:
            best, choice = (cost, plain, x, y), ties
    if choice is not None:
        _, _, x, y = best
        cluster.hang(piece, Cell(x, y, x + width, y + height), choice)
    return best[0]


def _rank_places(cluster: Cluster, cells: Sequence[Cell], width: int, height: int) -> list[_Place]:
    """The free places of a piece, the least cost first that each may have.

    It would have that if the piece touched all along whatever may lie beside, above and below it,
    in line with each, and if it made no mistakes.
    """
    across = _Starts(cells, width, cluster.task.gap)
    up = _Starts([Cell(y0, x0, y1, x1) for x0, y0, x1, y1 in cells], height, cluster.task.gap)
    area = float(width) * height
    scale = Scale(cluster.task, cluster.area + area, cluster.square + area * area)
    wide, high = scale.goals or (None, None)
    places = _list_places(across, up)
    xs, ys = {x for x, _ in places}, {y for _, y in places}
    lies, lies_up = (
        across.lies(xs, cluster.across, area, scale, wide),
        up.lies(ys, cluster.up, area, scale, high),
    )
    limits, limits_up = across.limits(xs, height), up.limits(ys, width)
    shared, joints, lined, mistakes = cluster.ties
    border, count = cluster.border + width + height, len(cells) + 1
    ranked = []
    for x, y in places:
        lie, lie_up = lies[x], lies_up[y]
        plain, around = scale.cost(lie, lie_up), lie[0] + lie_up[0]
        (beside, edge), (stacked, edge_up) = limits[x], limits_up[y]
        touched = beside + stacked
        ties = shared + edge + edge_up, joints + touched, lined + touched, mistakes
        ranked.append((plain + tied_cost(ties, border, around, count), plain, x, y, around))
    ranked.sort()
    return ranked


def _list_places(across: _Starts, up: _Starts) -> set[tuple[int, int]]:
    """Where a piece is free and touches another."""
    if not across.cells:
        return {(0, 0)}
    places = set(_list_beside(across, up.length))
    places.update([(x, y) for y, x in _list_beside(up, across.length)])
    return places


def _list_beside(starts: _Starts, height: int) -> Iterator[tuple[int, int]]:
    """Free places to the left or right of some cell, lined up with some other or touching it."""
    cells, width = starts.cells, starts.length
    lined = sorted({y for _, y0, _, y1 in cells for y in (y0, y1 - height)})
    for x, sides in starts.touched.items():
        end = x + width
        taken = [(y0 - height, y1) for x0, y0, x1, y1 in cells if x0 < end and x1 > x]
        for _, low, _, high in sides:
            least, most = _span(low, high, height, starts.gap)
            near = [(start, stop) for start, stop in taken if start <= most and stop >= least]
            ys = {y for span in near for y in span if least <= y <= most}
            ys.update(lined[bisect_left(lined, least) : bisect_right(lined, most)])
            ys.add((low + high - height) // 2)
            for y in ys:
                for start, stop in near:
                    if start < y < stop:
                        break
                else:
                    yield x, y


def _span(low: int, high: int, height: int, gap: int) -> tuple[float, float]:
    """From where to where a cell may stand to share enough of the edge from ``low`` to ``high``."""
    shared = gap + min(FACING, (min(height, high - low) - gap) / 3)
    return low - height + shared, high - shared
