"""Finds the rulers of a sheet by their ink, across and up, and measures whether lengths are true."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import chain
from typing import NamedTuple

from templater.geometry import Size
from templater.verify.model import NEAR_MM
from templater.verify.straight import Straight

_TEN_MM, _HALF_INCH = 10.0, 12.7
_LINES = (8 * _HALF_INCH, 4 * _HALF_INCH)
"""A ruler's line: 4 in, or 2 in where there is little room."""

_WHOLE = {(11, 9), (6, 5)}
"""Ticks by tens of millimetres and by half inches, on a long ruler and on a short one."""

_OFF = 0.1
_TOUCH_MM = 0.05
_LONGEST_TICK = 4.0
_FEWEST = 4
_LEAST_SIDE_MM, _LEAST_AREA_MM2 = 75.0, 14_000.0
"""A sheet that shows less than this (half of A5) may be too crowded for a ruler."""


class Ruler(NamedTuple):
    """A ruler's line, and where its ticks stand along it on both sides."""

    line: Straight
    tens: tuple[float, ...]
    halves: tuple[float, ...]
    is_level: bool

    @property
    def way(self) -> str:
        """How it runs, in words."""
        return "across" if self.is_level else "up"


def find_rulers(level: Sequence[Straight], upright: Sequence[Straight]) -> list[Ruler]:
    """Every line with ticks on both sides that may be a ruler's, whole or not."""
    found = []
    for lines, others, is_level in ((level, upright, True), (upright, level, False)):
        ticks = [tick for tick in others if tick.high - tick.low < _LONGEST_TICK]
        for line in lines if len(ticks) >= 2 * _FEWEST else ():
            halves, tens = _find_sides(line, ticks)
            if len(halves) >= _FEWEST:
                found.append(Ruler(line, tuple(tens), tuple(halves), is_level))
    return found


def _find_sides(line: Straight, ticks: Sequence[Straight]) -> tuple[list[float], list[float]]:
    """Where ticks stand on both sides of a line that may be a ruler's; the fuller side comes last."""
    if line.dashes or min(abs(line.length_mm / length - 1) for length in _LINES) > _OFF:
        return [], []
    near = [tick for tick in ticks if line.low - 1 < tick.across < line.high + 1]
    ends = (
        [(tick.low, tick.across) for tick in near],
        [(tick.high, tick.across) for tick in near],
    )
    one, other = (
        sorted(at - line.low for end, at in side if abs(end - line.across) <= _TOUCH_MM) for side in ends
    )
    return (other, one) if len(one) > len(other) else (one, other)


def check_rulers(rulers: Iterable[Ruler], shown: Size) -> Iterator[str]:
    """What is wrong with any ruler, and whether one runs across and one up.

    ``shown`` is how much a sheet shows.
    """
    found = list(rulers)
    for ruler in found:
        yield from _measure(ruler)
    is_roomy = min(shown) >= _LEAST_SIDE_MM and shown.width * shown.height >= _LEAST_AREA_MM2
    for is_level, way in ((True, "across"), (False, "up")):
        if is_roomy and not any(ruler.is_level == is_level for ruler in found):
            yield f"it has no ruler {way}"


def _measure(ruler: Ruler) -> Iterator[str]:
    """What is wrong with one ruler."""
    line, tens, halves, way = ruler.line, ruler.tens, ruler.halves, ruler.way
    if (len(tens), len(halves)) not in _WHOLE:
        yield f"a ruler {way} is not whole: {len(tens)} and {len(halves)} ticks"
        return
    length, inches = (len(tens) - 1) * _TEN_MM, (len(halves) - 1) * _HALF_INCH
    spans = tens[-1] - tens[0], halves[-1] - halves[0]
    ticks = chain(_list_places(tens, _TEN_MM), _list_places(halves, _HALF_INCH))
    if max(abs(spans[0] - length), abs(spans[1] - inches)) > NEAR_MM:
        yield (
            f"the ruler {way} is not true: its {length:.0f} mm measure {spans[0]:.3f} mm,"
            f" its {inches / 25.4:.0f} in {spans[1] / 25.4:.4f} in"
        )
    elif max(abs(tick - place) for tick, place in ticks) > NEAR_MM:
        yield f"the ticks of the ruler {way} are not where they must be"
    elif abs(line.length_mm - inches) > NEAR_MM:
        yield f"the line of the ruler {way} does not end at its last tick"


def _list_places(ticks: Sequence[float], pitch: float) -> Iterator[tuple[float, float]]:
    """Each tick and where it belongs."""
    return ((tick, number * pitch) for number, tick in enumerate(ticks))
