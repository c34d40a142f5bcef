"""Tables on the terminal."""

from __future__ import annotations

import sys
from collections.abc import Collection, Iterable, Iterator, Sequence
from itertools import zip_longest
from typing import IO, Any, NamedTuple, cast

from rich import box
from rich.cells import cell_len
from rich.console import Console, ConsoleOptions
from rich.segment import Segment
from rich.style import Style
from rich.table import Column, Table
from rich.text import Text

from templater.commands.telling import set_apart
from templater.reading_order import ReadingOrder

_WIDTH_IN_FILES = 120
"""Columns of a report that goes to a file or a pipe, where no terminal says how wide it is."""

_BESIDE = 2
"""Spaces beside the text of each cell, one at either side."""


def open_console(names: Iterable[str]) -> Console:
    """A console that writes on stdout; ``names`` are those of the layout that may stand there."""
    width = None if sys.stdout.isatty() else _WIDTH_IN_FILES
    return Console(
        highlight=False,
        emoji=False,  # a name with ':bell:' in it is no picture of a bell
        width=width,
        file=cast("IO[str]", _NamesSetApart(ReadingOrder(names))),
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


class _Row(NamedTuple):
    cells: tuple[str, ...]
    is_bold: bool


class TextTable:
    """A table of plain text with headings, whose cells go on below where they are too long.

    Rich prints it, chooses the columns' widths and breaks what is too long; the rows are put together
    here, since a report has thousands and rich takes ten times as long for each.
    """

    def __init__(
        self, *headings: str, to_right: Collection[int] = (), unbroken: Collection[int] = ()
    ) -> None:
        """``to_right``: columns that stand at the right; ``unbroken``: those that never go on below."""
        self.rows: list[_Row] = []
        self._columns = [
            Column(
                Text(heading),
                overflow="fold",
                justify="right" if number in to_right else "left",
                no_wrap=number in unbroken,
            )
            for number, heading in enumerate(headings)
        ]

    def add_row(self, *cells: str, is_bold: bool = False) -> None:
        """Add a row, a cell for each heading."""
        self.rows.append(_Row(cells, is_bold))

    def __rich_console__(self, console: Console, options: ConsoleOptions) -> Iterator[Segment]:
        """What rich prints of the table."""
        lines = box.SIMPLE_HEAD.substitute(options)
        widths = self._find_widths(console, options)
        heads = self._break(console, [str(column.header) for column in self._columns], widths)
        from_below = list(zip_longest(*(reversed(head) for head in heads)))
        yield Segment(f"{lines.get_top(widths)}\n")
        yield from _join(reversed(from_below), widths, lines, is_bold=True)
        yield Segment(f"{lines.get_row(widths, 'head')}\n")
        for row in self.rows:
            cells = self._break(console, row.cells, widths)
            yield from _join(zip_longest(*cells), widths, lines, is_bold=row.is_bold)
        yield Segment(f"{lines.get_bottom(widths)}\n")

    def _find_widths(self, console: Console, options: ConsoleOptions) -> list[int]:
        """How wide rich makes each column, the spaces beside its text included.

        It need measure only what is widest in each.
        """
        table = Table(*(column.copy() for column in self._columns), box=box.ASCII2)
        cells = zip(*(row.cells for row in self.rows), strict=True)
        table.add_row(*(Text(max(column, key=cell_len)) for column in cells))
        top = next(iter(console.render(table, options))).text  # such as '+-----+--------+'
        return [len(side) for side in top[1:-1].split("+")]

    def _break(
        self, console: Console, cells: Iterable[str], widths: Iterable[int]
    ) -> list[Sequence[str]]:
        """The lines of each cell of a row."""
        return [
            _fit(console, cell, column, width - _BESIDE)
            for cell, column, width in zip(cells, self._columns, widths, strict=True)
        ]


def _fit(console: Console, cell: str, column: Column, width: int) -> Sequence[str]:
    """The lines of a cell, each so wide; none where the terminal leaves it no room."""
    if width < 1:
        return []
    if column.justify == "left" and cell.isprintable() and cell_len(cell) <= width:
        return [cell + " " * (width - cell_len(cell))]
    lines = Text(cell).wrap(
        console, width, justify=column.justify, overflow=column.overflow, no_wrap=column.no_wrap
    )
    return [line.plain for line in lines]


def _join(
    rows: Iterable[Iterable[str | None]], widths: Sequence[int], lines: box.Box, *, is_bold: bool
) -> Iterator[Segment]:
    """Lines of cells beside each other, None where a cell has no more."""
    style = Style(bold=True) if is_bold else None
    for texts in rows:
        between = lines.mid_left
        for text, width in zip(texts, widths, strict=True):
            yield Segment(between)
            parts = (" " * width,) if text is None else (" ", text, " ")
            yield from (Segment(part, style) for part in parts)
            between = lines.mid_vertical
        yield Segment(f"{lines.mid_right}\n")
