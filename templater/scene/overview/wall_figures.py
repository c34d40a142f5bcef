"""What is measured on the overview's elevation: distances from the left end, heights, level lines."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from templater.drawing import Anchor, Item, Words
from templater.geometry import Box, Point
from templater.lengths import Unit, format_length, format_signed
from templater.lettering import ASCENT, DESCENT, text_width
from templater.placement.model import Plan
from templater.scene.lines import SMALL
from templater.scene.overview.dimensions import (
    FIRST_LINE,
    SPAN_DEPTH,
    Ordinates,
    Side,
    Tick,
    arrange_ordinates,
    draw_span,
)
from templater.scene.overview.surroundings import find_low_spans
from templater.scene.overview.view import View
from templater.scene.spans import open_spans

TITLE_OFF = 1.6
"""Clear space between the figures of a side and its title, mm."""

_TITLE_ROW = TITLE_OFF + (ASCENT + DESCENT) * SMALL
_LEVEL_OFF = 3.0
_NEXT_LINE = 4.0
_EDGE = 1.0
_INSET = 1.5


class Level(NamedTuple):
    """A level line of the wall: its name and its height above the floor, wall mm."""

    name: str
    height_mm: float


@dataclass(frozen=True, slots=True)
class Distances:
    """The figures round a view, in the page coordinates of that view.

    The names of the levels stand inside the wall (``inside``) where all of them are clear there,
    else beside it. ``rise`` is the datum's height above the floor, drawn from ``right`` on.
    """

    above: Ordinates
    below: Ordinates
    left: Ordinates
    levels: Ordinates
    inside: tuple[Words, ...]
    rise: Rise | None

    @property
    def margins(self) -> Box:
        """What they take beyond the view's left and bottom (negative) and right and top, mm."""
        left, above, below = (
            side.depth + (_TITLE_ROW if side.ticks else _EDGE)
            for side in (self.left, self.above, self.below)
        )
        right = self.levels.depth + (_beside(self.levels) + SPAN_DEPTH if self.rise else 0.0)
        return Box(-left, -below, right + _EDGE, above)

    @property
    def left_out(self) -> int:
        """How many distances of holes found no room."""
        return self.above.left_out + self.left.left_out

    def draw_rise(self, edge: float) -> list[Item]:
        """How high the datum is above the floor, at its place; ``edge`` is the wall's right end."""
        if self.rise is None:
            return []
        low, high, text = self.rise
        return draw_span(edge + self.levels.depth, _beside(self.levels), low, high, text)


class Rise(NamedTuple):
    """From the floor to the datum, page mm, and the figure for it."""

    low: float
    high: float
    text: str


def _beside(levels: Ordinates) -> float:
    """How far the datum's height stands from the wall, or from the names of the levels beside it."""
    return _NEXT_LINE if levels.ticks else FIRST_LINE


@dataclass(frozen=True, slots=True)
class Figures:
    """All that is measured in a window of the wall; wall mm by the figure that is written for them.

    The figures of ``up`` are signed, from the datum; ``rise`` is its own height where it is seen.
    """

    window: Box
    across: Mapping[str, float]
    up: Mapping[str, float]
    stands: Mapping[str, float]
    levels: Mapping[str, float]
    rise: Mapping[str, float]
    solids: Sequence[Box]
    holes: Sequence[Point]
    ceiling: Sequence[Point]

    def arrange(self, view: View) -> Distances:
        """The figures spread along the sides of a view."""
        box = view.frame

        def ticks(values: Mapping[str, float], *, level: bool) -> list[Tick]:
            places = ((view.on_page(Point(value, value)), text) for text, value in values.items())
            return [Tick(point.x if level else point.y, text) for point, text in places]

        across, stands = ticks(self.across, level=True), ticks(self.stands, level=True)
        up, levels = ticks(self.up, level=False), ticks(self.levels, level=False)
        inside = self._write_levels_inside(view, levels)
        return Distances(
            arrange_ordinates(Side.ABOVE, across, box.x0, box.x1),
            arrange_ordinates(Side.BELOW, stands, box.x0, box.x1),
            arrange_ordinates(Side.LEFT, up, box.y0, box.y1),
            arrange_ordinates(Side.RIGHT, () if inside else levels, box.y0, box.y1, first=_LEVEL_OFF),
            inside,
            next((_arrange_rise(view, height, text) for text, height in self.rise.items()), None),
        )

    def _write_levels_inside(self, view: View, levels: Sequence[Tick]) -> tuple[Words, ...]:
        """The names of the levels on their lines, as far right as they are clear; none if one is not."""
        crowd = _LevelCrowd(view, self, [tick.along for tick in levels])
        words = [crowd.write(tick) for tick in levels]
        return tuple(line for line in words if line) if all(words) else ()


def _arrange_rise(view: View, height: float, text: str) -> Rise:
    """The datum's height, in words where the line is long enough for them."""
    low, high = (view.on_page(Point(0.0, y)).y for y in (0.0, height))
    worded = f"floor to datum {text}"
    return Rise(low, high, worded if text_width(worded, SMALL) <= high - low else text)


class _LevelCrowd:
    """Finds where the names of the levels are clear of what hangs, stands or is led to a hole."""

    def __init__(self, view: View, figures: Figures, lines: Sequence[float]) -> None:
        self._frame = view.frame
        self._solids = [view.box_on_page(box) for box in figures.solids]
        self._holes = [view.on_page(hole) for hole in figures.holes]
        self._ceiling = [view.on_page(point) for point in figures.ceiling]
        self._lines = lines

    def write(self, tick: Tick) -> Words | None:
        """The name over or under its line, if there is room."""
        width = text_width(tick.text, SMALL) + 2 * _INSET
        for away in (_INSET, -ASCENT * SMALL - _EDGE):
            low, high = tick.along + away - DESCENT * SMALL, tick.along + away + ASCENT * SMALL
            others = any(low < line < high for line in self._lines if line != tick.along)
            if others or low < self._frame.y0 or high > self._frame.y1:
                continue
            for x0, x1 in reversed(open_spans(self._taken(low, high), self._frame.x0, self._frame.x1)):
                if x1 - x0 >= width:
                    self._solids.append(Box(x1 - width, low, x1, high))
                    return Words(Point(x1 - _INSET, tick.along + away), tick.text, SMALL, Anchor.END)
        return None

    def _taken(self, low: float, high: float) -> list[tuple[float, float]]:
        """The spans of a level strip of the page where something is in the way."""
        spans = [(box.x0, box.x1) for box in self._solids if box.y0 < high and low < box.y1]
        spans += [(hole.x, hole.x) for hole in self._holes if hole.y < high]
        spans += find_low_spans(self._ceiling, high)
        spans += [(self._frame.x0, hole.x) for hole in self._holes if low < hole.y < high]
        return spans


def read_figures(plan: Plan, window: Box) -> Figures:
    """What is to be measured in a window; values that read the same share one figure."""
    holes = [mark.hole for piece in plan.pieces for mark in piece.marks if window.has(mark.hole)]
    standing = [thing.box for thing in plan.furniture] + [thing.box for thing in plan.obstacles]
    sides = [side for box in standing for side in (box.x0, box.x1)]
    boxes = [*(piece.box for piece in plan.pieces), *standing]

    def read(values: Iterable[float], low: float, high: float) -> dict[str, float]:
        return {figure(value, plan.units): value for value in sorted(values) if low <= value <= high}

    datum = plan.datum.height_mm
    heights = sorted([*([datum] if holes else []), *(hole.y for hole in holes)])
    is_seen = bool(holes) and window.y0 <= 0.0 < datum <= window.y1
    start = [0.0] if holes else []
    levels = {f"{name} {figure(height, plan.units)}": height for name, height in find_levels(plan)}
    floor = [0.0, *sides, plan.wall.width] if window.y0 <= 0.0 else []
    return Figures(
        window,
        read([*start, *(hole.x for hole in holes)], window.x0, window.x1),
        {
            signed_figure(height - datum, plan.units): height
            for height in heights
            if window.y0 <= height <= window.y1
        },
        read(floor, window.x0, window.x1),
        {text: height for text, height in levels.items() if window.y0 <= height <= window.y1},
        {figure(datum, plan.units): datum} if is_seen else {},
        [box for box in boxes if box.meets(window)],
        holes,
        plan.ceiling,
    )


def find_levels(plan: Plan) -> list[Level]:
    """The ceiling if it is level, the datum and, where it is not the same line, the eye line."""
    datum, eye = plan.datum.height_mm, plan.eye_line_mm
    ceiling = [] if plan.ceiling else [Level("ceiling", plan.wall.height)]
    if abs(datum - eye) < 0.01:
        return [*ceiling, Level("datum", datum)]
    return [*ceiling, Level("datum", datum), Level("eye line", eye)]


def figure(mm: float, units: Unit) -> str:
    """A length as the number alone, for drawings that name their unit once."""
    return format_length(mm, units).rsplit(" ", 1)[0]


def signed_figure(mm: float, units: Unit) -> str:
    """A distance from the datum as the number alone, plus above it and minus below."""
    return format_signed(mm, units).rsplit(" ", 1)[0]
