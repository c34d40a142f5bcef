"""The figures round the wall's elevation, what they are of, and the lines that lead them to holes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from templater.drawing import Item, Line, Words
from templater.geometry import Box, Point
from templater.lettering import shorten, text_width, words_box
from templater.scene.lines import FINE, SMALL
from templater.scene.overview.dimensions import GAP as OUTLINE_GAP
from templater.scene.overview.dimensions import draw_ordinates
from templater.scene.overview.piece_labels import Crowd
from templater.scene.overview.surroundings import find_low_spans
from templater.scene.overview.view import Sight
from templater.scene.overview.wall_figures import TITLE_OFF, Distances
from templater.scene.overview.wall_lines import find_level_heights
from templater.scene.spans import keep_apart, open_spans

_BUNCHED = 1.2
_HIDDEN_GAP = 0.8
_OTHERS = " (others in the table)"


def draw_distances(sides: Distances, sight: Sight, block: Box, crowd: Crowd) -> Iterator[Item]:
    """The figures outside the wall and, inside it, the lines that lead them to the holes.

    ``block`` is all the room that the drawing takes, which the titles of the figures stay in.
    """
    frame, x0 = sight.frame, sight.view.origin.x
    yield from draw_ordinates(sides.above, frame.y1, origin=x0, start=frame.x0)
    yield from draw_ordinates(sides.below, frame.y0, origin=x0, start=frame.x0)
    datum = sight.view.on_page(Point(0.0, sight.plan.datum.height_mm)).y
    yield from draw_ordinates(sides.left, frame.x0, origin=datum, start=frame.y0, end=frame.y1)
    yield from sides.draw_rise(frame.x1)
    yield from draw_ordinates(sides.levels, frame.x1)
    for words in sides.inside:
        yield words
        crowd.add(words_box(words))
    yield from _title_distances(sides, sight, block)
    for line in _lead_to_holes(sides, sight):
        crowd.keep_off(line)
        yield line


def _title_distances(sides: Distances, sight: Sight, block: Box) -> Iterator[Words]:
    """Say at each side what its figures are and in which unit."""
    unit = "inches" if sight.plan.units.is_imperial else "mm"
    frame = sight.frame
    titles = (
        (sides.above, f"holes: {unit} from the left end", frame.y1 + sides.above.depth + TITLE_OFF),
        (
            sides.below,
            f"{_list_standing(sight)}wall: {unit} from the left end",
            frame.y0 - sides.below.depth - TITLE_OFF - SMALL,
        ),
    )
    for side, text, y in titles:
        if side.ticks:
            whole = text + (_OTHERS if side.left_out else "")
            x = max(block.x0, min(frame.x0, block.x1 - text_width(whole, SMALL)))
            yield Words(Point(x, y), shorten(whole, SMALL, block.x1 - x), SMALL)
    if sides.left.ticks:
        yield _title_heights(sides, frame, block, f"{unit} from the datum")


def _title_heights(sides: Distances, frame: Box, block: Box, text: str) -> Words:
    """Say it of the heights, in full where there is room under the title that stands above."""
    top = frame.y1 + sides.above.depth if sides.above.ticks else block.y1
    whole = f"holes: {text}, + up" + (_OTHERS if sides.left.left_out else "")
    if text_width(whole, SMALL) > top - block.y0:
        whole = f"{text}, + up"
    y = max(block.y0, min(frame.y0, top - text_width(whole, SMALL)))
    x = frame.x0 - sides.left.depth - TITLE_OFF
    return Words(Point(x, y), shorten(whole, SMALL, top - y), SMALL, turned=True)


def _list_standing(sight: Sight) -> str:
    """What the figures along the floor are of, besides the wall."""
    furniture = "furniture, " if sight.furniture else ""
    return furniture + ("openings, fixtures, " if sight.obstacles else "")


def _lead_to_holes(sides: Distances, sight: Sight) -> Iterator[Line]:
    """Carry each distance's line on to its farthest hole below, or its nearest to the right."""
    frame, solids = sight.frame, sight.solids
    lowest: dict[float, float] = {}
    leftmost: dict[float, float] = {}
    for hole in (sight.view.on_page(mark.hole) for piece in sight.plan.pieces for mark in piece.marks):
        if frame.has(hole):
            lowest[round(hole.x, 3)] = min(hole.y, lowest.get(round(hole.x, 3), hole.y))
            leftmost[round(hole.y, 3)] = min(hole.x, leftmost.get(round(hole.y, 3), hole.x))
    for x in keep_apart([tick.along for tick in sides.above.ticks], _BUNCHED):
        taken = [(box.y0, box.y1) for box in solids if box.x0 < x < box.x1]
        for y0, y1 in open_spans(taken, lowest.get(round(x, 3), frame.y1), frame.y1):
            is_open = y1 == frame.y1 and _is_over(sight.ceiling, x, y1)
            top = y1 + OUTLINE_GAP if is_open else y1 - _HIDDEN_GAP
            yield from _lead(Point(x, y0 + _HIDDEN_GAP), Point(x, top))
    levels = [y for _, y in find_level_heights(sight)]
    for y in keep_apart([tick.along for tick in sides.left.ticks], _BUNCHED, levels):
        taken = [(box.x0, box.x1) for box in solids if box.y0 < y < box.y1]
        for x0, x1 in open_spans(taken, frame.x0, leftmost.get(round(y, 3), frame.x0)):
            is_open = x0 == frame.x0 and _is_over(sight.ceiling, x0, y)
            left = x0 - OUTLINE_GAP if is_open else x0 + _HIDDEN_GAP
            yield from _lead(Point(left, y), Point(x1 - _HIDDEN_GAP, y))


def _lead(start: Point, end: Point) -> Iterator[Line]:
    """A line that leads a distance to its hole, unless nothing is left of it."""
    if start.x + start.y < end.x + end.y:
        yield Line(start, end, FINE)


def _is_over(slope: Sequence[Point], x: float, y: float) -> bool:
    """Whether a point of the page lies clearly above a sloping ceiling."""
    return any(x0 <= x <= x1 for x0, x1 in find_low_spans(slope, y - _HIDDEN_GAP))
