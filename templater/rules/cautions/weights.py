"""How heavy a piece may be, and limits of weight as they are shown."""

from __future__ import annotations

from templater.lengths import Unit
from templater.placement.model import PlacedPiece

POUND_KG = 0.45359237
"""The pound, kg (exact by its definition of 1959)."""


def find_most_kg(piece: PlacedPiece) -> float | None:
    """A piece's weight, kg: of an estimate the most that it may be; None if it is not known."""
    return piece.weight_kg if piece.estimate is None else piece.estimate.high_kg


def format_pounds(kg: float, units: Unit) -> str:
    """A limit of weight in whole pounds or kilograms: ``20 lb``, ``9 kg``."""
    return f"{kg / POUND_KG:.0f} lb" if units.is_imperial else f"{kg:.0f} kg"


def format_weight(kg: float, units: Unit) -> str:
    """A weight as it is told: ``6.5 lb``, ``2.9 kg``."""
    return f"{kg / POUND_KG:.3g} lb" if units.is_imperial else f"{kg:.3g} kg"
