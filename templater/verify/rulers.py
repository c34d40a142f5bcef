"""Finds the rulers of a sheet by their ticks, and measures whether lengths come out true."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import chain

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


def check_rulers(level: Sequence[Straight], upright: Sequence[Straight]) -> Iterator[str]:
    """What is wrong with any ruler, across or up."""
    for lines, others, way in ((level, upright, "across"), (upright, level, "up")):
        ticks = [tick for tick in others if tick.length_mm < _LONGEST_TICK]
        for line in lines if len(ticks) >= 2 * _FEWEST else ():
            sides = _find_sides(line, ticks)
            if min(map(len, sides)) >= _FEWEST:
                yield from _measure(line, *sides, way)


def _find_sides(line: Straight, ticks: Sequence[Straight]) -> tuple[list[float], list[float]]:
    """Where ticks stand on both sides of a line that may be a ruler's; the fuller side comes first."""
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
    return (one, other) if len(one) > len(other) else (other, one)


def _measure(line: Straight, tens: list[float], halves: list[float], way: str) -> Iterator[str]:
    """What is wrong with one ruler."""
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


def _list_places(ticks: list[float], pitch: float) -> Iterator[tuple[float, float]]:
    """Each tick and where it belongs."""
    return ((tick, number * pitch) for number, tick in enumerate(ticks))
