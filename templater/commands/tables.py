"""Tables on the terminal."""

from __future__ import annotations

import sys
from collections.abc import Iterable
from typing import IO, Any, cast

from rich import box
from rich.console import Console
from rich.table import Table

from templater.commands.telling import set_apart
from templater.reading_order import ReadingOrder

_WIDTH_IN_FILES = 120
"""Columns of a report that goes to a file or a pipe, where no terminal says how wide it is."""


def open_console(names: Iterable[str]) -> Console:
    """A console that writes on stdout; ``names`` are those of the layout that may stand there."""
    width = None if sys.stdout.isatty() else _WIDTH_IN_FILES
    return Console(
        highlight=False, width=width, file=cast("IO[str]", _NamesSetApart(ReadingOrder(names)))
    )


class _NamesSetApart:
    """Standard output, on which names move no figure; rich lays out its tables before it writes."""

    def __init__(self, order: ReadingOrder) -> None:
        self._order = order

    def write(self, text: str) -> int:
        """Write what was laid out."""
        return sys.stdout.write(set_apart(text, self._order))

    def __getattr__(self, name: str) -> Any:
        return getattr(sys.stdout, name)


def make_table(*columns: str) -> Table:
    """A table with headings, whose cells go on below where they are too long."""
    table = Table(box=box.SIMPLE_HEAD)
    for column in columns:
        table.add_column(column, overflow="fold")
    return table
