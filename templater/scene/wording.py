"""Positions in words, the same on every page: from the wall's left end, the furniture, the datum."""

from __future__ import annotations

from collections.abc import Sequence

from templater.geometry import Size
from templater.lengths import Unit, format_both, format_length, format_signed_both
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


def off_datum(plan: Plan, y_mm: float) -> str:
    """As ``from_datum``, the same figures without their signs: ``6 in (152 mm)``."""
    return format_both(y_mm - plan.datum.height_mm, plan.units).replace("−", "")


def above_or_below_datum(plan: Plan, y_mm: float) -> str:
    """As ``from_datum``, in words: ``6 in (152 mm) below the datum``, or ``on the datum``."""
    if from_datum(plan, y_mm) == format_both(0.0, plan.units):
        return "on the datum"
    return f"{off_datum(plan, y_mm)} {'above' if y_mm > plan.datum.height_mm else 'below'} the datum"


def describe_datum(plan: Plan) -> str:
    """Where the datum is set, in words: its height and its place."""
    place = f" at: {plan.datum.at_place}" if plan.datum.at_place else ""
    return f"{format_both(plan.datum.height_mm, plan.units)} above the floor{place}"


def format_size(size: Size, units: Unit) -> str:
    """Width and height, the unit once: ``16 × 20 in``."""
    number, _ = format_length(size.width, units).rsplit(" ", 1)
    return f"{number} × {format_length(size.height, units)}"


def format_size_both(size: Size, units: Unit) -> str:
    """As format_size, the other system in brackets: ``16 × 20 in (406 × 508 mm)``."""
    other = Unit.MILLIMETRE if units.is_imperial else Unit.INCH
    return f"{format_size(size, units)} ({format_size(size, other)})"


def name_holes(numbers: Sequence[int], count: int) -> str:
    """Holes by their numbers: ``ALL HOLES``, or ``HOLES 1, 2, 5``."""
    if len(numbers) == count:
        return "HOLE 1" if count == 1 else "ALL HOLES"
    return f"HOLES {', '.join(map(str, numbers))}" if len(numbers) > 1 else f"HOLE {numbers[0]}"
