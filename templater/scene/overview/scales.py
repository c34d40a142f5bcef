"""Drawing scales: ISO 5455 for metric layouts, the architect's scales for layouts in inches."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import count

from templater.geometry import Size
from templater.lengths import Unit


@dataclass(frozen=True, slots=True)
class Scale:
    """One millimetre on paper stands for ``ratio`` millimetres of the wall; ``text`` says so."""

    ratio: float
    text: str


_INCHES_A_FOOT = ("3", "1 1/2", "1", "3/4", "1/2", "3/8", "1/4", "3/16", "1/8", "3/32", "1/16", "1/32")


def standard_scales(units: Unit) -> Iterator[Scale]:
    """Every scale a draughtsman of these units would use, the largest first, without end."""
    return _architects_scales() if units.is_imperial else _iso_scales()


def choose_scale(extent: Size, room: Size, units: Unit) -> Scale:
    """The largest standard scale at which the extent fits the room (both mm, room above zero)."""
    wanted = max(extent.width / room.width, extent.height / room.height)
    return next(scale for scale in standard_scales(units) if scale.ratio >= wanted * (1 - 1e-9))


def choose_scale_for_detail(detail_mm: float, paper_mm: float, units: Unit) -> Scale:
    """The smallest standard scale that shows a detail at least so long on paper; else full size."""
    scales = standard_scales(units)
    chosen = next(scales)
    while detail_mm >= paper_mm * (smaller := next(scales)).ratio:
        chosen = smaller
    return chosen


def _iso_scales() -> Iterator[Scale]:
    """1:1, 1:2, 1:5 and their decades (ISO 5455:1979, 5.1)."""
    for decade in count():
        for step in (1, 2, 5):
            ratio = step * 10**decade
            yield Scale(float(ratio), f"SCALE 1:{ratio}")


def _architects_scales() -> Iterator[Scale]:
    """Inches on paper to a foot of wall; past 1/32 in, feet of wall to an inch on paper."""
    yield Scale(1.0, "SCALE 1:1")
    for inches in _INCHES_A_FOOT:
        ratio = 12 / sum(Fraction(part) for part in inches.split())
        yield Scale(float(ratio), f"SCALE {inches} in = 1 ft (1:{ratio})")
    for decade in count(1):
        for step in (5, 10, 20):
            feet = step * 10**decade
            yield Scale(float(feet * 12), f"SCALE 1 in = {feet} ft (1:{feet * 12})")
