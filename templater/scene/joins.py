"""How sheets find each other: trim lines, laps, and marks that meet across each seam.

At each seam the sheet to the right or below is cut on its trim line and laid over the other's
lap. A join mark is a line across the seam with a diamond on it; both sheets draw all of it, each
shows its half, and the halves meet when the sheets lie right.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import TypeAlias

from templater.drawing import Anchor, Item, Line, Polyline, Words
from templater.geometry import Box, Point
from templater.lettering import text_width, words_box
from templater.printing.model import Seam, Tile, Tiling
from templater.scene.blocks import Block, Row
from templater.scene.board import Board
from templater.scene.lines import FINE, SMALL, THIN, short_dash

JoinMarks: TypeAlias = dict[str, list[Item]]
"""For each sheet, by its name, what is drawn at its seams."""

_REACH = 7.0
_HALF = 2.5
_WORDS_AT = 8.0
_SHORT = 60.0
_PLACES = ((0.2, 0.26, 0.14, 0.32, 0.38), (0.8, 0.74, 0.86, 0.68, 0.62))
_PLACES_ON_SHORT = ((0.5, 0.3, 0.7, 0.4, 0.6),)
_LAP_PLACES = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8)


def draw_joins(tiling: Tiling, extent: Box, board: Board) -> JoinMarks:
    """Draw every seam on both of its sheets as far as the template reaches, and take its room."""
    drawn: JoinMarks = {tile.name: [] for tile in tiling.tiles}
    tiles = {tile.name: tile for tile in tiling.tiles}
    joins = [_Join(_within(seam, extent)) for seam in tiling.seams]
    for join in joins:
        seam = join.seam
        drawn[seam.under].append(Line(seam.start, seam.end, FINE, short_dash(FINE)))
        drawn[seam.over].append(Line(seam.start, seam.end, FINE))
        for at in join.choose_places(board):
            for half in join.halves(at):
                drawn[half.sheet] += half.items
                board.take_across(half.box)
        drawn[seam.under] += join.write_on_lap(tiles[seam.under], board)
    for join in joins:
        board.block(join.line_box)
    for join in joins:
        drawn[join.seam.over] += join.write_on_trim(tiles[join.seam.over].keep.common(extent), board)
    return drawn


def _within(seam: Seam, extent: Box) -> Seam:
    """The seam as far as it lies on the template."""
    start, end = (
        Point(min(max(point.x, extent.x0), extent.x1), min(max(point.y, extent.y0), extent.y1))
        for point in (seam.start, seam.end)
    )
    return Seam(seam.under, seam.over, start, end)


@dataclass(frozen=True, slots=True)
class _Half:
    """One sheet's half of a join mark, with the other sheet's name."""

    sheet: str
    items: tuple[Item, ...]
    box: Box


@dataclass(frozen=True, slots=True)
class _Join:
    """Draws one seam; ``out`` runs across it away from the sheet that lies on top."""

    seam: Seam

    @property
    def upright(self) -> bool:
        """Whether the sheets stand side by side."""
        return self.seam.start.x == self.seam.end.x

    @property
    def line_box(self) -> Box:
        """The room of the seam's line."""
        start, end = self.seam.start, self.seam.end
        return Box(
            min(start.x, end.x), min(start.y, end.y), max(start.x, end.x), max(start.y, end.y)
        ).grown(1)

    def along(self, fraction: float) -> Point:
        """A point of the seam."""
        start, end = self.seam.start, self.seam.end
        return Point(start.x + (end.x - start.x) * fraction, start.y + (end.y - start.y) * fraction)

    def choose_places(self, board: Board) -> Iterable[Point]:
        """Where marks cross the seam: two, or one on a short seam, clear of holes and lines."""
        box = self.line_box
        short = max(box.width, box.height) < _SHORT
        for fractions in _PLACES_ON_SHORT if short else _PLACES:
            for at in map(self.along, fractions):
                if all(board.has_room(half.box) for half in self.halves(at)):
                    yield at
                    break

    def halves(self, at: Point) -> tuple[_Half, _Half]:
        """Both halves of a mark; the sheet on top lies to the right or below."""
        away = -1.0 if self.upright else 1.0
        return (
            self._half(at, self.seam.under, self.seam.over, away),
            self._half(at, self.seam.over, self.seam.under, -away),
        )

    def _half(self, at: Point, sheet: str, other: str, side: float) -> _Half:
        def place(out: float, aside: float) -> Point:
            return at.moved(side * out, aside) if self.upright else at.moved(aside, side * out)

        line = Line(at, place(_REACH, 0), THIN)
        diamond = Polyline((place(0, _HALF), place(_HALF, 0), place(0, -_HALF)), THIN)
        words = self._name(f"to {other}", place(_WORDS_AT, 0), side)
        box = Box.around((line.box, diamond.box, words_box(words))).grown(0.5)
        return _Half(sheet, (line, diamond, words), box)

    def _name(self, text: str, at: Point, side: float) -> Words:
        """The other sheet's name at the end of a join mark."""
        if self.upright:
            anchor = Anchor.START if side > 0 else Anchor.END
            return Words(at.moved(0, -SMALL / 2), text, SMALL, anchor, bold=True)
        below = 0.5 if side > 0 else -SMALL - 0.5
        return Words(at.moved(0, below), text, SMALL, Anchor.MIDDLE, bold=True)

    def write_on_lap(self, under: Tile, board: Board) -> Iterable[Item]:
        """What is printed on the lap that the sheet on top will cover."""
        start = self.seam.start
        depth = under.clip.x1 - start.x if self.upright else start.y - under.clip.y0
        text = f"lap: {self.seam.over} lies on this"
        if depth < SMALL * 2 or text_width(text, SMALL) > max(self.line_box.size) - 4:
            return ()
        into = depth / 2 + SMALL / 2
        for at in map(self.along, _LAP_PLACES):
            foot = at.moved(into, 0) if self.upright else at.moved(0, -into)
            words = Words(foot, text, SMALL, Anchor.MIDDLE, turned=self.upright)
            box = words_box(words)
            if board.has_room(box):
                board.take_across(box)
                return (words,)
        return ()

    def write_on_trim(self, keep: Box, board: Board) -> Iterable[Item]:
        """What is said along the line that is cut."""
        row = Row(f"trim on this line, lay over {self.seam.under}")
        block = Block((row,), turned=self.upright)
        depth = 12.0
        strip = keep._replace(x1=keep.x0 + depth) if self.upright else keep._replace(y0=keep.y1 - depth)
        box = board.take(block.size, (strip,), self.along(0.5))
        return block.draw(box) if box is not None else ()
