"""Marks that drawings share: the hole's target, arrows, rulers, boxes. All numbers in mm."""

from __future__ import annotations

from templater.drawing import Anchor, Circle, Item, Line, Polyline, Words
from templater.geometry import Box, Point
from templater.scene.lines import FINE, SMALL, THIN

RING_RADIUS = 5.0
"""The ring round a hole; nothing but the cross stands inside it."""

ARM = 10.0
"""How far the cross reaches from the hole to each side."""

_Figures = tuple[tuple[str, float, int, Anchor], ...]

_FIGURES: _Figures = (
    ("0", 0.0, 1, Anchor.MIDDLE),
    ("50", 50.0, 1, Anchor.MIDDLE),
    ("100 mm", 100.0, 1, Anchor.END),
    ("2", 50.8, -1, Anchor.MIDDLE),
    ("4 in", 101.6, -1, Anchor.END),
)
_SHORT_FIGURES: _Figures = (
    ("0", 0.0, 1, Anchor.MIDDLE),
    ("50 mm", 50.0, 1, Anchor.END),
    ("2 in", 50.8, -1, Anchor.END),
)


def draw_target(hole: Point) -> tuple[Item, ...]:
    """A hole at full size: two unbroken lines that cross at it, and a ring."""
    x, y = hole
    return (
        Line(Point(x - ARM, y), Point(x + ARM, y), THIN),
        Line(Point(x, y - ARM), Point(x, y + ARM), THIN),
        Circle(hole, RING_RADIUS, THIN),
    )


def draw_box(box: Box, width_mm: float, dash: tuple[float, ...] = ()) -> Polyline:
    """A rectangle."""
    corners = (
        Point(box.x0, box.y0),
        Point(box.x1, box.y0),
        Point(box.x1, box.y1),
        Point(box.x0, box.y1),
    )
    return Polyline(corners, width_mm, dash, closed=True)


def draw_arrow(
    tail: Point, head: Point, width_mm: float = THIN, length_mm: float = 3.0
) -> tuple[Item, ...]:
    """A line with a filled arrowhead of 15 degrees (ISO 129) at its head."""
    along = Point(head.x - tail.x, head.y - tail.y)
    reach = (along.x**2 + along.y**2) ** 0.5
    ux, uy = along.x / reach, along.y / reach
    half = length_mm * 0.1317  # tan(7.5 degrees)
    neck = Point(head.x - ux * length_mm, head.y - uy * length_mm)
    barbs = (
        head,
        Point(neck.x - uy * half, neck.y + ux * half),
        Point(neck.x + uy * half, neck.y - ux * half),
    )
    return (Line(tail, neck, width_mm), Polyline(barbs, width_mm, filled=True))


def draw_scale_bar(at: Point, *, upward: bool = False, short: bool = False) -> tuple[Item, ...]:
    """Two bars that share a zero: 100 mm by tens, and 4 in by halves on its other side.

    ``at`` is the zero on the line between them. Across: millimetres above the line, inches below;
    upward: millimetres to the left, inches to the right. A ``short`` one ends at 50 mm and 2 in.
    """

    def place(along: float, aside: float) -> Point:
        return at.moved(-aside, along) if upward else at.moved(along, aside)

    tens, halves = (5, 4) if short else (10, 8)
    items: list[Item] = [Line(place(0, 0), place(12.7 * halves, 0), THIN)]
    items += [
        Line(place(10.0 * i, 0), place(10.0 * i, 3.0 if i % 5 == 0 else 1.8), FINE)
        for i in range(tens + 1)
    ]
    items += [
        Line(place(12.7 * i, 0), place(12.7 * i, -3.0 if i % 2 == 0 else -1.8), FINE)
        for i in range(halves + 1)
    ]
    items += [
        Words(place(along, 3.6 if aside > 0 else -3.6 - SMALL), text, SMALL, anchor, turned=upward)
        for text, along, aside, anchor in (_SHORT_FIGURES if short else _FIGURES)
    ]
    return tuple(items)
