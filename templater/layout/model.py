"""What a layout file says, in millimetres and kilograms, with the place of each thing in the file.

Every name is resolved and every value is within reason; where things go on the wall is not
decided yet.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from templater.errors import Place
from templater.geometry import Size
from templater.lengths import Unit
from templater.paper import Paper


class Hanger(Enum):
    """By what a piece hangs."""

    WIRE = "wire"
    D_RINGS = "d-rings"
    KEYHOLES = "keyholes"
    SAWTOOTH = "sawtooth"
    NAIL = "nail"
    CLEAT = "cleat"


@dataclass(frozen=True, slots=True)
class Hanging:
    """The hardware of a piece as measured; all as seen from the front.

    ``drop_mm`` runs from the frame's top edge down to where the hanger bears; ``rise_mm`` from
    there up to where the fastener meets the wall (None: not given). ``apart_mm`` is the spacing of
    two hangers; ``offset_mm`` how far their middle, or the one hanger, lies right of the piece's
    middle. ``width_mm`` and ``every_mm`` belong to a cleat's rail.
    """

    by: Hanger
    drop_mm: float
    rise_mm: float | None
    apart_mm: float | None
    offset_mm: float
    width_mm: float | None
    every_mm: float | None
    at: Place


@dataclass(frozen=True, slots=True)
class Position:
    """Where something is asked to go; what is None is not asked for.

    ``left_mm`` and ``centre_mm`` run from the wall's left end to the left edge and the centre,
    ``right_mm`` from the wall's right end to the right edge; heights from the floor.
    """

    above: str | None
    clearance_mm: float
    left_mm: float | None
    centre_mm: float | None
    right_mm: float | None
    eye_line_mm: float | None
    bottom_mm: float | None
    top_mm: float | None
    at: Place


@dataclass(frozen=True, slots=True)
class Piece:
    """One framed work; ``size`` is the outside of its frame.

    ``position`` is None for a piece that belongs to a group.
    """

    name: str
    slug: str
    size: Size
    weight_kg: float | None
    hang: Hanging | None
    position: Position | None
    at: Place


@dataclass(frozen=True, slots=True)
class Furniture:
    """Something that stands on the floor against the wall."""

    name: str
    left_mm: float
    size: Size
    at: Place


class Arrangement(Enum):
    """How a group is composed."""

    ROW = "row"
    COLUMN = "column"


class Align(Enum):
    """How the pieces of a row or column line up across its direction."""

    TOP = "top"
    CENTRE = "centre"
    BOTTOM = "bottom"
    LEFT = "left"
    RIGHT = "right"


@dataclass(frozen=True, slots=True)
class Group:
    """Pieces treated as one unit; ``pieces`` are their names in order."""

    name: str
    pieces: tuple[str, ...]
    arrange: Arrangement
    gap_mm: float
    align: Align
    position: Position
    at: Place


@dataclass(frozen=True, slots=True)
class Datum:
    """The one level line: its height above the floor and the place on the wall where it is set."""

    height_mm: float
    at_place: str | None


@dataclass(frozen=True, slots=True)
class Wall:
    """The wall, from its left end and the finished floor."""

    size: Size
    at: Place


@dataclass(frozen=True, slots=True)
class Margins:
    """What a printer cannot print at each edge of the paper as it is fed in portrait, mm."""

    left: float = 6.35
    right: float = 6.35
    top: float = 6.35
    bottom: float = 12.7


@dataclass(frozen=True, slots=True)
class Layout:
    """One wall and everything that is to hang on it."""

    title: str
    units: Unit
    paper: Paper
    margins: Margins
    lap_mm: float
    wall: Wall
    eye_line_mm: float
    datum: Datum
    furniture: tuple[Furniture, ...]
    pieces: tuple[Piece, ...]
    groups: tuple[Group, ...]
    for_whom: str | None
    from_whom: str | None
    contact: str | None
    issue: str | None
