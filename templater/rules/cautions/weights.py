"""How heavy a piece may be, and limits of weight as they are shown."""

from __future__ import annotations

from templater.lengths import Unit
from templater.mounting.amounts import round_down
from templater.placement.model import PlacedPiece

POUND_KG = 0.45359237
"""The pound, kg (exact by its definition of 1959)."""


def find_most_kg(piece: PlacedPiece) -> float | None:
    """A piece's weight, kg: of an estimate the most that it may be; None if it is not known."""
    return piece.weight_kg if piece.estimate is None else piece.estimate.high_kg


def format_pounds(kg: float, units: Unit) -> str:
    """A limit of weight in whole pounds or kilograms: ``20 lb``, ``9 kg``.

    It is rounded down, so that what is more than the limit is more than what is shown.
    """
    unit, name = (POUND_KG, "lb") if units.is_imperial else (1.0, "kg")
    return f"{round_down(kg / unit, 1.0):.0f} {name}"


def format_weight(kg: float, units: Unit) -> str:
    """A weight as it is told: ``6.5 lb``, ``2.9 kg``."""
    return f"{kg / POUND_KG:.3g} lb" if units.is_imperial else f"{kg:.3g} kg"
