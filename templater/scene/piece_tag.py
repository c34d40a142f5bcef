"""What tells a template that is cut out of a page it shares with others: a small tag of its own.

The page's block and rulers stay on the page; the tag goes with the template.
"""

from __future__ import annotations

from dataclasses import dataclass

from templater.drawing import Item, Words
from templater.geometry import Box, Point, Size
from templater.lettering import ASCENT, DESCENT, shorten, wrap
from templater.printing.model import Tile
from templater.scene.board import CENTRES, Board, plain_shape
from templater.scene.lines import FINE, LARGE, NORMAL, SMALL
from templater.scene.marks import draw_arrow, draw_box
from templater.scene.room import Regions, Way, Where, find_room
from templater.scene.sheet_block import SheetBlock, SheetNames

_ARROW_ROOM = 9.0
_FOLD = "Outside: fold, do not cut."
_MORE = "More: see the overview."


@dataclass(frozen=True, slots=True)
class _Form:
    """One way to lay the tag out: the name on so many lines, none of which may be longer."""

    size: Size
    name_lines: int


_FORMS = (_Form(Size(68.0, 24.0), 1), _Form(Size(54.0, 30.0), 2))
_WAYS = (
    *(Way(plain_shape(form.size)) for form in _FORMS),
    *(Way(plain_shape(form.size, CENTRES), interrupts=CENTRES) for form in _FORMS),
    *(Way(plain_shape(form.size), Where.OUTSIDE) for form in _FORMS),
)


def place_piece_tag(tile: Tile, board: Board, regions: Regions) -> SheetBlock:
    """Find room for the tag, inside the outline if there is any; ``crowding`` where there is none."""
    found = find_room(_WAYS, board, regions, tile.keep.corner)
    if found is None:
        return SheetBlock(Box.of(tile.keep.corner, _FORMS[-1].size), (), (), False, 1)
    interruptions = (found.box,) if found.way.interrupts else ()
    return SheetBlock(found.box, (), interruptions, found.way.where is Where.OUTSIDE, 0)


def draw_piece_tag(
    block: SheetBlock, names: SheetNames, sheet: str, *, fold: bool, more: bool
) -> tuple[Item, ...]:
    """Name, revision, kit and UP."""
    form = next(form for form in _FORMS if block.box.width > form.size.width - 1)
    box = block.box.grown(-0.5)
    room = box.width - _ARROW_ROOM - 1.5
    foot = Point(box.x0 + _ARROW_ROOM / 2, box.y0 + 2.0)
    items: list[Item] = [draw_box(box, FINE), *draw_arrow(foot, foot.moved(0, 10.0), FINE)]
    items.append(Words(Point(box.x0 + 1.0, box.y0 + 14.0), "UP", NORMAL, bold=True))
    name, *rest = wrap(names.piece, NORMAL, room, bold=True)
    if form.name_lines == 1 or not rest:
        lines = [(shorten(names.piece, NORMAL, room, bold=True), NORMAL, True)]
    else:
        lines = [(name, NORMAL, True), (shorten(" ".join(rest), NORMAL, room, bold=True), NORMAL, True)]
    lines.append((f"rev {names.revision}", LARGE, True))
    remark = _FOLD if fold else _MORE if more else None
    lines.append((shorten(f"{sheet} · {names.title}", SMALL, room), SMALL, False))
    lines += [(remark, SMALL, True)] if remark else []
    baseline = box.y1 - 0.4
    for text, height, bold in lines:
        baseline -= ASCENT * height
        items.append(Words(Point(box.x0 + _ARROW_ROOM, baseline), text, height, bold=bold))
        baseline -= DESCENT * height
    return tuple(items)
