"""What a template says of loads, hooks, the wall behind each hole, and what to mind before drilling."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TypeAlias

from templater.geometry import Point
from templater.lengths import Unit, format_both
from templater.memory import remember_last
from templater.mounting.model import Cord, Strips
from templater.mounting.notes import format_strip_rating
from templater.placement.model import PlacedPiece, Plan
from templater.rules.fasteners.choose import Fastener, Kind, choose_fasteners
from templater.rules.fasteners.load import find_cord_load
from templater.rules.fasteners.wording import (
    NO_WEIGHT,
    format_least,
    format_load,
    judge_fastener,
    name_fastener,
)
from templater.rules.holding import list_standing
from templater.rules.hole_notes import HoleNotes, describe_holes, describe_pieces
from templater.scene.lines import NORMAL
from templater.scene.template.blocks import Block, Row, wrapped
from templater.scene.template.labels import Note
from templater.scene.wording import from_left_end, name_holes

_WIDTHS = (84.0, 56.0, 42.0)
_SIGN = "! "

_Sayings: TypeAlias = tuple[tuple[str, ...], ...]
"""What is said, then the same in fewer words, should that find no room."""


@dataclass(frozen=True, slots=True)
class SafetyWords:
    """Writes the notes of one template that keep people from harm.

    ``sheet_of`` tells the place in the tiling of the sheet that shows a point of the template.
    """

    piece: PlacedPiece
    plan: Plan
    sheet_of: Callable[[Point], int]

    def write_holes(self) -> Iterator[Note]:
        """The load on each hole, what it takes and what it meets.

        What is alike is told once, a caution on each sheet that has a hole which it concerns.
        """
        marks = self.piece.template_marks()
        notes, _ = _describe(self.piece, self.plan)
        alike: dict[tuple[_Sayings, int | None], list[int]] = {}
        for number, fastener in enumerate(choose_fasteners(self.piece, self.plan), start=1):
            found = notes[self.piece.slug, number]
            sheet = self.sheet_of(marks[number - 1].hole) if found.cautions else None
            alike.setdefault((self._say_of_hole(fastener, found), sheet), []).append(number)
        for (sayings, _), numbers in alike.items():
            heading = f"{name_holes(numbers, len(marks))}: hook and load"
            yield _write(heading, sayings, marks[numbers[0] - 1].hole)

    def _say_of_hole(self, fastener: Fastener, notes: HoleNotes) -> _Sayings:
        units = self.plan.units
        hardware = list(_say_of_hardware(fastener, units))
        wall = f"behind it: {fastener.wall.value}"
        cautions = [f"{_SIGN}{caution}" for caution in notes.cautions]
        short = [f"{_SIGN}{_count(cautions)}: see the overview"] if cautions else []
        return (*hardware, wall, *cautions), (*hardware, wall, *short)

    def write_supports(self) -> Iterator[Note]:
        """What holds a piece without a hole, and where."""
        cords = [support for support in self.piece.supports if isinstance(support, Cord)]
        strips = [support for support in self.piece.supports if isinstance(support, Strips)]
        told = [*self._say_of_cords(cords), *map(self._say_of_strips, strips)]
        if told:
            size = self.piece.size
            yield _write("NO HOLE", (tuple(told),), Point(size.width / 2, size.height * 0.8))

    def _say_of_cords(self, cords: Sequence[Cord]) -> Iterator[str]:
        plan = self.plan
        for number, cord in enumerate(cords, start=1):
            name = "rail hook" if len(cords) == 1 else f"rail hook {number}"
            yield f"{name}, from the wall's left end: {from_left_end(plan, cord.hook.x)}"
        for cord in cords[:1]:
            yield f"rail hook, above the floor: {format_both(cord.hook.y, plan.units)}"
            each = "cord" if len(cords) == 1 else "each cord"
            yield f"{each}, from its hook down to the piece: {format_both(cord.length_mm, plan.units)}"
        loads = (format_load(find_cord_load(cord, self.piece), plan.units) for cord in cords)
        for load in dict.fromkeys(loads):
            yield load if load == NO_WEIGHT else f"load on a hook: {load}"

    def _say_of_strips(self, strips: Strips) -> str:
        rating = self.piece.hang.strip_rating_kg if self.piece.hang else None
        if strips.count is None or rating is None:
            return f"adhesive strips: {NO_WEIGHT}"
        noun = strips.each if strips.count == 1 else f"{strips.each}s"
        rated = format_strip_rating(rating, self.plan.units)
        return f"{strips.count} {noun} of adhesive strips, each rated {rated}"

    def write_cautions(self) -> Iterator[Note]:
        """What is to be minded of the piece as a whole."""
        _, cautions = _describe(self.piece, self.plan)
        if cautions:
            size = self.piece.size
            sayings = (cautions, (f"{_count(cautions)}: see the overview",))
            yield _write(f"{_SIGN}MIND", sayings, Point(size.width * 0.7, size.height * 0.3))


@remember_last
def _describe(
    piece: PlacedPiece, plan: Plan
) -> tuple[Mapping[tuple[str, int], HoleNotes], tuple[str, ...]]:
    """The notes of a piece's holes, and its cautions; a template may be drawn several times."""
    alone = replace(plan, pieces=(piece, *list_standing(piece, plan)))
    return describe_holes(alone), describe_pieces(alone)[piece.slug]


def _say_of_hardware(fastener: Fastener, units: Unit) -> Iterator[str]:
    """The load, and what holds it; that it is too weak is told by a caution."""
    if fastener.kind is Kind.LOCK:
        yield "security lock: bears no weight"
        return
    yield NO_WEIGHT if fastener.load is None else f"load {format_load(fastener.load, units)}"
    if fastener.hook is not None:
        yield name_fastener(fastener, units) if fastener.is_too_weak else judge_fastener(fastener, units)
    elif fastener.kind is not None:
        yield f"{fastener.kind.value}, rated {format_least(fastener, units)} or more"


def _count(cautions: Sequence[str]) -> str:
    return "1 caution" if len(cautions) == 1 else f"{len(cautions)} cautions"


def _write(heading: str, sayings: Iterable[tuple[str, ...]], near: Point) -> Note:
    """A heading over lines, in every way in which it may find room."""
    blocks = tuple(
        Block(
            (
                Row(heading, NORMAL, bold=True),
                *(row for text in texts for row in wrapped(text, width, bold=text.startswith(_SIGN))),
            )
        )
        for texts in dict.fromkeys(sayings)
        for width in _WIDTHS
    )
    return Note(blocks, near)
