"""What ``arrange`` shows: the proposals for each open group."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from templater.commands.tables import TextTable, open_console
from templater.search.model import Settlement
from templater.search.wording import list_figures, name_way


def print_proposals(settlements: Sequence[Settlement], names: Iterable[str]) -> None:
    """Print the ways to hang each open group on stdout, side by side, and what would be needed.

    ``names`` are all that the layout gives.
    """
    console = open_console(names)
    for settlement in settlements:
        console.print(settlement.name, style="bold", markup=False)
        console.print(_proposals(settlement))
        if settlement.advice:
            console.print(f"{settlement.advice}.\n", markup=False)


def _proposals(settlement: Settlement) -> TextTable:
    """A column for each way: what it is called, its pieces in order, its figures."""
    ways = settlement.proposals
    table = TextTable("", *(f"{number}  {name_way(way)}" for number, way in enumerate(ways, 1)))
    rows = {"pieces": ["; ".join(way.group.members) for way in ways]}
    for way in ways:
        for name, figure in list_figures(way).items():
            rows.setdefault(name, []).append(figure)
    for name, cells in rows.items():
        table.add_row(name, *cells)
    return table
