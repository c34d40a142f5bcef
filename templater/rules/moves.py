"""Moves on the wall in words, as what mends a finding."""

from __future__ import annotations

from templater.lengths import Unit, format_both
from templater.mounting.amounts import round_up, step_mm


def format_moves(dx: float, dy: float, units: Unit) -> str:
    """A move that suffices: ``move left by 1 in (25 mm) and raise by 2 in (51 mm)``."""
    step = step_mm(units)
    return _join(_away(dx, step), _away(dy, step), units)


def format_alignment(dx: float, dy: float, units: Unit) -> str:
    """A move to a line, to the nearest step that is shown."""
    step = step_mm(units)
    return _join(_nearest(dx, step), _nearest(dy, step), units)


def _away(by: float, step: float) -> float:
    return round_up(by, step) if by >= 0 else -round_up(-by, step)


def _nearest(by: float, step: float) -> float:
    return round(by / step) * step


def _join(dx: float, dy: float, units: Unit) -> str:
    across = f"move {'right' if dx > 0 else 'left'} by {format_both(abs(dx), units)}"
    up = f"{'raise' if dy > 0 else 'lower'} by {format_both(abs(dy), units)}"
    return " and ".join(words for words, by in ((across, dx), (up, dy)) if by)
