"""The range that a rule asks for: whether a value keeps it, what would mend it, and how to show it.

What is shown never contradicts the verdict: ends are rounded into the range, a value that breaks
it is rounded away from it, a change is rounded so that it suffices.
"""

from __future__ import annotations

from dataclasses import dataclass

from templater.lengths import Unit, format_length
from templater.mounting.amounts import SLACK_MM, format_at_least, round_down, round_up, step_mm
from templater.rules.model import Verdict


@dataclass(frozen=True, slots=True)
class Band:
    """A range with both ends included: of lengths in mm, or of percent."""

    low: float
    high: float

    def change(self, value: float) -> float:
        """The smallest change, with its sign, that brings a value into the range; 0 if it is in."""
        if value < self.low - SLACK_MM:
            return self.low - value
        return min(0.0, self.high - value) if value > self.high + SLACK_MM else 0.0

    def verdict(self, value: float) -> Verdict:
        """Whether a value keeps the range."""
        return Verdict.BROKEN if self.change(value) else Verdict.KEPT

    def rounded(self, value: float, step: float) -> float:
        """A value to the step it is shown in, on the side of the range on which it is."""
        change = self.change(value)
        if change > 0:
            return round_down(value, step)
        if change < 0:
            return round_up(value, step)
        nearest = round_down(value + step / 2, step)
        return min(max(nearest, round_up(self.low, step)), round_down(self.high, step))

    def format_value(self, mm: float, units: Unit) -> str:
        """A length as it is shown beside the range."""
        return format_length(self.rounded(mm, step_mm(units)), units)

    def format_range(self, units: Unit) -> str:
        """The range of lengths: ``6–8 in``."""
        low = format_length(round_up(self.low, step_mm(units)), units)
        high = format_length(round_down(self.high, step_mm(units)), units)
        return f"{low.rsplit(' ', 1)[0]}–{high}"

    def format_mend(self, mm: float, units: Unit, *, more: str, less: str) -> str | None:
        """The act that mends a length: ``raise by 1 in (25 mm)``; None where it keeps the range."""
        change = self.change(mm)
        if not change:
            return None
        return f"{more if change > 0 else less} by {format_at_least(abs(change), units)}"

    def format_target(self, mm: float, units: Unit) -> str:
        """What a broken length is once the mend, as shown in the layout's units, is done."""
        change = self.change(mm)
        shown = round_up(abs(change), step_mm(units))
        return self.format_value(mm + shown if change > 0 else mm - shown, units)
