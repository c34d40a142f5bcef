"""Text flow: passages and tables are placed down columns and carried on to new pages."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import accumulate
from typing import TypeAlias

from templater.drawing import Item
from templater.geometry import Box
from templater.scene.lines import LARGE, SMALL
from templater.scene.model import Form, PageDrawing
from templater.scene.passages import Passage, draw_heading, draw_paragraph, indent_passage, move_items
from templater.scene.tables import Column, TablePart, draw_table

GUTTER = 40.0
"""The strip at the left of a wide column in which pictures and headings stand, mm."""

WIDE = 165.0
"""From this width on a column has the gutter for headings, mm."""

COLUMN_GAP = 10.0
WIDEST_COLUMN = 190.0
NARROWEST_COLUMN = 120.0


@dataclass(frozen=True, slots=True)
class Listing:
    """A table that may run over columns and pages, its heading repeated; ``columns`` have widths.

    ``row_mm`` is the least height of a row. ``groups`` are how many rows each belong together, and
    are parted only where no column is long enough for them.
    """

    columns: tuple[Column, ...]
    rows: tuple[tuple[str, ...], ...]
    row_mm: float = 0.0
    indent_mm: float = 0.0
    after_mm: float = 4.0
    groups: tuple[int, ...] = ()


Part: TypeAlias = Passage | Listing

_HEADING_MM = 10.0
"""What the heading of a section takes."""

_NEARLY_EMPTY = 0.4
_FEET = (1.0, 0.8, 0.6, 0.4, 0.2)
"""How much is left free at the foot of a page, as parts of what would fill all pages alike."""


def text_area(form: Form) -> Box:
    """Where reading matter stands: the form's inner area with some air round it, mm."""
    inner = form.inner
    side = 5.0 if inner.width >= NARROWEST_COLUMN else 1.0
    return Box(inner.x0 + side, inner.y0 + 2.0, inner.x1 - side, inner.y1 - 2.0)


def text_columns(form: Form) -> tuple[Box, ...]:
    """The columns of a page, left to right: one on letter paper, more on larger sheets."""
    area = text_area(form)
    count = max(1, int((area.width + COLUMN_GAP) // (NARROWEST_COLUMN + COLUMN_GAP)))
    width = min(WIDEST_COLUMN, (area.width - (count - 1) * COLUMN_GAP) / count)
    lefts = [area.x0 + number * (width + COLUMN_GAP) for number in range(count)]
    return tuple(Box(left, area.y0, left + width, area.y1) for left in lefts)


def column_width(form: Form) -> float:
    """How wide one column of a page is, mm."""
    return text_columns(form)[0].width


def draw_section(heading: str, parts: Sequence[Part], column_mm: float) -> list[Part]:
    """A heading with its matter: in a wide column the heading stands in the gutter beside it."""
    first = max(parts[0].height_mm, parts[0].needs_mm) if isinstance(parts[0], Passage) else 0.0
    if column_mm < WIDE:
        above = draw_heading(heading, column_mm)
        return [replace(above, needs_mm=max(above.needs_mm, above.height_mm + 1.5 + first)), *parts]
    parts = [*parts[:-1], replace(parts[-1], after_mm=4.5)]
    title = draw_heading(heading, GUTTER - 4.0, before_mm=0.0)
    beside = replace(title, height_mm=0.0, after_mm=0.0, needs_mm=max(title.needs_mm, first))
    return [beside, *(_indented(part) for part in parts)]


def section_width(column_mm: float) -> float:
    """How wide the matter of a section is in a column, mm."""
    return column_mm if column_mm < WIDE else column_mm - GUTTER


def _indented(part: Part) -> Part:
    if isinstance(part, Passage):
        return indent_passage(part, GUTTER)
    return replace(part, indent_mm=part.indent_mm + GUTTER)


def hold_together(passage: Passage, listing: Listing, form: Form, later_head: Passage) -> Passage:
    """The passage above a table, to start only where all of the table fits under it.

    It may start anywhere above a table for which no column of a page is long enough.
    """
    heads = later_head.height_mm + later_head.after_mm + _HEADING_MM
    above = passage.height_mm + passage.after_mm
    space = Box(0.0, heads + above - text_area(form).height, 0.0, 0.0)
    table = draw_table(listing.columns, listing.rows, space, height_mm=SMALL, row_mm=listing.row_mm)
    if table.next_row < len(listing.rows):
        return passage
    return replace(passage, needs_mm=above - table.bottom_y)


def flow(
    parts: Iterable[Part],
    form: Form,
    *,
    title: str,
    first_head: Passage,
    later_head: Passage,
    is_spread: bool = True,
) -> tuple[PageDrawing, ...]:
    """The parts on as many pages as they need; a head runs across the top of each page.

    Where the last page would be nearly empty all pages are filled alike, unless they shall not be
    spread.
    """
    matter = tuple(parts)
    run = _fill(matter, form, (first_head, later_head))
    if is_spread and len(run.pages) > 1 and run.share < _NEARLY_EMPTY:
        even_mm = text_area(form).height * (1 - run.share) / len(run.pages)
        tries = (_fill(matter, form, (first_head, later_head), even_mm * part) for part in _FEET)
        run = next((one for one in tries if len(one.pages) == len(run.pages)), run)
    return tuple(PageDrawing(title, form.size, tuple(items)) for items in run.pages)


def _fill(
    parts: Sequence[Part], form: Form, heads: tuple[Passage, Passage], foot_mm: float = 0.0
) -> _Run:
    """The parts on pages that have so much left free at their foot."""
    run = _Run(form, heads, foot_mm)
    for part in parts:
        if isinstance(part, Passage):
            run.add_passage(part)
        else:
            run.add_listing(part)
    return run


class _Run:
    """Pages as they fill: the open page, its columns still to come, and how far down we are."""

    def __init__(self, form: Form, heads: tuple[Passage, Passage], foot_mm: float) -> None:
        self.pages: list[list[Item]] = []
        self._form, self._later_head, self._foot_mm = form, heads[1], foot_mm
        self._waiting: list[Box] = []
        self._turn_page(heads[0])

    @property
    def share(self) -> float:
        """How much of the open page is filled, from 0 to 1."""
        column = self._column.height
        free = self._room + column * len(self._waiting)
        return 1 - free / (column * len(text_columns(self._form)))

    def add_passage(self, passage: Passage) -> None:
        """Place a passage here, or at the top of the next column if it does not fit."""
        if max(passage.height_mm, passage.needs_mm) > self._room + 1e-6 and not self._is_fresh:
            self._next_column()
        self.pages[-1] += move_items(passage.items, self._column.x0, self._y)
        self._y -= passage.height_mm + passage.after_mm

    def add_listing(self, listing: Listing) -> None:
        """Place the rows that fit here, the others in the columns that follow."""
        row, ends = 0, [*accumulate(listing.groups)]
        while row < len(listing.rows):
            part = self._draw_groups(listing, row, ends)
            if not part.rows_drawn and not self._is_fresh:
                self._next_column()
                continue
            if not part.rows_drawn:  # a column shorter than one row: better past its foot than lost
                part = self._draw_rows(replace(listing, rows=listing.rows[: row + 1]), row, -1e6)
            self.pages[-1] += part.items
            self._y = part.bottom_y - listing.after_mm
            row = part.next_row
            if row < len(listing.rows):
                self._next_column()

    def _draw_groups(self, listing: Listing, row: int, ends: Sequence[int]) -> TablePart:
        """The rows that fit here, less those of a group that would go on elsewhere but need not.

        ``ends`` are the row after each group.
        """
        part = self._draw_rows(listing, row, self._column.y0)
        group = bisect_right(ends, part.next_row)
        start = ends[group - 1] if group else 0
        if group == len(ends) or start < row or start == part.next_row or self._is_at_top(row, start):
            return part
        whole = replace(listing, rows=listing.rows[: ends[group]])
        if self._draw_rows(whole, start, self._y - self._column.height).next_row < ends[group]:
            return part
        return self._draw_rows(replace(listing, rows=listing.rows[:start]), row, self._column.y0)

    def _is_at_top(self, row: int, start: int) -> bool:
        """Whether a group starts at the top of a column, so that no other has more room for it."""
        return row == start and self._is_fresh

    def _draw_rows(self, listing: Listing, row: int, bottom: float) -> TablePart:
        left = self._column.x0 + listing.indent_mm
        box = Box(left, bottom, self._column.x1, self._y)
        return draw_table(
            listing.columns, listing.rows, box, start=row, height_mm=SMALL, row_mm=listing.row_mm
        )

    @property
    def _room(self) -> float:
        return self._y - self._column.y0

    @property
    def _is_fresh(self) -> bool:
        return self._y == self._column.y1

    def _next_column(self) -> None:
        if self._waiting:
            self._open_column()
        else:
            self._turn_page(self._later_head)

    def _open_column(self) -> None:
        self._column = self._waiting.pop(0)
        self._y = self._column.y1

    def _turn_page(self, head: Passage) -> None:
        area = text_area(self._form)
        self.pages.append(list(move_items(head.items, area.x0, area.y1)))
        top = area.y1 - head.height_mm - head.after_mm
        self._waiting = [
            column._replace(y0=column.y0 + self._foot_mm, y1=top) for column in text_columns(self._form)
        ]
        self._open_column()


def draw_page_heads(title: str, form: Form) -> tuple[Passage, Passage]:
    """The head of the first page of a chapter and of those that continue it."""
    width = text_area(form).width
    first, later = (
        draw_paragraph(text, width, height_mm=LARGE, bold=True, after_mm=4.0)
        for text in (title, f"{title}, continued")
    )
    return first, later
