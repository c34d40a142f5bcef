"""A template on a grid of pages of one size: cut into columns and rows, then into sheets."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from templater.geometry import Box, Point, Size
from templater.printing.model import PrintSetup, Seam, Tile
from templater.printing.seams import BAR_ROOM_MM, Axis, choose_cuts, is_near
from templater.printing.sheet_names import name_sheet


@dataclass(frozen=True, slots=True)
class Lane:
    """One axis of a template and the pages it lies on, mm: columns from the left, or rows from the top.

    ``page`` is the page's side along the axis. ``room`` is what an outer sheet shows even where the
    template ends before: all that the printer reaches on a page, on a roll only what the marks need.
    """

    axis: Axis
    page: float
    room: float
    cuts: tuple[float, ...] = ()

    @property
    def count(self) -> int:
        """How many columns or rows there are."""
        return len(self.cuts) + 1

    @property
    def ends(self) -> tuple[float, float]:
        """From where to where the outer sheets show the axis.

        What they show beyond the template lies outside it; a single sheet shares it between its sides.
        """
        if not self.cuts:
            spare = max(0.0, self.room - self.axis.length) / 2
            return -spare, self.axis.length + spare
        start = self.cuts[0] + self.axis.lap - self.room
        return min(0.0, start), max(self.axis.length, self.cuts[-1] + self.room)

    @property
    def kept(self) -> list[tuple[float, float]]:
        """From where to where each sheet is seen when all are taped."""
        start, end = self.ends
        return list(pairwise((start, *self.cuts, end)))

    @property
    def shown(self) -> list[tuple[float, float]]:
        """From where to where each sheet shows the axis, its lap included."""
        start, end = self.ends
        lap_ends = (cut + self.axis.lap for cut in self.cuts)
        return list(zip((start, *self.cuts), (*lap_ends, end), strict=True))

    @property
    def pages(self) -> list[float]:
        """The side of each page along the axis; only a roll's is cut to what it shows."""
        spares = (self.axis.reach - max(self.room, high - low) for low, high in self.shown)
        return [self.page - max(0.0, spare) for spare in spares]


@dataclass(frozen=True, slots=True)
class Grid:
    """A template's extent, in template coordinates, on columns across and rows down."""

    extent: Box
    across: Lane
    down: Lane

    @property
    def count(self) -> int:
        """How many sheets there are."""
        return self.across.count * self.down.count

    @property
    def fewest(self) -> int:
        """How many sheets the extent needs, wherever its holes are."""
        return self.across.axis.count * self.down.axis.count

    @property
    def paper_mm2(self) -> float:
        """The area of all pages."""
        return sum(self.across.pages) * sum(self.down.pages)

    @property
    def seam_mm(self) -> float:
        """How long the seams are inside the extent."""
        return len(self.across.cuts) * self.extent.height + len(self.down.cuts) * self.extent.width

    def places_across(self, points: Sequence[Point]) -> list[float]:
        """Where points lie on the axis that the columns cut."""
        return [point.x - self.extent.x0 for point in points]

    def places_down(self, points: Sequence[Point]) -> list[float]:
        """Where points lie on the axis that the rows cut."""
        return [self.extent.y1 - point.y for point in points]


def lay_grid(extent: Box, page: Size, setup: PrintSetup) -> Grid:
    """An extent on pages of one size, uncut; of a roll the page is the longest that it gives."""
    reach = setup.printable(page).size
    room = reach
    if setup.paper.is_roll:
        room = Size(min(reach.width, BAR_ROOM_MM), reach.height)
        if page == setup.paper.size:
            room = Size(reach.width, min(reach.height, BAR_ROOM_MM))
    return Grid(
        extent,
        Lane(Axis(extent.width, reach.width, setup.lap_mm), page.width, room.width),
        Lane(Axis(extent.height, reach.height, setup.lap_mm), page.height, room.height),
    )


def cut_grid(grid: Grid, holes: Sequence[Point], hang_points: Sequence[Point]) -> Grid:
    """The grid with its cuts chosen, along each axis on its own, since a seam runs right across."""
    across, down = grid.across, grid.down
    columns = choose_cuts(across.axis, grid.places_across(holes), grid.places_across(hang_points))
    rows = choose_cuts(down.axis, grid.places_down(holes), grid.places_down(hang_points))
    return replace(grid, across=replace(across, cuts=columns), down=replace(down, cuts=rows))


def count_between(grid: Grid, holes: Sequence[Point]) -> int:
    """How many seams lie between the holes: none when all of them share a sheet."""
    if not holes:
        return 0
    return sum(
        min(places) < cut < max(places)
        for lane, places in (
            (grid.across, grid.places_across(holes)),
            (grid.down, grid.places_down(holes)),
        )
        for cut in lane.cuts
    )


def number_near_holes(grid: Grid, holes: Sequence[Point]) -> tuple[int, ...]:
    """The numbers, from 1, of the holes that are too near a seam."""
    across, down = grid.places_across(holes), grid.places_down(holes)
    return tuple(
        number
        for number, (x, y) in enumerate(zip(across, down, strict=True), start=1)
        if any(is_near(x, cut, grid.across.axis.lap) for cut in grid.across.cuts)
        or any(is_near(y, cut, grid.down.axis.lap) for cut in grid.down.cuts)
    )


def make_tiles(grid: Grid, setup: PrintSetup) -> list[list[Tile]]:
    """The sheets, course by course from the top, each from the left."""
    left, top = grid.extent.x0, grid.extent.y1
    columns = list(zip(grid.across.shown, grid.across.kept, grid.across.pages, strict=True))
    rows = list(zip(grid.down.shown, grid.down.kept, grid.down.pages, strict=True))
    return [
        [
            _make_tile(
                name_sheet(course, place),
                Box(left + shown_x[0], top - shown_y[1], left + shown_x[1], top - shown_y[0]),
                Box(left + kept_x[0], top - kept_y[1], left + kept_x[1], top - kept_y[0]),
                Size(page_x, page_y),
                setup,
            )
            for place, (shown_x, kept_x, page_x) in enumerate(columns)
        ]
        for course, (shown_y, kept_y, page_y) in enumerate(rows)
    ]


def _make_tile(name: str, clip: Box, keep: Box, page: Size, setup: PrintSetup) -> Tile:
    """A sheet with what it shows at the top left of what the printer reaches."""
    printable = setup.printable(page)
    return Tile(name, clip, keep, page, Point(printable.x0 - clip.x0, printable.y1 - clip.y1))


def list_seams(courses: Sequence[Sequence[Tile]]) -> Iterator[Seam]:
    """Every seam between two sheets: those within the courses, then those below each course.

    A seam runs up or to the right, as far as both sheets are kept. The sheet to the right or below
    is the one on top.
    """
    for course in courses:
        for left, right in pairwise(course):
            x = right.keep.x0
            yield Seam(left.name, right.name, Point(x, right.keep.y0), Point(x, right.keep.y1))
    for upper, lower in pairwise(courses):
        for above, below in zip(upper, lower, strict=True):
            y = below.keep.y1
            yield Seam(above.name, below.name, Point(below.keep.x0, y), Point(below.keep.x1, y))
