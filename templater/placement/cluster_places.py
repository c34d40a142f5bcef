"""Finds the best place for one more piece of a cluster.

What the objective asks of a place follows, but for a few operations, from where it starts on each
axis; and there are far fewer starts than places. What follows from a start is worked out once.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from math import inf
from typing import NamedTuple

from templater.placement.cluster_score import (
    FACING,
    OUTLINE,
    Axis,
    Cell,
    Cluster,
    Facing,
    Lie,
    Scale,
    Ties,
    list_facing,
    tied_cost,
)

_SLACK = 1e-12
"""How far the arithmetic may put a place's cost under what it costs at least."""


class _Place(NamedTuple):
    """A free place: what it costs at least, what without its ties, and half the outline of the whole."""

    least: float
    plain: float
    x: int
    y: int
    around: int


class _Starts:
    """Where one more piece may start on one axis; ``cells`` are turned so that it is their first."""

    __slots__ = ("_facing", "cells", "gap", "length")

    def __init__(self, cells: Sequence[Cell], length: int, gap: int) -> None:
        self.cells, self.length, self.gap = cells, length, gap
        self._facing: dict[int, list[Facing]] = {}

    def facing(self, start: int) -> list[Facing]:
        """The cells that share part of this axis with the piece; worked out once for a start."""
        found = self._facing.get(start)
        if found is None:
            found = self._facing[start] = list_facing(start, start + self.length, self.cells, self.gap)
        return found

    def lies(
        self, starts: set[int], axis: Axis, area: float, scale: Scale, goal: float | None
    ) -> dict[int, Lie]:
        """How all pieces lie on this axis with the piece at each of some starts."""
        length = self.length
        return {start: scale.lie(axis.plus(start, start + length, area), goal) for start in starts}


def hang_best(cluster: Cluster, piece: int) -> float:
    """Hang a piece at its best place; returns the objective, infinite if there is no place.

    Of places equally good the one that is better but for its ties is taken, then the first from
    the left, then from below.
    """
    width, height = cluster.task.widths[piece], cluster.task.heights[piece]
    cells = list(cluster.cells.values())
    turned = [Cell(y0, x0, y1, x1) for x0, y0, x1, y1 in cells]
    across = _Starts(cells, width, cluster.task.gap)
    up = _Starts(turned, height, cluster.task.gap)
    border, count = cluster.border + width + height, len(cells) + 1
    best, choice = (inf, inf, 0, 0), None
    for least, plain, x, y, around in _rank_places(cluster, across, up):
        if least > best[0] + _SLACK:
            break
        ties = cluster.ties.plus((across.facing(x), y, y + height), (up.facing(y), x, x + width))
        cost = plain + tied_cost(ties, border, around, count)
        if (cost, plain, x, y) < best:
            best, choice = (cost, plain, x, y), ties
    if choice is not None:
        _, _, x, y = best
        cluster.hang(piece, Cell(x, y, x + width, y + height), choice)
    return best[0]


def _rank_places(cluster: Cluster, across: _Starts, up: _Starts) -> list[_Place]:
    """The free places of a piece, the least cost first that each may have.

    It would have that if the piece touched others all around, each of them and in line, and if
    there were no mistakes.
    """
    width, height = across.length, up.length
    area = float(width) * height
    scale = Scale(cluster.task, cluster.area + area, cluster.square + area * area)
    wide, high = scale.goals or (None, None)
    places = _list_places(across, up)
    lies = across.lies({x for x, _ in places}, cluster.across, area, scale, wide)
    lies_up = up.lies({y for _, y in places}, cluster.up, area, scale, high)
    shared, joints, lined, mistakes = cluster.ties
    count = len(cluster.cells)
    alone = tied_cost(Ties(0, joints + count, lined + count, mistakes), 0, 1, count + 1)
    border = OUTLINE * (cluster.border - shared - width - height)
    ranked = []
    for x, y in places:
        lie, lie_up = lies[x], lies_up[y]
        plain, around = scale.cost(lie, lie_up), lie.length + lie_up.length
        ranked.append(_Place(plain + alone + border / around, plain, x, y, around))
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
    touched: dict[int, list[Cell]] = {}
    for cell in cells:
        touched.setdefault(cell[2], []).append(cell)
        touched.setdefault(cell[0] - width, []).append(cell)
    lined = sorted({y for _, y0, _, y1 in cells for y in (y0, y1 - height)})
    for x, sides in touched.items():
        end = x + width
        taken = [(y0 - height, y1) for x0, y0, x1, y1 in cells if x0 < end and x1 > x]
        for _, low, _, high in sides:
            least, most = _span(low, high, height, starts.gap)
            near = [span for span in taken if span[0] <= most and span[1] >= least]
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
