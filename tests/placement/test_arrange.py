from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.geometry import Box, Point, Size
from templater.layout.model import Align, Arrangement, Cells
from templater.placement.arrange import arrange_group, find_gap
from tests.builders import group

SIZES = st.lists(st.builds(Size, st.floats(10, 3000), st.floats(10, 3000)), min_size=1, max_size=8)


@given(SIZES, st.floats(0, 500), st.sampled_from([Align.TOP, Align.CENTRE, Align.BOTTOM]))
def test_a_row_stands_gap_by_gap_from_its_corner(sizes: list[Size], gap: float, align: Align) -> None:
    boxes = arrange_group(group("row", "", gap=gap, align=align), sizes)
    assert boxes[0].x0 == 0
    assert min(box.y0 for box in boxes) == pytest.approx(0, abs=1e-9)
    assert [box.size for box in boxes] == [pytest.approx(size) for size in sizes]
    for left, right in pairwise(boxes):
        assert right.x0 - left.x1 == pytest.approx(gap, abs=1e-9)


@given(SIZES, st.floats(0, 500), st.sampled_from([Align.LEFT, Align.CENTRE, Align.RIGHT]))
def test_a_column_stands_gap_by_gap_down_to_its_corner(
    sizes: list[Size], gap: float, align: Align
) -> None:
    column = group("column", "", arrange=Arrangement.COLUMN, gap=gap, align=align)
    boxes = arrange_group(column, sizes)
    assert boxes[-1].y0 == 0
    assert min(box.x0 for box in boxes) == pytest.approx(0, abs=1e-9)
    assert [box.size for box in boxes] == [pytest.approx(size) for size in sizes]
    for upper, lower in pairwise(boxes):
        assert upper.y0 - lower.y1 == pytest.approx(gap, abs=1e-9)


def test_spreading_leaves_the_same_space_at_both_ends_and_between() -> None:
    # Even spacing, gap = (length - sum of widths) / (n + 1): (100 - 60) / 4 = 10 (the usual gallery
    # rule); a column of the same: (100 - (20 + 24 + 16)) / 4 = 10.
    sizes = [Size(20, 20), Size(20, 24), Size(20, 16)]
    row = replace(group("row", ""), spread_mm=100.0)
    column = replace(row, arrange=Arrangement.COLUMN)
    assert find_gap(row, sizes) == pytest.approx(10)
    assert [box.x0 for box in arrange_group(row, sizes)] == pytest.approx([0, 30, 60])
    assert find_gap(column, sizes) == pytest.approx(10)
    assert [box.y0 for box in arrange_group(column, sizes)] == pytest.approx([60, 26, 0])


def test_what_is_longer_than_its_spread_stands_without_gaps() -> None:
    assert find_gap(replace(group("row", ""), spread_mm=100.0), [Size(60, 10), Size(60, 10)]) == 0


FIVE = [Size(10, 20), Size(20, 10), Size(30, 16), Size(12, 12), Size(14, 8)]
"""The widest is 30, the tallest 20; columns of three: 12, 20 and 30 wide, rows 20 and 12 high."""


@pytest.mark.parametrize(
    ("cells", "corners"),
    [
        # Cells of 30 x 20, 3 apart: centres at 15, 48, 81 across, and at 33 and 10 up. The last row
        # starts at the left. A's left edge, 15 - 5, is not the least: D's is 15 - 6 = 9; the lowest
        # edge is D's, 10 - 6 = 4. So the origin lies at (9, 4).
        (Cells.EQUAL, [(1, 19), (29, 24), (57, 21), (0, 0), (32, 2)]),
        # Columns from 0, 12 + 3 = 15 and 15 + 20 + 3 = 38; rows from 0 (12 high) and 15 (20 high).
        (Cells.TRUE, [(1, 15), (15, 20), (38, 17), (0, 0), (18, 2)]),
    ],
)
def test_a_grid_is_filled_in_reading_order(cells: Cells, corners: list[tuple[float, float]]) -> None:
    grid = replace(group("grid", "", arrange=Arrangement.GRID, gap=3), columns=3, cells=cells)
    boxes = arrange_group(grid, FIVE)
    assert boxes == tuple(
        Box.of(Point(*corner), size) for corner, size in zip(corners, FIVE, strict=True)
    )


@given(SIZES, st.floats(0, 500), st.integers(1, 10), st.sampled_from(Cells))
def test_the_centres_of_a_grid_are_in_line(
    sizes: list[Size], gap: float, columns: int, cells: Cells
) -> None:
    grid = replace(group("g", "", arrange=Arrangement.GRID, gap=gap), columns=columns, cells=cells)
    boxes = arrange_group(grid, sizes)
    for number, box in enumerate(boxes):
        assert box.size == pytest.approx(sizes[number])
        if number >= columns:
            above = boxes[number - columns]
            assert box.centre.x == pytest.approx(above.centre.x, abs=1e-9)
            assert above.y0 - box.y1 >= gap - 1e-9
        if number % columns:
            before = boxes[number - 1]
            assert box.centre.y == pytest.approx(before.centre.y, abs=1e-9)
            assert box.x0 - before.x1 >= gap - 1e-9


def test_a_grid_of_more_columns_than_pieces_is_a_row() -> None:
    grid = replace(group("grid", "", arrange=Arrangement.GRID, gap=3), columns=9, cells=Cells.TRUE)
    row = group("row", "", gap=3)
    assert arrange_group(grid, FIVE) == arrange_group(row, FIVE)


def test_pieces_on_a_ledge_have_their_bottoms_in_line() -> None:
    # 10 + 3 + 20 + 3 = 36.
    ledge = group("ledge", "", arrange=Arrangement.LEDGE, gap=3)
    corners = [box.corner for box in arrange_group(ledge, FIVE[:3])]
    assert corners == [(0, 0), (13, 0), (36, 0)]


def test_placed_pieces_keep_to_one_another() -> None:
    placed = replace(
        group("placed", "", arrange=Arrangement.PLACED), corners=(Point(5, 40), Point(25, 3))
    )
    assert arrange_group(placed, FIVE[:2]) == (Box(0, 37, 10, 57), Box(20, 0, 40, 10))
