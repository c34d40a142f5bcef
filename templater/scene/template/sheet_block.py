"""What every sheet carries so that it is known when it lies alone on the floor.

The kit's title, the piece, the sheet's name, the revision, UP, its place among the other sheets,
the page, and rulers of 100 mm and 4 in across and up.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import TypeAlias

from templater.drawing import Anchor, Item, Words
from templater.geometry import Box, Point, Size
from templater.lettering import ASCENT, DESCENT, shorten, text_width, wrap
from templater.printing.model import Coverage, Tile, Tiling
from templater.scene.lines import FINE, LARGE, MEDIUM, NORMAL, SMALL, TITLE
from templater.scene.marks import draw_arrow, draw_box
from templater.scene.template.board import CENTRES, LINES, Board, Cover, plain_shape
from templater.scene.template.ink import is_small
from templater.scene.template.room import Regions, Way, Where, find_room
from templater.scene.template.rulers import LONG_RULERS_AREA, may_hold_rulers, place_rulers

_REMARKS = {
    (False, False): (),
    (True, False): ("Outside the outline:", "fold back, do not cut."),
    (False, True): ("More measures:", "see the overview."),
    (True, True): ("Outside: fold, do not cut.", "More: see the overview."),
}
"""What is said of paper outside the outline (fold) and of words that found no room (more)."""

_BRIEF_REMARKS = {
    (False, False): (),
    (True, False): ("Outside: fold, do not cut.",),
    (False, True): ("More: see the overview.",),
    (True, True): ("Fold back; see overview.",),
}
_LEFT_OUT = {
    Coverage.FULL: (),
    Coverage.BAND: ("Band: the rest is left out.",),
    Coverage.CARD: ("Card: the rest is left out.",),
}
"""What is said of a template that is not printed whole; other remarks are then brief."""

_NO_ROOM = 100
_MARGIN = 12.0
"""Left of the words, for the arrow that points up, mm."""

_LEAST_CELL = 1.2
"""Sheets smaller than this on the map are not drawn one by one, mm."""

_LEAST_SPOT = 1.2
"""The side of the square on such a map, mm."""

_SPOT = 3.5
"""The side of the square that tells on the small map where a sheet belongs, mm.

A round dot would be a ring without a cross.
"""

_LEADING = 1.2
_SHEET_SIZES = (TITLE, LARGE, NORMAL, SMALL)

_Line: TypeAlias = tuple[str, float, bool]
"""Words, the height of their capitals, whether they are bold."""


@dataclass(frozen=True, slots=True)
class SheetNames:
    """The words that are the same on every sheet of a piece, and where its pages are in the kit.

    Without a ``page_count`` no page is told: the sheet is cut out of a page that tells its own.
    ``number`` is the piece's on the overview; it stands before a name that must be cut short, so
    that two such names are never taken for one.
    """

    title: str
    piece: str
    revision: str
    first_page: int
    page_count: int
    printer: str | None = None
    number: int = 0


@dataclass(frozen=True, slots=True)
class _Layout:
    """One way to lay the block out, from its bottom-left corner: arrow, words, sheet and small map.

    In the smallest the map stands below the arrow and the sheet's name above the other words; in the
    flattest what is said of the printing stands in a column of its own, ``aside_width`` wide.
    """

    size: Size
    text_width: float
    map_box: Box
    arrow_foot: float = 4.0
    aside_width: float = 0.0


_WIDE = _Layout(Size(100.0, 42.0), 60.0, Box(74, 4, 97, 28))
_NARROW = _Layout(Size(72.0, 42.0), 42.0, Box(55, 4, 69, 28))
_SMALL = _Layout(Size(55.0, 46.0), 41.6, Box(1.5, 2.5, 10.5, 13), arrow_foot=15.0)
_FLAT = _Layout(Size(130.0, 27.0), 54.0, Box(114, 2.5, 127, 14), aside_width=43.0)
_LAYOUTS = (_WIDE, _NARROW, _SMALL)
LEAST_AREA = LONG_RULERS_AREA + min(
    layout.size.width * layout.size.height for layout in (*_LAYOUTS, _FLAT)
)
"""What the block and both long rulers take at least, mm²."""

_WAYS = (
    *(Way(plain_shape(layout.size)) for layout in _LAYOUTS),
    *(Way(plain_shape(layout.size, CENTRES), interrupts=CENTRES) for layout in _LAYOUTS),
    *(Way(plain_shape(layout.size), Where.OUTSIDE) for layout in _LAYOUTS),
    Way(plain_shape(_SMALL.size, LINES), interrupts=LINES),
    Way(plain_shape(_SMALL.size, LINES), Where.OUTSIDE, LINES),
    Way(plain_shape(_FLAT.size)),
    Way(plain_shape(_FLAT.size), Where.OUTSIDE),
)


@dataclass(frozen=True, slots=True)
class SheetBlock:
    """Where the block and the rulers of one sheet have found room.

    ``interruptions`` lie across lines. ``crowding`` is 0 where all stands as it should; it counts
    what lies across a line that sets the template on the wall, and more what found no room at all.
    """

    box: Box
    rulers: tuple[Item, ...]
    interruptions: tuple[Box, ...]
    is_outside: bool
    crowding: int


def place_sheet_block(tile: Tile, board: Board, regions: Regions) -> SheetBlock:
    """Find room on a sheet, inside the outline (the first region) if there is any.

    Rulers come first, being the harder to place, unless that leaves no room for the block. A sheet
    so full that nothing fits keeps the block in its lower left corner all the same.
    """
    blank = board.remember()
    first = _try(tile, board, regions, rulers_first=True)
    if first.crowding < _NO_ROOM:
        return first
    board.restore(blank)
    return _try(tile, board, regions, rulers_first=False)


def may_find_room(board: Board, regions: Regions) -> bool:
    """Whether the block and both long rulers could stand inside the outline, each if it were alone.

    If not, the sheet is crowded for certain, and there is no need to try how.
    """
    return may_hold_rulers(board, regions) and any(
        board.has_room(way.shape, regions.choose(way.where))
        for way in _WAYS
        if way.where is Where.INSIDE and not way.interrupts
    )


def _try(tile: Tile, board: Board, regions: Regions, *, rulers_first: bool) -> SheetBlock:
    """Place the block before or after the rulers."""
    rulers = place_rulers(board, regions) if rulers_first else None
    block = find_room(_WAYS, board, regions, tile.keep.corner)
    rulers = rulers or place_rulers(board, regions)
    places = [*rulers.places, *([] if block is None else [block])]
    return SheetBlock(
        box=block.box if block is not None else Box.of(tile.keep.corner, _SMALL.size),
        rulers=rulers.items,
        interruptions=tuple(place.box for place in places if place.way.interrupts),
        is_outside=any(place.way.where is not Where.INSIDE for place in places),
        crowding=rulers.crowding + (_NO_ROOM if block is None else Cover.LEVEL in block.way.interrupts),
    )


def draw_sheet_block(
    block: SheetBlock,
    names: SheetNames,
    tiling: Tiling,
    index: int | None,
    *,
    fold: bool,
    more: bool,
) -> tuple[Item, ...]:
    """The block and its rulers; without an index, for the whole template, corrected for no printer.

    ``fold``: words stand outside the outline; ``more``: some found no room at all.
    """
    layout = next(each for each in (_FLAT, *_LAYOUTS) if block.box.width > each.size.width - 1)
    sheet, page = "full size", ""
    if index is not None:
        sheet = tiling.tiles[index].name
        count = names.page_count
        page = f"page {names.first_page + index} of {count}" if count else ""
    (x0, y0, x1, y1), room = block.box, layout.text_width
    items: list[Item] = [draw_box(block.box.grown(-0.2), FINE), *block.rulers]
    is_lean = is_small(tiling.tiles)
    large = NORMAL if is_lean else LARGE
    remarks = _REMARKS if tiling.cover is Coverage.FULL else _BRIEF_REMARKS
    foot = Point(x0 + _MARGIN / 2, y0 + layout.arrow_foot)
    items += _draw_up(foot, layout.size.height - layout.arrow_foot - 11)
    named = [
        *(_name_short(names, sheet, room) if layout is _SMALL else _name_lines(names, room, large)),
        (shorten(names.title, SMALL, room), SMALL, False),
        (f"rev {names.revision}", LARGE, True),
    ]
    told = [
        *([(page, SMALL, False)] if page else []),
        *((text, SMALL, not is_lean) for text in (*_LEFT_OUT[tiling.cover], *remarks[fold, more])),
    ]
    depth, printer = layout.size.height - 1.6, names.printer if index is not None else None
    top, aside = Point(x0 + _MARGIN, y1 - 0.8), layout.aside_width
    if aside:
        told += _say_printing(printer, aside, depth - _depth_of(told))
        items += (*_set_lines(named, top, depth), *_set_lines(told, top.moved(room, 0), depth))
    else:
        told += _say_printing(printer, room, depth - _depth_of([*named, *told]))
        items += _set_lines([*named, *told], top, depth)
    if layout is not _SMALL:
        column = layout.size.width - _MARGIN - room - aside - 3
        sizes = _SHEET_SIZES[is_lean:]
        height = next(size for size in sizes if text_width(sheet, size, bold=True) <= column)
        items.append(Words(Point(x1 - 3, y1 - 11), sheet, height, Anchor.END, bold=True))
    if index is not None and len(tiling.tiles) > 1:
        items += _draw_map(tiling, index, layout.map_box.moved(x0, y0))
    return tuple(items)


def _set_lines(lines: Sequence[_Line], top: Point, depth: float) -> Iterable[Words]:
    """Lines of words below each other, a little apart where the depth allows."""
    apart = max(0.0, min(_LEADING, (depth - _depth_of(lines)) / len(lines)))
    baseline, below = top.y, 0.0
    for text, height, bold in lines:
        baseline -= below + ASCENT * height
        below = DESCENT * height + apart
        yield Words(Point(top.x, baseline), text, height, bold=bold)


def _depth_of(lines: Sequence[_Line]) -> float:
    """How much lines of words need at the least, mm."""
    return sum((ASCENT + DESCENT) * height for _, height, _ in lines)


def _say_printing(printer: str | None, width_mm: float, depth_mm: float) -> list[_Line]:
    """How to print the sheet, and on which printer if it is corrected for one."""
    if printer is None:
        return [("Print at 100 %, actual size.", SMALL, False)]
    text = f"Corrected for “{printer}”: use no other printer. Print at 100 %."
    lines = [(line, SMALL, True) for line in wrap(text, SMALL, width_mm, bold=True)]
    if _depth_of(lines) + _LEADING * len(lines) <= depth_mm:
        return lines
    name = shorten(printer, SMALL, width_mm - text_width("“” only, 100 %", SMALL))
    return [(f"“{name}” only, 100 %", SMALL, False)]


def _name_lines(names: SheetNames, width_mm: float, large: float) -> Iterable[_Line]:
    """The piece's name, large on one line if it fits, else smaller on two."""
    if text_width(names.piece, large, bold=True) <= width_mm:
        yield names.piece, large, True
        return
    lines = wrap(names.piece, NORMAL, width_mm, bold=True)
    if len(lines) > 2:
        first, *rest = wrap(_numbered(names), NORMAL, width_mm, bold=True)
        lines = [first, shorten(" ".join(rest), NORMAL, width_mm, bold=True)]
    for line in lines:
        yield line, NORMAL, True


def _name_short(names: SheetNames, sheet: str, width_mm: float) -> Iterable[_Line]:
    """The sheet's name above the piece's, on one line."""
    yield sheet, TITLE, True
    fits = text_width(names.piece, NORMAL, bold=True) <= width_mm
    name = names.piece if fits else shorten(_numbered(names), NORMAL, width_mm, bold=True)
    yield name, NORMAL, True


def _numbered(names: SheetNames) -> str:
    """The piece's name behind its number on the overview, if it has one."""
    return f"{names.number} {names.piece}" if names.number else names.piece


def _draw_up(foot: Point, length: float) -> Iterable[Item]:
    """An arrow that points up the wall."""
    yield from draw_arrow(foot, foot.moved(0, length), MEDIUM, 6.0)
    yield Words(foot.moved(0, length + 2.5), "UP", NORMAL, Anchor.MIDDLE, bold=True)


def _draw_map(tiling: Tiling, index: int, box: Box) -> Iterable[Item]:
    """All sheets of the template, a black square on this one.

    Where so many sheets would be a black patch, their outline alone.
    """
    whole = Box.around(tile.keep for tile in tiling.tiles)
    scale = min(box.width / whole.width, box.height / whole.height)
    cells = []
    for tile in tiling.tiles:
        x0, y0, x1, y1 = (side * scale for side in tile.keep.moved(-whole.x1, -whole.y0))
        cells.append(Box(x0, y0, x1, y1).moved(box.x1, box.y0))
    is_dense = min(side for cell in cells for side in cell.size) < _LEAST_CELL
    for cell in [Box.around(cells)] if is_dense else cells:
        yield draw_box(cell, FINE)
    here = cells[index]
    half = min(_SPOT / 2, *(side / 2 - 0.5 for side in here.size))
    least = _LEAST_SPOT / 2 if is_dense else 0.3
    spot = draw_box(Box(*here.centre, *here.centre).grown(max(half, least)), FINE)
    yield replace(spot, filled=True)
