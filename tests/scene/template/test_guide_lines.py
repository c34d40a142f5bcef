from __future__ import annotations

from math import hypot

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.drawing import Circle, Line, Polyline
from templater.geometry import Box, Point, Size
from templater.placement.model import PlacedPiece
from templater.scene.template.board import Cover
from templater.scene.template.guide_lines import TemplateLines
from tests.scene.templates import INCH, pieces, placed, plan_for, tide_chart


def lines_of(piece: PlacedPiece, datum_mm: float = 60 * INCH) -> TemplateLines:
    return TemplateLines.of(piece, plan_for(piece, datum_mm=datum_mm))


def distance_to(line: Line, point: Point) -> float:
    """From a point to an upright or level line."""
    box = line.box
    dx = max(box.x0 - point.x, 0.0, point.x - box.x1)
    dy = max(box.y0 - point.y, 0.0, point.y - box.y1)
    return hypot(dx, dy)


@given(pieces())
def test_no_line_enters_a_ring(piece: PlacedPiece) -> None:
    lines = lines_of(piece)
    for mark in lines.marks:
        for line, _ in lines.draw_lines():
            assert distance_to(line, mark.hole) > 5.0  # the ring's radius, mm


@given(pieces())
def test_every_hole_has_two_unbroken_lines_that_cross_at_it_and_one_ring(piece: PlacedPiece) -> None:
    lines = lines_of(piece)
    drawn = list(lines.draw_holes())
    for mark in lines.marks:
        (x, y) = mark.hole
        ring = Circle(mark.hole, 5.0, 0.25)
        level = Line(Point(x - 10, y), Point(x + 10, y), 0.25)
        upright = Line(Point(x, y - 10), Point(x, y + 10), 0.25)
        assert all(item in drawn for item in (ring, level, upright))


def test_levels_stand_where_the_plan_says() -> None:
    # Tide chart: hang point 20 - 2 1/4 = 17 3/4 in up; datum 60 - 41 = 19 in above its bottom.
    lines = lines_of(tide_chart())
    assert [line.start.y for line in lines.levels] == pytest.approx([17.75 * INCH])
    assert lines.datum.start.y == pytest.approx(19 * INCH)
    assert lines.centre_up.start.x == pytest.approx(8 * INCH)
    assert lines.centre_across.start.y == pytest.approx(10 * INCH)


def test_the_outline_is_the_frame() -> None:
    piece = placed(Size(300, 200))
    edges = [
        line.box for line, cover in lines_of(piece).draw_lines() if cover in (Cover.SIDES, Cover.ENDS)
    ]
    assert sorted(edges) == [
        Box(0, 0, 0, 200),
        Box(0, 0, 300, 0),
        Box(0, 200, 300, 200),
        Box(300, 0, 300, 200),
    ]


def test_no_level_line_without_holes_and_no_datum_off_the_paper() -> None:
    lines = lines_of(placed(Size(300, 200)), datum_mm=1501.0)
    covers = [cover for _, cover in lines.draw_lines()]
    assert not lines.has_datum
    assert Cover.LEVEL not in covers


def test_a_datum_through_the_middle_stands_for_the_centre_line() -> None:
    lines = lines_of(placed(Size(300, 200)), datum_mm=1400.0)
    assert lines.datum_is_centre
    assert Cover.ACROSS not in [cover for _, cover in lines.draw_lines()]


def test_lines_stop_at_words_but_the_outline_does_not() -> None:
    words = Box(-20, 90, 160, 110)
    lines = lines_of(placed(Size(300, 200)), datum_mm=1400.0)
    for line, cover in lines.draw_lines([words]):
        crosses = line.box.grown(0.01).meets(words.grown(-0.1))
        assert crosses == (cover is Cover.SIDES and line.start.x == 0)


@pytest.mark.parametrize(("rise", "shown"), [(0.0, 0), (4.9, 0), (5.1, 1), (12.7, 1), (-12.7, 1)])
def test_a_hang_point_is_marked_only_outside_the_ring(rise: float, shown: int) -> None:
    lines = lines_of(placed(Size(300, 200), [(150.0, 150.0)], rise=rise))
    triangles = [item for item in lines.draw_holes() if isinstance(item, Polyline)]
    assert len(triangles) == shown


@given(st.sampled_from((6.0, 12.7, 30.0, -6.0, -12.7)))
def test_the_triangle_points_at_the_hang_point_and_keeps_out_of_the_ring(rise: float) -> None:
    lines = lines_of(placed(Size(300, 200), [(150.0, 150.0)], rise=rise))
    (triangle,) = [item for item in lines.draw_holes() if isinstance(item, Polyline)]
    assert triangle.points[0] == pytest.approx(Point(150.0, 150.0 - rise))
    assert all(hypot(x - 150.0, y - 150.0) > 5.0 for x, y in triangle.points)


def test_words_beside_the_datum_do_not_interrupt_it() -> None:
    # The datum at 209.4 mm; words that break the level centre line at 200 mm end 0.9 mm below the datum,
    # and with 1 mm of clear ground round them 0.1 mm above it.
    piece = placed(Size(300.0, 400.0), corner=Point(0.0, 1000.0))
    lines = TemplateLines.of(piece, plan_for(piece, datum_mm=1209.4))
    beside, across = Box(50.0, 197.0, 80.0, 209.5), Box(150.0, 205.0, 180.0, 215.0)
    drawn = [line for line, cover in lines.draw_lines([beside, across]) if cover is Cover.LEVEL]
    assert [(line.start.x, line.end.x) for line in drawn] == [(0.0, 150.0), (180.0, 300.0)]
