"""Lists the ways in which so many pieces may be composed, and tells how wide each comes out."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import TypeAlias

from templater.geometry import Size
from templater.layout.model import Align, Arrangement, Cells, Group

Reach: TypeAlias = Callable[[Sequence[Size]], tuple[float, int]]
"""How wide pieces come out without gaps (mm), and how many gaps come on top of that."""

LEAST_CLUSTER = 3
"""Two pieces hang side by side or one above the other; a cluster is of more."""

CLUSTER_PROPORTION = 1.5
"""Width over height of a cluster that has no height to come near: our own choice."""


@dataclass(frozen=True, slots=True)
class Way:
    """A composition without its pieces and its gap."""

    arrange: Arrangement
    columns: int | None = None
    cells: Cells = Cells.EQUAL

    def settle(self, group: Group, members: tuple[str, ...], gap_mm: float) -> Group:
        """The group composed so; an arrangement of its own choice keeps all its other settings."""
        settled = replace(group, members=members, gap_mm=gap_mm, open_choice=None)
        if group.open_choice is None or not group.open_choice.arrange:
            return settled
        return replace(
            settled,
            arrange=self.arrange,
            columns=self.columns,
            cells=self.cells,
            align=_find_align(group.align, self.arrange),
        )

    def reach(self, sizes: Sequence[Size]) -> tuple[float, int]:
        """How wide pieces come out: without gaps (mm), and the number of gaps.

        A cluster's width follows from its area and its proportion, a stair's is not known.
        """
        match self.arrange:
            case Arrangement.COLUMN:
                return max(size.width for size in sizes), 0
            case Arrangement.GRID:
                return _grid_width(sizes, self.columns or len(sizes), self.cells), _columns(self, sizes)
            case Arrangement.CLUSTER:
                area = sum(size.width * size.height for size in sizes)
                return float((area * CLUSTER_PROPORTION) ** 0.5), round(len(sizes) ** 0.5) - 1
            case _:
                return sum(size.width for size in sizes), len(sizes) - 1


def _columns(way: Way, sizes: Sequence[Size]) -> int:
    return min(way.columns or len(sizes), len(sizes)) - 1


def _grid_width(sizes: Sequence[Size], columns: int, cells: Cells) -> float:
    """All columns side by side: as wide as each one's widest piece, or all as the widest of all."""
    widest = [
        max(size.width for size in sizes[column::columns]) for column in range(min(columns, len(sizes)))
    ]
    return max(widest) * len(widest) if cells is Cells.EQUAL else sum(widest)


def _find_align(align: Align, arrange: Arrangement) -> Align:
    """The group's own alignment where the arrangement knows it, else centred."""
    foreign = {Arrangement.ROW: (Align.LEFT, Align.RIGHT), Arrangement.COLUMN: (Align.TOP, Align.BOTTOM)}
    return Align.CENTRE if align in foreign.get(arrange, ()) else align


def list_ways(group: Group, sizes: Sequence[Size]) -> tuple[Way, ...]:
    """The ways for these pieces, in the order in which equals are preferred.

    Open: row, grids of whole rows (two and more of both), cluster, column. A grid of unequal
    pieces comes with true gaps and with equal cells.
    """
    if group.open_choice is None or not group.open_choice.arrange:
        return (Way(group.arrange, group.columns, group.cells),)
    ways = [Way(Arrangement.ROW)]
    if len(sizes) == 1:
        return tuple(ways)
    kinds = [Cells.EQUAL] if len(set(sizes)) == 1 else [Cells.TRUE, Cells.EQUAL]
    columns = [n for n in range(2, len(sizes) // 2 + 1) if len(sizes) % n == 0]
    ways += [Way(Arrangement.GRID, number, cells) for number in columns for cells in kinds]
    if len(sizes) >= LEAST_CLUSTER:
        ways.append(Way(Arrangement.CLUSTER))
    return (*ways, Way(Arrangement.COLUMN))
