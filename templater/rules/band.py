"""The range that a rule asks for: whether a value keeps it, what would mend it, and how to show it.

What is shown never contradicts the verdict: ends are rounded into the range, a value that breaks
it is never shown as one that keeps it, a change is rounded so that it suffices.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import inf

from templater.lengths import Unit, format_length
from templater.mounting.amounts import SLACK_MM, format_at_least, round_down, round_up, step_mm
from templater.rules.model import Verdict


@dataclass(frozen=True, slots=True)
class Band:
    """A range with both ends included: of lengths in mm, or of percent; an end may be infinite."""

    low: float
    high: float = inf

    def change(self, value: float) -> float:
        """The smallest change, with its sign, that brings a value into the range; 0 if it is in."""
        if value < self.low - SLACK_MM:
            return self.low - value
        return min(0.0, self.high - value) if value > self.high + SLACK_MM else 0.0

    def verdict(self, value: float) -> Verdict:
        """Whether a value keeps the range."""
        return Verdict.BROKEN if self.change(value) else Verdict.KEPT

    def rounded(self, value: float, step: float) -> float:
        """The nearest step to a value that is on the same side of the range, as it is shown."""
        nearest = round_down(value + step / 2, step)
        low, high = _round_end(self.low, step), _round_end(self.high, -step)
        change = self.change(value)
        if change > 0:
            return nearest if nearest < low else round_down(value, step)
        if change < 0:
            return nearest if nearest > high else round_up(value, step)
        return min(max(nearest, low), high)

    def format_value(self, mm: float, units: Unit) -> str:
        """A length as it is shown beside the range."""
        return format_length(self.rounded(mm, step_mm(units)), units)

    def format_range(self, units: Unit) -> str:
        """The range of lengths: ``6–8 in``, ``3 in or more``, ``at most 1/4 in``."""
        step = step_mm(units)
        return self._phrase(
            low=format_length(_round_end(self.low, step), units) if self.low > -inf else "",
            high=format_length(_round_end(self.high, -step), units) if self.high < inf else "",
        )

    def format_percents(self) -> str:
        """The range of percent: ``60–75 %``."""
        return self._phrase(
            low=f"{_round_end(self.low, 1.0):.0f} %" if self.low > -inf else "",
            high=f"{_round_end(self.high, -1.0):.0f} %" if self.high < inf else "",
        )

    def format_percent(self, value: float) -> str:
        """A percentage as it is shown beside the range."""
        return f"{self.rounded(value, 1.0):.0f} %"

    def _phrase(self, *, low: str, high: str) -> str:
        """The range in words from its shown ends, one of which may be missing."""
        if not high:
            return f"{low} or more" if low else "anything"
        if not low or not self.low:
            return f"at most {high}"
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


def _round_end(end: float, step: float) -> float:
    """An end rounded into the range: a low one up, a high one (with a negative step) down."""
    if end in (inf, -inf):
        return end
    return round_up(end, step) if step > 0 else round_down(end, -step)
