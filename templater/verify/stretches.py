"""Stretches of a line: what is left of one when others are taken out."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TypeAlias

Stretch: TypeAlias = tuple[float, float]
"""From where to where along a line, mm."""


def leave(stretch: Stretch, taken: Iterable[Stretch], slack_mm: float) -> Iterator[Stretch]:
    """The parts of a stretch, longer than the slack, that none of the others covers."""
    at, end = stretch
    for low, high in sorted(taken):
        if low > at + slack_mm and at + slack_mm < end:
            yield at, min(low, end)
        at = max(at, high)
    if at + slack_mm < end:
        yield at, end


def measure(stretches: Iterable[Stretch]) -> float:
    """How long stretches are together, mm."""
    return sum(high - low for low, high in stretches)
