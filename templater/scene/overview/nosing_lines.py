"""Draws the line through the edges of a flight of steps, from which heights along stairs are taken."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product

from templater.drawing import Anchor, Item, Line, Words
from templater.geometry import Box, Point
from templater.layout.model import Stair
from templater.lettering import ASCENT, DESCENT, words_box
from templater.placement.stairs import find_nosing_height
from templater.scene.lines import SMALL, THIN, short_dash
from templater.scene.overview.piece_labels import AIR, Crowd
from templater.scene.overview.sightlines import draw_seen, point_along
from templater.scene.overview.view import Sight

NAMES = ("nosing line: edges of the steps", "nosing line")
"""What the line is called, the plainest first."""

_SHARES = tuple(share / 20 for share in (10, 8, 12, 6, 14, 4, 16, 2, 18))
_LIFTS = tuple(2 * AIR + 1.5 * step for step in range(4))
"""At which shares of the line, and how far from it, mm, its name is tried."""


def draw_nosing_lines(sight: Sight, items: Sequence[Item], crowd: Crowd) -> Iterator[Item]:
    """Each flight's line with its name; words that come later keep away from it.

    It is left out behind what hangs or stands, and under the words of ``items``, drawn before.
    It reaches from the step that was measured past all that hangs along it: where the flight begins
    and ends the plan does not know.
    """
    flights: dict[Stair, list[Box]] = {}
    for group in sight.plan.groups:
        if group.stair is not None:
            flights.setdefault(group.stair, []).append(group.box)
    words = [words_box(item).grown(AIR) for item in items if isinstance(item, Words)]
    for stair, hung in flights.items():
        lines = _draw_line(stair, Box.around(hung), sight, [*sight.solids, *words])
        for line in lines:
            crowd.keep_off_slope(line)
        yield from lines
        yield from _write_name(lines, sight.frame, crowd)


def _draw_line(stair: Stair, reach: Box, sight: Sight, fronts: Sequence[Box]) -> list[Line]:
    """The parts of the line that are seen, left to right."""
    xs = (min(stair.start.x, reach.x0), max(stair.start.x, reach.x1))
    start, end = (sight.view.on_page(Point(x, find_nosing_height(stair, x))) for x in xs)
    return draw_seen(start, end, THIN, sight.frame, fronts, dash=short_dash(THIN))


def _write_name(lines: Sequence[Line], frame: Box, crowd: Crowd) -> list[Words]:
    """The name along the longest part, under it or over it, where there is room."""
    if not lines:
        return []
    line = max(lines, key=lambda each: each.box.width)
    for text, lift, share, is_under in product(NAMES, _LIFTS, _SHARES, (True, False)):
        words = _put(text, point_along(line.start, line.end, share), line, lift, is_under=is_under)
        ink = words_box(words)
        if frame.grown(-AIR).holds(ink) and crowd.is_free(ink):
            crowd.add(ink)
            return [words]
    return []


def _put(text: str, at: Point, line: Line, lift: float, *, is_under: bool) -> Words:
    """Words beside a point of a slanted line, on the side on which it leads away from them."""
    anchor = Anchor.START if is_under == (line.end.y > line.start.y) else Anchor.END
    off = -lift - ASCENT * SMALL if is_under else lift + DESCENT * SMALL
    return Words(at.moved(0.0, off), text, SMALL, anchor)
