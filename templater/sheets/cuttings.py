"""What may be cut out of a page that several templates share: a whole small one, a roll's strips."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from itertools import product
from typing import TypeAlias

from templater.geometry import Box, Point, Size
from templater.placement.model import PlacedPiece, Plan
from templater.printing.error import Errors, estimate_errors
from templater.printing.model import Coverage, PrintSetup, Tile, Tiling
from templater.scene.template.draw import TemplateDrawing, draw_template, template_extent, template_shape
from templater.scene.template.sheet_block import SheetNames

_BORDER_MM = 3.0
"""Between the outline and the line on which templates are cut apart."""

_BESIDE_MM = (0.0, 62.0, 92.0, 122.0)
_BELOW_MM = (0.0, 32.0, 62.0, 92.0, 122.0)
"""How much is added on the right and below until all words of a template find room."""


@dataclass(frozen=True, slots=True)
class Cutting:
    """A template, or a strip of one, to be cut out of a page.

    ``paper`` is what it needs, in template coordinates; ``tile.clip`` all it shows. ``place`` is the
    tile's place in its tiling.
    """

    piece: PlacedPiece
    tile: Tile
    drawing: TemplateDrawing
    paper: Box
    place: int = 0

    @property
    def size(self) -> Size:
        """The paper it needs."""
        return self.paper.size


Bundle: TypeAlias = tuple[Cutting, ...]
"""All that is cut out for one piece; it stands on one page or shares none."""


def list_bundles(
    plan: Plan, tilings: Mapping[str, Tiling], setup: PrintSetup, names: SheetNames
) -> list[Bundle]:
    """Every piece that may share a page: those of one sheet, and on a roll those of several strips."""
    bundles: list[Bundle] = []
    for piece in plan.pieces:
        tiling = tilings.get(piece.slug)
        if tiling is None or tiling.cover is not Coverage.FULL:
            continue
        if len(tiling.tiles) == 1:
            cutting = _cut_out(piece, plan, setup, names, tiling)
            bundles += [] if cutting is None else [(cutting,)]
        elif setup.paper.is_roll:
            bundles.append(_cut_strips(piece, plan, setup, names, tiling))
    return bundles


def expect_errors(piece: PlacedPiece, tiling: Tiling, setup: PrintSetup) -> Errors:
    """How far off a template's holes may be on paper."""
    shape = template_shape(piece)
    return estimate_errors(tiling, shape.holes, shape.hang_points, shape.outline, setup.printer)


def _cut_strips(
    piece: PlacedPiece, plan: Plan, setup: PrintSetup, names: SheetNames, tiling: Tiling
) -> Bundle:
    """The sheets of a template as they are, with what paper there is to cut them apart."""
    errors = expect_errors(piece, tiling, setup)
    drawing = draw_template(piece, plan, tiling, replace(names, piece=piece.name), errors=errors)
    return tuple(
        Cutting(piece, tile, drawing, _add_border(tile, setup), place)
        for place, tile in enumerate(tiling.tiles)
    )


def _add_border(tile: Tile, setup: PrintSetup) -> Box:
    """What a strip shows and a border, as far as the roll is wide enough for it."""
    x0, y0, x1, y1 = tile.clip
    longest = next(
        size
        for size in setup.page_sizes()
        if tile.page.width == size.width or tile.page.height == size.height
    )
    room = setup.printable(longest).size
    across, up = (
        min(_BORDER_MM, max(0.0, (side - shown) / 2))
        for side, shown in zip(room, tile.clip.size, strict=True)
    )
    return Box(x0 - across, y0 - up, x1 + across, y1 + up)


def _cut_out(
    piece: PlacedPiece, plan: Plan, setup: PrintSetup, names: SheetNames, tiling: Tiling
) -> Cutting | None:
    """The template on the least paper on which all its words find room; None if no page has that."""
    errors = expect_errors(piece, tiling, setup)
    extent = template_extent(piece).grown(_BORDER_MM)
    rooms = [setup.printable(page).size for page in setup.page_sizes()]
    boxes = [
        extent._replace(x1=extent.x1 + beside, y0=extent.y0 - below)
        for beside, below in product(_BESIDE_MM, _BELOW_MM)
    ]
    for box in sorted(boxes, key=lambda box: box.width * box.height):
        if not any(box.width <= room.width and box.height <= room.height for room in rooms):
            continue
        tile = Tile("A1", box, box, box.size, Point(-box.x0, -box.y0))
        alone = Tiling((tile,), (), (), is_shared=True)
        named = replace(names, piece=piece.name)
        drawing = draw_template(piece, plan, alone, named, errors=errors)
        if drawing.is_complete:
            return Cutting(piece, tile, drawing, box)
    return None
