"""Tables drawn with lines and words; a long one is drawn part by part, each under the same heading."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from enum import Enum

from templater.drawing import Anchor, Item, Line, Words
from templater.geometry import Box, Point
from templater.lettering import ASCENT, DESCENT, LINE_PITCH, part_width, shorten, text_width, wrap
from templater.scene.lines import MEDIUM, SMALL, THIN
from templater.scene.marks import draw_box

PADDING = 1.2
"""Clear space between a cell's words and its lines, mm."""

NARROWEST = 14.0
"""No column is made to give way below this width, mm."""

MOST_LINES = 10
"""A wrapped cell ends with an ellipsis after so many lines."""

TICK_BOX = 4.0
"""The side of a square to tick, mm."""


_NAME_LINES = 2.5  # a name breaks between words: its width in three lines with some to spare
_NAME_SHARE = 0.3
_HEADING = 3  # lines of a heading that are not too many
_STEP = 1.0
_SLACK = 0.1  # lines are broken with no-break spaces, which are a trace wider than plain ones


class Fit(Enum):
    """What a column does where the table is wider than its place."""

    WHOLE = "never narrower than its longest cell"
    WRAPPED = "goes on in the cell's next line"
    NAMED = "goes on in three lines or, where there is no room, more; is never cut"


@dataclass(frozen=True, slots=True)
class Column:
    """One column: its heading, how its cells stand, and its width with padding.

    ``fit_columns`` sets the width. A ``to_tick`` column shows an empty square in each row.
    """

    heading: str
    fit: Fit = Fit.WHOLE
    anchor: Anchor = Anchor.START
    to_tick: bool = False
    width_mm: float = 0.0


@dataclass(frozen=True, slots=True)
class TablePart:
    """As much of a table as fits one place; draw on from ``next_row`` elsewhere until all is drawn.

    ``rows_drawn`` is 0, and nothing is drawn, where not even the heading and one row fit.
    """

    items: tuple[Item, ...]
    rows_drawn: int
    next_row: int
    bottom_y: float


def table_width(columns: Sequence[Column]) -> float:
    """How wide the table is drawn, mm."""
    return sum(column.width_mm for column in columns)


def fit_columns(
    columns: Sequence[Column],
    rows: Sequence[Sequence[str]],
    width_mm: float,
    *,
    height_mm: float = SMALL,
) -> tuple[Column, ...]:
    """The columns with their widths for all rows, no wider in sum than asked where that can be.

    Columns that wrap give way, the widest first; a table of whole columns may stay wider
    (``table_width`` tells).
    """
    widths = [_natural_width(index, column, rows, height_mm) for index, column in enumerate(columns)]
    if sum(widths) > width_mm:
        yielding = [index for index, column in enumerate(columns) if column.fit is not Fit.WHOLE]
        rest = width_mm - sum(width for index, width in enumerate(widths) if index not in yielding)
        least = _least_widths(columns, rows, width_mm, height_mm, rest)
        level = _find_level([(least[index], widths[index]) for index in yielding], rest)
        for index in yielding:
            widths[index] = min(widths[index], max(level, least[index]))
    _ease_headings(columns, widths, width_mm - sum(widths), height_mm)
    return tuple(replace(column, width_mm=width) for column, width in zip(columns, widths, strict=True))


def _find_level(ranges: Sequence[tuple[float, float]], rest_mm: float) -> float:
    """The width that columns share alike, each within its least and its most, so that they fill a rest.

    What one cannot give way is taken from all others, not from those that come last.
    """
    for level in sorted({end for ends in ranges for end in ends}, reverse=True):
        taken = sum(min(most, max(level, least)) for least, most in ranges)
        if taken <= rest_mm:
            sharing = sum(least <= level < most for least, most in ranges)
            return level + (rest_mm - taken) / sharing if sharing else level
    return 0.0


def _natural_width(index: int, column: Column, rows: Sequence[Sequence[str]], height_mm: float) -> float:
    """The width that shows every cell on its own lines, and no word of the heading broken."""
    texts = {line for row in rows for line in row[index].split("\n")} if not column.to_tick else set()
    words = [text_width(text, height_mm) for text in texts]
    heading = [text_width(word, height_mm, bold=True) for word in column.heading.split(" ")]
    return max([*words, *heading, TICK_BOX]) + 2 * PADDING + _SLACK


def _ease_headings(
    columns: Sequence[Column], widths: list[float], spare_mm: float, height_mm: float
) -> None:
    """Give the columns with the tallest headings what the table has to spare, up to three lines."""
    for index, column in enumerate(columns):
        while spare_mm >= _STEP and _count_heading_lines(column, widths[index], height_mm) > _HEADING:
            widths[index] += _STEP
            spare_mm -= _STEP


def _count_heading_lines(column: Column, width_mm: float, height_mm: float) -> int:
    return len(_heading_lines(replace(column, width_mm=width_mm), height_mm))


def _least_widths(
    columns: Sequence[Column],
    rows: Sequence[Sequence[str]],
    table_mm: float,
    height_mm: float,
    rest_mm: float,
) -> dict[int, float]:
    """How far each column gives way: no word is broken, if the rest of the table has room for that."""
    least = {}
    whole = {}
    for index, column in enumerate(columns):
        cells = {row[index] for row in rows}
        if column.fit is Fit.NAMED:
            least[index] = whole[index] = _name_width(cells, height_mm, table_mm)
        elif column.fit is Fit.WRAPPED:
            least[index] = NARROWEST
            whole[index] = max(NARROWEST, _widest_part(column.heading, cells, height_mm))
    return whole if sum(whole.values()) <= rest_mm else least


def _widest_part(heading: str, cells: Iterable[str], height_mm: float) -> float:
    """The width at which no word of a column is broken but at its hyphens."""
    lines = {line for cell in cells for line in cell.split("\n")}
    parts = [part_width(line, height_mm) for line in lines]
    return max([*parts, part_width(heading, height_mm, bold=True)]) + 2 * PADDING + _SLACK


def _name_width(names: Iterable[str], height_mm: float, table_mm: float) -> float:
    """The least width for names: no word broken and three lines, within a share of the table."""
    lines = [text_width(name, height_mm) / _NAME_LINES for name in names]
    words = [text_width(word, height_mm) for name in names for word in name.split()]
    wanted = max([0.0, *lines, *words]) + 2 * PADDING + _SLACK
    return max(NARROWEST, min(wanted, _NAME_SHARE * table_mm))


def leave_out_empty(
    columns: Sequence[Column], rows: Sequence[Sequence[str]]
) -> tuple[tuple[Column, ...], tuple[tuple[str, ...], ...]]:
    """The table without the columns that have nothing in any row."""
    kept = [
        index
        for index, column in enumerate(columns)
        if column.to_tick or any(row[index] for row in rows)
    ]
    return tuple(columns[i] for i in kept), tuple(tuple(row[i] for i in kept) for row in rows)


def draw_table(
    columns: Sequence[Column],
    rows: Sequence[Sequence[str]],
    box: Box,
    *,
    start: int = 0,
    height_mm: float = SMALL,
    row_mm: float = 0.0,
) -> TablePart:
    """The rows from ``start`` on that fit the box, from its top-left, under the heading.

    ``row_mm`` is the least height of a row. A line break in a cell is kept.
    """
    pen = _Ruling(columns, Point(box.x0, box.y1), height_mm, row_mm)
    pen.add_row([_heading_lines(column, height_mm) for column in columns], bold=True)
    drawn = 0
    for row in rows[start:]:
        lines = [_cell_lines(cell, column, height_mm) for cell, column in zip(row, columns, strict=True)]
        if pen.bottom - pen.row_height(lines) < box.y0 - 1e-6:
            break
        pen.add_row(lines)
        drawn += 1
    if not drawn:
        return TablePart((), 0, start, box.y1)
    return TablePart((*pen.items, *pen.uprights()), drawn, start + drawn, pen.bottom)


def _heading_lines(column: Column, height_mm: float) -> list[str]:
    return wrap(column.heading, height_mm, column.width_mm - 2 * PADDING, bold=True)


def _cell_lines(cell: str, column: Column, height_mm: float) -> list[str]:
    """The cell's words, line by line, none wider than the column."""
    room = column.width_mm - 2 * PADDING
    if column.to_tick or not cell:
        return []
    if column.fit not in (Fit.WRAPPED, Fit.NAMED):
        return [shorten(line, height_mm, room) for line in cell.split("\n")]
    lines = [part for line in cell.split("\n") for part in wrap(line, height_mm, room)]
    if len(lines) <= MOST_LINES or column.fit is Fit.NAMED:
        return lines
    return [*lines[: MOST_LINES - 1], shorten(f"{lines[MOST_LINES - 1]}…", height_mm, room)]


class _Ruling:
    """A table as it grows downward from its top-left corner."""

    def __init__(
        self, columns: Sequence[Column], top_left: Point, height_mm: float, row_mm: float
    ) -> None:
        self.items: list[Item] = []
        self.bottom = top_left.y
        self._top, self._height, self._row = top_left.y, height_mm, row_mm
        self._columns = columns
        self._edges = [top_left.x]
        for column in columns:
            self._edges.append(self._edges[-1] + column.width_mm)
        self._rule(MEDIUM)

    def row_height(self, lines: Sequence[Sequence[str]]) -> float:
        """The height that the row's cells need, mm."""
        most = max([1, *(len(cell) for cell in lines)])
        ink = ((most - 1) * LINE_PITCH + ASCENT + DESCENT) * self._height + PADDING
        ticks = TICK_BOX + PADDING if any(column.to_tick for column in self._columns) else 0.0
        return max(ink, ticks, self._row)

    def add_row(self, lines: Sequence[Sequence[str]], *, bold: bool = False) -> None:
        """Draw one row and the line under it."""
        height = self.row_height(lines)
        middle = self.bottom - height / 2
        for index, cell in enumerate(lines):
            self._add_cell(index, cell, middle, bold)
        self.bottom -= height
        self._rule(MEDIUM if bold else THIN)

    def uprights(self) -> list[Item]:
        """The lines between the columns, from the top to where the table ends now."""
        return [Line(Point(x, self._top), Point(x, self.bottom), THIN) for x in self._edges]

    def _add_cell(self, index: int, cell: Sequence[str], middle: float, bold: bool) -> None:
        """A cell's words about the row's middle, or its square to tick."""
        left, right, column = self._edges[index], self._edges[index + 1], self._columns[index]
        x = {
            Anchor.START: left + PADDING,
            Anchor.MIDDLE: (left + right) / 2,
            Anchor.END: right - PADDING,
        }
        if column.to_tick and not bold:
            square = Box((left + right) / 2, middle, (left + right) / 2, middle).grown(TICK_BOX / 2)
            self.items.append(draw_box(square, THIN))
        pitch = LINE_PITCH * self._height
        baseline = middle + (len(cell) - 1) * pitch / 2 - (ASCENT - DESCENT) * self._height / 2
        for number, line in enumerate(cell):
            at = Point(x[column.anchor], baseline - number * pitch)
            self.items.append(Words(at, line, self._height, column.anchor, bold))

    def _rule(self, width_mm: float) -> None:
        ends = Point(self._edges[0], self.bottom), Point(self._edges[-1], self.bottom)
        self.items.append(Line(*ends, width_mm))
