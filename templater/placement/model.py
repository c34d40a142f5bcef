"""The Plan: where everything is on the wall. Origin: the wall's left end at the floor; mm, y up."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from templater.geometry import Box, Point, Size
from templater.layout.model import (
    Acceptance,
    Arrangement,
    Datum,
    Hanging,
    MadeOf,
    Obstacle,
    Region,
    RuleSetting,
    Stair,
    Surface,
)
from templater.lengths import Unit
from templater.mounting.model import Mark, Statics, Support, WeightEstimate


class Side(Enum):
    """On which side of a piece its neighbour hangs."""

    LEFT = "left"
    RIGHT = "right"
    ABOVE = "above"
    BELOW = "below"


@dataclass(frozen=True, slots=True)
class Neighbour:
    """The nearest piece on one side and the clear gap to it, mm."""

    name: str
    side: Side
    gap_mm: float


@dataclass(frozen=True, slots=True)
class PlacedFurniture:
    """Furniture where it stands; ``kind`` is the layout's own word for what it is, else its name."""

    name: str
    box: Box
    kind: str = ""


@dataclass(frozen=True, slots=True)
class PlacedPiece:
    """A piece on the wall; ``marks`` are in wall coordinates.

    ``over`` is the furniture that the piece, or its group, hangs above; ``group`` its group's name.
    ``supports`` hold it without a hole, also in wall coordinates. ``weight_kg`` is the weight given,
    or that of the ``estimate``, whose range goes with it wherever it is shown. ``stands_out_mm``:
    from the wall to its face. ``is_over_unasked``: it hangs over that furniture in fact, though the
    layout does not ask for it with ``above``.
    """

    name: str
    slug: str
    box: Box
    marks: tuple[Mark, ...]
    notes: tuple[str, ...]
    hang: Hanging | None
    weight_kg: float | None
    group: str | None
    over: PlacedFurniture | None
    neighbours: tuple[Neighbour, ...]
    statics: Statics | None = None
    supports: tuple[Support, ...] = ()
    estimate: WeightEstimate | None = None
    stands_out_mm: float | None = None
    made_of: MadeOf | None = None
    is_over_unasked: bool = False

    @property
    def size(self) -> Size:
        """The outside of the frame."""
        return self.box.size

    def template_marks(self) -> tuple[Mark, ...]:
        """The marks in the template's coordinates (origin: bottom-left of the frame)."""
        return tuple(mark.moved(-self.box.x0, -self.box.y0) for mark in self.marks)


@dataclass(frozen=True, slots=True)
class PlacedGroup:
    """A group on the wall: its bounding box goes through the rules as if it were one piece.

    ``pieces`` are all pieces in it, also those of groups inside it; ``parts`` are its members' own
    boxes in order, a group inside it counting as one; ``within`` names the group it is part of.
    ``is_over_unasked``: as of a piece. ``stair``: the flight of stairs that it hangs along.
    """

    name: str
    box: Box
    pieces: tuple[str, ...]
    arrange: Arrangement
    over: PlacedFurniture | None
    gap_mm: float = 0.0
    parts: tuple[tuple[str, Box], ...] = ()
    within: str | None = None
    is_over_unasked: bool = False
    stair: Stair | None = None


@dataclass(frozen=True, slots=True)
class Plan:
    """Everything on one wall, decided; pieces stand in the order of the layout.

    Of the wall itself what is None is not told; ``studs`` are the centres of those that are known.
    """

    title: str
    units: Unit
    wall: Size
    eye_line_mm: float
    datum: Datum
    furniture: tuple[PlacedFurniture, ...]
    pieces: tuple[PlacedPiece, ...]
    groups: tuple[PlacedGroup, ...]
    for_whom: str | None
    from_whom: str | None
    contact: str | None
    issue: str | None
    ceiling: tuple[Point, ...] = ()
    obstacles: tuple[Obstacle, ...] = ()
    rules: tuple[RuleSetting, ...] = ()
    accepted: tuple[Acceptance, ...] = ()
    wall_surface: Surface | None = None
    board_mm: float | None = None
    studs: tuple[float, ...] = ()
    is_walkway: bool | None = None
    is_earthquake: bool | None = None
    is_outside: bool | None = None
    region: Region | None = None

    @property
    def hole_count(self) -> int:
        """How many holes are to be drilled."""
        return sum(len(piece.marks) for piece in self.pieces)
