"""How heavy a piece may be, and limits of weight as they are shown."""

from __future__ import annotations

from templater.lengths import Unit
from templater.mounting.amounts import round_down, round_up
from templater.placement.model import PlacedPiece, Plan
from templater.rules.holding import list_standing

POUND_KG = 0.45359237
"""The pound, kg (exact by its definition of 1959)."""


_TOLD = 0.1


def find_least_kg(piece: PlacedPiece) -> float | None:
    """A piece's weight, kg: of an estimate the least that it may be; None if it is not known."""
    return piece.weight_kg if piece.estimate is None else piece.estimate.low_kg


def find_most_kg(piece: PlacedPiece) -> float | None:
    """A piece's weight, kg: of an estimate the most that it may be; None if it is not known."""
    return piece.weight_kg if piece.estimate is None else piece.estimate.high_kg


def find_borne_kg(piece: PlacedPiece, plan: Plan) -> float | None:
    """The most that its hardware may have to bear, kg: a ledge bears what stands on it too."""
    weights = [find_most_kg(each) for each in (piece, *list_standing(piece, plan))]
    known = [kg for kg in weights if kg is not None]
    return sum(known) if len(known) == len(weights) else None


def choose_weight_unit(units: Unit) -> tuple[float, str]:
    """The unit of weight that goes with lengths: how many kg it is, and its name."""
    return (POUND_KG, "lb") if units.is_imperial else (1.0, "kg")


def round_up_weight(kg: float, units: Unit) -> float:
    """What loads and demands are told as, kg: the next tenth of the unit that is not less."""
    unit, _ = choose_weight_unit(units)
    return round_up(kg / unit, _TOLD) * unit


def round_down_weight(kg: float, units: Unit) -> float:
    """What ratings and what holds are told as, kg: the next tenth of the unit that is not more."""
    unit, _ = choose_weight_unit(units)
    return round_down(kg / unit, _TOLD) * unit


def format_pounds(kg: float, units: Unit) -> str:
    """A limit of weight in whole pounds or kilograms: ``20 lb``, ``9 kg``.

    It is rounded down, so that what is more than the limit is more than what is shown.
    """
    unit, name = choose_weight_unit(units)
    return f"{round_down(kg / unit, 1.0):.0f} {name}"


def format_weight(kg: float, units: Unit) -> str:
    """A weight as it is told: ``6.5 lb``, ``2.9 kg``."""
    return f"{kg / POUND_KG:.3g} lb" if units.is_imperial else f"{kg:.3g} kg"
