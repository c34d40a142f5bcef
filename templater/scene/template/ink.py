"""How much ink a sheet takes: a kit is a lot of paper, and a home printer's ink is dear."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise
from math import dist, pi

from templater.drawing import Circle, Item, Line, Words
from templater.geometry import Box, Point
from templater.lettering import text_width
from templater.printing.model import Tile

MOST_INK = 0.0375
"""The part of a sheet that may be black: 4 %, less what an estimate may be off."""

_DENSITY, _BOLD_DENSITY = 0.29, 0.45
"""Ink of a line of words by its width and the height of its capitals.

Measured from the outlines of the typeface's letters: 0.26 to 0.30 and 0.41 to 0.47.
"""

_SMALL_PAPER = 45e3
"""Paper of a smaller area, mm², is short of ink: it lies between A5 and A4 or Letter."""


def is_small(tiles: Sequence[Tile]) -> bool:
    """Whether a template's sheets must spare ink: their headings are then no higher than other words."""
    return min(tile.page.width * tile.page.height for tile in tiles) < _SMALL_PAPER


def measure_ink(items: Iterable[Item], within: Box | None = None) -> float:
    """The ink of a drawing or of what a box shows of its upright and level lines, mm²."""
    return sum(_measure(item, within) for item in items)


def measure_words(text: str, height_mm: float, bold: bool) -> float:
    """The ink of a line of words, mm²."""
    return text_width(text, height_mm, bold) * height_mm * (_BOLD_DENSITY if bold else _DENSITY)


def _measure(item: Item, within: Box | None) -> float:
    if isinstance(item, Words):
        return measure_words(item.text, item.height_mm, item.bold)
    if isinstance(item, Circle):
        around = 2 * pi * item.radius_mm * item.width_mm
        return pi * item.radius_mm**2 if item.filled else around
    if isinstance(item, Line):
        shown = item.box if within is None else item.box.common(within)
        length = dist((shown.x0, shown.y0), (shown.x1, shown.y1)) if min(shown.size) >= 0 else 0.0
        inked = sum(item.dash[::2]) / sum(item.dash) if item.dash else 1.0
        return length * item.width_mm * inked
    chain = (*item.points, item.points[0])
    if item.filled:
        return abs(sum(_turn(start, end) for start, end in pairwise(chain))) / 2
    around = sum(dist(start, end) for start, end in pairwise(chain))
    return around * item.width_mm


def _turn(start: Point, end: Point) -> float:
    """Twice the area between a line and the origin."""
    return start.x * end.y - end.x * start.y
