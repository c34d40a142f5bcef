"""Draws where the studs are on the wall's elevation, behind all that hangs, stands or is written."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from templater.drawing import Item, Line, Words
from templater.geometry import Box, Point
from templater.lettering import words_box
from templater.scene.lines import FINE, spaced_dash
from templater.scene.spans import keep_apart, open_spans

_LEAST_APART = 2.0
_AIR = 0.6
_SHORTEST = 1.0


def draw_studs(
    xs: Sequence[float],
    frame: Box,
    items: Sequence[Item],
    *,
    solids: Sequence[Box],
    ceiling: Sequence[Point],
) -> Iterator[Line]:
    """The centre line of each stud from floor to ceiling, left out where something is in front.

    ``xs`` are where they are on the page, ``items`` what is drawn already. Where studs are too
    close together on paper the first is drawn.
    """
    words = [words_box(item).grown(_AIR) for item in items if isinstance(item, Words)]
    uprights = [item.box for item in items if isinstance(item, Line) and item.start.x == item.end.x]
    leads = [Box(box.x0 - _AIR, box.y0, box.x1 + _AIR, box.y1) for box in uprights]
    fronts = [*solids, *words, *leads]
    for x in keep_apart([x for x in xs if frame.x0 <= x <= frame.x1], _LEAST_APART):
        taken = [(box.y0, box.y1) for box in fronts if box.x0 < x < box.x1]
        top = _find_top(x, frame, ceiling)
        for y0, y1 in open_spans(taken, frame.y0, top):
            if y1 - y0 >= _SHORTEST:
                yield Line(Point(x, y0), Point(x, y1), FINE, spaced_dash(FINE))


def _find_top(x: float, frame: Box, ceiling: Sequence[Point]) -> float:
    """How high the wall is at a place: to the ceiling, or to where the view ends."""
    for left, right in pairwise(ceiling):
        if left.x <= x <= right.x:
            share = (x - left.x) / (right.x - left.x)
            return min(frame.y1, left.y + (right.y - left.y) * share)
    return frame.y1
