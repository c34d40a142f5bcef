"""Lists the ways in which so many pieces may be composed, and tells how wide each comes out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from templater.geometry import Size
from templater.layout.model import Arrangement, Cells, Group, OpenChoice

LEAST_CLUSTER = 3
"""Two pieces hang side by side or one above the other; a cluster is of more."""

CLUSTER_PROPORTION = 1.5
"""Width over height that a cluster is expected to have: our own choice."""


@dataclass(frozen=True, slots=True)
class Way:
    """A composition without its pieces and its gap."""

    arrange: Arrangement
    columns: int | None = None
    cells: Cells = Cells.EQUAL

    def settle(self, group: Group, members: Sequence[str], gap_mm: float) -> Group:
        """The group composed so, with nothing left open."""
        return replace(
            group,
            members=tuple(members),
            gap_mm=gap_mm,
            arrange=self.arrange,
            columns=self.columns,
            cells=self.cells,
            open_choice=None,
        )

    def estimate_width(self, sizes: Sequence[Size]) -> tuple[float, int]:
        """How wide pieces come out in all (mm), and how many gaps come on top of that.

        Exact for rows, columns, grids and ledges; a cluster's follows from its area.
        """
        match self.arrange:
            case Arrangement.COLUMN:
                return max(size.width for size in sizes), 0
            case Arrangement.GRID:
                return self._estimate_grid(sizes)
            case Arrangement.CLUSTER:
                area = sum(size.width * size.height for size in sizes)
                across = (len(sizes) * CLUSTER_PROPORTION) ** 0.5
                return float((area * CLUSTER_PROPORTION) ** 0.5), round(across) - 1
            case _:
                return sum(size.width for size in sizes), len(sizes) - 1

    def _estimate_grid(self, sizes: Sequence[Size]) -> tuple[float, int]:
        """Columns as wide as their widest piece, or all as the widest of all."""
        columns = min(self.columns or len(sizes), len(sizes))
        widest = [max(size.width for size in sizes[first::columns]) for first in range(columns)]
        width = max(widest) * columns if self.cells is Cells.EQUAL else sum(widest)
        return width, columns - 1


def list_ways(group: Group, count: int) -> tuple[Way, ...]:
    """The ways for so many pieces, in the order in which equals are preferred.

    Of an open arrangement: row, grids of whole rows (two and more of both; equal cells, or true
    gaps), cluster, column. An arrangement that the group asks for itself is the only way; but there
    is none for a number that is open and does not become it: a grid whose rows are not whole, a
    cluster of one or two.
    """
    if group.open_choice is None or not group.open_choice.arrange:
        way = Way(group.arrange, group.columns, group.cells)
        return (way,) if _becomes(group, group.open_choice, count) else ()
    if count == 1:
        return (Way(Arrangement.ROW),)
    columns = [number for number in range(2, count // 2 + 1) if count % number == 0]
    grids = (Way(Arrangement.GRID, number, cells) for number in columns for cells in Cells)
    clusters = (Way(Arrangement.CLUSTER),) if count >= LEAST_CLUSTER else ()
    return (Way(Arrangement.ROW), *grids, *clusters, Way(Arrangement.COLUMN))


def _becomes(group: Group, choice: OpenChoice | None, count: int) -> bool:
    """Whether an open number of pieces suits the arrangement, as far as the pool allows."""
    if choice is None or choice.pool is None or choice.count is not None:
        return True
    if group.arrange is Arrangement.GRID and group.columns and len(choice.pool) >= group.columns:
        return count % group.columns == 0
    is_cluster = group.arrange is Arrangement.CLUSTER and len(choice.pool) >= LEAST_CLUSTER
    return count >= LEAST_CLUSTER or not is_cluster
