"""Searches for a good cluster: builds several, then takes pieces down and hangs them better."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import accumulate
from math import inf, log
from random import Random

from templater.placement.cluster_score import FACING, Cell, Cluster, Sums, Task, is_joined, total_cost

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
        width = (sum(task.areas) * 1.1 * proportion * across / up) ** 0.5
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
    for number in range(rounds):
        heat = HEAT * (1 - number / rounds) ** 2
        taken = _pick(task, cells, chances)
        limit = cost - heat * log(1 - chances.random())
        cluster = _without(task, cells, taken)
        new_cost = inf
        for piece in taken:
            new_cost = hang_best(cluster, piece)
        if new_cost < limit and is_joined(task, cluster.cells.values()):
            cost, cells = new_cost, tuple(cluster.cells[piece] for piece in range(len(cells)))
            best = min(best, (cost, cells))
    return best


def _without(task: Task, cells: Sequence[Cell], taken: Sequence[int]) -> Cluster:
    """The cluster that is left when pieces are taken down."""
    cluster = Cluster(task)
    for piece, cell in enumerate(cells):
        if piece not in taken:
            cluster.hang(piece, cell, cluster.ties_of(cell))
    return cluster


def _pick(task: Task, cells: Sequence[Cell], chances: Random) -> list[int]:
    """Pieces to take down, in the order in which to hang them: some near one another, or any."""
    count = min(2 + int(chances.random() * (MOST_TAKEN - 1)), len(cells))
    one = cells[int(chances.random() * len(cells))]
    spread = 3e11 if chances.random() < 0.5 else 1e13
    order = sorted(
        range(len(cells)), key=lambda piece: _distance(one, cells[piece]) + spread * chances.random()
    )
    return sorted(order[:count], key=lambda piece: -task.areas[piece] * (0.6 + 0.8 * chances.random()))


def _distance(one: Cell, other: Cell) -> int:
    """How far two cells are apart, the larger of across and up; negative where they overlap."""
    return max(one.x0 - other.x1, other.x0 - one.x1, one.y0 - other.y1, other.y0 - one.y1)


def hang_best(cluster: Cluster, piece: int) -> float:
    """Hang a piece at its best place; returns the objective."""
    best, choice = inf, None
    for plain, cell, box, sums in _rank_places(cluster, piece):
        if plain >= best:
            break
        ties = cluster.ties_of(cell)
        cost = plain + cluster.tied_cost(box, sums, ties)
        if cost < best:
            best, choice = cost, (cell, ties)
    if choice is not None:
        cluster.hang(piece, *choice)
    return best


def _rank_places(cluster: Cluster, piece: int) -> list[tuple[float, Cell, Cell, Sums]]:
    """The free places of a piece, the least plain cost first: cost, cell, the whole and the sums."""
    width, height = cluster.task.widths[piece], cluster.task.heights[piece]
    ranked = []
    for x, y in _places(cluster, width, height):
        cell = Cell(x, y, x + width, y + height)
        box, sums = cluster.box_with(cell), cluster.sums_with(cell)
        ranked.append((cluster.plain_cost(box, sums), cell, box, sums))
    ranked.sort()
    return ranked


def _places(cluster: Cluster, width: int, height: int) -> set[tuple[int, int]]:
    """Where a cell of this size is free and touches another."""
    if not cluster.cells:
        return {(0, 0)}
    cells = list(cluster.cells.values())
    gap = cluster.task.gap
    turned = [Cell(y0, x0, y1, x1) for x0, y0, x1, y1 in cells]
    found = set(_beside(cells, width, height, gap))
    found.update((x, y) for y, x in _beside(turned, height, width, gap))
    return found


def _beside(cells: Sequence[Cell], width: int, height: int, gap: int) -> Iterator[tuple[int, int]]:
    """Free places to the left or right of some cell, lined up with some other or touching it."""
    touched: dict[int, list[Cell]] = {}
    for cell in cells:
        touched.setdefault(cell[2], []).append(cell)
        touched.setdefault(cell[0] - width, []).append(cell)
    lined = {y for _, y0, _, y1 in cells for y in (y0, y1 - height)}
    for x, sides in touched.items():
        end = x + width
        taken = [(y0 - height, y1) for x0, y0, x1, y1 in cells if x0 < end and x1 > x]
        ys = lined.union(*taken)
        ys.update((y0 + y1 - height) // 2 for _, y0, _, y1 in sides)
        spans = [_span(y0, y1, height, gap) for _, y0, _, y1 in sides]
        for y in ys:
            for low, high in taken:
                if low < y < high:
                    break
            else:
                for least, most in spans:
                    if least <= y <= most:
                        yield x, y
                        break


def _span(low: int, high: int, height: int, gap: int) -> tuple[float, float]:
    """From where to where a cell may stand to share enough of the edge from ``low`` to ``high``."""
    shared = gap + min(FACING, (min(height, high - low) - gap) / 3)
    return low - height + shared, high - shared
