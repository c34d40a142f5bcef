"""The table of holes: what to expect of the paper stands in a column of its own."""

from __future__ import annotations

import pytest

from templater.geometry import Box, Size
from templater.printing.error import Errors
from templater.scene.overview.hole_table import list_holes
from tests.scene.pages import make_plan, placed_piece
from tests.scene.walls import hung, make_wall

PLAN = make_plan(
    [
        placed_piece("Tide chart", [(200.0, 1700.0)]),
        placed_piece("Kelp print", [(600.0, 1700.0), (800.0, 1700.0)], 500.0),
        placed_piece("Boat bell", [], 1000.0),
    ]
)
ERRORS = {
    "tide-chart": Errors((0.2,), None, 0.4),
    "kelp-print": Errors((0.6, 1.2), 1.4, 1.5),
    "boat-bell": Errors((), None, None),
}
HEADING = "Error on paper (estimate)"


def test_every_hole_has_its_error_and_a_piece_without_holes_none() -> None:
    (chapter,) = list_holes(PLAN, 260.0, ERRORS)
    assert chapter.columns[-1].heading.replace("\n", " ") == HEADING
    # Up to the next half millimetre: 0.2, 0.6 and 1.2 mm.
    assert [row[-1] for row in chapter.rows] == ["± 0.5 mm", "± 1 mm", "± 1.5 mm", ""]


def test_without_errors_there_is_no_column() -> None:
    (chapter,) = list_holes(PLAN, 260.0)
    assert all("estimate" not in column.heading for column in chapter.columns)


@pytest.mark.parametrize("width", [90.0, 120.0])
def test_on_narrow_paper_the_errors_are_in_one_of_the_tables(width: float) -> None:
    chapters = list_holes(PLAN, width, ERRORS)
    errors = [[row[-1] for row in chapter.rows] for chapter in chapters]
    assert errors[-1] == ["± 0.5 mm", "± 1 mm", "± 1.5 mm", ""]
    assert len(chapters) > 1


def test_a_piece_without_a_hole_has_the_height_of_its_top_edge() -> None:
    # It reaches up to 1650 mm = 64.96 in, nearest sixteenth 64 15/16; the datum is at 1500.
    plan = make_wall([hung("Stuck card", Box(1000, 1500, 1100, 1650), [])], Size(3000, 2500))
    (chapter,) = list_holes(plan, 260.0)
    (row,) = chapter.rows
    assert "no hole: its top edge" in row
    assert "1650 mm (64 15/16 in)" in row
    assert "+150 mm (+5 7/8 in)" in row
