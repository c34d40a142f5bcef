"""What a sheet must show, worked out by hand for one piece."""

from __future__ import annotations

from dataclasses import replace

import pytest

from templater.geometry import Box, Point, Size
from templater.placement.model import PlacedFurniture
from templater.printing.model import Seam, Tiling
from templater.verify.template_marks import HoleMeasures, expect_marks, measure_holes
from tests.verify import gull


def test_the_marks_of_a_piece() -> None:
    seam = Seam("A1", "B1", Point(-50.0, 40.0), Point(900.0, 40.0))
    marks = expect_marks(replace(gull.expected(), tilings={"gull": Tiling((), (seam,), ())}), "gull")
    assert (marks.size, marks.holes, marks.hangs) == (
        Size(200, 100),
        (Point(100, 80),),
        (Point(100, 70),),
    )
    assert marks.levels == (70.0,)
    assert marks.datum is None  # at 1550, the piece ends at 1500
    # The hole's cross reaches 10 mm to each side, which is within the outline.
    assert marks.seams == (Seam("A1", "B1", Point(0.0, 40.0), Point(200.0, 40.0)),)
    assert marks.measures == (
        HoleMeasures(across=400.0, height=1480.0, from_datum=-70.0, drop=30.0, rise=-10.0, aside=0.0),
    )


@pytest.mark.parametrize(
    ("height", "datum"), [(1400.0, 0.0), (1399.0, None), (1500.0, 100.0), (1501.0, None), (1450.0, 50.0)]
)
def test_the_datum_on_a_piece(height: float, datum: float | None) -> None:
    plan = gull.plan()
    plan = replace(plan, datum=replace(plan.datum, height_mm=height))
    assert expect_marks(replace(gull.expected(), plan=plan), "gull").datum == datum


@pytest.mark.parametrize(
    ("start", "end", "told"),
    [
        # A hole 5 mm above the outline: its cross reaches to 115 mm, and from 90 to 110 mm across.
        (Point(50.0, -9.0), Point(50.0, 400.0), (Point(50.0, 0.0), Point(50.0, 115.0))),
        (Point(50.0, 20.0), Point(50.0, 60.0), (Point(50.0, 20.0), Point(50.0, 60.0))),
        (Point(-9.0, 120.0), Point(400.0, 120.0), (Point(0.0, 115.0), Point(200.0, 115.0))),
    ],
)
def test_seams_reach_as_far_as_the_outline_and_the_crosses(
    start: Point, end: Point, told: tuple[Point, Point]
) -> None:
    (piece,) = gull.plan().pieces
    high = replace(piece, marks=(replace(piece.marks[0], hole=Point(400.0, 1505.0)),))
    expected = gull.expected()
    expected = replace(
        expected,
        plan=replace(gull.plan(), pieces=(high,)),
        tilings={"gull": Tiling((), (Seam("A1", "B1", start, end),), ())},
    )
    (seam,) = expect_marks(expected, "gull").seams
    assert (seam.start, seam.end) == told


def test_a_hole_is_told_from_the_middle_of_the_furniture_below() -> None:
    (piece,) = gull.plan().pieces
    chest = PlacedFurniture("chest", Box(200.0, 0.0, 700.0, 800.0))
    (measures,) = measure_holes(gull.plan(), replace(piece, over=chest))
    assert measures.aside == -50.0  # 400 - (200 + 700) / 2
