"""Wide tables with headings, one under the other, over as many pages as they need."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import NamedTuple

from templater.drawing import Item, Words
from templater.geometry import Box
from templater.lettering import ASCENT, DESCENT, words_box
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
_LEAST_BESIDE = 75.0


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


class _Drawn(NamedTuple):
    """Rows drawn under their heading, how many they are, and where they end below and at the right."""

    items: list[Item]
    rows: int
    bottom: float
    right: float


class ChapterRun:
    """Pages as they fill; a table goes on beside itself where the paper is wide, else overleaf.

    A table that would need a new page stands whole beside those before it where there is room.
    """

    def __init__(self, form: Form) -> None:
        self.pages: list[list[Item]] = []
        self._inner = form.inner
        self._y = form.inner.y0
        self._beside: Box | None = None

    def add_passage(self, passage: Passage) -> None:
        """Place a passage below what stands there, or on a new page."""
        if self._y - passage.height_mm < self._inner.y0:
            self._turn_page()
        self.pages[-1] += move_items(passage.items, self._inner.x0, self._y)
        self._y -= passage.height_mm + _AFTER

    def add_chapter(self, chapter: Chapter) -> None:
        """Place a chapter; its heading is repeated wherever it goes on."""
        notes = [draw_paragraph(note, self._inner.width) for note in chapter.notes]
        if not chapter.rows:
            self.add_passage(stack_passages([draw_heading(chapter.heading, self._inner.width), *notes]))
            return
        if not self._add_beside(chapter):
            self._add_rows(chapter)
        if notes:
            self._add_notes(chapter.heading, stack_passages(notes))

    def _add_notes(self, heading: str, notes: Passage) -> None:
        """Place what is said below a table, under its heading again where that is overleaf."""
        self._y += _AFTER - 2.0
        if self._y - notes.height_mm < self._inner.y0:
            notes = stack_passages([draw_heading(f"{heading}, continued", self._inner.width), notes])
        self.add_passage(notes)
        self._beside = None

    def _add_beside(self, chapter: Chapter) -> bool:
        """Draw a chapter that does not fit whole below, but does beside what stands there."""
        place = self._beside
        if place is None or chapter.notes or self._draw(chapter, 0).rows == len(chapter.rows):
            return False
        drawn = _draw_narrower(chapter, place)
        self.pages[-1] += drawn.items
        if drawn.items:
            self._y = min(self._y, drawn.bottom - _AFTER)
            self._beside = place._replace(y1=drawn.bottom - _AFTER)
        return bool(drawn.items)

    def _add_rows(self, chapter: Chapter) -> None:
        """Draw the rows under their heading over as many pages as they need."""
        row = 0
        while row < len(chapter.rows):
            drawn, left = self._draw(chapter, row), len(chapter.rows) - row
            is_short = self._y - self._inner.y0 < _LEAST_START and drawn.rows < left
            is_fresh = self._y == self._inner.y1
            if not self.pages or (not is_fresh and (is_short or not drawn.rows)):
                self._turn_page()
                continue
            if not drawn.rows:  # a row too tall for any page: better past its foot than not at all
                one = replace(chapter, rows=chapter.rows[: row + 1])
                drawn = _draw_rows(one, row, self._inner._replace(y0=-1e6, y1=self._y))
            self.pages[-1] += drawn.items
            beside = Box(drawn.right + _GUTTER, self._inner.y0, self._inner.x1, self._y)
            self._beside = _widen(self._beside, beside)
            self._y = drawn.bottom - _AFTER
            row += drawn.rows

    def _draw(self, chapter: Chapter, row: int) -> _Drawn:
        """As many rows as fit from here to the foot of the page."""
        return _draw_rows(chapter, row, self._inner._replace(y1=self._y))

    def _turn_page(self) -> None:
        self.pages.append([])
        self._y = self._inner.y1
        self._beside = None


def _draw_rows(chapter: Chapter, start: int, box: Box) -> _Drawn:
    """As many rows as fit a box under their heading, in columns beside each other."""
    head = draw_heading(f"{chapter.heading}, continued" if start else chapter.heading, box.width)
    top = box.y1 - head.height_mm - head.after_mm
    items = [*move_items(head.items, box.x0, box.y1)]
    right = max(words_box(item).x1 for item in items if isinstance(item, Words))
    row, bottom, left, width = start, top, box.x0, table_width(chapter.columns)
    while row < len(chapter.rows) and left + min(width, box.width) <= box.x1 + 1e-6:
        place = Box(left, box.y0, box.x1, top)
        part = draw_table(chapter.columns, chapter.rows, place, start=row)
        items += part.items
        row, bottom = part.next_row, min(bottom, part.bottom_y)
        right = max(right, left + width)
        left += width + _GUTTER
    return _Drawn(items if row > start else [], row - start, bottom, right)


def _draw_narrower(chapter: Chapter, box: Box) -> _Drawn:
    """A whole chapter in a narrower box, its columns giving way; nothing where words would be cut."""
    columns = fit_columns(chapter.columns, chapter.rows, box.width)
    drawn = _draw_rows(replace(chapter, columns=columns), 0, box)
    is_cut = any(isinstance(item, Words) and item.text.endswith("…") for item in drawn.items)
    is_whole = drawn.rows == len(chapter.rows) and table_width(columns) <= box.width + 1e-6
    return drawn if is_whole and not is_cut else drawn._replace(items=[], rows=0)


def _widen(above: Box | None, box: Box) -> Box | None:
    """What is free at the right of a table, together with what is free beside those above it."""
    both = box if above is None else Box(max(above.x0, box.x0), box.y0, box.x1, above.y1)
    return next((place for place in (both, box) if place.width >= _LEAST_BESIDE), None)
