"""One piece at full size: outline, centre lines, level line, holes, and what they measure.

Template coordinates: mm from the frame's bottom-left corner, y up. Everything that must survive
the scissors stands inside the outline where there is room, and wholly on one sheet.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from templater.drawing import Item
from templater.geometry import ORIGIN, Box, Point, Size
from templater.placement.model import PlacedPiece, Plan
from templater.printing.model import Tile, Tiling
from templater.scene.board import Board
from templater.scene.joins import draw_joins
from templater.scene.marks import ARM
from templater.scene.sheet_block import SheetNames, draw_sheet_block, place_sheet_block
from templater.scene.template_lines import TemplateLines
from templater.scene.template_words import Note, TemplateWords

_NEAREST = 4
"""How many sheets round a point are searched for room."""


@dataclass(frozen=True, slots=True)
class TemplateDrawing:
    """A piece's template, in template coordinates.

    ``lines`` are clipped by each sheet; ``labels`` and ``furniture`` stand wholly on the sheet of
    the same place in the tiling; ``whole`` takes the furniture's place where the template is one
    drawing. ``area`` holds everything drawn.
    """

    size: Size
    lines: tuple[Item, ...]
    labels: tuple[tuple[Item, ...], ...]
    furniture: tuple[tuple[Item, ...], ...]
    whole: tuple[Item, ...]
    area: Box


def template_extent(piece: PlacedPiece) -> Box:
    """What must be on paper: the outline, and every hole's cross where it passes the outline."""
    crosses = (Box(*mark.hole, *mark.hole).grown(ARM) for mark in piece.template_marks())
    return Box.around((Box.of(ORIGIN, piece.size), *crosses))


def draw_template(piece: PlacedPiece, plan: Plan, tiling: Tiling, names: SheetNames) -> TemplateDrawing:
    """Draw a piece's template for the sheets it will be printed on.

    Lines come first; then words and blocks find room in the order of their worth to the person on
    the ladder; last the centre lines, which may be interrupted by a block that found no other room.
    """
    extent, lines = template_extent(piece), TemplateLines.of(piece, plan)
    area = Box.around((extent, *(tile.clip for tile in tiling.tiles)))
    fixed = tuple(lines.draw_fixed())
    board = _prepare_board(area, lines)
    joins = draw_joins(tiling, extent, board)
    labels = _Labels(tiling, Box.of(ORIGIN, piece.size), board)
    words = TemplateWords(piece, plan, lines, tiling.near_seam)
    for note in words.write_holes():
        labels.put(note)
    for note in words.write_lines():
        labels.put(note)
    blocks = [
        place_sheet_block(tile, board, regions)
        for tile, regions in zip(tiling.tiles, labels.regions, strict=True)
    ]
    for note in (words.write_paper(), *words.write_sides()):
        labels.put(note)
    return TemplateDrawing(
        size=piece.size,
        lines=(*fixed, *lines.draw_centre(board.interruptions), *lines.draw_holes()),
        labels=tuple(map(tuple, labels.items)),
        furniture=tuple(
            (*joins[tile.name], *draw_sheet_block(blocks[index], names, tiling, index))
            for index, tile in enumerate(tiling.tiles)
        ),
        whole=draw_sheet_block(blocks[0], names, tiling, None),
        area=area,
    )


def _prepare_board(area: Box, lines: TemplateLines) -> Board:
    """A board on which the template's lines and holes are taken."""
    board = Board(area)
    for line in lines.draw_fixed():
        board.block(line.box.grown(0.8))
    for line in lines.draw_centre():
        board.avoid(line.box.grown(0.8))
    for mark in lines.marks:
        board.block(Box(*mark.hole, *mark.hole).grown(ARM + 1))
    return board


class _Labels:
    """Words placed so far, sheet by sheet."""

    def __init__(self, tiling: Tiling, outline: Box, board: Board) -> None:
        self.tiles, self.board = tiling.tiles, board
        self.items: list[list[Item]] = [[] for _ in self.tiles]
        self.regions = [_regions(tile, outline) for tile in self.tiles]

    def put(self, note: Note) -> None:
        """Place a note on its sheet, or one of the nearest: inside the outline, else outside."""
        order = self._nearest(note.near)[:_NEAREST] if note.of is None else self._nearest(note.of)[:1]
        for inside in (True, False):
            for block in note.blocks:
                for index in order:
                    regions = self.regions[index][:1] if inside else self.regions[index][1:]
                    box = self.board.take(block.size, regions, note.near)
                    if box is not None:
                        self.items[index].extend(block.draw(box))
                        return

    def _nearest(self, point: Point) -> list[int]:
        """The sheets in the order of their distance from a point."""
        indices: Iterable[int] = range(len(self.tiles))
        return sorted(indices, key=lambda index: _distance(self.tiles[index].keep, point))


def _regions(tile: Tile, outline: Box) -> tuple[Box, ...]:
    """Where words may stand on a sheet: inside the outline first, then on the four sides of it."""
    keep = tile.keep
    strips = (
        keep._replace(x1=min(keep.x1, outline.x0 - 1)),
        keep._replace(x0=max(keep.x0, outline.x1 + 1)),
        keep._replace(y1=min(keep.y1, outline.y0 - 1)),
        keep._replace(y0=max(keep.y0, outline.y1 + 1)),
    )
    inside = keep.common(outline.grown(-1.0))
    return (inside, *(strip for strip in strips if strip.width > 0 and strip.height > 0))


def _distance(box: Box, point: Point) -> float:
    """From a point to a box, mm squared."""
    dx = max(box.x0 - point.x, 0.0, point.x - box.x1)
    dy = max(box.y0 - point.y, 0.0, point.y - box.y1)
    return dx * dx + dy * dy
