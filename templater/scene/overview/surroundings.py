"""Draws what hangs and stands nowhere but is there: crossed boxes for openings, a sloping ceiling."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise, product
from math import ceil, hypot

from templater.drawing import Anchor, Line, Words
from templater.geometry import Box, Point
from templater.lettering import text_width, words_box
from templater.scene.lines import FINE, SMALL, THICK, THIN
from templater.scene.overview.piece_labels import AIR, Crowd
from templater.scene.overview.sightlines import draw_seen, point_along

_STEP = 1.5
"""How finely a sloping line keeps words away, mm."""

_STEPS = 6
"""So many steps away from a point of the ceiling its height may stand."""


def obstacle_key(number: int) -> str:
    """What stands for an opening or a fixture where its name does not fit."""
    return f"X{number}"


def draw_crossed_box(box: Box, frame: Box, fronts: Sequence[Box], words: Sequence[Words]) -> list[Line]:
    """An opening as draughtsmen show it: its outline and both diagonals, which leave room for words.

    What stands in front hides it; of a box that the frame cuts off the rest is shown.
    """
    (x0, y0, x1, y1), written = box, [words_box(line).grown(AIR) for line in words]
    low_left, low_right, high_left, high_right = (Point(x, y) for y in (y0, y1) for x in (x0, x1))
    sides = (
        (low_left, low_right),
        (low_right, high_right),
        (high_left, high_right),
        (low_left, high_left),
    )
    lines = [line for side in sides for line in draw_seen(*side, THIN, frame, fronts)]
    for diagonal in ((low_left, high_right), (high_left, low_right)):
        lines += draw_seen(*diagonal, FINE, frame, [*fronts, *written])
    return lines


def draw_slope(points: Sequence[Point], frame: Box, crowd: Crowd) -> list[Line]:
    """A sloping ceiling; words keep away from it."""
    lines = [line for pair in pairwise(points) for line in draw_seen(*pair, THICK, frame)]
    for line in lines:
        for part in _cut(line):
            crowd.add(part.grown(AIR))
    return lines


def write_by(point: Point, text: str, frame: Box, crowd: Crowd) -> list[Words]:
    """Words under or over a point of a sloping ceiling, as near as they are clear of all else."""
    width = text_width(text, SMALL)
    for step, away, aside in product(range(_STEPS), (-1, 1), (0.0, 0.5, -0.5, 1.0, -1.0)):
        lift = SMALL / 2 + 2 * AIR + step * _STEP
        at = point.moved((width / 2 + AIR) * aside, lift * away - SMALL / 2)
        words = Words(at, text, SMALL, Anchor.MIDDLE)
        ink = words_box(words)
        if frame.holds(ink) and crowd.is_free(ink):
            crowd.add(ink)
            return [words]
    return []


def find_low_spans(points: Sequence[Point], y: float) -> list[tuple[float, float]]:
    """The stretches, left to right, over which a sloping ceiling is lower than a height."""
    spans = []
    for left, right in pairwise(points):
        if min(left.y, right.y) >= y:
            continue
        if max(left.y, right.y) <= y:
            spans.append((left.x, right.x))
            continue
        at = left.x + (right.x - left.x) * (y - left.y) / (right.y - left.y)
        spans.append((left.x, at) if left.y < y else (at, right.x))
    return spans


def _cut(line: Line) -> Iterator[Box]:
    """The boxes of short parts of a line, which together stay near it."""
    (x0, y0), (x1, y1) = line.start, line.end
    count = max(1, ceil(hypot(x1 - x0, y1 - y0) / _STEP))
    points = [point_along(line.start, line.end, number / count) for number in range(count + 1)]
    for a, b in pairwise(points):
        yield Box(min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y))
