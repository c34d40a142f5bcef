"""The level and the upright lines of a sheet, as what they are held against: a place and a stretch."""

from __future__ import annotations

from collections.abc import Iterable
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
    for (x0, y0), (x1, y1), width, dash, clip in strokes:
        if abs(y1 - y0) <= NEAR_MM and x0 != x1:
            low, high, across = (x0, x1, (y0 + y1) / 2) if x0 < x1 else (x1, x0, (y0 + y1) / 2)
            seen = (low, high) if clip is None else _see(low, high, across, clip, level=True)
            level.append(Straight(across, low, high, seen, width, len(dash)))
        elif abs(x1 - x0) <= NEAR_MM and y0 != y1:
            low, high, across = (y0, y1, (x0 + x1) / 2) if y0 < y1 else (y1, y0, (x0 + x1) / 2)
            seen = (low, high) if clip is None else _see(low, high, across, clip, level=False)
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
