"""The overview: the wall's elevation to scale with its title block, larger parts of it, its tables."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass

from templater.drawing import Item, Link
from templater.geometry import Box, Point
from templater.lengths import format_length
from templater.lettering import LINE_PITCH
from templater.placement.model import Plan
from templater.printing.error import Errors
from templater.rules.cautions.together import split_findings
from templater.rules.model import Finding
from templater.scene.lines import SMALL
from templater.scene.model import Form, PageDrawing
from templater.scene.overview.caution_table import list_cautions
from templater.scene.overview.chapters import LEAST_ROW, ChapterRun
from templater.scene.overview.elevation import Elevation, Fitting, fit_elevation
from templater.scene.overview.finding_table import list_findings
from templater.scene.overview.hardware_table import list_hardware, list_things_to_buy
from templater.scene.overview.hole_table import list_holes, list_notes
from templater.scene.overview.part_views import choose_parts
from templater.scene.overview.title_block import (
    draw_cautions,
    draw_key,
    draw_scale_line,
    draw_title_block,
)
from templater.scene.overview.wall_tables import list_ceiling, list_furniture, list_obstacles
from templater.scene.passages import Passage, draw_heading, draw_paragraph, move_items
from templater.scene.tables import draw_table, table_width

GAP = 4.0
"""Clear space between the drawing, the title block and the tables, mm."""

TITLE = "Overview"
"""What every page of the overview is called."""

_BLOCK = 98.0
_COLUMN = 78.0
_MOST_FOR_WORDS = 0.45
_PART_HEAD = 3 * LINE_PITCH * SMALL + 2.0
_SMALL = 200.0
"""On paper narrower than this the wall may have the first page to itself, mm."""

_LONG_SCALE = "SCALE 1 1/2 in = 1 ft (1:8)"


def draw_overview(
    plan: Plan,
    findings: Sequence[Finding],
    form: Form,
    *,
    revision: str,
    piece_targets: Mapping[str, str],
    errors: Mapping[str, Errors] | None = None,
) -> tuple[PageDrawing, ...]:
    """The wall on one page, then larger views where pieces are small, then what found no room.

    ``piece_targets`` are the names that the pieces' rectangles lead to, ``errors`` what to expect of
    their holes, both by slug.
    """
    rules, cautions = split_findings(findings)
    places = _arrange_page(plan, form, revision)
    fitting = fit_elevation(plan, [place.room.size for place in places])
    place = places[fitting.room]
    elevation, table = _draw_wall(plan, place.room, fitting, errors)
    scale = fitting.scale.text
    items = (*elevation.items, *table, *place.draw_words(scale))
    pages = [PageDrawing(TITLE, form.size, items, _link(elevation, piece_targets))]
    unnamed = {piece.slug for piece in plan.pieces} - elevation.named
    pages += _draw_parts(plan, fitting, form, piece_targets, unnamed)
    width = form.inner.width
    run = ChapterRun(form)
    for passage in place.draw_later(width, scale):
        run.add_passage(passage)
    for chapter in (
        *([] if table else list_holes(plan, width, errors)),
        *list_cautions(cautions, width),
        *list_hardware(plan, width),
        *list_things_to_buy(plan, width),
        *list_findings(rules, width),
        *list_furniture(plan, width),
        *list_obstacles(plan, width),
        *list_ceiling(plan, width),
        *list_notes(plan, width),
    ):
        run.add_chapter(chapter)
    return (*pages, *(PageDrawing(TITLE, form.size, tuple(page)) for page in run.pages))


@dataclass(frozen=True, slots=True)
class _Place:
    """One way to divide the first page: the elevation's room, the title block, notes beside it.

    Of the notes, so many as there is room for stand on this page; without a ``block`` a line at the
    head of ``notes`` tells the scale, and the rest stands on the next page.
    """

    plan: Plan
    revision: str
    room: Box
    block: Box | None
    notes: Box
    notes_drawn: int

    def draw_words(self, scale: str) -> list[Item]:
        """The title block at the foot of its box and the notes at the head of theirs."""
        if self.block is None:
            line = draw_scale_line(self.plan, self.notes.width, scale)
            return [*move_items(line.items, self.notes.x0, self.notes.y1)]
        block = draw_title_block(self.plan, self.block.width, scale=scale, revision=self.revision)
        items = [*move_items(block.items, self.block.x0, self.block.y0 + block.height_mm)]
        top = self.notes.y1
        for passage in _notes(self.plan, self.notes.width)[: self.notes_drawn]:
            items += move_items(passage.items, self.notes.x0, top)
            top -= passage.height_mm + passage.after_mm
        return items

    def draw_later(self, width: float, scale: str) -> list[Passage]:
        """What found no room, for the next page."""
        notes = _notes(self.plan, width)[self.notes_drawn :]
        if self.block is not None:
            return notes
        narrow = min(_BLOCK, width)
        return [draw_title_block(self.plan, narrow, scale=scale, revision=self.revision), *notes]


def _notes(plan: Plan, width: float) -> list[Passage]:
    return [draw_key(plan, width), draw_cautions(width)]


def _arrange_page(plan: Plan, form: Form, revision: str) -> list[_Place]:
    """The ways to divide the page: a strip along its foot or, on wide paper, a column at its right.

    On small paper the wall may have it alone, if it is then drawn larger.
    """
    inner = form.inner
    strip = _strip(plan, inner, revision)
    column = _column(plan, inner, revision)
    alone = _leave_alone(plan, inner, revision)
    return [place for place in (strip, column, alone) if place]


def _strip(plan: Plan, inner: Box, revision: str) -> _Place:
    """Title block at the lower right, notes to the left of it; on tiny paper the block alone."""
    wide = inner.width >= 2 * _COLUMN
    block_width = min(_BLOCK, inner.width * 0.45) if wide else inner.width
    block = draw_title_block(plan, block_width, scale=_LONG_SCALE, revision=revision).height_mm
    notes_width = max(inner.width - block_width - GAP, 1.0)
    most = max(block, _MOST_FOR_WORDS * inner.height)
    count = _count_fitting(_notes(plan, notes_width), most) if wide else 0
    height = max(block, _height(_notes(plan, notes_width)[:count]) if count else 0.0)
    top = inner.y0 + height
    return _Place(
        plan,
        revision,
        inner._replace(y0=top + GAP),
        Box(inner.x1 - block_width, inner.y0, inner.x1, top),
        Box(inner.x0, inner.y0, inner.x0 + notes_width, top),
        count,
    )


def _column(plan: Plan, inner: Box, revision: str) -> _Place | None:
    """Notes at the upper right over the title block, if there is room enough for both."""
    left = inner.x1 - _COLUMN
    block = draw_title_block(plan, _COLUMN, scale=_LONG_SCALE, revision=revision).height_mm
    count = _count_fitting(_notes(plan, _COLUMN), inner.height - block - GAP)
    if left - GAP < inner.x0 + _COLUMN or not count:
        return None
    room = inner._replace(x1=left - GAP)
    right = inner._replace(x0=left)
    return _Place(plan, revision, room, right, right, count)


def _leave_alone(plan: Plan, inner: Box, revision: str) -> _Place | None:
    """Small paper with a line at its head, all else for the elevation."""
    if inner.width >= _SMALL:
        return None
    head = draw_scale_line(plan, inner.width, _LONG_SCALE).height_mm
    room = inner._replace(y1=inner.y1 - head - GAP)
    return _Place(plan, revision, room, None, inner, 0)


def _height(passages: Sequence[Passage]) -> float:
    return sum(passage.height_mm + passage.after_mm for passage in passages)


def _count_fitting(passages: Sequence[Passage], height: float) -> int:
    """How many of the passages fit one under the other."""
    return sum(_height(passages[: number + 1]) <= height for number in range(len(passages)))


def _draw_wall(
    plan: Plan, room: Box, fitting: Fitting, errors: Mapping[str, Errors] | None
) -> tuple[Elevation, list[Item]]:
    """The elevation and, below or beside it, the table of holes if there is room for all of it."""
    size = fitting.size
    middle = room.x0 + (room.width - size.width) / 2
    below = room._replace(y1=room.y1 - size.height - GAP)
    beside = room._replace(x0=room.x0 + size.width + GAP)
    for place, x in ((below, middle), (beside, room.x0)):
        table = _draw_whole_table(plan, place, errors)
        if table:
            return fitting.draw(plan, Point(x, room.y1)), table
    top = room.y1 - (room.height - size.height) / 2
    return fitting.draw(plan, Point(middle, top)), []


def _draw_whole_table(plan: Plan, box: Box, errors: Mapping[str, Errors] | None) -> list[Item]:
    """The table of holes in a box, or nothing where it would not be whole."""
    rows = sum(max(1, len(piece.marks)) for piece in plan.pieces)
    if rows * LEAST_ROW > box.height or box.width < _COLUMN:
        return []
    chapters = list_holes(plan, box.width, errors)
    head = draw_heading(chapters[0].heading, box.width)
    columns, cells = chapters[0].columns, chapters[0].rows
    left = box.x0 + (box.width - table_width(columns)) / 2
    place = Box(left, box.y0, box.x1, box.y1 - head.height_mm - head.after_mm)
    part = draw_table(columns, cells, place)
    if len(chapters) > 1 or part.rows_drawn < len(cells) or left < box.x0 - 1e-6:
        return []
    return [*move_items(head.items, left, box.y1), *part.items]


def _link(elevation: Elevation, piece_targets: Mapping[str, str]) -> tuple[Link, ...]:
    """From each piece drawn to its first sheet."""
    return tuple(
        Link(box, piece_targets[slug]) for slug, box in elevation.pieces if slug in piece_targets
    )


def _draw_parts(
    plan: Plan,
    whole: Fitting,
    form: Form,
    piece_targets: Mapping[str, str],
    unnamed: Collection[str],
) -> list[PageDrawing]:
    """A page for each part of the wall that is drawn at a larger scale."""
    room = form.inner._replace(y1=form.inner.y1 - _PART_HEAD)
    parts = choose_parts(plan, whole.scale, room.size, unnamed)
    pages: list[PageDrawing] = []
    for number, window in enumerate(parts.windows, start=1):
        fitting = fit_elevation(plan, [room.size], window)
        slack = room.width - fitting.size.width
        elevation = fitting.draw(plan, Point(room.x0 + slack / 2, room.y1))
        heading = f"Part {number} of {len(parts.windows)}. {fitting.scale.text}. "
        heading += _describe_window(plan, window)
        if parts.left_out and number == len(parts.windows):
            heading += (
                f" {parts.left_out} more small pieces are not drawn larger; the table has every hole."
            )
        words = draw_paragraph(heading, room.width, bold=True, most_lines=3)
        items = (*move_items(words.items, room.x0, form.inner.y1), *elevation.items)
        pages.append(PageDrawing(TITLE, form.size, items, _link(elevation, piece_targets)))
    return pages


def _describe_window(plan: Plan, window: Box) -> str:
    """Where on the wall a part is, in words."""
    x0, y0, x1, y1 = (format_length(side, plan.units) for side in window)
    return f"From {x0} to {x1} from the left end, from {y0} to {y1} above the floor."
