"""Small functions that build Layout values for tests, without the layout reader."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from templater.errors import Place
from templater.geometry import Size
from templater.layout.model import (
    Align,
    Arrangement,
    Datum,
    Furniture,
    Group,
    Hanger,
    Hanging,
    Layout,
    Margins,
    Piece,
    Position,
    Wall,
)
from templater.lengths import Unit
from templater.mounting.mount import mount_pieces
from templater.paper import default_paper
from templater.placement.model import Plan
from templater.placement.place import Placement, place_pieces

HERE = Place("hall.yaml", 1, 1)
"""A place for things whose place does not matter."""

INCH = 25.4


def inches(value: float) -> float:
    """So many inches, mm."""
    return value * INCH


def position(
    *,
    above: str | None = None,
    clearance: float = 7 * INCH,
    left: float | None = None,
    centre: float | None = None,
    right: float | None = None,
    eye_line: float | None = None,
    bottom: float | None = None,
    top: float | None = None,
    at: Place = HERE,
) -> Position:
    """A position, mm; what is not given is not asked for."""
    return Position(above, clearance, left, centre, right, eye_line, bottom, top, at)


def hanging(
    by: Hanger = Hanger.NAIL,
    drop: float = 2 * INCH,
    *,
    rise: float | None = None,
    apart: float | None = None,
    offset: float = 0.0,
    width: float | None = None,
    every: float | None = None,
    at: Place = HERE,
) -> Hanging:
    """Hardware, mm."""
    return Hanging(by, drop, rise, apart, offset, width, every, at)


def piece(
    name: str,
    width: float = 16 * INCH,
    height: float = 20 * INCH,
    *,
    hang: Hanging | None = None,
    weight_kg: float | None = None,
    place: Position | None = None,
    at: Place = HERE,
) -> Piece:
    """A piece that stands alone in the middle of the wall unless a place is given."""
    slug = name.lower().replace(" ", "-")
    return Piece(name, slug, Size(width, height), weight_kg, hang, place or position(), at)


def group(
    name: str,
    pieces: Iterable[str],
    *,
    arrange: Arrangement = Arrangement.ROW,
    gap: float = 3 * INCH,
    align: Align = Align.CENTRE,
    place: Position | None = None,
    at: Place = HERE,
) -> Group:
    """A group of pieces by their names."""
    return Group(name, tuple(pieces), arrange, gap, align, place or position(), at)


def furniture(
    name: str, left: float, width: float = 80 * INCH, height: float = 34 * INCH, *, at: Place = HERE
) -> Furniture:
    """Furniture on the floor, mm."""
    return Furniture(name, left, Size(width, height), at, name)


def layout(
    pieces: Iterable[Piece],
    *,
    groups: Iterable[Group] = (),
    furniture: Iterable[Furniture] = (),
    width: float = 200 * INCH,
    height: float = 96 * INCH,
    eye_line: float = 60 * INCH,
    units: Unit = Unit.INCH,
) -> Layout:
    """A layout; pieces that belong to a group lose their own position."""
    groups = tuple(groups)
    grouped = {name for each in groups for name in each.members}
    return Layout(
        title="Keeper's cottage, stair hall",
        units=units,
        paper=default_paper(units),
        margins=Margins(),
        lap_mm=10.0,
        wall=Wall(Size(width, height), HERE),
        eye_line_mm=eye_line,
        datum=Datum(eye_line, None),
        furniture=tuple(furniture),
        pieces=tuple(_without_position(each) if each.name in grouped else each for each in pieces),
        groups=groups,
        for_whom=None,
        from_whom=None,
        contact=None,
        issue=None,
    )


def _without_position(each: Piece) -> Piece:
    return replace(each, position=None)


def place_layout(wall: Layout) -> Placement:
    """Mount and place a layout."""
    return place_pieces(wall, mount_pieces(wall).mounts)


def plan_of(wall: Layout) -> Plan:
    """The plan of a layout that must have no faults."""
    placement = place_layout(wall)
    if placement.faults:
        raise AssertionError("\n".join(str(fault) for fault in placement.faults))
    return placement.plan
