"""Wide tables with headings, one under the other, over as many pages as they need."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from templater.drawing import Item
from templater.geometry import Box
from templater.lettering import ASCENT, DESCENT
from templater.scene.lines import SMALL
from templater.scene.model import Form
from templater.scene.passages import (
    Passage,
    draw_heading,
    draw_paragraph,
    move_items,
    stack_passages,
)
from templater.scene.tables import (
    PADDING,
    Column,
    Fit,
    draw_table,
    fit_columns,
    leave_out_empty,
    table_width,
)

LEAST_ROW = (ASCENT + DESCENT) * SMALL + PADDING
"""The height of a row of one line, mm."""

NARROW = 150.0
"""On paper narrower than this what follows a table's first columns stands in one, mm."""

_GUTTER = 8.0
_AFTER = 6.0
_LEAST_START = 35.0


@dataclass(frozen=True, slots=True)
class Chapter:
    """A heading and a table whose columns have widths, then what is said below it."""

    heading: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[str, ...], ...]
    notes: tuple[str, ...] = ()


def fit_chapter(
    heading: str,
    columns: Sequence[Column],
    rows: Sequence[Sequence[str]],
    width_mm: float,
    notes: tuple[str, ...] = (),
) -> Chapter:
    """A chapter whose table fits a width, without the columns that have nothing in any row."""
    kept, cells = leave_out_empty(columns, rows)
    return Chapter(heading, fit_columns(kept, cells, width_mm), cells, notes)


def stack_columns(
    columns: Sequence[Column], rows: Sequence[Sequence[str]], *, kept: int, heading: str
) -> tuple[list[Column], list[tuple[str, ...]]]:
    """The table with all that follows the columns kept in one, its cells one under the other."""
    stacked = [(*row[:kept], "\n".join(cell for cell in row[kept:] if cell)) for row in rows]
    return [*columns[:kept], Column(heading, Fit.WRAPPED)], stacked


class ChapterRun:
    """Pages as they fill; a table goes on beside itself where the paper is wide, else overleaf."""

    def __init__(self, form: Form) -> None:
        self.pages: list[list[Item]] = []
        self._inner = form.inner
        self._y = form.inner.y0
        self._is_fresh = False

    def add_passage(self, passage: Passage) -> None:
        """Place a passage below what stands there, or on a new page."""
        if self._y - passage.height_mm < self._inner.y0:
            self._turn_page()
        self.pages[-1] += move_items(passage.items, self._inner.x0, self._y)
        self._y -= passage.height_mm + _AFTER

    def add_chapter(self, chapter: Chapter) -> None:
        """Place a chapter; its heading is repeated wherever it goes on."""
        row = 0
        if not chapter.rows:
            self.add_passage(draw_heading(chapter.heading, self._inner.width))
            self._y += _AFTER - 1.5
        while row < len(chapter.rows):
            if self._y - self._inner.y0 < _LEAST_START:
                self._turn_page()
            self._is_fresh = self._y == self._inner.y1
            heading = f"{chapter.heading}, continued" if row else chapter.heading
            self.add_passage(draw_heading(heading, self._inner.width))
            self._y += _AFTER - 1.5
            row += self._draw_columns(chapter, row) or self._draw_anyway(chapter, row)
        if chapter.notes:
            self._y += _AFTER - 2.0 if chapter.rows else 0.0
            notes = [draw_paragraph(note, self._inner.width) for note in chapter.notes]
            self.add_passage(stack_passages(notes))

    def _draw_columns(self, chapter: Chapter, start: int) -> int:
        """Draw as many rows as fit from here to the foot of the page; how many that were."""
        inner, top, row = self._inner, self._y, start
        width = table_width(chapter.columns)
        left = inner.x0
        while row < len(chapter.rows) and left + min(width, inner.width) <= inner.x1 + 1e-6:
            part = draw_table(
                chapter.columns, chapter.rows, Box(left, inner.y0, inner.x1, top), start=row
            )
            self.pages[-1] += part.items
            row = part.next_row
            left += width + _GUTTER
            self._y = min(self._y, part.bottom_y - _AFTER)
        return row - start

    def _draw_anyway(self, chapter: Chapter, row: int) -> int:
        """Turn the page, or draw a row too tall for any page past its foot: better than not at all."""
        if not self._is_fresh:
            self._turn_page()
            return 0
        box = Box(self._inner.x0, -1e6, self._inner.x1, self._y)
        part = draw_table(chapter.columns, chapter.rows[: row + 1], box, start=row)
        self.pages[-1] += part.items
        self._turn_page()
        return part.rows_drawn

    def _turn_page(self) -> None:
        self.pages.append([])
        self._y = self._inner.y1
