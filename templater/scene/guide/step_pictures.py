"""The small line drawings beside the steps, each 36 mm wide and 26 mm high from its bottom-left."""

from __future__ import annotations

from templater.drawing import Anchor, Circle, Item, Line, Polyline, Words
from templater.geometry import Box, Point, Size
from templater.scene.lines import MEDIUM, NORMAL, SMALL, THIN, centre_dash, datum_dash, short_dash
from templater.scene.marks import draw_arrow, draw_box

PICTURE = Size(36.0, 26.0)
"""The room of every picture, mm."""

HEAD = 2.2
"""Length of an arrowhead, mm."""


def draw_printing() -> tuple[Item, ...]:
    """A printer, paper above it, and the sheet that comes out full size."""
    return (
        _chain((9, 16), (11, 26), (25, 26), (27, 16)),
        draw_box(Box(4, 8, 32, 16), MEDIUM),
        Circle(Point(28.5, 13), 0.8, THIN),
        _line(8, 10.5, 28, 10.5),
        _chain((9.5, 10.5), (7.5, 0.5), (28.5, 0.5), (26.5, 10.5)),
        Words(Point(18, 2.8), "100 %", NORMAL, Anchor.MIDDLE, bold=True),
    )


def draw_ruler_check() -> tuple[Item, ...]:
    """A ruler laid along the printed bar of a sheet."""
    bar = [_line(6 + 2.5 * i, 13, 6 + 2.5 * i, 16 if i % 5 == 0 else 14.6) for i in range(11)]
    ruler = [_line(6 + 2.5 * i, 10.5, 6 + 2.5 * i, 8 if i % 5 == 0 else 9.3) for i in range(11)]
    return (
        _chain((3, 11.8), (3, 25), (33, 25), (33, 11.8)),
        _line(6, 13, 31, 13),
        *bar,
        Words(Point(18, 18), "100 mm", SMALL, Anchor.MIDDLE),
        draw_box(Box(0.5, 3, 35.5, 10.5), MEDIUM),
        *ruler,
    )


def draw_cutting_apart() -> tuple[Item, ...]:
    """A sheet with two templates, each in a dashed line; scissors on one of these."""
    return (
        draw_box(Box(1, 1, 35, 25), MEDIUM),
        *(
            Polyline(draw_box(box, THIN).points, THIN, short_dash(THIN), closed=True)
            for box in (Box(3, 7.5, 17, 23), Box(19, 7.5, 33, 23))
        ),
        draw_box(Box(4.4, 9, 15.6, 21.6), MEDIUM),
        draw_box(Box(20.4, 9, 31.6, 21.6), MEDIUM),
        *(_line(x, 15.3, x + 3.2, 15.3) for x in (8.4, 24.4)),
        *(_line(x, 13.7, x, 16.9) for x in (10, 26)),
        *_draw_scissors(18, 7.5),
        Words(Point(33.5, 2.6), "S1", SMALL, Anchor.END, bold=True),
    )


def draw_spacer() -> tuple[Item, ...]:
    """A strip held between two templates."""
    return (
        draw_box(Box(0.5, 4, 13, 24), MEDIUM),
        draw_box(Box(23, 4, 35.5, 24), MEDIUM),
        draw_box(Box(13, 10, 23, 18), THIN),
        *_draw_both_ways(13, 14, 23, 14),
        Words(Point(18, 19.4), "gap", SMALL, Anchor.MIDDLE),
    )


def draw_corner() -> tuple[Item, ...]:
    """A band along a piece's top, and the sheet with its bottom left corner, set by two measures."""
    return (
        _chain((3, 17), (3, 25), (33, 25), (33, 17), closed=True),
        _chain((3, 8), (3, 1), (12, 1)),
        _chain((0.5, 0), (13, 0), (13, 8), (0.5, 8), closed=True),
        _dashed(33, 17, 33, 1),
        _dashed(33, 1, 14, 1),
        *_draw_both_ways(3, 25, 3, 1),
        *_draw_both_ways(33, 25, 3, 1),
    )


def draw_card() -> tuple[Item, ...]:
    """A card with a hole and its level line, set by measure above the datum."""
    return (
        _line(0.5, 0, 0.5, 26, MEDIUM),
        Line(Point(0.5, 3), Point(36, 3), MEDIUM, datum_dash(MEDIUM)),
        draw_box(Box(17, 10, 33, 25), MEDIUM),
        _line(17, 16, 33, 16),
        *_draw_cross(25, 19.6),
        *_draw_both_ways(29.6, 3, 29.6, 16),
        *_draw_both_ways(0.5, 13, 25, 13),
        Line(Point(25, 10), Point(25, 16), THIN, centre_dash(THIN)),
    )


def draw_taping() -> tuple[Item, ...]:
    """The sheet to the right and the one below, cut on their trim lines, lie over the first's laps."""
    laps = ((16, 25), (19, 25), (19, 8), (1, 8), (1, 11))
    return (
        _chain((16, 25), (1, 25), (1, 11)),
        Polyline(tuple(Point(x, y) for x, y in laps), THIN, short_dash(THIN)),
        _chain((16, 25.6), (32, 24.6), (32, 10.6), (16, 11.6), closed=True),
        _chain((1.6, 11), (16.6, 11), (15.8, 0.6), (0.8, 0.6), closed=True),
        Words(Point(25.5, 16.8), "over", SMALL, Anchor.MIDDLE),
        Words(Point(7.5, 3.4), "over", SMALL, Anchor.MIDDLE),
        draw_box(Box(12.8, 20, 19.2, 22.2), THIN),
        draw_box(Box(4, 8.2, 6.2, 14), THIN),
        *_draw_scissors(19.8, 6),
    )


def _draw_scissors(x: float, y: float) -> tuple[Item, ...]:
    """Scissors from below, their point at (x, y)."""
    return (
        _line(x - 1.2, y - 3.2, x + 0.8, y),
        _line(x + 1.2, y - 3.2, x - 0.8, y),
        Circle(Point(x - 1.7, y - 4.0), 0.9, THIN),
        Circle(Point(x + 1.7, y - 4.0), 0.9, THIN),
    )


def draw_diagonals() -> tuple[Item, ...]:
    """A taped-up template with both its diagonals."""
    return (
        draw_box(Box(3, 2, 33, 24), MEDIUM),
        _dashed(18, 2, 18, 24),
        _dashed(3, 13, 33, 13),
        *_draw_both_ways(3, 2, 33, 24),
        *_draw_both_ways(3, 24, 33, 2),
    )


def draw_datum(height: str) -> tuple[Item, ...]:
    """A height measured up from the floor once, and a level on the line through it."""
    return (
        _line(0, 2, 36, 2, MEDIUM),
        *_draw_both_ways(5, 2, 5, 17),
        Line(Point(0, 17), Point(36, 17), MEDIUM, datum_dash(MEDIUM)),
        Words(Point(7, 8), height, SMALL),
        *_draw_level(14, 17),
    )


def _draw_level(x: float, y: float) -> tuple[Item, ...]:
    """A spirit level standing on a line from (x, y), its bubble in the middle."""
    return (
        draw_box(Box(x, y + 0.4, x + 20, y + 4.4), MEDIUM),
        draw_box(Box(x + 7, y + 1.4, x + 13, y + 3.4), THIN),
        _line(x + 8.8, y + 1.4, x + 8.8, y + 3.4),
        _line(x + 11.2, y + 1.4, x + 11.2, y + 3.4),
        Circle(Point(x + 10, y + 2.4), 0.7, THIN),
    )


def draw_taping_up() -> tuple[Item, ...]:
    """A template on the wall: its line on the datum, its centre line upright, at its distance."""
    strips = ((11, 6, -1), (29, 6, 1), (11, 23.5, 1), (29, 23.5, -1))
    return (
        _line(0.5, 0, 0.5, 26, MEDIUM),
        draw_box(Box(11, 6, 29, 23.5), MEDIUM),
        Line(Point(0.5, 15), Point(36, 15), MEDIUM, datum_dash(MEDIUM)),
        Line(Point(20, 25.6), Point(20, 1), THIN, centre_dash(THIN)),
        *(_draw_strip(x, y, rise) for x, y, rise in strips),
        *_draw_both_ways(0.5, 3, 20, 3),
    )


def _draw_strip(x: float, y: float, rise: int) -> Polyline:
    """A strip of tape across the corner (x, y), running up to the right or down."""
    ends = ((-2.2, -1.2), (-1.2, -2.2), (2.2, 1.2), (1.2, 2.2))
    return _chain(*((x + dx, y + rise * dy) for dx, dy in ends), closed=True)


def draw_stepping_back() -> tuple[Item, ...]:
    """Somebody looking at the wall from across the room."""
    return (
        Circle(Point(6, 19), 2.2, MEDIUM),
        _chain((6, 16.8), (6, 9)),
        _chain((3, 1), (6, 9), (9, 1)),
        _chain((3.2, 10.5), (6, 15.5), (8.8, 10.5)),
        _line(0, 1, 36, 1, MEDIUM),
        *(draw_box(Box(x, 12, x + 6.5, 22), MEDIUM) for x in (20, 28.5)),
        _dashed(8.8, 19.4, 19.4, 22),
        _dashed(8.8, 18.6, 19.4, 12),
    )


def draw_height_check() -> tuple[Item, ...]:
    """The distances from the datum and from the wall's left end to a cross."""
    return (
        _line(0.5, 0, 0.5, 26, MEDIUM),
        Line(Point(0.5, 5), Point(36, 5), MEDIUM, datum_dash(MEDIUM)),
        *_draw_cross(24, 19),
        *_draw_both_ways(24, 5, 24, 15.4),
        *_draw_both_ways(0.5, 19, 20.4, 19),
        Words(Point(26.5, 9), "±", NORMAL, bold=True),
    )


def draw_levelling() -> tuple[Item, ...]:
    """A level that stands on both crosses of a piece, before anything is drilled."""
    return (
        draw_box(Box(1, 3, 35, 24), THIN),
        *_draw_cross(7, 12),
        *_draw_cross(29, 12),
        *_draw_level(8, 12),
    )


def draw_drilling() -> tuple[Item, ...]:
    """A drill held level and square to the wall, through the paper."""
    return (
        draw_box(Box(30, 0, 35, 26), MEDIUM),
        *(_line(30, y, 35, y + 5) for y in (1, 6, 11, 16, 21)),
        _line(29.2, 3, 29.2, 25),
        _chain(
            (2, 10.5), (2, 18), (14, 18), (17, 16.2), (17, 12.8), (14, 11), (9, 11), (7.5, 2), (3, 2)
        ),
        _chain((3, 2), (4, 10.5), (2, 10.5)),
        draw_box(Box(17, 13, 20, 16), MEDIUM),
        _line(20, 14.5, 29.2, 14.5, MEDIUM),
        _chain((9.6, 9.6), (11.2, 9.2), (10.6, 7.4)),
    )


def draw_levelling_again() -> tuple[Item, ...]:
    """The level stands on the first hole, now drilled, and on the cross still to be drilled."""
    return (
        draw_box(Box(1, 3, 35, 24), THIN),
        Circle(Point(7, 12), 1.2, THIN, filled=True),
        *_draw_cross(29, 12),
        *_draw_level(8, 12),
    )


def draw_tearing() -> tuple[Item, ...]:
    """The paper comes off the wall from one corner; the hole stays."""
    return (
        _chain((6, 24), (30, 24), (30, 12), (18, 2), (6, 2), closed=True),
        _chain((30, 12), (19.5, 13.5), (18, 2)),
        Circle(Point(18, 19), 1.0, THIN, filled=True),
        *draw_arrow(Point(25, 7.5), Point(12, 16), MEDIUM, HEAD),
    )


def draw_hanging() -> tuple[Item, ...]:
    """The piece on its hooks with a level on top."""
    return (
        draw_box(Box(6, 1, 30, 19), MEDIUM),
        draw_box(Box(9, 4, 27, 16), THIN),
        _chain((9, 8), (14, 12), (18, 7), (22, 10), (27, 6)),
        *_draw_level(8, 19),
    )


def _draw_cross(x: float, y: float) -> tuple[Item, ...]:
    """A hole's mark, small."""
    return (
        _line(x - 3.6, y, x + 3.6, y),
        _line(x, y - 3.6, x, y + 3.6),
        Circle(Point(x, y), 1.8, THIN),
    )


def _draw_both_ways(x0: float, y0: float, x1: float, y1: float) -> tuple[Item, ...]:
    """A line with an arrowhead at either end."""
    middle = Point((x0 + x1) / 2, (y0 + y1) / 2)
    return (
        *draw_arrow(middle, Point(x0, y0), THIN, HEAD),
        *draw_arrow(middle, Point(x1, y1), THIN, HEAD),
    )


def _line(x0: float, y0: float, x1: float, y1: float, width_mm: float = THIN) -> Line:
    return Line(Point(x0, y0), Point(x1, y1), width_mm)


def _dashed(x0: float, y0: float, x1: float, y1: float) -> Line:
    return Line(Point(x0, y0), Point(x1, y1), THIN, short_dash(THIN))


def _chain(*points: tuple[float, float], closed: bool = False) -> Polyline:
    return Polyline(tuple(Point(x, y) for x, y in points), MEDIUM, closed=closed)
