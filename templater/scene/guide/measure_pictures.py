"""The sketches of the form to measure by, each 56 mm wide and 40 mm high from its bottom-left."""

from __future__ import annotations

from templater.drawing import Anchor, Circle, Item, Line, Polyline, Words
from templater.geometry import Box, Point, Size
from templater.scene.lines import MEDIUM, SMALL, THICK, THIN
from templater.scene.marks import draw_arrow, draw_box

SKETCH = Size(56.0, 40.0)
"""The room of every sketch, mm."""


def draw_drop() -> tuple[Item, ...]:
    """A frame's back, its wire pulled up, and the drop from the frame's top edge to the wire."""
    return (
        *_draw_frame(),
        *_draw_ring(8),
        *_draw_ring(36),
        Polyline((Point(8, 20), Point(22, 28), Point(36, 20)), MEDIUM),
        *draw_arrow(Point(22, 17), Point(22, 27), THICK),
        Words(Point(22, 12.5), "pull taut", SMALL, Anchor.MIDDLE),
        Line(Point(23, 28), Point(46, 28), THIN),
        Line(Point(43, 39), Point(46, 39), THIN),
        *_draw_measure(Point(45, 28), Point(45, 39)),
        Words(Point(46.5, 32.2), "drop", SMALL, bold=True),
    )


def draw_apart() -> tuple[Item, ...]:
    """A frame's back with two rings, and the distance between their middles."""
    return (
        *_draw_frame(),
        *_draw_ring(8),
        *_draw_ring(36),
        Line(Point(8, 17), Point(8, 8), THIN),
        Line(Point(36, 17), Point(36, 8), THIN),
        *_draw_measure(Point(8, 9), Point(36, 9)),
        Words(Point(22, 10.5), "apart", SMALL, Anchor.MIDDLE, bold=True),
    )


def draw_rise() -> tuple[Item, ...]:
    """A hook on the wall from the side: its nail, the wire in it, and the rise between them."""
    return (
        draw_box(Box(4, 2, 9, 38), MEDIUM),
        *(Line(Point(4, y), Point(9, y + 5), THIN) for y in (3, 9, 15, 21, 27, 33)),
        Polyline(
            (Point(9.6, 33), Point(9.6, 12), Point(12, 9.5), Point(14.4, 12), Point(14.4, 15)), THICK
        ),
        Line(Point(5, 26), Point(17, 30), THICK),
        Circle(Point(12, 11.5), 1.2, THIN, filled=True),
        Line(Point(10.6, 27.4), Point(32, 27.4), THIN),
        Line(Point(14, 11.5), Point(32, 11.5), THIN),
        *_draw_measure(Point(30, 11.5), Point(30, 27.4)),
        Words(Point(31.5, 18.2), "rise", SMALL, bold=True),
        Words(Point(19, 29.5), "nail", SMALL),
        Words(Point(17, 5.5), "wire", SMALL),
    )


def _draw_frame() -> tuple[Item, ...]:
    return (draw_box(Box(2, 2, 42, 39), MEDIUM), draw_box(Box(5, 5, 39, 36), THIN))


def _draw_ring(x: float) -> tuple[Item, ...]:
    """A ring screwed to the side of the frame."""
    return (Circle(Point(x, 19), 1.6, MEDIUM),)


def _draw_measure(start: Point, end: Point) -> tuple[Item, ...]:
    """A line with an arrowhead at either end."""
    middle = Point((start.x + end.x) / 2, (start.y + end.y) / 2)
    return (*draw_arrow(middle, start), *draw_arrow(middle, end))
