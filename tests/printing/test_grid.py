"""One axis of a template laid on pages: what each sheet shows and keeps, worked by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from templater.geometry import Box, Point, Size
from templater.layout.model import Margins
from templater.paper import PAPERS
from templater.printing.grid import Lane, count_between, lay_grid
from templater.printing.model import PrintSetup
from templater.printing.seams import Axis


def test_a_single_sheet_shares_its_spare_between_both_sides() -> None:
    lane = Lane(Axis(60, 190, 10), page=210, room=190)
    assert lane.shown == lane.kept == [(-65, 125)]  # (190 - 60) / 2 = 65


def test_outer_sheets_spend_their_spare_outside_and_inner_ones_none() -> None:
    lane = Lane(Axis(460, 190, 10), page=210, room=190, cuts=(150, 300))
    assert lane.shown == [(-30, 160), (150, 310), (300, 490)]
    assert lane.kept == [(-30, 150), (150, 300), (300, 490)]
    assert lane.pages == [210, 210, 210]


def test_a_roll_is_cut_to_what_is_shown_and_never_shorter_than_the_marks_need() -> None:
    assert Lane(Axis(400, 5061, 10), page=5080, room=115).pages == [419]  # 400 + 19 of margins
    assert Lane(Axis(60, 5061, 10), page=5080, room=115).pages == [134]  # 115 + 19
    long = Lane(Axis(6000, 5061, 10), page=5080, room=115, cuts=(2995,))
    assert long.shown == [(0, 3005), (2995, 6000)]
    assert long.pages == [3024, 3024]


def test_seams_between_holes_are_counted_on_both_axes() -> None:
    setup = PrintSetup(PAPERS["a4"], Margins(10, 10, 10, 10), 10)
    grid = lay_grid(Box(0, 0, 600, 500), Size(210, 297), setup)
    across, down = replace(grid.across, cuts=(150, 300, 450)), replace(grid.down, cuts=(250,))
    grid = replace(grid, across=across, down=down)
    assert count_between(grid, []) == 0
    assert count_between(grid, [Point(200, 400)]) == 0
    assert count_between(grid, [Point(200, 400), Point(280, 400)]) == 0  # both on A2
    assert count_between(grid, [Point(100, 400), Point(500, 400)]) == 3
    assert count_between(grid, [Point(200, 400), Point(400, 100)]) == 2  # x = 300 and y = 500 - 250


@pytest.mark.parametrize("lap", [0, 10])
def test_fewest_counts_columns_and_rows_of_the_page_as_it_lies(lap: float) -> None:
    """600 x 400 mm on A4, margin 10: portrait 600 / 190 -> 4, 400 / 277 -> 2; landscape 3 and 3."""
    setup = PrintSetup(PAPERS["a4"], Margins(10, 10, 10, 10), lap)
    assert lay_grid(Box(0, 0, 600, 400), Size(210, 297), setup).fewest == 4 * 2
    assert lay_grid(Box(0, 0, 600, 400), Size(297, 210), setup).fewest == 3 * 3
