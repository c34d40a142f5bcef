"""Positions in words, the same on every page: from the wall's left end, the furniture, the datum."""

from __future__ import annotations

from templater.lengths import format_both, format_length, format_other, format_signed_both
from templater.placement.model import PlacedFurniture, Plan

_SAME_MM = 0.5


def from_left_end(plan: Plan, x_mm: float) -> str:
    """``75 in (1905 mm)``, from the wall's left end."""
    return format_both(x_mm, plan.units)


def from_middle(plan: Plan, x_mm: float, furniture: PlacedFurniture) -> str:
    """``5 in (127 mm) left``, from the furniture's middle."""
    away = x_mm - furniture.box.centre.x
    if abs(away) < _SAME_MM:
        return "at its middle"
    return f"{format_both(abs(away), plan.units)} {'right' if away > 0 else 'left'}"


def from_datum(plan: Plan, y_mm: float) -> str:
    """``+6 in (+152 mm)``: above the datum if plus, below it if minus."""
    away = y_mm - plan.datum.height_mm
    return format_signed_both(away, plan.units)


def above_or_below(plan: Plan, away_mm: float) -> str:
    """``6 in (152 mm) above``, or below when negative."""
    return f"{format_both(abs(away_mm), plan.units)} {'above' if away_mm > 0 else 'below'}"


def size_in_words(plan: Plan, width_mm: float, height_mm: float) -> str:
    """``16 × 20 in (406 × 508 mm)``, width first."""
    own = [format_length(side, plan.units) for side in (width_mm, height_mm)]
    other = [format_other(side, plan.units) for side in (width_mm, height_mm)]
    return f"{_joined(own)} ({_joined(other)})"


def _joined(pair: list[str]) -> str:
    """Two lengths with one unit: ``16 × 20 in``."""
    number, unit = pair[0].rsplit(" ", 1)
    return f"{number} × {pair[1]}" if pair[1].endswith(unit) else " × ".join(pair)
