"""Draws what hangs and stands nowhere but is there: openings and fixtures, a sloping ceiling."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise, product
from math import dist

from templater.drawing import Anchor, Line, Words
from templater.geometry import Box, Point
from templater.layout.model import LeftRight
from templater.lettering import text_width, words_box
from templater.scene.lines import FINE, SMALL, THICK, THIN, short_dash
from templater.scene.overview.piece_labels import AIR, Crowd
from templater.scene.overview.sightlines import draw_seen

_LEAST_FIFTH = 2.0
_STEP = 1.5
_STEPS = 6
"""So many steps, mm each, away from a point of the ceiling its height may stand."""


def draw_opening(
    box: Box,
    frame: Box,
    fronts: Sequence[Box] = (),
    words: Sequence[Words] = (),
    *,
    hinges: LeftRight | None = None,
) -> list[Line]:
    """An opening as draughtsmen show it: its outline and both diagonals, which leave room for words.

    Of a leaf whose ``hinges`` are known, dashes meet at them in place of the diagonals. What stands
    in front hides it; of a box that the frame cuts off the rest is shown.
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
    dash = short_dash(FINE) if hinges else ()
    for stroke in _find_strokes(box, hinges):
        lines += draw_seen(*stroke, FINE, frame, [*fronts, *written], dash=dash)
    return lines


def is_hidden(box: Box, fronts: Sequence[Box]) -> bool:
    """Whether what stands in front hides all of an opening."""
    near = [front for front in fronts if front.meets(box)]
    return bool(near) and not draw_opening(box, box, near)


def draw_hidden(box: Box, frame: Box) -> list[Line]:
    """An opening that furniture hides: its outline in dashes, three of them on a short side."""
    (x0, y0, x1, y1), lines = box, []
    for side in (
        (Point(x0, y0), Point(x1, y0)),
        (Point(x1, y0), Point(x1, y1)),
        (Point(x0, y1), Point(x1, y1)),
        (Point(x0, y0), Point(x0, y1)),
    ):
        fifth = dist(*side) / 5
        dash = short_dash(THIN) if fifth > _LEAST_FIFTH else (fifth, fifth)
        lines += draw_seen(*side, THIN, frame, dash=dash)
    return lines


def _find_strokes(box: Box, hinges: LeftRight | None) -> list[tuple[Point, Point]]:
    """Both diagonals, or what runs from the corners of a leaf's free side to its hinges."""
    x0, y0, x1, y1 = box
    if hinges is None:
        return [(Point(x0, y0), Point(x1, y1)), (Point(x0, y1), Point(x1, y0))]
    hinge, free = (x0, x1) if hinges is LeftRight.LEFT else (x1, x0)
    return [(Point(free, y), Point(hinge, box.centre.y)) for y in (y0, y1)]


def draw_slope(points: Sequence[Point], frame: Box, crowd: Crowd) -> list[Line]:
    """A sloping ceiling; words keep away from it."""
    lines = [line for pair in pairwise(points) for line in draw_seen(*pair, THICK, frame)]
    for line in lines:
        crowd.keep_off_slope(line)
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
