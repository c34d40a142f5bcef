"""Places a template's words: each on one sheet, near what it speaks of, over nothing else."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import product
from math import inf
from typing import NamedTuple, TypeAlias

from templater.drawing import Item, Line
from templater.geometry import Box, Point
from templater.printing.model import Tile
from templater.scene.template.blocks import Block
from templater.scene.template.board import CENTRES, NOTHING, Board, Cover, Memory, plain_shape
from templater.scene.template.ink import MOST_INK, is_small
from templater.scene.template.room import Regions, Where

_NEAREST = 4
"""How many sheets round a point are searched for room; where ink is short, then all others."""

_SHORTEST = 20.0
"""A line of which a sheet shows less is not named there, mm."""

_APART = 2.0
"""Round a block that stands alone, mm, so that it is not read as part of another."""

_Ways: TypeAlias = tuple[tuple[Where, Cover], ...]

WAYS_INSIDE: _Ways = ((Where.INSIDE, NOTHING), (Where.INSIDE, CENTRES))
WAYS_OUTSIDE: _Ways = ((Where.OUTSIDE, NOTHING),)


@dataclass(frozen=True, slots=True)
class Note:
    """Words to be placed near a point: the first of the blocks that finds room.

    What belongs to a point ``of`` the template stands on the sheet that shows it, or not at all.
    What names a ``line`` stands on a sheet that shows it, ``within`` a band along it; what tells of a
    hole nearest to that hole.
    """

    blocks: tuple[Block, ...]
    near: Point
    of: Point | None = None
    within: Box | None = None
    line: Line | None = None


class SheetMemory(NamedTuple):
    """How a sheet stood."""

    cells: Memory
    item_count: int
    interruption_count: int
    is_outside: bool
    ink_left: float


class Labels:
    """The words placed so far, sheet by sheet.

    ``regions`` are where words may stand on each sheet; ``interruptions`` the words that stand
    across lines; ``is_outside`` tells of each sheet whether words had to stand outside the outline.
    Where ink is spared, a sheet takes no words beyond its ink but those that must be told; on small
    paper words are ``is_lean`` then, their headings no higher than the rest. What is cut out of a page
    that others share spares none: it is no sheet, and those pages are seldom full.
    """

    def __init__(
        self, tiles: Sequence[Tile], outline: Box, boards: Sequence[Board], *, spares_ink: bool
    ) -> None:
        self._tiles, self._boards = tiles, boards
        self._ink_left = [
            MOST_INK * tile.page.width * tile.page.height if spares_ink else inf for tile in tiles
        ]
        self.is_lean = spares_ink and is_small(tiles)
        self.items: list[list[Item]] = [[] for _ in tiles]
        self.regions = [Regions.of(tile.keep, outline) for tile in tiles]
        self.is_outside = [False] * len(tiles)
        self.interruptions: list[Box] = []

    def remember(self, index: int) -> SheetMemory:
        """How a sheet stands by now, to be restored if what comes next does not fit."""
        return SheetMemory(
            self._boards[index].remember(),
            len(self.items[index]),
            len(self.interruptions),
            self.is_outside[index],
            self._ink_left[index],
        )

    def restore(self, index: int, memory: SheetMemory) -> None:
        """Take off a sheet whatever was placed since, which was placed on it alone."""
        self._boards[index].restore(memory.cells)
        del self.items[index][memory.item_count :]
        del self.interruptions[memory.interruption_count :]
        self.is_outside[index] = memory.is_outside
        self._ink_left[index] = memory.ink_left

    def sheet_of(self, point: Point) -> int:
        """The place in the tiling of the sheet that shows a point."""
        return self._sheets(point)[0]

    def put(
        self, note: Note, ways: _Ways = (*WAYS_INSIDE, *WAYS_OUTSIDE), *, whatever_ink: bool = False
    ) -> int | None:
        """Place a note: inside the outline, if need be over a centre line, else outside.

        A sheet takes it that has ink left for it, or, if it must be told ``whatever_ink`` it takes, one
        that has none. Gives the place in the tiling of the sheet, None if none took it.
        """
        sheets = self._list_sheets(note)
        for order in filter(None, (sheets[:_NEAREST], sheets[_NEAREST:] if self.is_lean else [])):
            index = self._put_on(note, order, ways, whatever_ink=whatever_ink)
            if index is not None:
                return index
        return None

    def _put_on(
        self, note: Note, order: Sequence[int], ways: _Ways, *, whatever_ink: bool
    ) -> int | None:
        """Place a note on one of some sheets."""
        blocks = tuple(block.lean() for block in note.blocks) if self.is_lean else note.blocks
        tries = list(product(blocks, order))
        affordable = [(block, index) for block, index in tries if block.ink <= self._ink_left[index]]
        needs_more = whatever_ink and len(affordable) < len(tries)
        dear = sorted(tries, key=lambda each: each[0].ink) if needs_more else []
        for chosen in (affordable, dear):
            for (where, crossing), (block, index) in product(ways, chosen):
                if self._take(note, block, index, where, crossing):
                    return index
        return None

    def _take(self, note: Note, block: Block, index: int, where: Where, crossing: Cover) -> bool:
        """Place a block of a note on a part of a sheet, if there is room."""
        shape, boxes = plain_shape(block.size, crossing), self.regions[index].choose(where)
        if note.within is not None:
            boxes = tuple(box.common(note.within) for box in boxes)
        box = self._boards[index].take(shape, boxes, note.near)
        if box is None:
            return False
        self.items[index].extend(block.draw(box))
        self.spend(index, block.ink)
        self.is_outside[index] |= where is Where.OUTSIDE
        self.interruptions += [box] if crossing else []
        return True

    def spend(self, index: int, ink: float) -> None:
        """Note how much of a sheet's ink, mm², something takes that is drawn on it."""
        self._ink_left[index] -= ink

    def stamp(self, block: Block, corners: Sequence[Point], of: Point) -> bool:
        """Place a block at the first of the corners that is clear, inside the outline if it can be."""
        index = self._sheets(of)[0]
        boxes = [Box.of(corner, block.size) for corner in corners]
        for region in (self.regions[index].inside, self.regions[index].keep):
            for box in boxes:
                if region.holds(box) and self._boards[index].is_clear(box):
                    self._boards[index].mark(box.grown(_APART))
                    self.items[index].extend(block.draw(box))
                    return True
        return False

    def _list_sheets(self, note: Note) -> list[int]:
        """The sheets on which a note may stand, in the order of their distance from its place."""
        if note.of is not None:
            return self._sheets(note.of)[:1]
        line = note.line
        return [
            index
            for index in self._sheets(note.near)
            if line is None or shows_line(line, self._tiles[index].keep)
        ]

    def _sheets(self, point: Point) -> list[int]:
        """The sheets in the order of their distance from a point."""
        indices: Iterable[int] = range(len(self._tiles))
        return sorted(indices, key=lambda index: _distance(self._tiles[index].keep, point))


def shows_line(line: Line, keep: Box) -> bool:
    """Whether a sheet shows enough of an upright or level line to name it."""
    shown, whole = line.box.common(keep), max(line.box.size)
    return min(shown.size) >= 0 and max(shown.size) >= min(_SHORTEST, whole)


def _distance(box: Box, point: Point) -> float:
    """From a point to a box, mm squared."""
    dx = max(box.x0 - point.x, 0.0, point.x - box.x1)
    dy = max(box.y0 - point.y, 0.0, point.y - box.y1)
    return dx * dx + dy * dy
