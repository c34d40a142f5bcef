"""What a template says of its lines, its sides and its paper."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import product

from templater.drawing import Line
from templater.geometry import Box, Point, Size
from templater.lengths import format_both
from templater.mounting.model import Mark
from templater.placement.model import Neighbour, PlacedPiece, Plan, Side
from templater.printing.error import Errors, format_error
from templater.scene.contents import is_ledge
from templater.scene.lines import NORMAL, SMALL
from templater.scene.marks import ARM
from templater.scene.template.blocks import Block, Row, wrapped
from templater.scene.template.guide_lines import FAR, SAME_MM, TemplateLines
from templater.scene.template.labels import Note, shows_line
from templater.scene.wording import (
    above_or_below_datum,
    format_size_both,
    from_left_end,
    from_middle,
    name_holes,
    off_datum,
)

WIDE = 84.0
NARROW = 56.0
NARROWEST = 40.0
"""How wide blocks of words are, mm."""

_MEASURES = 3
"""How many of the texts on the paper tell what it must measure; the next tells where to cut."""

_ARROWS = {Side.LEFT: "←", Side.RIGHT: "→", Side.ABOVE: "↑", Side.BELOW: "↓"}


def measure_across(piece: PlacedPiece, plan: Plan, x: float) -> list[str]:
    """How far a place on the template is from the wall's left end and the furniture's middle."""
    wall_x = piece.box.x0 + x
    texts = [f"from the wall's left end: {from_left_end(plan, wall_x)}"]
    if piece.over is not None:
        away = from_middle(plan, wall_x, piece.over)
        texts.append(f"from the middle of {piece.over.name}: {away}")
    return texts


def name_neighbour(neighbour: Neighbour) -> str:
    """A neighbour's name behind an arrow that points to it."""
    return f"{_ARROWS[neighbour.side]} {neighbour.name}"


def near_side(side: Side, size: Size) -> Point:
    """The middle of one side of a piece."""
    return {
        Side.LEFT: Point(0, size.height / 2),
        Side.RIGHT: Point(size.width, size.height / 2),
        Side.ABOVE: Point(size.width / 2, size.height),
        Side.BELOW: Point(size.width / 2, 0),
    }[side]


def side_half(side: Side, size: Size) -> Box:
    """All that is nearer to one side of a piece than to the other."""
    (x, y) = size.width / 2, size.height / 2
    return {
        Side.LEFT: Box(-FAR, -FAR, x, FAR),
        Side.RIGHT: Box(x, -FAR, FAR, FAR),
        Side.ABOVE: Box(-FAR, y, FAR, FAR),
        Side.BELOW: Box(-FAR, -FAR, FAR, y),
    }[side]


@dataclass(frozen=True, slots=True)
class LineWords:
    """A line's name, and the notes that may explain it: the first that finds room is enough.

    Names stand in the line's ``zone``, which is nearer to it than to other lines. One that
    ``can_wait`` is not told where ink is short: the holes tell the same.
    """

    name: str
    line: Line
    zone: Box
    notes: tuple[Note, ...] = ()
    can_wait: bool = False

    @property
    def is_upright(self) -> bool:
        """Whether the line runs up the wall."""
        return self.line.start.x == self.line.end.x

    def is_on(self, keep: Box) -> bool:
        """Whether a sheet shows enough of the line to name it."""
        return shows_line(self.line, keep)

    def name_on(self, keep: Box) -> Note | None:
        """The name alone, beside the line on a sheet; None where the sheet does not show the line."""
        shown = self.line.box.common(keep)
        if not self.is_on(keep):
            return None
        block = Block((Row(self.name, SMALL, bold=True),), turned=self.is_upright)
        end = Point(shown.x1, shown.y1)
        return Note((block,), end, keep.centre, _band(self.line, block).common(self.zone))


@dataclass(frozen=True, slots=True)
class TemplateWords:
    """Writes the notes of one template, those of its holes excepted.

    ``is_lean``: lines may have their names alone, and the centre line has.
    """

    piece: PlacedPiece
    plan: Plan
    lines: TemplateLines
    errors: Errors | None = None
    is_lean: bool = False

    def write_lines(self) -> Iterable[LineWords]:
        """What sets the level line, the centre line and the datum on the wall, and where studs are."""
        (width, height), lines = self.piece.size, self.lines
        yield from self._write_levels()
        if lines.has_datum:
            yield self._write_datum()
        texts = [] if self.is_lean else measure_across(self.piece, self.plan, width / 2)
        has_hole = any(abs(mark.hole.x - width / 2) < SAME_MM for mark in lines.marks)
        yield self._explain(
            "CENTRE LINE, plumb",
            lines.centre_up,
            "upright, dash and dot",
            texts,
            Point(width / 2 + 2, height * 0.6),
            may_be_bare=has_hole,
        )
        if not lines.datum_is_centre:
            across = lines.centre_across
            yield LineWords("half height", across, lines.find_zone(across))
        for name, stud in lines.named_studs:
            yield LineWords(name, stud, lines.find_zone(stud))

    def write_datum_off(self) -> Iterable[Note]:
        """How far the datum is, where it does not cross the paper."""
        (width, height), datum = self.piece.size, self.lines.datum_y
        if self.lines.has_datum:
            return
        edge, side, at = ("bottom", "below", 0.0) if datum < 0 else ("top", "above", height)
        away = off_datum(self.plan, self.piece.box.y0 + at)
        text = f"The datum is {away} {side} this {edge} edge."
        blocks = tuple(Block(wrapped(text, room)) for room in (NARROW, NARROW * 0.7))
        yield Note(blocks, Point(width / 4, 0 if datum < 0 else height))

    def write_hang_point(self) -> Iterable[Note]:
        """What the small triangle is, which is no hole."""
        for mark in self.lines.marks[:1]:
            if self.lines.shows_hang(mark):
                block = Block((Row("hang point: no hole here"),))
                (x, y), (width, height) = mark.hang, block.size
                beside = Box(x - width - 6, y - height - 2, x + width + 6, y + height + 2)
                yield Note((block,), mark.hang.moved(width / 2, 0), mark.hang, beside)

    def write_notes(self) -> Iterable[Note]:
        """What must be known of the piece, such as on which notch it hangs."""
        if self.piece.notes:
            (width, height) = self.piece.size
            blocks = tuple(
                Block(tuple(row for text in self.piece.notes for row in wrapped(text, room, bold=True)))
                for room in (WIDE, NARROW, NARROWEST)
            )
            yield Note(blocks, Point(width * 0.3, height * 0.6))

    def write_sides(self) -> Iterable[Note]:
        """The neighbour on each side, with the gap to it."""
        for neighbour in self.piece.neighbours:
            if neighbour.gap_mm < SAME_MM and is_ledge(self.piece, self.plan):
                continue  # it stands on it
            gap = Row(f"gap {format_both(neighbour.gap_mm, self.plan.units)}")
            name = name_neighbour(neighbour)
            blocks = tuple(
                Block((*wrapped(name, room, bold=True), gap)) for room in (NARROW, NARROW * 0.6)
            )
            yield Note(
                blocks,
                near_side(neighbour.side, self.piece.size),
                within=side_half(neighbour.side, self.piece.size),
            )

    def write_paper(self) -> Note:
        """What the taped-up paper must measure, and what the user must be told."""
        units, size = self.plan.units, self.piece.size
        texts = [
            f"width {format_both(size.width, units)}",
            f"height {format_both(size.height, units)}",
            f"both diagonals {format_both(size.diagonal, units)}",
            self._say_where_to_cut(),
            "Left is your left as you face the wall.",
        ]
        if is_ledge(self.piece, self.plan):
            texts.append("A ledge: screw it on through the holes.")
        elif self.piece.hang is not None:
            texts.append(f"Hangs by {self.piece.hang.by.value}.")
        blocks = []
        brief = texts[: _MEASURES + 1]
        sayings = ([*texts, *self._expect_from_top()], texts, brief, brief[:_MEASURES])
        for told, room in product(sayings, (NARROW, WIDE, NARROWEST)):
            rows = [*wrapped("TAPED UP, check the paper:", room, bold=True)]
            rows += [row for text in told for row in wrapped(text, room)]
            blocks.append(Block(tuple(rows)))
        return Note(tuple(blocks), Point(size.width * 0.3, size.height * 0.35))

    def write_cut_out(self, *, folds: bool) -> Note:
        """The same in brief, for a template that is cut out of a page it shares.

        It ``folds`` where there is paper beside it for words that find no room inside.
        """
        size = format_size_both(self.piece.size, self.plan.units)
        cut = "Cut on the outline" + ("." if self._holds_crosses else ", but leave paper round crosses.")
        if folds:
            cut = "Cut on the dashed line, fold on the outline."
        texts = (f"{size}.", cut, *self.piece.notes)
        blocks = tuple(
            Block(tuple(row for text in texts for row in wrapped(text, room, bold=True)))
            for room in (WIDE, NARROW, 0.75 * NARROW)
        )
        return Note(blocks, Point(self.piece.size.width / 2, 0.0))

    def _expect_from_top(self) -> list[str]:
        """How far off holes may be where the template is set by its edge, not by its lines."""
        if self.errors is None or self.errors.from_top is None:
            return []
        within = format_error(self.errors.from_top)
        return [f"Set it by its lines: by its top edge alone holes lie within {within} (an estimate)."]

    def _say_where_to_cut(self) -> str:
        """Where the scissors go; a hole's cross may pass the outline."""
        if self._holds_crosses:
            return "Cut on the outline; where words stand outside it, fold."
        return "Cut on the outline, but leave the paper round crosses; where words stand outside, fold."

    @property
    def _holds_crosses(self) -> bool:
        """Whether no hole's cross passes the outline."""
        inside = Box(0, 0, *self.piece.size)
        return all(inside.holds(Box(*mark.hole, *mark.hole).grown(ARM)) for mark in self.lines.marks)

    def _write_levels(self) -> Iterable[LineWords]:
        """A level line for the holes of one height; where there are several, each by its holes."""
        marks, levels = self.lines.marks, self.lines.levels
        for line in sorted(levels, key=lambda line: line.start.y, reverse=True):
            on_it = [number for number, mark in enumerate(marks, 1) if mark.hang.y == line.start.y]
            name = "LEVEL LINE"
            if len(levels) > 1:
                name += f", {name_holes(on_it, len(marks)).lower()}"
            yield self._write_level(name, line, marks[on_it[0] - 1])

    def _write_level(self, name: str, line: Line, mark: Mark) -> LineWords:
        height = self.piece.box.y0 + mark.hang.y
        away = height - self.plan.datum.height_mm
        texts = [f"set it {above_or_below_datum(self.plan, height)}"]
        if abs(mark.hang.y - mark.hole.y) >= SAME_MM:
            texts.append("It runs through the hang point, not the hole.")
        side = 2 if away > 0 else -2
        near = Point(self.piece.size.width * 0.2, mark.hang.y + side)
        return self._explain(name, line, "unbroken", texts, near, may_be_bare=self.is_lean)

    def _write_datum(self) -> LineWords:
        name = "DATUM and half height" if self.lines.datum_is_centre else "DATUM"
        text = f"{format_both(self.plan.datum.height_mm, self.plan.units)} above the floor"
        level = self.lines.marks[0].hang.y if self.lines.marks else -1.0
        side = 2 if level <= self.lines.datum_y else -2
        near = Point(self.piece.size.width * 0.8, self.lines.datum_y + side)
        look = "dash and two dots"
        told = self._explain(name, self.lines.datum, look, [text], near, may_be_bare=self.is_lean)
        return replace(told, can_wait=self.is_lean)

    def _explain(
        self,
        name: str,
        line: Line,
        look: str,
        texts: Sequence[str],
        near: Point,
        *,
        may_be_bare: bool = False,
    ) -> LineWords:
        """Notes on a line: beside it, or where it is the nearest, if they say how the line looks.

        The last resorts are its name alone, and a place anywhere on a sheet that shows the line.
        """
        upright, zone = line.start.x == line.end.x, self.lines.find_zone(line)
        beside = [_titled(name, texts, room, turned=upright) for room in (WIDE, NARROW)]
        apart = tuple(_titled(f"{name} ({look})", texts, room) for room in (WIDE, NARROW))
        (width, height) = beside[0].size
        if upright:
            at = near.moved(width / 2, 0)
        else:
            at = near.moved(0, height / 2 if near.y > line.start.y else -height / 2)
        bands = ((block, _band(line, block).common(zone)) for block in beside)
        notes = [Note((block,), at, within=band, line=line) for block, band in bands]
        notes.append(Note(apart, at, within=zone, line=line))
        if not self.is_lean:
            notes.append(Note(apart, at, line=line))
        if may_be_bare:
            notes.append(Note((_titled(f"{name} ({look})", (), WIDE),), at, within=zone, line=line))
        return LineWords(name, line, zone, tuple(notes))


def _band(line: Line, block: Block) -> Box:
    """Where a block stands beside a line and no other, on either side of it."""
    if line.start.x == line.end.x:
        reach = block.size.width + 4
        return line.box._replace(x0=line.start.x - reach, x1=line.start.x + reach)
    reach = block.size.height + 4
    return Box(line.box.x0 - 100, line.start.y - reach, line.box.x1 + 100, line.start.y + reach)


def _titled(title: str, texts: Iterable[str], room: float, *, turned: bool = False) -> Block:
    """A heading over lines of words."""
    rows = [row for text in texts for row in wrapped(text, room)]
    return Block((*wrapped(title, room, NORMAL, bold=True), *rows), turned=turned)
