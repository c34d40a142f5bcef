"""Names written into small rectangles without touching the marks inside them, else a number beside."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from math import ceil, hypot
from typing import NamedTuple

from templater.drawing import Anchor, Line, Words
from templater.geometry import Box, Point
from templater.lettering import ASCENT, DESCENT, LINE_PITCH, text_width, wrap
from templater.scene.lines import SMALL
from templater.scene.overview.sightlines import point_along

AIR = 0.7
"""Clear space round the words, mm."""

_CELL = 20.0
_LINE_AIR = 0.3
_STEP = 1.5
"""How finely a slanted line keeps words away, mm."""


class Crowd:
    """Areas of a page that are taken, kept by cells of a grid so that asking stays quick."""

    def __init__(self, taken: Iterable[Box] = ()) -> None:
        self._cells: dict[tuple[int, int], list[Box]] = defaultdict(list)
        for box in taken:
            self.add(box)

    def add(self, box: Box) -> None:
        """Take an area."""
        for cell in _cells(box):
            self._cells[cell].append(box)

    def keep_off(self, line: Line) -> None:
        """Take the little room that a level or an upright line needs."""
        self.add(line.box.grown(_LINE_AIR))

    def keep_off_slope(self, line: Line) -> None:
        """Take the room along a slanted line, not all of the box that it lies across."""
        for part in _cut(line):
            self.add(part.grown(AIR))

    def is_free(self, box: Box) -> bool:
        """Whether nothing taken meets the area."""
        return not any(box.meets(other) for cell in _cells(box) for other in self._cells.get(cell, ()))


def _cells(box: Box) -> Iterator[tuple[int, int]]:
    """The grid's cells that a box touches."""
    for column in range(int(box.x0 // _CELL), int(box.x1 // _CELL) + 1):
        for row in range(int(box.y0 // _CELL), int(box.y1 // _CELL) + 1):
            yield column, row


def _cut(line: Line) -> Iterator[Box]:
    """The boxes of short parts of a line, which together stay near it."""
    (x0, y0), (x1, y1) = line.start, line.end
    count = max(1, ceil(hypot(x1 - x0, y1 - y0) / _STEP))
    points = [point_along(line.start, line.end, number / count) for number in range(count + 1)]
    for a, b in pairwise(points):
        yield Box(min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y))


class Wording(NamedTuple):
    """What to write: only ``name`` may go over several lines; empty parts are left away."""

    head: str
    name: str = ""
    foot: str = ""


def write_inside(box: Box, marks: Sequence[Box], wordings: Iterable[Wording]) -> list[Words]:
    """The first wording that fits the box clear of its marks, in the middle of the free space.

    The richest wording comes first; no word is broken. Empty where nothing fits.
    """
    taken = [mark.grown(AIR / 2) for mark in marks]
    zones = [zone for zone in _free_zones(box.grown(-AIR), taken) if zone.width > 0 and zone.height > 0]
    for wording in wordings:
        for zone in zones:
            lines = _break_lines(wording, zone.width)
            if lines and _block_height(lines) <= zone.height:
                return _centred(lines, zone)
    return []


def write_beside(box: Box, text: str, crowd: Crowd, bounds: Box) -> list[Words]:
    """A short text just below, above, right or left of a box where nothing else stands, or nothing."""
    half = text_width(text, SMALL) / 2
    middle = box.centre
    for at in (
        Point(middle.x, box.y0 - AIR - SMALL),
        Point(middle.x, box.y1 + AIR),
        Point(box.x1 + AIR + half, middle.y - SMALL / 2),
        Point(box.x0 - AIR - half, middle.y - SMALL / 2),
    ):
        ink = Box(at.x - half, at.y, at.x + half, at.y + SMALL).grown(AIR * 0.8)
        if bounds.holds(ink) and crowd.is_free(ink):
            crowd.add(ink)
            return [Words(at, text, SMALL, Anchor.MIDDLE)]
    return []


def _free_zones(box: Box, marks: Sequence[Box]) -> list[Box]:
    """Rectangles of the box that no mark touches, the largest first."""
    if not marks:
        return [box]
    ups = [box.y0, *sorted(side for mark in marks for side in (mark.y0, mark.y1)), box.y1]
    acrosses = [box.x0, *sorted(side for mark in marks for side in (mark.x0, mark.x1)), box.x1]
    zones = [Box(box.x0, low, box.x1, high) for low, high in pairwise(ups)]
    zones += [Box(low, box.y0, high, box.y1) for low, high in pairwise(acrosses)]
    free = [zone for zone in zones if not any(zone.meets(mark) for mark in marks)]
    return sorted(free, key=lambda zone: -zone.width * zone.height)


def _break_lines(wording: Wording, width: float) -> list[str]:
    """The wording in lines; empty where a word would have to be broken."""
    unbroken = [wording.head, *wording.name.split(), wording.foot]
    if any(text_width(word, SMALL) > width for word in unbroken):
        return []
    return [line for line in (wording.head, *wrap(wording.name, SMALL, width), wording.foot) if line]


def _block_height(lines: Sequence[str]) -> float:
    """The height of the lines' ink; figures and capitals alone have nothing below the baseline."""
    ends = SMALL if _is_number(lines) else (ASCENT + DESCENT) * SMALL
    return (len(lines) - 1) * LINE_PITCH * SMALL + ends


def _is_number(lines: Sequence[str]) -> bool:
    return len(lines) == 1 and lines[0].isalnum() and lines[0].upper() == lines[0]


def _centred(lines: Sequence[str], zone: Box) -> list[Words]:
    """The lines about the zone's middle."""
    lift = 0.0 if _is_number(lines) else DESCENT * SMALL
    lowest = zone.centre.y - _block_height(lines) / 2 + lift
    top = lowest + (len(lines) - 1) * LINE_PITCH * SMALL
    return [
        Words(Point(zone.centre.x, top - i * LINE_PITCH * SMALL), line, SMALL, Anchor.MIDDLE)
        for i, line in enumerate(lines)
    ]
