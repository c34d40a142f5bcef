"""The estimate of how far off a hole may be on paper, worked by hand."""

from __future__ import annotations

from math import sqrt

import pytest

from templater.geometry import Box, Point, Size
from templater.layout.model import Margins
from templater.printing.error import Errors, estimate_errors, format_error
from templater.printing.model import Printer, Seam, Tile, Tiling

PAGE = Size(210.0, 297.0)
OUTLINE = Box(0, 0, 400, 600)
MEASURED = Printer("study inkjet", 1.0, 1.0, Margins(), Size(180.0, 240.0))


def _tile(name: str, keep: Box) -> Tile:
    return Tile(name, keep, keep, PAGE, Point(0, 0))


QUARTERS = Tiling(
    (
        _tile("A1", Box(0, 300, 200, 600)),
        _tile("A2", Box(200, 300, 400, 600)),
        _tile("B1", Box(0, 0, 200, 300)),
        _tile("B2", Box(200, 0, 400, 300)),
    ),
    (
        Seam("A1", "A2", Point(200, 300), Point(200, 600)),
        Seam("B1", "B2", Point(200, 0), Point(200, 300)),
        Seam("A1", "B1", Point(0, 300), Point(200, 300)),
        Seam("A2", "B2", Point(200, 300), Point(400, 300)),
    ),
    (),
)
THIRDS = Tiling(
    (
        _tile("A1", Box(0, 0, 130, 600)),
        _tile("A2", Box(130, 0, 270, 600)),
        _tile("A3", Box(270, 0, 400, 600)),
    ),
    (
        Seam("A1", "A2", Point(130, 0), Point(130, 600)),
        Seam("A2", "A3", Point(270, 0), Point(270, 600)),
    ),
    (),
)


def _estimate(tiling: Tiling, *holes: tuple[float, float], printer: Printer | None = None) -> Errors:
    points = [Point(*hole) for hole in holes]
    return estimate_errors(tiling, points, [Point(x, 540.0) for x, _ in points], OUTLINE, printer)


def test_a_hole_where_the_lines_cross_is_as_true_as_they_are() -> None:
    assert _estimate(QUARTERS, (200, 540)).holes == (0.0,)


def test_scale_and_moisture_grow_with_the_distance_from_each_line() -> None:
    # The centre line is at 200, the level line at 540; sqrt(0.5² + 0.3²) % = 0.58310 %.
    # Across 100 mm, up 20 mm, both on the sheet A1: 0.0058310 · sqrt(100² + 20²) = 0.59464 mm.
    (error,) = _estimate(QUARTERS, (100, 560)).holes
    assert error == pytest.approx(0.59464, abs=1e-5)


def test_a_measured_printer_leaves_less() -> None:
    # 0.3 / 180 = 0.16667 %, with 0.1 % and 0.3 %: sqrt(0.027778 + 0.01 + 0.09) % = 0.35746 %.
    (error,) = _estimate(QUARTERS, (100, 540), printer=MEASURED).holes
    assert error == pytest.approx(0.35746, abs=1e-5)


def test_seams_add_up() -> None:
    # From A1 one seam to A2, where the centre line is: sqrt(0.58310² + 0.5² + 0.3²) = 0.82462.
    (error,) = _estimate(THIRDS, (100, 540)).holes
    assert error == pytest.approx(sqrt(0.34 + 0.34), abs=1e-4)
    # From A1 to A3 two seams, 300 mm apart: sqrt(1.7493² + 2 · 0.34).
    between = _estimate(THIRDS, (50, 540), (350, 540)).between
    assert between == pytest.approx(sqrt(3.06 + 0.68), abs=1e-4)


def test_the_top_edge_is_farther_from_the_hole_than_the_level_line() -> None:
    errors = _estimate(QUARTERS, (200, 540))
    # 60 mm below the top edge: 0.0058310 · 60 = 0.34986.
    assert errors.from_top == pytest.approx(0.34986, abs=1e-5)
    assert errors.between is None


def test_a_template_without_holes_expects_nothing() -> None:
    assert _estimate(QUARTERS) == Errors((), None, None)


def test_sheets_that_do_not_join_are_set_each_by_its_own_lines() -> None:
    # A1 shows no centre line, and no paper lies between it and A2: both distances are measured on the
    # wall. Up from the level line are 20 mm on A1 itself: 0.0058310 · 20 = 0.11662.
    apart = Tiling(THIRDS.tiles, (), ())
    errors = _estimate(apart, (100, 560), (150, 560))
    assert errors.holes[0] == pytest.approx(0.11662, abs=1e-5)
    assert errors.between is None
    # Two holes on A1, 50 mm apart: 0.0058310 · 50 = 0.29155.
    assert _estimate(apart, (50, 560), (100, 560)).between == pytest.approx(0.29155, abs=1e-5)


@pytest.mark.parametrize(
    ("error", "told"),
    [(0.0, "± 0.5 mm"), (0.5, "± 0.5 mm"), (0.51, "± 1 mm"), (1.2, "± 1.5 mm"), (2.0, "± 2 mm")],
)
def test_errors_are_told_up_to_the_next_half_millimetre(error: float, told: str) -> None:
    assert format_error(error) == told
