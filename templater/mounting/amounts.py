"""Amounts to move or change something by, rounded so that whoever does it has done enough.

A length rounded to the nearest sixteenth may be half a sixteenth short; one that mends a fault
must not be.
"""

from __future__ import annotations

from math import ceil, floor

from templater.lengths import Unit, format_both

SLACK_MM = 1e-6
"""Lengths that differ by no more than this are the same: the arithmetic of floats, not of rulers."""


def step_mm(units: Unit) -> float:
    """The smallest step that people who use these units are shown, mm."""
    return 25.4 / 16 if units.is_imperial else 1.0


def round_up(value: float, step: float) -> float:
    """The next multiple of a step that is not less than the value, within half the slack."""
    return ceil((value - SLACK_MM / 2) / step) * step


def round_down(value: float, step: float) -> float:
    """The next multiple of a step that is not more than the value, within half the slack."""
    return floor((value + SLACK_MM / 2) / step) * step


def format_at_least(mm: float, units: Unit) -> str:
    """A positive amount, rounded up in the layout's own units: ``1 1/16 in (27 mm)``."""
    return format_both(round_up(mm, step_mm(units)), units)
