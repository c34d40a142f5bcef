"""How sheets find each other: trim lines, laps, and marks that meet across each seam.

At each seam the sheet to the right or below is cut on its trim line and laid over the other's
lap. A join mark is a line across the seam with a diamond on it; both sheets draw all of it, each
shows its half, and the halves meet when the sheets lie right.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import product
from typing import TypeAlias

from templater.drawing import Anchor, Item, Line, Polyline, Words
from templater.geometry import Box, Point
from templater.lettering import text_width, words_box
from templater.printing.model import Seam, Tile, Tiling
from templater.scene.lines import FINE, SMALL, THIN, short_dash
from templater.scene.template.board import ALL, LINES, NOTHING, Board, Cover

JoinMarks: TypeAlias = dict[str, list[Item]]
"""For each sheet, by its name, what is drawn at its seams."""

_REACH = 7.0
_HALF = 2.5
_BESIDE = 0.9
_CLEAR = 1.0
_SHORT = 60.0
_TRIM_WORDS = 4.5
_PLACES = (0.2, 0.8)
_PLACES_ON_SHORT = (0.5,)
_SHIFTS = (0.0, *(sign * step / 40 for step in range(1, 13) for sign in (1, -1)))
_WORDS_PLACES = (0.5, 0.45, 0.55, 0.4, 0.6, 0.35, 0.65, 0.3, 0.7, 0.2, 0.8)


def draw_joins(
    tiling: Tiling, extent: Box, boards: Mapping[str, Board], interruptions: list[Box]
) -> JoinMarks:
    """Draw every seam on both of its sheets as far as the template reaches, and take its room.

    ``boards`` are those of the sheets, by their names. Marks that stand on a centre line join the
    interruptions.
    """
    drawn: JoinMarks = {tile.name: [] for tile in tiling.tiles}
    joins = [_Join(_within(seam, extent)) for seam in tiling.seams]
    at_sheet: dict[str, list[_Join]] = {tile.name: [] for tile in tiling.tiles}
    for join in joins:
        at_sheet[join.seam.under].append(join)
        at_sheet[join.seam.over].append(join)
    for join in joins:
        seam = join.seam
        near = (*at_sheet[seam.under], *at_sheet[seam.over])
        others = [each.line_box for each in near if each is not join]
        drawn[seam.under].append(Line(seam.start, seam.end, FINE, short_dash(FINE)))
        drawn[seam.over].append(Line(seam.start, seam.end, FINE))
        for crossing, halves in join.choose_marks(boards, others):
            for half in halves:
                drawn[half.sheet] += half.items
                boards[half.sheet].mark(half.box)
                interruptions += [half.box.grown(_CLEAR)] if crossing else []
    for join in joins:
        for sheet in (join.seam.under, join.seam.over):
            boards[sheet].mark(join.line_box)
    return drawn


def write_on_seams(
    tiling: Tiling, extent: Box, boards: Mapping[str, Board], interruptions: list[Box]
) -> Iterable[tuple[str, Words]]:
    """Say on every seam, where there is room, what is cut and what lies on what, sheet by sheet."""
    tiles = {tile.name: tile for tile in tiling.tiles}
    for join in (_Join(_within(seam, extent)) for seam in tiling.seams):
        under, over = join.seam.under, join.seam.over
        for sheet, choices in (
            (under, join.write_on_lap(tiles[under])),
            (over, join.write_on_trim()),
        ):
            for words in choices:
                box = words_box(words)
                if boards[sheet].is_clear(box, ALL & ~join.beside):
                    interruptions += [] if boards[sheet].is_clear(box) else [box.grown(_CLEAR)]
                    boards[sheet].mark(box)
                    yield sheet, words
                    break


def _within(seam: Seam, extent: Box) -> Seam:
    """The seam as far as it lies on the template."""
    start, end = (
        Point(min(max(point.x, extent.x0), extent.x1), min(max(point.y, extent.y0), extent.y1))
        for point in (seam.start, seam.end)
    )
    return Seam(seam.under, seam.over, start, end)


@dataclass(frozen=True, slots=True)
class _Half:
    """One sheet's half of a join mark, with the other sheet's name, and the room it takes.

    ``name_box`` is the name's own room; without a name that of the half.
    """

    sheet: str
    items: tuple[Item, ...]
    box: Box
    name_box: Box


def _meet(halves: Iterable[_Half], lines: Iterable[Box]) -> bool:
    """Whether a half of a mark, or its name, stands on one of the lines."""
    return any(half.box.meets(line) for half, line in product(halves, lines))


@dataclass(frozen=True, slots=True)
class _Join:
    """Draws one seam; ``out`` runs across it away from the sheet that lies on top."""

    seam: Seam

    @property
    def upright(self) -> bool:
        """Whether the sheets stand side by side."""
        return self.seam.start.x == self.seam.end.x

    @property
    def beside(self) -> Cover:
        """The centre line that may run along the seam."""
        return Cover.UPRIGHT if self.upright else Cover.ACROSS

    @property
    def line_box(self) -> Box:
        """The room of the seam's line."""
        start, end = self.seam.start, self.seam.end
        return Box(
            min(start.x, end.x), min(start.y, end.y), max(start.x, end.x), max(start.y, end.y)
        ).grown(1)

    def holds(self, at: Point, half: float) -> bool:
        """Whether what reaches so far to both sides of a point lies along the seam."""
        start, end = self.seam.start, self.seam.end
        if self.upright:
            return start.y + half <= at.y <= end.y - half
        return start.x + half <= at.x <= end.x - half

    def along(self, fraction: float) -> Point:
        """A point of the seam."""
        start, end = self.seam.start, self.seam.end
        return Point(start.x + (end.x - start.x) * fraction, start.y + (end.y - start.y) * fraction)

    def choose_marks(
        self, boards: Mapping[str, Board], others: Sequence[Box]
    ) -> Iterable[tuple[Cover, tuple[_Half, _Half]]]:
        """Two marks across the seam, or one on a short seam, and the lines on which each stands.

        ``others`` is the room of the other seams' lines, on which no mark may stand.
        """
        short = max(self.line_box.size) < _SHORT
        for wanted in _PLACES_ON_SHORT if short else _PLACES:
            mark = self._find_place(boards, others, wanted)
            if mark is not None:
                yield mark

    def _find_place(
        self, boards: Mapping[str, Board], others: Sequence[Box], wanted: float
    ) -> tuple[Cover, tuple[_Half, _Half]] | None:
        """A mark near a place along the seam, clear of all but a centre or stud line along it."""
        across = self.beside | Cover.STUD
        for named, shift in product((True, False), _SHIFTS):
            at = self.along(wanted + shift)
            halves = self.halves(at, named=named)
            if not self.holds(at, _HALF) or _meet(halves, others):
                continue
            if all(boards[half.sheet].is_clear(half.box, ALL & ~across) for half in halves):
                clear = all(boards[half.sheet].is_clear(half.box) for half in halves)
                return NOTHING if clear else across, halves
        return self._find_place_on_lines(boards, others, wanted)

    def _find_place_on_lines(
        self, boards: Mapping[str, Board], others: Sequence[Box], wanted: float
    ) -> tuple[Cover, tuple[_Half, _Half]] | None:
        """A mark whose lines cross the datum or a level line, which stays whole, where all others do.

        A name stands clear of these, or the half goes without.
        """
        for at in (self.along(wanted + shift) for shift in _SHIFTS):
            plain, named = self.halves(at, named=False), self.halves(at)
            if (
                self.holds(at, _HALF)
                and not _meet(plain, others)
                and all(boards[half.sheet].is_clear(half.box, ALL & ~LINES) for half in plain)
            ):
                first, second = (
                    full
                    if boards[full.sheet].is_clear(full.name_box) and not _meet([full], others)
                    else bare
                    for full, bare in zip(named, plain, strict=True)
                )
                return NOTHING, (first, second)
        return None

    def halves(self, at: Point, *, named: bool = True) -> tuple[_Half, _Half]:
        """Both halves of a mark; the sheet on top lies to the right or below.

        On a seam too short for its name a mark goes without.
        """
        away = -1.0 if self.upright else 1.0
        under = self._half(at, f"to {self.seam.over}" if named else "", away)
        over = self._half(at, f"to {self.seam.under}" if named else "", -away)
        return _Half(self.seam.under, *under), _Half(self.seam.over, *over)

    def _half(self, at: Point, text: str, side: float) -> tuple[tuple[Item, ...], Box, Box]:
        """One half of a mark, its room, and that of its name."""

        def place(out: float, aside: float) -> Point:
            return at.moved(side * out, aside) if self.upright else at.moved(aside, side * out)

        line = Line(at, place(_REACH, 0), THIN)
        diamond = Polyline((place(0, _HALF), place(_HALF, 0), place(0, -_HALF)), THIN)
        box = Box.around((line.box, diamond.box))
        if not text:
            return (line, diamond), box, box
        words = self._name(text, place(_HALF + _BESIDE, 0), side)
        name_box = words_box(words)
        return (line, diamond, words), Box.around((box, name_box)), name_box

    def _name(self, text: str, at: Point, side: float) -> Words:
        """The other sheet's name beside the line of a join mark."""
        if self.upright:
            anchor = Anchor.START if side > 0 else Anchor.END
            return Words(at.moved(0, _BESIDE), text, SMALL, anchor, bold=True)
        foot = 0.0 if side > 0 else -SMALL
        return Words(at.moved(_BESIDE, foot), text, SMALL, bold=True)

    def write_on_lap(self, under: Tile) -> Iterable[Words]:
        """What is printed on the lap that the sheet on top will cover, in the places to try."""
        start = self.seam.start
        depth = under.clip.x1 - start.x if self.upright else start.y - under.clip.y0
        return self._write_along(f"lap: {self.seam.over} lies on this", depth / 2)

    def write_on_trim(self) -> Iterable[Words]:
        """What is said along the line that is cut, in the places to try."""
        return self._write_along(f"trim on this line, lay over {self.seam.under}", _TRIM_WORDS)

    def _write_along(self, text: str, away: float) -> Iterable[Words]:
        """Words that run along the seam, to its right or below it."""
        into, half = away + SMALL / 2, text_width(text, SMALL) / 2
        for at in map(self.along, _WORDS_PLACES):
            if self.holds(at, half):
                foot = at.moved(into, 0) if self.upright else at.moved(0, -into)
                yield Words(foot, text, SMALL, Anchor.MIDDLE, turned=self.upright)
