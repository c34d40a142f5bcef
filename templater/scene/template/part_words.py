"""What a template says that is not printed whole: what is left out, what can be checked of the rest."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import dist

from templater.geometry import ORIGIN, Box, Point
from templater.lengths import format_both
from templater.mounting.model import Mark
from templater.placement.model import Neighbour, PlacedPiece, Plan
from templater.printing.model import Coverage, Tiling
from templater.scene.contents import is_ledge
from templater.scene.template.blocks import Block, Row, wrapped
from templater.scene.template.guide_lines import SAME_MM, TemplateLines
from templater.scene.template.labels import Note
from templater.scene.template.line_words import NARROW, WIDE, name_neighbour, near_side, side_half
from templater.scene.wording import above_or_below, format_size_both, from_datum

_WIDTHS = (WIDE, NARROW)
_MOST_SINGLY = 3
"""Of so many holes each is measured from the one before."""


@dataclass(frozen=True, slots=True)
class PartWords:
    """Writes the notes that only a band or a card has."""

    piece: PlacedPiece
    plan: Plan
    lines: TemplateLines
    tiling: Tiling

    def write_paper(self) -> Note:
        """What the sheets show and leave out, and what they must measure."""
        is_band = self.tiling.cover is Coverage.BAND
        heading, *texts = self._describe_band() if is_band else self._describe_card()
        brief = texts[:1] if is_band else [*self._measure_from_centre(self.lines.marks)]
        texts.append("Left is your left as you face the wall.")
        hang = None if is_ledge(self.piece, self.plan) else self.piece.hang
        if is_band and hang is not None:  # a card has too little room
            texts.append(f"Hangs by {hang.by.value}.")
        blocks = tuple(
            Block(
                (
                    *wrapped(heading, room, bold=True),
                    *(row for text in told for row in wrapped(text, room)),
                )
            )
            for told in (texts, brief)
            for room in _WIDTHS
        )
        (width, height) = self.piece.size
        return Note(blocks, Point(width * 0.3, height - 100.0))

    def write_corner(self) -> Iterable[Note]:
        """How the sheet of a band that shows the bottom left corner is set on the wall."""
        if self.tiling.cover is not Coverage.BAND:
            return
        (width, height), show = self.piece.size, self._show
        texts = [
            "This sheet joins no other: set it by measure.",
            f"straight below the top left corner: {show(height)}",
            f"from the top right corner: {show(self.piece.size.diagonal)}",
        ]
        blocks = tuple(
            Block(
                (
                    *wrapped("BOTTOM LEFT CORNER", room, bold=True),
                    *(row for text in texts for row in wrapped(text, room)),
                )
            )
            for room in _WIDTHS
        )
        yield Note(blocks, Point(min(width / 2, 60.0), 60.0), ORIGIN)

    def write_edge(self) -> Iterable[Note]:
        """What the line along the top of a card is, which may be all that it shows of the outline."""
        (width, height) = self.piece.size
        block = Block((Row("top edge of the frame", bold=True),))
        for tile in self.tiling.tiles if self.tiling.cover is Coverage.CARD else ():
            shown = tile.keep.common(Box(0.0, 0.0, width, height))
            if tile.keep.y1 > height > tile.keep.y0:
                near = Point(shown.centre.x, height - block.size.height / 2)
                yield Note((block,), near, near, shown._replace(y0=height - 2 * block.size.height))

    def write_sides(self) -> Iterable[Note]:
        """How far the nearest hole of the neighbour on each side is from one of ours, else the gap."""
        for neighbour in self.piece.neighbours:
            texts = [*self._measure_to(neighbour)] or [f"gap {self._show(neighbour.gap_mm)}"]
            blocks = tuple(
                Block(
                    (
                        *wrapped(name_neighbour(neighbour), room, bold=True),
                        *(row for text in texts for row in wrapped(text, room)),
                    )
                )
                for room in _WIDTHS
            )
            side, size = neighbour.side, self.piece.size
            yield Note(blocks, near_side(side, size), within=side_half(side, size))

    def _describe_band(self) -> Iterable[str]:
        """The heading, then what to know of a band."""
        show, lines = self._show, self.lines
        corner = self.tiling.tiles[-1].name
        yield "BAND: the top edge, both top corners and every hole."
        yield f"Not printed: the rest of this piece, but for its bottom left corner (sheet {corner})."
        yield self._size
        yield f"Taped up, check: top edge, corner to corner: {show(self.piece.size.width)}"
        for mark in lines.marks[:1]:
            drop = self.piece.size.height - mark.hang.y
            of_which = " of hole 1" if len(lines.levels) > 1 else ""
            if drop >= SAME_MM:
                yield f"top edge down to the level line{of_which}, at both ends: {show(drop)}"
        yield "Cut on the outline where it is printed."

    def _describe_card(self) -> Iterable[str]:
        """The heading, then what to know of a card."""
        marks, show = self.lines.marks, self._show
        if marks:
            yield f"CARD; {self._size}"
        else:
            yield "CARD: only the middle of the top edge is printed. No hole is marked."
            yield self._size
        top = self.piece.box.y1
        if self.lines.has_datum or self.lines.datum_y < 0:  # else the datum is told from this edge
            yield f"top edge, from the datum: {from_datum(self.plan, top)}"
        yield f"top edge, above the floor at the datum's place: {show(top)}"
        yield from self._measure_between(marks)
        yield from self._measure_from_centre(marks)

    def _measure_between(self, marks: Sequence[Mark]) -> Iterable[str]:
        """From hole to hole; of a long row from end to end."""
        numbers = range(1, len(marks) + 1)
        pairs = pairwise(numbers) if len(marks) <= _MOST_SINGLY else [(1, len(marks))]
        for one, other in pairs:
            span = dist(marks[one - 1].hole, marks[other - 1].hole)
            yield f"On the wall, check: hole {one} to hole {other}: {self._show(span)}"

    def _measure_from_centre(self, marks: Iterable[Mark]) -> Iterable[str]:
        """How far a hole is from the centre line that its sheet does not show."""
        centre = self.piece.size.width / 2
        for number, mark in enumerate(marks, start=1):
            shown = [tile.keep for tile in self.tiling.tiles if tile.keep.has(mark.hole)]
            if self.tiling.seams or any(keep.x0 < centre < keep.x1 for keep in shown):
                continue
            away = mark.hole.x - centre
            side = "right" if away > 0 else "left"
            yield f"hole {number} is {self._show(abs(away))} {side} of the piece's centre line"

    def _measure_to(self, neighbour: Neighbour) -> Iterable[str]:
        """From a hole of this piece to the nearest hole of its neighbour."""
        others = [piece for piece in self.plan.pieces if piece.name == neighbour.name]
        pairs = [
            (dist(own.hole, mark.hole), number, other_number, own.hole, mark.hole)
            for other in others
            for other_number, mark in enumerate(other.marks, start=1)
            for number, own in enumerate(self.piece.marks, start=1)
        ]
        if not pairs:
            return
        _, number, other_number, own, other = min(pairs)
        across, up = other.x - own.x, other.y - own.y
        text = f"from hole {number} to its hole {other_number}:"
        if abs(across) >= SAME_MM:
            text += f" {self._show(abs(across))} {'right' if across > 0 else 'left'},"
        yield f"{text} {above_or_below(self.plan, up) if abs(up) >= SAME_MM else 'level with it'}"

    @property
    def _size(self) -> str:
        return f"whole piece: {format_size_both(self.piece.size, self.plan.units)}"

    def _show(self, length_mm: float) -> str:
        return format_both(length_mm, self.plan.units)
