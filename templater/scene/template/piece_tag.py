"""What tells a template that is cut out of a page it shares with others: a small tag of its own.

The page's block and rulers stay on the page; the tag goes with the template.
"""

from __future__ import annotations

from templater.drawing import Item, Words
from templater.geometry import Box, Point, Size
from templater.lettering import ASCENT, DESCENT, shorten, wrap
from templater.printing.model import Tile
from templater.scene.lines import FINE, LARGE, NORMAL, SMALL
from templater.scene.marks import draw_arrow, draw_box
from templater.scene.template.board import CENTRES, Board, plain_shape
from templater.scene.template.room import Regions, Way, Where, find_room
from templater.scene.template.sheet_block import SheetBlock, SheetNames

_ARROW_ROOM = 10.0
_LEADING = 0.2
_FOLD = "Outside: fold, do not cut."
_MORE = "More: see the overview."


_WIDTHS = (69.0, 55.0)
_DEPTHS = {1: 24.0, 2: 30.0}
"""How deep a tag is whose piece's name takes so many lines, mm."""


def place_piece_tag(tile: Tile, board: Board, regions: Regions, name: str) -> SheetBlock:
    """Find room for the tag, inside the outline if there is any; ``crowding`` where there is none."""
    sizes = [Size(width, _DEPTHS[len(_break_name(name, width))]) for width in _WIDTHS]
    ways = (
        *(Way(plain_shape(size)) for size in sizes),
        *(Way(plain_shape(size, CENTRES), interrupts=CENTRES) for size in sizes),
        *(Way(plain_shape(size), Where.OUTSIDE) for size in sizes),
    )
    found = find_room(ways, board, regions, tile.keep.corner)
    if found is None:
        return SheetBlock(Box.of(tile.keep.corner, sizes[-1]), (), (), False, 1)
    interruptions = (found.box,) if found.way.interrupts else ()
    return SheetBlock(found.box, (), interruptions, found.way.where is Where.OUTSIDE, 0)


def _break_name(name: str, width_mm: float) -> list[str]:
    """The piece's name on one line or two of a tag."""
    room = _room(width_mm)
    first, *rest = wrap(name, NORMAL, room, bold=True)
    return [first, shorten(" ".join(rest), NORMAL, room, bold=True)] if rest else [first]


def _room(width_mm: float) -> float:
    """How wide the words of a tag may be."""
    return width_mm - 1.0 - _ARROW_ROOM - 1.5


def draw_piece_tag(
    block: SheetBlock, names: SheetNames, sheet: str, *, fold: bool, more: bool
) -> tuple[Item, ...]:
    """Name, revision, kit and UP."""
    box, room = block.box.grown(-0.5), _room(block.box.width)
    foot = Point(box.x0 + _ARROW_ROOM / 2, box.y0 + 2.0)
    items: list[Item] = [draw_box(box, FINE), *draw_arrow(foot, foot.moved(0, 6.5), FINE)]
    items.append(Words(Point(box.x0 + 1.0, box.y0 + 10.2), "UP", NORMAL, bold=True))
    lines = [(line, NORMAL, True) for line in _break_name(names.piece, block.box.width)]
    lines.append((f"rev {names.revision}", LARGE, True))
    remark = _FOLD if fold else _MORE if more else None
    lines.append((shorten(names.title, SMALL, room), SMALL, False))
    lines += [(remark, SMALL, True)] if remark else []
    baseline = box.y1 - 0.4
    items.append(Words(Point(box.x0 + 0.6, box.y1 - 0.4 - ASCENT * LARGE), sheet, LARGE, bold=True))
    for text, height, bold in lines:
        baseline -= ASCENT * height
        items.append(Words(Point(box.x0 + _ARROW_ROOM, baseline), text, height, bold=bold))
        baseline -= DESCENT * height + _LEADING
    return tuple(items)
