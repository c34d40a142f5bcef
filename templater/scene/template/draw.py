"""One piece at full size: outline, centre lines, level line, holes, and what they measure.

Template coordinates: mm from the frame's bottom-left corner, y up. Everything that must survive
the scissors stands inside the outline where there is room, and wholly on one sheet.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import partial
from itertools import chain, product
from operator import itemgetter
from typing import NamedTuple

from templater.drawing import Item, Line
from templater.geometry import ORIGIN, Box, Size
from templater.placement.model import PlacedPiece, Plan
from templater.printing.error import Errors
from templater.printing.model import Coverage, Shape, Tile, Tiling
from templater.scene.marks import ARM
from templater.scene.template.board import Board, Cover
from templater.scene.template.guide_lines import TemplateLines
from templater.scene.template.hole_words import HoleWords
from templater.scene.template.ink import measure_ink
from templater.scene.template.joins import JoinMarks, draw_joins, write_on_seams
from templater.scene.template.labels import WAYS_INSIDE, WAYS_OUTSIDE, Labels, Note
from templater.scene.template.line_words import LineWords, TemplateWords
from templater.scene.template.part_words import PartWords
from templater.scene.template.piece_tag import draw_piece_tag, place_piece_tag
from templater.scene.template.safety_words import SafetyWords
from templater.scene.template.sheet_block import (
    SheetBlock,
    SheetNames,
    draw_sheet_block,
    place_sheet_block,
)

_LINE_ROOM = 0.8
_BESIDE = 10.0
"""Blank paper beside a template that is printed on one large sheet, mm."""

_SEAM_INK, _BLOCK_INK = 30.0, 600.0
"""What the words along a seam take, and at most what a block with its rulers does, mm² of ink."""

_RESERVED_INK, _NOTES_INK = 250.0, 150.0
"""What small sheets keep for level line, hooks and cautions, and for what must be known of a piece."""

_HOLE_ROOM = ARM + 1
_RING_CORE = 4.0
_END = 15.0
"""So much of each end of the upright centre line is drawn, mm; of a small piece an eighth."""

_MOST_FULL = 2
"""Of so many holes each may tell everything; more tell what they share once."""


@dataclass(frozen=True, slots=True)
class TemplateDrawing:
    """A piece's template, in template coordinates.

    ``lines`` are clipped by each sheet; ``labels`` and ``furniture`` stand wholly on the sheet of
    the same place in the tiling; ``whole`` takes the furniture's place where the template is one
    drawing. ``area`` holds everything drawn; ``is_complete`` tells that every word found room.
    """

    size: Size
    lines: tuple[Item, ...]
    labels: tuple[tuple[Item, ...], ...]
    furniture: tuple[tuple[Item, ...], ...]
    whole: tuple[Item, ...]
    area: Box
    is_complete: bool = True


def template_extent(piece: PlacedPiece) -> Box:
    """What must be on paper: the outline, and every hole's cross where it passes the outline."""
    crosses = (Box(*mark.hole, *mark.hole).grown(ARM) for mark in piece.template_marks())
    return Box.around((Box.of(ORIGIN, piece.size), *crosses))


def template_shape(piece: PlacedPiece) -> Shape:
    """What matters of a piece's template where it is cut into sheets."""
    marks = piece.template_marks()
    return Shape(
        Box.of(ORIGIN, piece.size),
        template_extent(piece),
        tuple(mark.hole for mark in marks),
        tuple(mark.hang for mark in marks),
    )


def whole_tiling(piece: PlacedPiece) -> Tiling:
    """The whole template on one sheet that is as large as it must be."""
    shown = template_extent(piece).grown(_BESIDE)
    return Tiling((Tile("A1", shown, shown, shown.size, ORIGIN),), (), ())


def draw_template(
    piece: PlacedPiece, plan: Plan, tiling: Tiling, names: SheetNames, *, errors: Errors | None = None
) -> TemplateDrawing:
    """Draw a piece's template for the sheets it will be printed on.

    Lines and holes come first; then the words find room, in the order of their worth to the person
    on the ladder. ``errors`` are told where they are known and find room.
    """
    return _Filling(piece, plan, tiling, names, errors).draw()


class _Holes(NamedTuple):
    """How a sheet's holes are told of: fully; before its block and rulers find room; beside each."""

    full: bool
    first: bool
    beside: bool = False


_MODES = (
    _Holes(full=True, first=True, beside=True),
    _Holes(full=False, first=True, beside=True),
    _Holes(full=True, first=True),
    _Holes(full=False, first=True),
    _Holes(full=False, first=False),
)


@dataclass(frozen=True, slots=True)
class _Sheet:
    """How a sheet was filled: its block, and which of its holes tell too little beside them."""

    block: SheetBlock
    not_full: tuple[int, ...]
    untold: tuple[int, ...]

    @property
    def faults(self) -> int:
        """How much is wrong, to choose between fillings."""
        return self.block.crowding + len(self.untold)


class _Filling:
    """A template's sheets as they fill up; ``_lost`` counts the notes that found no room.

    ``_deferred`` counts those which a template that shares a page leaves to the overview.
    """

    def __init__(
        self,
        piece: PlacedPiece,
        plan: Plan,
        tiling: Tiling,
        names: SheetNames,
        errors: Errors | None,
    ) -> None:
        self._piece, self._plan, self._tiling, self._names = piece, plan, tiling, names
        self._lost = self._deferred = 0
        self._lines = TemplateLines.of(piece, plan)
        lean = tiling.cover is Coverage.CARD and len(tiling.tiles) == 1 < len(self._lines.marks)
        self._holes = HoleWords(piece, plan, self._lines.marks, tiling.near_seam, errors, lean)
        self._boards = _prepare_boards(tiling, self._lines)
        outline = Box.of(ORIGIN, piece.size)
        self._labels = Labels(tiling.tiles, outline, self._boards, spares_ink=not tiling.is_shared)
        self._number_holes()
        by_name = {tile.name: board for tile, board in zip(tiling.tiles, self._boards, strict=True)}
        extent = template_extent(piece)
        self._joins: JoinMarks = draw_joins(tiling, extent, by_name, self._labels.interruptions)
        self._spend_on_lines()
        reserved = _RESERVED_INK + (_NOTES_INK if piece.notes else 0.0)
        self._reserve(reserved)
        self._sheets = [self._fill_sheet(index) for index in range(len(tiling.tiles))]
        self._reserve(-reserved)
        words = TemplateWords(piece, plan, self._lines, errors, self._labels.is_lean)
        self._say_the_rest(words)
        for sheet, item in write_on_seams(tiling, extent, by_name, self._labels.interruptions):
            self._joins[sheet].append(item)

    def _spend_on_lines(self) -> None:
        """Note the ink of a sheet's lines, holes and seams, and at most that of its block and rulers."""
        lines = (*(line for line, _ in self._lines.list_lines()), *self._lines.draw_holes())
        seamed = Counter(name for seam in self._tiling.seams for name in (seam.under, seam.over))
        for index, tile in enumerate(self._tiling.tiles):
            ink = measure_ink(lines, tile.clip) + measure_ink(self._joins[tile.name])
            self._labels.spend(index, ink + seamed[tile.name] * _SEAM_INK + _BLOCK_INK)

    def _reserve(self, ink: float) -> None:
        """Keep ink of small sheets from the words of holes, for level line, hooks and cautions."""
        if self._labels.is_lean:
            for index in range(len(self._tiling.tiles)):
                self._labels.spend(index, ink)

    def _number_holes(self) -> None:
        """Put the number of each hole beside its ring, then close the ground round the rings."""
        for index, mark in enumerate(self._lines.marks):
            self._lost += not self._labels.stamp(*self._holes.number(index), mark.hole)
        for board in self._boards:
            for mark in self._lines.marks:
                board.mark(Box(*mark.hole, *mark.hole).grown(_HOLE_ROOM))

    def _fill_sheet(self, index: int) -> _Sheet:
        """Put on a sheet what must stand on it: its holes' words, its block and its rulers."""
        holes = [
            number
            for number, mark in enumerate(self._lines.marks)
            if self._labels.sheet_of(mark.hole) == index
        ]
        several = len(holes) > 1
        modes = _MODES if several else _MODES[2:] if holes else _MODES[2:3]
        memory = self._labels.remember(index)
        tried: list[tuple[tuple[int, bool], _Holes]] = []
        for mode in modes:
            sheet = self._try_sheet(index, holes, mode)
            worth = sheet.faults, several and sheet.block.is_outside
            if worth == (0, False):
                return sheet
            tried.append((worth, mode))
            self._labels.restore(index, memory)
        _, best = min(tried, key=itemgetter(0))
        return self._try_sheet(index, holes, best)

    def _try_sheet(self, index: int, holes: Sequence[int], mode: _Holes) -> _Sheet:
        """Fill a sheet in one way."""
        labels = self._labels
        full = mode.full and not self._holes.lean and len(self._lines.marks) <= _MOST_FULL
        notes = [self._holes.write_hole(hole, full=full) for hole in holes]
        put = [self._put_hole(note, mode) for note in notes] if mode.first else []
        block = self._place_block(index)
        labels.interruptions += block.interruptions
        ink = measure_ink(self._draw_block(block, index, fold=True, more=True))
        labels.spend(index, ink - _BLOCK_INK)
        put = put if mode.first else [self._put_hole(note, mode) for note in notes]
        untold = tuple(hole for hole, place in zip(holes, put, strict=True) if place is None)
        return _Sheet(block, () if full else tuple(holes), untold)

    def _put_hole(self, note: Note, mode: _Holes) -> int | None:
        """Place a hole's note: if it can be beside it, inside the outline and nearest to it."""
        put = partial(self._labels.put, whatever_ink=True)
        index = put(note, WAYS_INSIDE) if mode.beside else None
        return put(replace(note, within=None)) if index is None else index

    def _place_block(self, index: int) -> SheetBlock:
        """Find room for a sheet's block and rulers, or for the tag of what is cut out of a page."""
        tile, board, regions = (
            self._tiling.tiles[index],
            self._boards[index],
            self._labels.regions[index],
        )
        if self._tiling.is_shared:
            return place_piece_tag(tile, board, regions, self._piece.name)
        return place_sheet_block(tile, board, regions)

    def _say_the_rest(self, words: TemplateWords) -> None:
        """Place what may stand on any sheet."""
        put = self._labels.put
        notes = [*self._holes.write_key([hole for sheet in self._sheets for hole in sheet.untold])]
        notes += self._holes.write_shared([hole for sheet in self._sheets for hole in sheet.not_full])
        parts = PartWords(self._piece, self._plan, self._lines, self._tiling)
        notes += [*parts.write_corner(), *([] if self._tiling.is_shared else words.write_notes())]
        self._lost += sum(put(note, whatever_ink=True) is None for note in notes)
        lines = [line for line in words.write_lines() if self._shows(line)]
        spared = [line for line in lines if self._labels.is_lean and line.is_upright]
        said_on = [(line, self._put_first(line)) for line in lines if line not in spared]
        safety = SafetyWords(self._piece, self._plan, self._labels.sheet_of)
        holds, supports = [*safety.write_holes()], [*safety.write_supports()]
        minds = [*safety.write_cautions()]
        is_card = self._tiling.cover is Coverage.CARD
        sides = [*(parts.write_sides() if is_card else words.write_sides())]
        is_told = is_card and bool(self._lines.levels)  # a card's level line tells how far the datum is
        datum = [] if is_told else [*words.write_datum_off()]
        paper = [self._describe_paper(words, parts)]
        if self._tiling.is_shared:
            self._lost += self._count_lost(datum, supports, paper)
            self._deferred = self._count_lost(minds, sides, holds)
        else:
            self._lost += self._count_lost(holds, supports, datum, minds)
            said_on += [(line, self._put_first(line)) for line in spared]
            said_on = [each for each in said_on if not self._name_early(each[0])]
            self._lost += self._count_lost(paper, sides)
        for note in (*words.write_hang_point(), *parts.write_edge()):
            put(note)
        for line, said in said_on:
            self._name_again(line, said)

    def _count_lost(self, *notes: Sequence[Note]) -> int:
        """Place notes one after the other; how many found no room."""
        return sum(self._labels.put(note) is None for note in chain.from_iterable(notes))

    def _shows(self, line: LineWords) -> bool:
        """Whether a line is printed; of a band or a card it may be on no sheet."""
        tiling = self._tiling
        return tiling.cover is Coverage.FULL or any(line.is_on(tile.keep) for tile in tiling.tiles)

    def _describe_paper(self, words: TemplateWords, parts: PartWords) -> Note:
        """What the paper must measure, and what it leaves out."""
        if self._tiling.is_shared:
            whole = template_extent(self._piece).grown(_BESIDE)
            return words.write_cut_out(folds=not whole.holds(self._tiling.tiles[0].clip))
        return words.write_paper() if self._tiling.cover is Coverage.FULL else parts.write_paper()

    def _put_first(self, line: LineWords) -> int | None:
        """Place the first note that finds room, inside if any does; the sheet's place in the tiling.

        If there is no ink for any, the last one is, the shortest, whatever it takes, unless the line can
        wait.
        """
        both, notes = (WAYS_INSIDE, WAYS_OUTSIDE), line.notes
        last_first = () if line.can_wait else reversed(notes)
        affordable, dear = product((False,), both, notes), product((True,), both, last_first)
        for whatever_ink, ways, note in chain(affordable, dear):
            index = self._labels.put(note, ways, whatever_ink=whatever_ink)
            if index is not None:
                return index
        self._lost += bool(notes)
        return None

    def _name_early(self, line: LineWords) -> bool:
        """Name a line of which nothing more is said while there is ink: else it is taken for another."""
        if line.notes or self._labels.is_lean:
            return False
        self._name_again(line, None)
        return True

    def _name_again(self, line: LineWords, said_on: int | None) -> None:
        """Name a line on every other sheet that shows it, where there is room."""
        for index, tile in enumerate(self._tiling.tiles):
            note = line.name_on(tile.keep) if index != said_on else None
            if note is not None:
                self._labels.put(note)

    def draw(self) -> TemplateDrawing:
        """Everything that has been placed."""
        tiling, names, labels = self._tiling, self._names, self._labels
        blocks = [sheet.block for sheet in self._sheets]
        lines = [line for line, _ in self._lines.draw_lines(labels.interruptions)]
        more = self._lost > 0
        folds = [
            block.is_outside or outside for block, outside in zip(blocks, labels.is_outside, strict=True)
        ]
        tiles = enumerate(zip(tiling.tiles, blocks, folds, strict=True))
        return TemplateDrawing(
            size=self._piece.size,
            lines=(*lines, *self._lines.draw_holes()),
            labels=tuple(map(tuple, labels.items)),
            furniture=tuple(
                (
                    *self._joins[tile.name],
                    *self._draw_block(block, index, fold=fold, more=more),
                )
                for index, (tile, block, fold) in tiles
            ),
            whole=()
            if tiling.is_shared
            else draw_sheet_block(blocks[0], names, tiling, None, fold=folds[0], more=more),
            area=Box.around((template_extent(self._piece), *(tile.clip for tile in tiling.tiles))),
            is_complete=not (more or any(sheet.faults for sheet in self._sheets)),
        )

    def _draw_block(self, block: SheetBlock, index: int, *, fold: bool, more: bool) -> tuple[Item, ...]:
        """A sheet's block and rulers, or the tag of a template that is cut out of a page."""
        names = self._names
        if self._tiling.is_shared:
            sheet = self._tiling.tiles[index].name
            return draw_piece_tag(block, names, sheet, fold=fold, more=self._deferred > 0)
        return draw_sheet_block(block, names, self._tiling, index, fold=fold, more=more)


def _prepare_boards(tiling: Tiling, lines: TemplateLines) -> list[Board]:
    """A board a sheet, on which the template's lines and the middles of its holes are noted."""
    boards = [Board(tile.clip) for tile in tiling.tiles]
    covers = [(line.box.grown(_LINE_ROOM), cover) for line, cover in lines.draw_lines()]
    for mark in lines.marks:
        (x, y) = mark.hole
        covers += [
            (Box(x - ARM, y, x + ARM, y).grown(_LINE_ROOM), Cover.TAKEN),
            (Box(x, y - ARM, x, y + ARM).grown(_LINE_ROOM), Cover.TAKEN),
            (Box(x, y, x, y).grown(_RING_CORE), Cover.TAKEN),
        ]
        if lines.shows_hang(mark):
            covers.append((Box(*mark.hang, *mark.hang).grown(4.0), Cover.TAKEN))
    if not tiling.is_shared:  # a small one, which its level line sets
        covers += [(box, Cover.PLUMB) for box in _list_ends(lines.centre_up)]
    for board in boards:
        for box, cover in covers:
            if board.area.meets(box):
                board.mark(box, cover)
    return boards


def _list_ends(upright: Line) -> tuple[Box, Box]:
    """The ends of the centre line, which hardly any words interrupt: by them it can be plumbed."""
    (x, low), (_, high) = upright.start, upright.end
    end = min(_END, (high - low) / 8)
    return (
        Box(x, low, x, low + end).grown(_LINE_ROOM),
        Box(x, high - end, x, high).grown(_LINE_ROOM),
    )
