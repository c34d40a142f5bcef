"""The level and the upright lines of a sheet, as what they are held against: a place and a stretch."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from templater.geometry import Box
from templater.verify.model import NEAR_MM, Stroke

_EDGE_MM = 0.02
"""A line on the very edge of its clip is half seen: it counts as seen."""


class Straight(NamedTuple):
    """A line at ``across`` that runs from low to high; ``seen`` is what its clip leaves of it."""

    across: float
    low: float
    high: float
    seen: tuple[float, float] | None
    width_mm: float
    dashes: int

    @property
    def length_mm(self) -> float:
        """From end to end, hidden or not."""
        return self.high - self.low

    @property
    def middle(self) -> float:
        """Half-way from end to end."""
        return (self.low + self.high) / 2


def list_straight(strokes: Iterable[Stroke]) -> tuple[list[Straight], list[Straight]]:
    """The lines that run across, and those that run up, told alike."""
    level: list[Straight] = []
    upright: list[Straight] = []
    for (x0, y0), (x1, y1), width, dash, clip, phase in strokes:
        if abs(y1 - y0) <= NEAR_MM and x0 != x1:
            low, high, across = (x0, x1, (y0 + y1) / 2) if x0 < x1 else (x1, x0, (y0 + y1) / 2)
            seen = (low, high) if clip is None else _see(low, high, across, clip, level=True)
            if dash and clip is not None:
                seen = _see_last_gap(seen, x0, x1, dash, phase)
            level.append(Straight(across, low, high, seen, width, len(dash)))
        elif abs(x1 - x0) <= NEAR_MM and y0 != y1:
            low, high, across = (y0, y1, (x0 + x1) / 2) if y0 < y1 else (y1, y0, (x0 + x1) / 2)
            seen = (low, high) if clip is None else _see(low, high, across, clip, level=False)
            if dash and clip is not None:
                seen = _see_last_gap(seen, y0, y1, dash, phase)
            upright.append(Straight(across, low, high, seen, width, len(dash)))
    return level, upright


def _see(
    low: float, high: float, across: float, clip: Box, *, level: bool
) -> tuple[float, float] | None:
    """What a clip leaves of a line."""
    x0, y0, x1, y1 = clip
    first, last, near, far = (x0, x1, y0, y1) if level else (y0, y1, x0, x1)
    if not near - _EDGE_MM <= across <= far + _EDGE_MM:
        return None
    low, high = max(low, first), min(high, last)
    return (low, high) if low < high else None


def _see_last_gap(
    seen: tuple[float, float] | None, start: float, end: float, dash: Sequence[float], phase: float
) -> tuple[float, float] | None:
    """A dashed line is seen to its end though a clip hides the gap there, in which there is no ink."""
    if seen is None:
        return None
    gap = measure_last_gap(abs(end - start), dash, phase)
    if start < end and seen[1] < end <= seen[1] + gap:
        return seen[0], end
    if end < start and seen[0] - gap <= end < seen[0]:
        return end, seen[1]
    return seen


def measure_last_gap(length: float, dash: Sequence[float], phase: float) -> float:
    """How much of a gap a dashed line ends with, mm; nothing where it ends with a dash."""
    whole = [*dash, *dash] if len(dash) % 2 else dash
    if not sum(whole) > 0.0 or min(whole) < 0.0:
        return 0.0
    left = (length + phase) % sum(whole)
    for number, part in enumerate(whole):
        if left <= part:
            return left if number % 2 else 0.0
        left -= part
    return 0.0
