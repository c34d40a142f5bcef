"""Distances along one side of a drawing, all from one datum and never chained.

Superimposed running dimensions in the manner of ISO 129: an origin circle, one dimension line,
an oblique stroke and a figure at each extension line. Figures that would touch are spread and led.
All numbers in mm on paper; ``along`` runs with the side, ``away`` from it outward.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum
from math import inf

from templater.drawing import Anchor, Circle, Item, Line, Words
from templater.geometry import Point
from templater.lettering import ASCENT, DESCENT, text_width
from templater.scene.lines import FINE, SMALL, THIN

FIRST_LINE = 10.0
"""From the outline to the dimension line, mm."""

GAP = 1.0
"""Between the outline and the start of an extension line, mm."""

_PAST = 1.5
_LEADER = 4.0
_CLEAR = 0.9
_LIFT = 0.3
_LINE_PITCH = (ASCENT + DESCENT) * SMALL + 0.3
_ORIGIN_RADIUS = 0.8
_STROKE = 1.0


class Side(Enum):
    """On which side of the drawing the distances stand."""

    ABOVE = "above"
    BELOW = "below"
    LEFT = "left"
    RIGHT = "right"

    @property
    def is_level(self) -> bool:
        """Whether distances run across the sheet."""
        return self in (Side.ABOVE, Side.BELOW)


@dataclass(frozen=True, slots=True)
class Tick:
    """A place along the side, page mm, and the figure that belongs to it."""

    along: float
    text: str


@dataclass(frozen=True, slots=True)
class Ordinates:
    """The distances of one side, their figures spread so that none touch.

    ``places`` are the middles of the figures along the side; ``depth`` is how far they reach from
    the outline; ``left_out`` counts the ticks for which there was no room.
    """

    side: Side
    ticks: tuple[Tick, ...]
    places: tuple[float, ...]
    first: float
    turned: bool
    depth: float
    left_out: int

    @property
    def figures_from(self) -> float:
        """How far from the outline the figures begin."""
        led = any(abs(tick.along - at) > 0.05 for tick, at in zip(self.ticks, self.places, strict=True))
        return self.first + _PAST + (_LEADER if led else 0.0) + _CLEAR


def arrange_ordinates(
    side: Side, ticks: Sequence[Tick], low: float, high: float, *, first: float = FIRST_LINE
) -> Ordinates:
    """Choose how the figures stand between ``low`` and ``high``, and which there is room for.

    Figures across the sheet stand level where they can, else they are turned to be read from the
    right. Where even those are too many, only those that need no leader are kept.
    """
    widest = max((text_width(tick.text, SMALL) for tick in ticks), default=0.0)
    ticks = sorted(ticks, key=lambda tick: tick.along)
    level_pitch = widest + 2.0 if side.is_level else _LINE_PITCH
    turned = side.is_level and not _stands_well(ticks, level_pitch, low, high)
    pitch = _LINE_PITCH if turned else level_pitch
    kept = ticks if len(ticks) * pitch <= high - low + pitch else _kept_apart(ticks, pitch)
    places = spread([tick.along for tick in kept], pitch, low, high)
    reach = _LINE_PITCH + _LIFT if side.is_level and not turned else widest
    left_out = len(ticks) - len(kept)
    plan = Ordinates(side, tuple(kept), tuple(places), first, turned, 0.0, left_out)
    depth = plan.figures_from + reach if kept else 0.0
    return Ordinates(side, plan.ticks, plan.places, first, turned, depth, left_out)


def _stands_well(ticks: Sequence[Tick], pitch: float, low: float, high: float) -> bool:
    """Whether level figures fit without being led far from their places."""
    if len(ticks) * pitch > high - low + pitch:
        return False
    alongs = [tick.along for tick in ticks]
    moved = zip(alongs, spread(alongs, pitch, low, high), strict=True)
    return all(abs(along - place) <= _LEADER for along, place in moved)


def _kept_apart(ticks: Sequence[Tick], pitch: float) -> list[Tick]:
    """The ticks that stand a pitch from the one kept before."""
    kept: list[Tick] = []
    for tick in ticks:
        if not kept or tick.along - kept[-1].along >= pitch:
            kept.append(tick)
    return kept


def spread(wanted: Sequence[float], pitch: float, low: float, high: float) -> list[float]:
    """Places in the order wanted, a pitch apart, with the least squared shift, from low to high.

    ``wanted`` is in rising order. Neighbours that are too close are pooled about their common mean
    (isotonic regression). Where there is no room between low and high they run past high.
    """
    pools: list[tuple[float, int]] = []
    for index, place in enumerate(wanted):
        mean, size = place - index * pitch, 1
        while pools and pools[-1][0] > mean:
            before, others = pools.pop()
            mean, size = (mean * size + before * others) / (size + others), size + others
        pools.append((mean, size))
    most = max(low, high - (len(wanted) - 1) * pitch)
    starts = [min(max(mean, low), most) for mean, size in pools for _ in range(size)]
    return [start + index * pitch for index, start in enumerate(starts)]


def draw_ordinates(
    plan: Ordinates,
    edge: float,
    *,
    origin: float | None = None,
    start: float = -inf,
    end: float = inf,
) -> list[Item]:
    """Extension lines, figures and, where there is an origin, the dimension lines both ways from it.

    ``edge`` is the outline's place across the side; ``origin`` the datum's place along it. Where
    the datum lies before the drawing's ``start`` or past its ``end``, the line is seen in it only.
    """
    items: list[Item] = []
    for tick, place in zip(plan.ticks, plan.places, strict=True):
        items += _draw_extension(plan, edge, tick.along, place)
        items.append(_draw_figure(plan, edge, tick.text, place))
    if origin is not None and plan.ticks:
        seen = min(max(origin, start), end)
        items += _draw_dimension_line(plan, edge, seen, cut=abs(origin - seen) > 0.01)
    return items


def draw_span(edge: float, away: float, low: float, high: float, text: str) -> list[Item]:
    """One upright distance at the right of an outline, from low to high, its figure beside it.

    Its extension lines begin at ``edge``; the dimension line is ``away`` from there.
    """
    x = edge + away
    ends = (Point(x, low), Point(x, high))
    at = Point(x + _PAST + ASCENT * SMALL, (low + high) / 2)
    return [
        *(Line(Point(edge + GAP, end.y), end.moved(_PAST, 0.0), FINE) for end in ends),
        Line(ends[0], ends[1], THIN),
        *(Line(end.moved(-_STROKE, -_STROKE), end.moved(_STROKE, _STROKE), THIN) for end in ends),
        Words(at, text, SMALL, Anchor.MIDDLE, turned=True),
    ]


SPAN_DEPTH = _PAST + (ASCENT + DESCENT) * SMALL
"""How far the figure of a span reaches past its dimension line, mm."""


def _page_point(side: Side, edge: float, along: float, away: float) -> Point:
    """The page point of a place along a side and away from its outline."""
    outward = away if side in (Side.ABOVE, Side.RIGHT) else -away
    return Point(along, edge + outward) if side.is_level else Point(edge + outward, along)


def _draw_extension(plan: Ordinates, edge: float, along: float, place: float) -> list[Item]:
    """The line from the outline past the dimension line, led to where the figure stands."""
    turn = plan.first + _PAST
    ends = [(along, GAP), (along, turn), (place, plan.figures_from - _CLEAR)]
    points = [_page_point(plan.side, edge, at, away) for at, away in ends]
    lines = [Line(points[0], points[1], FINE)]
    if plan.figures_from - _CLEAR > turn:
        lines.append(Line(points[1], points[2], FINE))
    return [*lines]


def _draw_figure(plan: Ordinates, edge: float, text: str, place: float) -> Words:
    """A figure beyond the end of its extension line."""
    away = plan.figures_from
    if plan.turned:
        anchor = Anchor.START if plan.side is Side.ABOVE else Anchor.END
        at = _page_point(plan.side, edge, place + SMALL / 2, away)
        return Words(at, text, SMALL, anchor, turned=True)
    if plan.side.is_level:
        away += SMALL if plan.side is Side.BELOW else _LIFT
        return Words(_page_point(plan.side, edge, place, away), text, SMALL, Anchor.MIDDLE)
    anchor = Anchor.END if plan.side is Side.LEFT else Anchor.START
    return Words(_page_point(plan.side, edge, place - SMALL / 2, away), text, SMALL, anchor)


def _draw_dimension_line(plan: Ordinates, edge: float, origin: float, *, cut: bool) -> list[Item]:
    """The lines from the origin's circle to the farthest ticks, with an oblique stroke at each."""
    alongs = [tick.along for tick in plan.ticks if abs(tick.along - origin) > _ORIGIN_RADIUS]
    items: list[Item] = []
    if not cut:
        items.append(Circle(_page_point(plan.side, edge, origin, plan.first), _ORIGIN_RADIUS, THIN))
    radius = 0.0 if cut else _ORIGIN_RADIUS
    ends = ((origin + radius, max([origin, *alongs])), (origin - radius, min([origin, *alongs])))
    for begin, farthest in ends:
        if farthest != origin:
            near, far = (_page_point(plan.side, edge, at, plan.first) for at in (begin, farthest))
            items.append(Line(near, far, THIN))
    for along in alongs:
        at = _page_point(plan.side, edge, along, plan.first)
        items.append(Line(at.moved(-_STROKE, -_STROKE), at.moved(_STROKE, _STROKE), THIN))
    return items
