"""A page with one of everything that can be drawn, and the papers it is drawn on."""

from __future__ import annotations

from templater.drawing import Anchor, Circle, Item, Line, Polyline, Words
from templater.geometry import Box, Point, Size
from templater.sheets.model import Layer, Page, PageKind

PAPERS = {
    "a4": Size(210.0, 297.0),
    "letter": Size(215.9, 279.4),
    "roll": Size(609.6, 5000.0),
}

LINE = Line(Point(10.123456, 20.25), Point(150.5, 20.25), 0.25)
DASHED = Line(Point(10, 30), Point(100, 90.75), 0.18, (4.32, 0.54, 0.09, 0.54))
CHAIN = Polyline((Point(20, 100), Point(40, 110), Point(60.0625, 100)), 0.35)
BOX = Polyline(
    (Point(20, 120), Point(60, 120), Point(60, 140), Point(20, 140)), 0.5, (3.0, 0.75), closed=True
)
ARROW = Polyline((Point(80, 120), Point(90, 121.3), Point(90, 118.7)), 0.18, filled=True)
RING = Circle(Point(100.1, 150.2), 5.0, 0.25)
DOT = Circle(Point(120, 150), 0.8, 0.13, filled=True)
WORDS = (
    Words(Point(30, 170), "Kelp print 23 5/8″", 3.5),
    Words(Point(100, 180), "−3/4 in · Ärö ⅝ λ", 2.5, Anchor.MIDDLE, bold=True),
    Words(Point(180, 190), "to B2", 7.0, Anchor.END),
    Words(Point(30, 200), "read from the right", 5.0, turned=True),
    Words(Point(40, 230), "middle, turned", 2.5, Anchor.MIDDLE, turned=True),
)
ITEMS: tuple[Item, ...] = (LINE, DASHED, CHAIN, BOX, ARROW, RING, DOT, *WORDS)

ORIGIN = Point(3.175, 4.0625)
CLIP = Box(5.0, 6.0, 160.5, 250.25)


def page_of(size: Size, *layers: Layer) -> Page:
    """A page that shows the layers."""
    return Page(PageKind.FORM, size, layers, label="1")


def full_page(size: Size) -> Page:
    """Everything on a page, its origin moved and clipped."""
    return page_of(size, Layer(ITEMS, ORIGIN, CLIP), Layer((LINE,)))
