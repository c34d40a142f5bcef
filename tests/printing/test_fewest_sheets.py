"""Sheets of real pieces on real paper, held against an integer programme."""

from __future__ import annotations

import pytest

from templater.geometry import Box, Point
from templater.layout.model import Margins
from templater.paper import parse_paper
from templater.printing.model import PrintSetup
from templater.printing.tile import tile_template
from tests.benchmarks.sheets import FRAMES, PAPERS, count_sheets
from tests.printing.integer_programme import count_course, count_courses

Place = tuple[float, float]
"""From the left and from the top, mm."""

MARGIN = 6.35
LAP = 10.0


def count_best(width: float, height: float, paper: str, holes: list[Place]) -> int:
    """The fewest sheets in rows or in columns; all holes at one height."""
    size = parse_paper(paper).size
    short, long = size.width - 2 * MARGIN, size.height - 2 * MARGIN
    turned = [(y, x) for x, y in holes]
    counts = [
        _count(width, height, [(short, long), (long, short)], holes),
        _count(height, width, [(long, short), (short, long)], turned),
    ]
    return min(count for count in counts if count is not None)


def _count(length: float, depth: float, reaches: list[Place], holes: list[Place]) -> int | None:
    """The fewest sheets in courses of a length; reaches along and across."""
    kinds = []
    for along, across in reaches:
        free = count_course(length, along, LAP, [])
        assert free is not None
        kinds.append((across, free, count_course(length, along, LAP, sorted({x for x, _ in holes}))))
    return count_courses(depth, LAP, kinds, sorted({y for _, y in holes}))


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize(("width", "height"), FRAMES)
def test_common_frames_take_the_fewest_sheets(width: float, height: float, paper: str) -> None:
    """One hole on the centre line, 2 1/4 in below the top."""
    hole = (width * 12.7, 57.15)
    assert count_sheets(width, height, paper) == count_best(width * 25.4, height * 25.4, paper, [hole])


def test_common_frames_take_297_sheets() -> None:
    """Counted with a separate plain model; the best grids of one orientation take 324."""
    assert sum(count_sheets(*size, paper) for paper in PAPERS for size in FRAMES) == 297


@pytest.mark.parametrize(
    ("width", "height", "apart"),
    [(700, 500, 400), (900, 600, 600), (1100, 420, 187), (640, 1240, 190), (1500, 900, 980)],
)
@pytest.mark.parametrize("paper", PAPERS)
def test_two_holes_side_by_side(width: float, height: float, apart: float, paper: str) -> None:
    """All in one row, or each in a column of its own, or both in one."""
    holes = [(width / 2 - apart / 2, 80.0), (width / 2 + apart / 2, 80.0)]
    setup = PrintSetup(parse_paper(paper), Margins(MARGIN, MARGIN, MARGIN, MARGIN), LAP)
    points = [Point(x, height - y) for x, y in holes]
    tiling = tile_template(Box(0, 0, width, height), points, [], setup)
    assert tiling.near_seam == ()
    assert len(tiling.tiles) == count_best(width, height, paper, holes)
