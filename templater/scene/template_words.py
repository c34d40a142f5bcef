"""What a template says: at each hole, on each line, at each side, and of the paper itself."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from templater.geometry import Point
from templater.lengths import format_both
from templater.mounting.model import Mark
from templater.placement.model import PlacedPiece, Plan, Side
from templater.scene.blocks import Block, Row, wrapped
from templater.scene.lines import NORMAL
from templater.scene.marks import ARM
from templater.scene.template_lines import SAME_MM, TemplateLines
from templater.scene.wording import above_or_below, from_datum, from_left_end, from_middle

_WIDTH = 84.0
_NARROW = 56.0
_ARROWS = {Side.LEFT: "←", Side.RIGHT: "→", Side.ABOVE: "↑", Side.BELOW: "↓"}


@dataclass(frozen=True, slots=True)
class Note:
    """Words to be placed near a point: the first of the blocks that finds room.

    What belongs to a point ``of`` the template stands on the sheet that shows it, or not at all.
    """

    blocks: tuple[Block, ...]
    near: Point
    of: Point | None = None


@dataclass(frozen=True, slots=True)
class TemplateWords:
    """Writes the notes of one template."""

    piece: PlacedPiece
    plan: Plan
    lines: TemplateLines
    near_seam: tuple[int, ...]

    def write_holes(self) -> Iterable[Note]:
        """A note a hole; of many holes, all after the first say only what differs."""
        for number, mark in enumerate(self.lines.marks, 1):
            texts = self._hole_texts(number, mark)
            heading = (Row(self._hole_heading(number), NORMAL, bold=True),)
            short = Block((*heading, *wrapped(texts[0], _NARROW)))
            full = tuple(
                Block((*heading, *(row for text in texts for row in wrapped(text, width))))
                for width in (_WIDTH, _NARROW)
            )
            blocks = (*full, short) if number == 1 or len(self.lines.marks) == 2 else (short,)
            size = blocks[0].size
            near = mark.hole.moved(ARM + 3 + size.width / 2, size.height / 2)
            yield Note(blocks, near, mark.hole)

    def write_lines(self) -> Iterable[Note]:
        """What sets the level line and the centre line on the wall, and where the datum is."""
        width, height = self.piece.size
        if self.lines.marks:
            level = self.lines.marks[0].hang.y
            away = from_datum(self.plan, self.piece.box.y0 + level)
            block = _titled("LEVEL LINE", [f"from the datum: {away}"])
            yield Note((block,), Point(width * 0.2, level - block.size.height / 2 - 2))
        block = _titled("CENTRE LINE, plumb", self._distances(width / 2), turned=True)
        yield Note((block,), Point(width / 2 + block.size.width / 2 + 2, height * 0.3))
        yield self._datum_note()

    def write_sides(self) -> Iterable[Note]:
        """The neighbour on each side, with the gap to it."""
        width, height = self.piece.size
        for neighbour in self.piece.neighbours:
            gap = f"gap {format_both(neighbour.gap_mm, self.plan.units)}"
            name = wrapped(f"{_ARROWS[neighbour.side]} {neighbour.name}", _NARROW, bold=True)
            block = Block((*name, Row(gap)))
            near = {
                Side.LEFT: Point(0, height / 2),
                Side.RIGHT: Point(width, height / 2),
                Side.ABOVE: Point(width / 2, height),
                Side.BELOW: Point(width / 2, 0),
            }
            yield Note((block,), near[neighbour.side])

    def write_paper(self) -> Note:
        """What the taped-up paper must measure, and what the user must be told."""
        units, size = self.plan.units, self.piece.size
        texts = [
            f"width {format_both(size.width, units)}",
            f"height {format_both(size.height, units)}",
            f"both diagonals {format_both(size.diagonal, units)}",
            "Cut on the outline.",
        ]
        if self.piece.hang is not None:
            texts.append(f"Hangs by {self.piece.hang.by.value}.")
        rows = [Row("TAPED UP, before it goes on the wall:", bold=True), *map(Row, texts)]
        for remark in self.piece.notes:
            rows += wrapped(remark, _NARROW, bold=True)
        return Note((Block(tuple(rows)),), Point(size.width * 0.3, size.height * 0.35))

    def _hole_heading(self, number: int) -> str:
        count = len(self.lines.marks)
        return f"HOLE {number} of {count}" if count > 1 else "HOLE"

    def _hole_texts(self, number: int, mark: Mark) -> list[str]:
        """What is said of a hole; the distance from the wall's left end comes first."""
        units, height = self.plan.units, self.piece.box.y0 + mark.hole.y
        drop = self.piece.size.height - mark.hang.y
        texts = [
            *self._distances(mark.hole.x),
            f"from the datum: {from_datum(self.plan, height)}",
            f"above the floor at the datum's place: {format_both(height, units)}",
            f"drop, frame's top edge to hang point: {format_both(drop, units)}",
        ]
        rise = mark.hang.y - mark.hole.y
        if abs(rise) >= SAME_MM:
            texts.append(f"hang point: {above_or_below(self.plan, rise)} the hole")
        if number in self.near_seam:
            texts.append("This hole could not be kept clear of a seam: tape with care.")
        return texts

    def _distances(self, x: float) -> list[str]:
        """How far a place on the template is from the wall's left end and the furniture's middle."""
        wall_x = self.piece.box.x0 + x
        texts = [f"from the wall's left end: {from_left_end(self.plan, wall_x)}"]
        if self.piece.over is not None:
            away = from_middle(self.plan, wall_x, self.piece.over)
            texts.append(f"from the middle of {self.piece.over.name}: {away}")
        return texts

    def _datum_note(self) -> Note:
        """Name the datum where it crosses the paper, else say how far off it is."""
        (width, height), datum = self.piece.size, self.lines.datum_y
        if self.lines.has_datum:
            name = "DATUM and centre line" if self.lines.datum_is_centre else "DATUM"
            text = f"{format_both(self.plan.datum.height_mm, self.plan.units)} above the floor"
            block = _titled(name, [text])
            return Note((block,), Point(width * 0.8, datum + block.size.height / 2 + 2))
        edge, side, away = ("bottom", "below", -datum) if datum < 0 else ("top", "above", datum - height)
        text = f"The datum is {format_both(away, self.plan.units)} {side} this {edge} edge."
        return Note((Block(wrapped(text, _NARROW)),), Point(width / 4, 0 if datum < 0 else height))


def _titled(title: str, texts: Iterable[str], *, turned: bool = False) -> Block:
    """A heading over lines of words."""
    rows = [row for text in texts for row in wrapped(text, _WIDTH)]
    return Block((Row(title, NORMAL, bold=True), *rows), turned=turned)
