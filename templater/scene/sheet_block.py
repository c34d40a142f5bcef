"""What every sheet carries so that it is known when it lies alone on the floor.

The kit's title, the piece, the sheet's name, the revision, UP, its place among the other sheets,
the page, and rulers of 100 mm and 4 in across and up.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from templater.drawing import Anchor, Item, Polyline, Words
from templater.geometry import Box, Point, Size
from templater.lettering import shorten, text_width, wrap
from templater.printing.model import Tile, Tiling
from templater.scene.board import Board
from templater.scene.lines import FINE, LARGE, MEDIUM, NORMAL, SMALL, TITLE
from templater.scene.marks import draw_arrow, draw_box, draw_scale_bar

_BAR_LONG, _BAR_WIDE, _BAR_ZERO = 104.0, 15.0, 1.4
_FOLD = "Fold back what lies outside the outline, do not cut it off."


@dataclass(frozen=True, slots=True)
class SheetNames:
    """The words that are the same on every sheet of a piece, and where its pages are in the kit."""

    title: str
    piece: str
    revision: str
    first_page: int
    page_count: int


@dataclass(frozen=True, slots=True)
class _Shape:
    """One way to lay the block out, from its bottom-left corner: words left, small map right."""

    size: Size
    text_width: float
    map_box: Box
    sheet_at: Point


_WIDE = _Shape(Size(100.0, 42.0), 60.0, Box(74, 4, 97, 28), Point(97, 32))
_TALL = _Shape(Size(64.0, 66.0), 50.0, Box(37, 4, 61, 24), Point(12, 9))


@dataclass(frozen=True, slots=True)
class SheetBlock:
    """Where the block and the rulers of one sheet have found room."""

    shape: _Shape
    box: Box
    outside: bool
    rulers: tuple[Item, ...]


def place_sheet_block(tile: Tile, board: Board, regions: Sequence[Box]) -> SheetBlock:
    """Find room on a sheet, inside the outline (the first region) if there is any."""
    rulers: list[Item] = []
    outside = False
    for upward in (True, False):
        size = Size(_BAR_WIDE, _BAR_LONG) if upward else Size(_BAR_LONG, _BAR_WIDE)
        box, is_out = _find_room(board, regions, (size,), tile)
        zero = (
            box.corner.moved(_BAR_WIDE / 2, _BAR_ZERO)
            if upward
            else box.corner.moved(_BAR_ZERO, _BAR_WIDE / 2)
        )
        rulers += draw_scale_bar(zero, upward=upward)
        outside = outside or is_out
    box, is_out = _find_room(board, regions, (_WIDE.size, _TALL.size), tile)
    shape = _WIDE if box.width > _TALL.size.width + 1 else _TALL
    return SheetBlock(shape, box, outside or is_out, tuple(rulers))


def _find_room(
    board: Board, regions: Sequence[Box], sizes: Sequence[Size], tile: Tile
) -> tuple[Box, bool]:
    """Room for the first size that fits, and whether it is outside the outline.

    A sheet so full that nothing fits keeps the block in its lower left corner all the same.
    """
    corner = tile.keep.corner
    for outside, some in ((False, regions[:1]), (True, regions[1:])):
        for interrupt in (False, True):
            for size in sizes:
                box = board.take(size, some, corner, interrupt=interrupt)
                if box is not None:
                    return box, outside
    return Box.of(corner, sizes[-1]), True


def draw_sheet_block(
    block: SheetBlock, names: SheetNames, tiling: Tiling, index: int | None
) -> tuple[Item, ...]:
    """The block and its rulers; without an index, for the whole template on one large sheet."""
    shape, corner = block.shape, block.box.corner
    at = corner.moved
    lines: list[tuple[str, float, bool]] = [
        *_name_lines(names.piece, shape.text_width),
        (shorten(names.title, SMALL, shape.text_width), SMALL, False),
        (f"rev {names.revision}", LARGE, True),
    ]
    if index is not None:
        lines.append((f"page {names.first_page + index} of {names.page_count}", SMALL, False))
    lines.append(("Print at 100 %, actual size.", SMALL, False))
    if block.outside:
        lines += [(text, SMALL, True) for text in wrap(_FOLD, SMALL, shape.text_width, bold=True)]
    items: list[Item] = [draw_box(block.box.grown(-0.5), FINE), *block.rulers]
    items += _draw_up(at(6, 4), shape.size.height - 14)
    baseline = shape.size.height - 2.0
    for text, height, bold in lines:
        baseline -= height * 1.4 + 0.6
        items.append(Words(at(12, baseline), text, height, bold=bold))
    if index is not None and len(tiling.tiles) > 1:
        items += _draw_map(tiling, index, shape.map_box.moved(*corner))
    anchor = Anchor.END if shape is _WIDE else Anchor.START
    name = "full size" if index is None else tiling.tiles[index].name
    height = LARGE if index is None else TITLE
    items.append(Words(at(*shape.sheet_at), name, height, anchor, bold=True))
    return tuple(items)


def _name_lines(name: str, width_mm: float) -> list[tuple[str, float, bool]]:
    """The piece's name, large on one line if it fits, else smaller on two."""
    if text_width(name, LARGE, bold=True) <= width_mm:
        return [(name, LARGE, True)]
    first, *rest = wrap(name, NORMAL, width_mm, bold=True)
    lines = [first, shorten(" ".join(rest), NORMAL, width_mm, bold=True)] if rest else [first]
    return [(line, NORMAL, True) for line in lines]


def _draw_up(foot: Point, length: float) -> Iterable[Item]:
    """An arrow that points up the wall."""
    yield from draw_arrow(foot, foot.moved(0, length), MEDIUM, 6.0)
    yield Words(foot.moved(0, length + 2.5), "UP", NORMAL, Anchor.MIDDLE, bold=True)


def _draw_map(tiling: Tiling, index: int, box: Box) -> Iterable[Item]:
    """All sheets of the template, this one black."""
    whole = Box.around(tile.keep for tile in tiling.tiles)
    scale = min(box.width / whole.width, box.height / whole.height)
    for number, tile in enumerate(tiling.tiles):
        x0, y0, x1, y1 = tile.keep.moved(-whole.x1, -whole.y0)
        small = Box(x0 * scale + box.x1, y0 * scale + box.y0, x1 * scale + box.x1, y1 * scale + box.y0)
        yield draw_box(small, FINE)
        if number == index:
            inner = draw_box(small.grown(-0.5), FINE)
            yield Polyline(inner.points, FINE, closed=True, filled=True)
