"""What the proof works with: ink as it was read, what must be there, and what came of it.

Lengths are mm as they measure after printing, y up. Ink is told from a page's bottom-left corner, or
in template coordinates once it is moved there.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, fields, is_dataclass
from functools import cached_property
from typing import NamedTuple

from templater.errors import ExitCode, Fault, TemplaterError
from templater.geometry import Box, Point, Size
from templater.placement.model import PlacedPiece, Plan
from templater.printing.model import PrintSetup, Scale, Tiling

_LETTER_EM, _WIDE_LETTER_EM = 0.62, 1.05
"""How wide letters are at most: small Latin ones on average; capitals, m, w and other scripts."""

_LAST_OF_LATIN = "\u024f"

NEAR_MM = 0.01
"""How far a mark may be from where the Plan puts it."""


class Stroke(NamedTuple):
    """A straight line; ``clip`` hides what lies outside it; it starts at ``phase`` of its dashes."""

    start: Point
    end: Point
    width_mm: float
    dash: tuple[float, ...]
    clip: Box | None
    phase: float = 0.0


class Ring(NamedTuple):
    """A circle that is drawn as a line."""

    centre: Point
    radius_mm: float
    clip: Box | None


class Chain(NamedTuple):
    """Two or more straight lines that follow each other."""

    points: tuple[Point, ...]


class Run(NamedTuple):
    """Words on one line from ``at``; ``right`` and ``up`` are where their letters' own axes point.

    Those two are of any length; ``em_mm`` tells how large the letters are.
    """

    text: str
    at: Point
    right: Point
    up: Point
    em_mm: float

    @property
    def is_level(self) -> bool:
        """Whether they run across, not up."""
        return abs(self.right.x) > abs(self.right.y)

    @property
    def longest_mm(self) -> float:
        """How long they are at most, by the number of their letters and how wide these may be."""
        wide = sum(one.isupper() or one in "mw" or one > _LAST_OF_LATIN for one in self.text)
        narrow = len(self.text) - wide
        return (_WIDE_LETTER_EM * wide + _LETTER_EM * narrow) * self.em_mm


@dataclass(slots=True)
class Ink:
    """All that is drawn on one page or in one drawing; ``areas`` are the boxes of what is filled."""

    strokes: list[Stroke] = field(default_factory=list)
    rings: list[Ring] = field(default_factory=list)
    chains: list[Chain] = field(default_factory=list)
    runs: list[Run] = field(default_factory=list)
    areas: list[Box] = field(default_factory=list)

    def within(self, box: Box) -> Ink:
        """What of it lies in a box, or is clipped to it; of areas, what reaches into it."""
        area = box.grown(NEAR_MM)

        def lies_in(clip: Box | None, *points: Point) -> bool:
            return all(map(area.has, points)) if clip is None else area.holds(clip)

        return Ink(
            [line for line in self.strokes if lies_in(line.clip, line.start, line.end)],
            [ring for ring in self.rings if lies_in(ring.clip, ring.centre)],
            [chain for chain in self.chains if lies_in(None, *chain.points)],
            [run for run in self.runs if area.has(run.at)],
            [one for one in self.areas if one.meets(area)],
        )

    def moved(self, dx: float, dy: float) -> Ink:
        """The same ink from another origin."""

        def clip(box: Box | None) -> Box | None:
            return box and box.moved(dx, dy)

        return Ink(
            [
                Stroke(start.moved(dx, dy), end.moved(dx, dy), width, dash, clip(box), phase)
                for start, end, width, dash, box, phase in self.strokes
            ],
            [Ring(centre.moved(dx, dy), radius, clip(box)) for centre, radius, box in self.rings],
            [Chain(tuple(point.moved(dx, dy) for point in points)) for (points,) in self.chains],
            [run._replace(at=run.at.moved(dx, dy)) for run in self.runs],
            [area.moved(dx, dy) for area in self.areas],
        )


class UnreadableError(Exception):
    """A file holds what the proof cannot follow, so that nothing can be said of its ink."""


class ProofError(TemplaterError):
    """What was written is not what the Plan says; the act that mends it is the same for all faults."""

    exit_code = ExitCode.PROOF_FAILED

    def __init__(self, messages: Sequence[str], hint: str) -> None:
        super().__init__([Fault(message, hint) for message in messages])
        self.args = ("\n".join([*messages, f"  {hint}"]),)


@dataclass(frozen=True, slots=True)
class PageRecord:
    """An entry of the manifest's list of pages; a page that pieces share has one for each."""

    page: int
    kind: str
    paper: Size
    piece: str | None
    sheet: str | None
    clip: Box | None
    origin: Point | None
    scale: Scale


@dataclass(frozen=True, slots=True)
class PieceRecord:
    """A piece as the manifest tells it, in wall coordinates."""

    slug: str
    name: str
    box: Box
    hang_points: tuple[Point, ...]
    holes: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Record:
    """A kit's manifest; ``version`` is the program's that made it, empty if it is not told."""

    revision: str
    version: str
    setup: PrintSetup
    files: Mapping[str, str]
    pieces: tuple[PieceRecord, ...]
    pages: tuple[PageRecord, ...]


@dataclass(frozen=True)
class Expected:
    """What the layout and the options come to: the Plan, each template's sheets, the revision."""

    plan: Plan
    tilings: Mapping[str, Tiling]
    setup: PrintSetup
    revision: str

    @cached_property
    def given(self) -> str:
        """Every text that the layout brings, a line each; words of it may read like the kit's own."""
        return "\n".join(_list_texts(self.plan))

    @cached_property
    def pieces(self) -> Mapping[str, PlacedPiece]:
        """The pieces by their slugs."""
        return {piece.slug: piece for piece in self.plan.pieces}


def _list_texts(value: object) -> Iterator[str]:
    """The texts in a value, however deep, with plain spaces."""
    if isinstance(value, str):
        yield " ".join(value.split())
    elif isinstance(value, tuple):
        for each in value:
            yield from _list_texts(each)
    elif is_dataclass(value):
        for part in fields(value):
            yield from _list_texts(getattr(value, part.name))


@dataclass(frozen=True, slots=True)
class Findings:
    """What one check found: faults in words, and how far each mark that it measured is off, mm."""

    faults: tuple[str, ...] = ()
    offsets_mm: tuple[float, ...] = ()

    @classmethod
    def gather(cls, parts: Iterable[Findings]) -> Findings:
        """Several checks as one."""
        found = list(parts)
        return cls(
            tuple(fault for part in found for fault in part.faults),
            tuple(offset for part in found for offset in part.offsets_mm),
        )


@dataclass(frozen=True, slots=True)
class Proof:
    """A kit that holds: how many holes were read again, and how far the farthest is from the Plan.

    ``notes`` tell what is worth knowing all the same.
    """

    holes: int
    farthest_mm: float
    notes: tuple[str, ...] = ()
