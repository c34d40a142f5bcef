"""Searches for a good cluster: builds several, then takes pieces down and hangs them better."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import accumulate
from math import inf, sqrt
from random import Random
from typing import TypeAlias

from templater.placement.cluster_places import hang_best
from templater.placement.cluster_rounding import add_up, find_logarithm
from templater.placement.cluster_score import (
    Cell,
    Cluster,
    Task,
    is_joined,
    total_cost,
)

WORK = 6_000
"""How much is tried: rounds times pieces."""

CHAINS = 2
"""How many of the clusters built first are bettered."""

MOST_TAKEN = 4
"""How many pieces are taken down at once at most, two at least."""

HEAT = 0.02
"""By how much, more or less, a round may spoil the objective at first."""

PROPORTIONS_TRIED = (0.7, 1.0, 1.35, 1.8)
"""Width over height of the clusters built first, against that of the target if there is one."""


_Hung: TypeAlias = tuple[tuple[int, Cell], ...]
_Known: TypeAlias = dict[tuple[_Hung, int], tuple[float, Cell | None]]
"""For pieces hung in an order, and one more: the objective with it, and where it hangs best."""


def search_cluster(task: Task) -> tuple[Cell, ...]:
    """The best cluster found, its cells in the task's order; always the same for the same task."""
    chances = Random(1)
    starts = sorted(_starts(task))[:CHAINS]
    rounds = int(WORK / len(task.widths) / len(starts)) + 1
    return min(_better(task, cost, cells, rounds, chances) for cost, cells in starts)[1]


def _starts(task: Task) -> set[tuple[float, tuple[Cell, ...]]]:
    """Clusters to begin with: shelves of every number, and the largest pieces first from the middle."""
    turned = replace(task, widths=task.heights, heights=task.widths)
    found = []
    for count in range(1, min(len(task.widths), 8) + 1):
        found.append(_shelves(task, count))
        found.append(tuple(Cell(c.y0, c.x0, c.y1, c.x1) for c in _shelves(turned, count)))
    order = sorted(range(len(task.widths)), key=lambda piece: (-task.areas[piece], piece))
    found.extend(_build(replace(task, target=goal), order) for goal in _goals(task))
    return {(total_cost(task, cells), cells) for cells in found}


def _goals(task: Task) -> Iterator[tuple[int, int]]:
    """Targets of several proportions that the pieces would nearly fill."""
    across, up = task.target or (1, 1)
    for proportion in PROPORTIONS_TRIED:
        width = sqrt(add_up(task.areas) * 1.1 * proportion * across / up)
        yield round(width), round(width / proportion / across * up)


def _shelves(task: Task, count: int) -> tuple[Cell, ...]:
    """About so many rows from the bottom up, the tallest pieces first, all standing on their row."""
    order = sorted(range(len(task.widths)), key=lambda piece: (-task.heights[piece], piece))
    reach = accumulate(task.widths[piece] for piece in order)
    rows: dict[int, list[int]] = {}
    for piece, end in zip(order, reach, strict=True):
        rows.setdefault((end - task.widths[piece] // 2) * count // sum(task.widths), []).append(piece)
    cells: dict[int, Cell] = {}
    y = 0
    for row in rows.values():
        x = 0
        for piece in row:
            cells[piece] = Cell(x, y, x + task.widths[piece], y + task.heights[piece])
            x += task.widths[piece]
        y += task.heights[row[0]]
    return tuple(cells[piece] for piece in range(len(order)))


def _build(task: Task, order: Iterable[int]) -> tuple[Cell, ...]:
    """A cluster built piece by piece, each at the best place of its moment."""
    cluster = Cluster(task)
    for piece in order:
        hang_best(cluster, piece)
    return tuple(cluster.cells[piece] for piece in range(len(task.widths)))


def _better(
    task: Task, cost: float, cells: tuple[Cell, ...], rounds: int, chances: Random
) -> tuple[float, tuple[Cell, ...]]:
    """The best cluster met on a walk of so many rounds that turns worse ever more rarely."""
    best = cost, cells
    known: _Known = {}
    for number in range(rounds):
        heat = HEAT * (1 - number / rounds) ** 2
        taken = _pick(task, cells, chances)
        limit = cost - heat * find_logarithm(1 - chances.random())
        new_cost, new_cells = _hang_again(task, cells, taken, known)
        if new_cost < limit and is_joined(task, new_cells):
            cost, cells = new_cost, new_cells
            best = min(best, (cost, cells))
    return best


def _hang_again(
    task: Task, cells: Sequence[Cell], taken: Sequence[int], known: _Known
) -> tuple[float, tuple[Cell, ...]]:
    """The objective and the cells when some pieces are taken down and hung at their best places.

    An infinite objective where one of them finds no place. What earlier rounds found is ``known``.
    """
    hung = tuple((piece, cell) for piece, cell in enumerate(cells) if piece not in taken)
    cluster: Cluster | None = None
    cost = inf
    for piece in taken:
        if (hung, piece) in known:
            cluster = None
        else:
            cluster = cluster or _hang_all(task, hung)
            known[hung, piece] = hang_best(cluster, piece), cluster.cells.get(piece)
        cost, cell = known[hung, piece]
        if cell is None:
            return inf, ()
        hung = (*hung, (piece, cell))
    return cost, tuple(cell for _, cell in sorted(hung))


def _hang_all(task: Task, hung: _Hung) -> Cluster:
    """A cluster of pieces whose places are known, hung in their order."""
    cluster = Cluster(task)
    for piece, cell in hung:
        cluster.hang(piece, cell)
    return cluster


def _pick(task: Task, cells: Sequence[Cell], chances: Random) -> tuple[int, ...]:
    """Pieces to take down, in the order in which to hang them: some near one another, or any."""
    count = min(2 + int(chances.random() * (MOST_TAKEN - 1)), len(cells))
    one = cells[int(chances.random() * len(cells))]
    spread = 3e11 if chances.random() < 0.5 else 1e13
    order = sorted(
        range(len(cells)), key=lambda piece: _distance(one, cells[piece]) + spread * chances.random()
    )
    weights = {piece: task.areas[piece] * (0.6 + 0.8 * chances.random()) for piece in order[:count]}
    return tuple(sorted(weights, key=weights.__getitem__, reverse=True))


def _distance(one: Cell, other: Cell) -> int:
    """How far two cells are apart, the larger of across and up; negative where they overlap."""
    return max(one.x0 - other.x1, other.x0 - one.x1, one.y0 - other.y1, other.y0 - one.y1)
