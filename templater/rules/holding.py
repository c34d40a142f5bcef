"""By what a piece is held on its wall, as far as the cautions and the shopping list tell it apart."""

from __future__ import annotations

from enum import Enum, auto

from templater.layout.model import Arrangement, Hanger
from templater.mounting.model import Cord, Strips
from templater.mounting.notes import ON_LEDGE
from templater.placement.model import PlacedPiece, Plan


class Holding(Enum):
    """What keeps a piece from falling."""

    HOOKS = auto()
    """A hook or a nail in each hole, which a wire, a ring or the frame itself hangs on."""
    KEYHOLES = auto()
    CLEAT = auto()
    LEDGE = auto()
    """It is itself a ledge, screwed to the wall."""
    ON_LEDGE = auto()
    RAIL = auto()
    STRIPS = auto()
    NOT_KNOWN = auto()


def find_holding(piece: PlacedPiece, plan: Plan) -> Holding:
    """By what a piece is held."""
    if any(isinstance(support, Cord) for support in piece.supports):
        return Holding.RAIL
    if any(isinstance(support, Strips) for support in piece.supports):
        return Holding.STRIPS
    if ON_LEDGE in piece.notes:
        return Holding.ON_LEDGE
    if piece.hang is None or not piece.marks:
        return Holding.NOT_KNOWN
    if piece.hang.by is Hanger.CLEAT:
        return Holding.LEDGE if _is_ledge(piece, plan) else Holding.CLEAT
    return Holding.KEYHOLES if piece.hang.by is Hanger.KEYHOLES else Holding.HOOKS


def list_standing(ledge: PlacedPiece, plan: Plan) -> list[PlacedPiece]:
    """What stands on a ledge; nothing where it is none."""
    if find_holding(ledge, plan) is not Holding.LEDGE:
        return []
    return [each for each in plan.pieces if each.group == ledge.group and ON_LEDGE in each.notes]


def _is_ledge(piece: PlacedPiece, plan: Plan) -> bool:
    """Whether it is what the members of its group stand on, which hang by nothing themselves."""
    return any(group.name == piece.group and group.arrange is Arrangement.LEDGE for group in plan.groups)
