"""Pieces of given weight and hardware on a wall of given studs, for the tests of fasteners."""

from __future__ import annotations

from dataclasses import replace

from templater.layout.model import Hanger, Hanging, Hardware, Piece, Surface
from templater.lengths import Unit
from templater.placement.model import PlacedPiece, Plan
from tests.builders import HERE, hanging, inches, layout, piece, plan_of, position

POUND = 0.45359237


def hook(rating_kg: float | None, *, needs: str | None = None, length: float | None = None) -> Hardware:
    """A hook without rise."""
    return Hardware("brass hook", 0.0, rating_kg, 1, needs, HERE, length)


def by(hanger: Hanger, *, apart: float | None = None, hook: Hardware | None = None) -> Hanging:
    """Hardware 2 in below the top edge."""
    return replace(hanging(hanger, apart=apart), hook=hook)


def hung_at(
    centre: float,
    hang: Hanging | None,
    kg: float | None,
    *,
    name: str = "Fog bell",
    stands_out: float | None = None,
) -> Piece:
    """A piece of 16 x 20 in, its middle so many mm from the wall's left end."""
    made = piece(name, hang=hang, weight_kg=kg, place=position(centre=centre))
    return replace(made, stands_out_mm=stands_out)


def wall_of(
    *pieces: Piece,
    studs: tuple[float, ...] = (),
    surface: Surface | None = None,
    board: float | None = None,
    units: Unit = Unit.INCH,
) -> Plan:
    """The plan of pieces on one wall."""
    asked = layout(pieces, units=units, width=inches(400))
    wall = replace(asked.wall, studs=studs, surface=surface, board_mm=board)
    return plan_of(replace(asked, wall=wall))


def only(plan: Plan) -> PlacedPiece:
    """The one piece of a plan."""
    (found,) = plan.pieces
    return found
