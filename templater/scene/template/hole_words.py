"""What a template says of its holes: a number at each, its measures, and a key where room is short."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from templater.geometry import Box, Point
from templater.lengths import format_both
from templater.mounting.model import Mark
from templater.placement.model import PlacedPiece, Plan
from templater.printing.error import Errors, format_error
from templater.scene.lines import NORMAL
from templater.scene.marks import ARM
from templater.scene.template.blocks import Block, Row, wrapped
from templater.scene.template.guide_lines import FAR, SAME_MM
from templater.scene.template.labels import Note
from templater.scene.template.line_words import measure_across
from templater.scene.wording import above_or_below, from_datum, from_left_end, from_middle, name_holes

_WIDTHS = (96.0, 72.0, 56.0)
_SHORT_WIDTHS = (56.0, 40.0)
_KEY_ROWS = 6
_PLACES = 2
"""How many of the texts that holes share tell how high they are; the rest can be read elsewhere."""
_BESIDE = 5.0


@dataclass(frozen=True, slots=True)
class HoleWords:
    """Writes the notes of one template's holes; ``lean``: each tells only where it is across.

    A card is full of words as it is, and ink is dear.
    """

    piece: PlacedPiece
    plan: Plan
    marks: tuple[Mark, ...]
    near_seam: tuple[int, ...]
    errors: Errors | None = None
    lean: bool = False

    def number(self, index: int) -> tuple[Block, tuple[Point, ...]]:
        """A hole's number, and the corners beside its ring where it may stand."""
        block = Block((Row(str(index + 1), NORMAL, bold=True),))
        (x, y), (width, height) = self.marks[index].hole, block.size
        right, left, above, below = x + _BESIDE, x - _BESIDE - width, y + _BESIDE, y - _BESIDE - height
        past = ARM + 1
        return block, (
            *(Point(column, row) for row in (above, below) for column in (right, left)),
            Point(x + past, y - height / 2),
            Point(x - past - width, y - height / 2),
            Point(x - width / 2, y + past),
            Point(x - width / 2, y - past - height),
        )

    def write_hole(self, index: int, *, full: bool) -> Note:
        """A hole's own measures; if ``full``, also what it shares with others."""
        mark = self.marks[index]
        heading = (Row(f"HOLE {index + 1} of {len(self.marks)}", NORMAL, bold=True),)
        own = measure_across(self.piece, self.plan, mark.hole.x)
        if index + 1 in self.near_seam:
            own.append("This hole could not be kept clear of a seam: tape with care.")
        shared = self._shared(mark)
        expected = self._expect(index)
        whole = [[*own, *shared], [*own, *shared[:_PLACES]]]
        sayings = whole if full else [own] if self.lean else [[*own, shared[0]], own]
        if expected and not self.lean:
            sayings.insert(0, [*sayings[0], *expected])
        blocks = tuple(
            Block((*heading, *(row for text in texts for row in wrapped(text, width))))
            for texts in sayings
            for width in (_WIDTHS if full or self.lean else _SHORT_WIDTHS)
        )
        size = blocks[0].size
        near = mark.hole.moved(ARM + 3 + size.width / 2, size.height / 2)
        return Note(blocks, near, mark.hole, self._own_part(mark.hole))

    def _own_part(self, hole: Point) -> Box:
        """What is nearer across to a hole than to others: words there are taken for its own."""
        others = [mark.hole.x for mark in self.marks if abs(mark.hole.x - hole.x) > SAME_MM]
        left = max((x for x in others if x < hole.x), default=-FAR)
        right = min((x for x in others if x > hole.x), default=FAR)
        return Box((left + hole.x) / 2, -FAR, (right + hole.x) / 2, FAR)

    def write_shared(self, indices: Sequence[int]) -> Iterable[Note]:
        """What holes of one height have in common, said once."""
        heights: dict[tuple[float, float], list[int]] = {}
        for index in indices:
            mark = self.marks[index]
            heights.setdefault((round(mark.hole.y, 3), round(mark.hang.y, 3)), []).append(index + 1)
        for numbers in heights.values():
            mark = self.marks[numbers[0] - 1]
            heading = Row(name_holes(numbers, len(self.marks)), NORMAL, bold=True)
            shared = self._shared(mark)
            blocks = tuple(
                Block((heading, *(row for text in texts for row in wrapped(text, width))))
                for texts in ([*shared, *self._expect_of(numbers)], shared)
                for width in _WIDTHS
            )
            yield Note(blocks, mark.hole)

    def write_key(self, indices: Sequence[int]) -> Iterable[Note]:
        """The own measures of holes beside which there was no room."""
        for start in range(0, len(indices), _KEY_ROWS):
            chunk = indices[start : start + _KEY_ROWS]
            rows = [Row("HOLES, from the wall's left end", bold=True)]
            if self.piece.over is not None:
                rows = list(
                    wrapped(
                        f"{rows[0].text}; from the middle of {self.piece.over.name}",
                        _WIDTHS[1],
                        bold=True,
                    )
                )
            rows += [Row(f"{index + 1}:  {self._key_text(index)}") for index in chunk]
            yield Note((Block(tuple(rows)),), self.marks[chunk[0]].hole)

    def _key_text(self, index: int) -> str:
        """A hole's own measures on one line."""
        x = self.piece.box.x0 + self.marks[index].hole.x
        text = from_left_end(self.plan, x)
        if self.piece.over is not None:
            text += f"; {from_middle(self.plan, x, self.piece.over)}"
        if index + 1 in self.near_seam:
            text += "; near a seam"
        return text

    def _expect(self, index: int) -> list[str]:
        """How far off the paper may put a hole."""
        if self.errors is None:
            return []
        text = f"expected on this paper within {format_error(self.errors.holes[index])} (an estimate)"
        return [text, *self._expect_between()] if len(self.marks) <= 2 else [text]

    def _expect_of(self, numbers: Sequence[int]) -> list[str]:
        """How far off the paper may put several holes, as far as each does not tell it itself."""
        if self.errors is None or not self.lean:
            return self._expect_between()
        text = (
            f"on this paper within {format_error(max(self.errors.holes[each - 1] for each in numbers))}"
        )
        if self.errors.between is not None:
            text += f", hole to hole {format_error(self.errors.between)}"
        return [f"{text} (estimates)"]

    def _expect_between(self) -> list[str]:
        """How far off the paper may put one hole from another."""
        if self.errors is None or self.errors.between is None:
            return []
        return [f"from hole to hole within {format_error(self.errors.between)} (an estimate)"]

    def _shared(self, mark: Mark) -> list[str]:
        """Heights, drop and rise of a hole."""
        units, height = self.plan.units, self.piece.box.y0 + mark.hole.y
        drop = self.piece.size.height - mark.hang.y
        texts = [
            f"from the datum: {from_datum(self.plan, height)}",
            f"above the floor at the datum's place: {format_both(height, units)}",
            f"drop, frame's top edge to hang point: {format_both(drop, units)}",
        ]
        rise = mark.hang.y - mark.hole.y
        if abs(rise) >= SAME_MM:
            texts.append(f"hang point: {above_or_below(self.plan, rise)} the hole")
        return texts
