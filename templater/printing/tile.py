"""Cuts a template into sheets: the fewest of one orientation, with no hole near a seam."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from templater.geometry import Box, Point, Size
from templater.printing.grid import (
    Grid,
    count_between,
    cut_grid,
    lay_grid,
    list_seams,
    make_tiles,
    number_near_holes,
)
from templater.printing.model import PrintSetup, Tiling
from templater.printing.seams import OWN_MM

MAX_SHEETS = 500
"""More sheets than this for one template, and nobody tapes them together."""


class TooManySheetsError(Exception):
    """A template needs more sheets than anybody tapes together."""

    def __init__(self, count: int) -> None:
        self.count = count
        super().__init__(f"{count} sheets, at most {MAX_SHEETS}")


class NoRoomOnSheetError(Exception):
    """Margins and laps leave too little of the paper to print on."""


def tile_template(
    extent: Box, holes: Sequence[Point], hang_points: Sequence[Point], setup: PrintSetup
) -> Tiling:
    """The sheets of a template; all in template coordinates, mm.

    ``extent`` is what must be on paper: the outline and any hole outside it. All sheets are portrait
    or all are landscape, whichever needs fewer. What outer sheets have to spare they show outside
    the extent. An inner sheet shows only what lies from its seam to the end of its lap, at the top
    left of its page, so that the edge laid over a neighbour's lap is where the printer's reach ends;
    the rest of that page stays blank. Raises TooManySheetsError and NoRoomOnSheetError.
    """
    grids = sorted(_lay_grids(extent, setup), key=lambda grid: grid.fewest)
    if not grids:
        raise NoRoomOnSheetError("margins and laps leave too little of the paper to print on")
    best = _cut_within_bounds(grids[0], holes, hang_points)
    for grid in grids[1:]:
        if grid.fewest <= best.count:
            other = cut_grid(grid, holes, hang_points)
            best = min(best, other, key=lambda cut: _rank(cut, holes))
    courses = make_tiles(best, setup)
    return Tiling(
        tuple(tile for course in courses for tile in course),
        tuple(list_seams(courses)),
        number_near_holes(best, holes),
    )


def _lay_grids(extent: Box, setup: PrintSetup) -> Iterator[Grid]:
    """The extent uncut on portrait pages and on landscape pages, where two laps and more fit on."""
    sides = setup.paper.size
    for page in (sides, Size(sides.height, sides.width)):
        if min(setup.printable(page).size) >= 2 * setup.lap_mm + OWN_MM:
            yield lay_grid(extent, page, setup)


def _cut_within_bounds(grid: Grid, holes: Sequence[Point], hang_points: Sequence[Point]) -> Grid:
    """The grid cut, if that does not make too many sheets."""
    if grid.fewest > MAX_SHEETS:
        raise TooManySheetsError(grid.fewest)
    cut = cut_grid(grid, holes, hang_points)
    if cut.count > MAX_SHEETS:
        raise TooManySheetsError(cut.count)
    return cut


def _rank(grid: Grid, holes: Sequence[Point]) -> tuple[float, ...]:
    """How good a grid is, the smaller the better.

    Sheets, holes near a seam, paper (which differs on a roll only), seams between the holes, length
    of all seams; of equals portrait.
    """
    return (
        grid.count,
        len(number_near_holes(grid, holes)),
        grid.paper_mm2,
        count_between(grid, holes),
        grid.seam_mm,
        grid.across.page > grid.down.page,
    )
