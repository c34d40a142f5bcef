"""The wall itself on its elevation: floor, ends, ceiling, and the level lines across it."""

from __future__ import annotations

from collections.abc import Iterator

from templater.drawing import Dash, Item, Line
from templater.geometry import Point
from templater.scene.lines import HEAVY, MEDIUM, THICK, THIN, centre_dash, datum_dash, short_dash
from templater.scene.overview.piece_labels import Crowd
from templater.scene.overview.surroundings import draw_slope, find_low_spans, write_by
from templater.scene.overview.view import Sight
from templater.scene.overview.wall_figures import figure, find_levels
from templater.scene.spans import common_spans, dash_spans, open_spans

_OFF_FRAME = 0.8


def find_level_heights(sight: Sight) -> list[tuple[str, float]]:
    """The name and the height on the page of each level line that is drawn across the wall."""
    frame, view = sight.frame, sight.view
    levels = [(name, view.on_page(Point(0.0, height)).y) for name, height in find_levels(sight.plan)]
    return [(name, y) for name, y in levels if name != "ceiling" and frame.y0 <= y <= frame.y1]


def draw_levels(sight: Sight, crowd: Crowd) -> Iterator[Line]:
    """The datum and the eye line."""
    for name, y in find_level_heights(sight):
        width, dash = (MEDIUM, datum_dash) if name == "datum" else (THIN, centre_dash)
        yield from draw_level(y, width, dash(width), sight, crowd)


def draw_level(y: float, width_mm: float, dash: Dash, sight: Sight, crowd: Crowd) -> Iterator[Line]:
    """A level line across the wall, hidden where something hangs or stands in front."""
    span = (sight.frame.x0, sight.frame.x1)
    hidden = [(box.x0, box.x1) for box in sight.solids if box.y0 < y < box.y1]
    hidden += find_low_spans(sight.ceiling, y)
    for x0, x1 in common_spans(dash_spans(dash, *span), open_spans(hidden, *span)):
        line = Line(Point(x0, y), Point(x1, y), width_mm)
        crowd.keep_off(line)
        yield line


def draw_wall(sight: Sight, crowd: Crowd) -> Iterator[Item]:
    """The wall's floor, ends and ceiling; where a part is cut off, a dashed line."""
    wall, window, slope = sight.plan.wall, sight.view.window, sight.ceiling
    x0, y0, x1, y1 = sight.frame
    left, right = (slope[0].y, slope[-1].y) if slope else (y1, y1)
    edges = (
        (window.x0 <= 0.0, Point(x0, y0), Point(x0, y1), left, THICK),
        (window.x1 >= wall.width, Point(x1, y0), Point(x1, y1), right, THICK),
        (window.y1 >= wall.height, Point(x0, y1), Point(x1, y1), y1, 0.0 if slope else THICK),
        (window.y0 <= 0.0, Point(x0, y0), Point(x1, y0), y0, HEAVY),
    )
    for is_end, start, end, top, width in edges:
        if not is_end:
            yield Line(start, end, THIN, short_dash(THIN))
        elif width and top >= start.y:
            yield Line(start, end._replace(y=min(end.y, top)), width)
    if slope:
        yield from _draw_slope(sight, crowd)


def _draw_slope(sight: Sight, crowd: Crowd) -> Iterator[Item]:
    """A sloping ceiling, its height written at each of its points."""
    yield from draw_slope(sight.ceiling, sight.frame, crowd)
    for point, (_, height) in zip(sight.ceiling, sight.plan.ceiling, strict=True):
        if sight.frame.grown(_OFF_FRAME).has(point):
            text = f"ceiling {figure(height, sight.plan.units)}"
            yield from write_by(point, text, sight.frame, crowd)
