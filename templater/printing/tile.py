"""Cuts a template into sheets: the fewest in courses, with no hole near a seam."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from templater.geometry import Box, Point, Size
from templater.printing.course_maker import CourseMaker
from templater.printing.courses import Courses
from templater.printing.model import PrintSetup, Seam, Tile, Tiling
from templater.printing.pages import list_pages
from templater.printing.prices import CLEAR_MM, HOLE, TINY_MM
from templater.printing.sheet_names import name_sheet

MAX_SHEETS = 500
"""More sheets than this for one template, and nobody tapes them together."""


class TooManySheetsError(Exception):
    """A template needs more sheets than anybody tapes together."""

    def __init__(self, count: int, most: int = MAX_SHEETS) -> None:
        self.count = count
        super().__init__(f"{count} sheets, at most {most}")


class NoRoomOnSheetError(Exception):
    """Margins and laps leave too little of the paper to print on."""


def tile_template(
    extent: Box,
    holes: Sequence[Point],
    hang_points: Sequence[Point],
    setup: PrintSetup,
    *,
    most: int = MAX_SHEETS,
) -> Tiling:
    """The sheets of a template; all in template coordinates, mm.

    ``extent`` is what must be on paper: the outline and any hole outside it. What outer sheets have to
    spare they show outside the extent, so that its edges may be ragged there. An inner sheet shows only
    what lies from its seam to the end of its lap, at the top left of its page, so that the edge laid
    over a neighbour's lap is where the printer's reach ends; the rest of that page stays blank. Raises
    TooManySheetsError and NoRoomOnSheetError.
    """
    makers = sorted(_list_makers(extent, setup), key=lambda maker: maker.fewest)
    if not makers:
        raise NoRoomOnSheetError("margins and laps leave too little of the paper to print on")
    if makers[0].fewest > most:
        raise TooManySheetsError(makers[0].fewest, most)
    best = makers[0].cut(holes, hang_points)
    for maker in makers[1:]:
        if best.price >= HOLE or maker.fewest <= best.count:
            best = min(best, maker.cut(holes, hang_points), key=lambda courses: courses.rank)
    if best.count > most:
        raise TooManySheetsError(best.count, most)
    tiles = make_tiles(best, extent, setup)
    seams = tuple(list_seams(tiles, best))
    return Tiling(
        tuple(tile for course in tiles for tile in course),
        seams,
        tuple(number_near_holes(seams, holes, setup.lap_mm)),
    )


def _list_makers(extent: Box, setup: PrintSetup) -> Iterator[CourseMaker]:
    """Courses to be cut as rows or as columns; those of a roll lie all alike."""
    pages = list_pages(setup)
    kinds = [(page,) for page in pages] if setup.paper.is_roll else [pages] if pages else []
    for of_kind in kinds:
        for are_columns in (False, True):
            yield CourseMaker(extent, setup.lap_mm, of_kind, are_columns)


def make_tiles(courses: Courses, extent: Box, setup: PrintSetup) -> list[list[Tile]]:
    """The sheets, course by course from the top or from the left, each from its left or its top."""
    across = courses.across
    depths = zip(across.shown, across.kept, across.pages, courses.along, strict=True)
    return [
        [
            make_tile(
                name_sheet(course, place),
                _box(extent, shown, shown_deep, courses.are_columns),
                _box(extent, kept, kept_deep, courses.are_columns),
                Size(page_deep, page) if courses.are_columns else Size(page, page_deep),
                setup,
            )
            for place, (shown, kept, page) in enumerate(
                zip(lane.shown, lane.kept, lane.pages, strict=True)
            )
        ]
        for course, (shown_deep, kept_deep, page_deep, lane) in enumerate(depths)
    ]


def _box(extent: Box, along: tuple[float, float], across: tuple[float, float], are_columns: bool) -> Box:
    """What lies between two places along the courses and two across them, in template coordinates."""
    (left, right), (top, bottom) = (across, along) if are_columns else (along, across)
    return Box(extent.x0 + left, extent.y1 - bottom, extent.x0 + right, extent.y1 - top)


def make_tile(name: str, clip: Box, keep: Box, page: Size, setup: PrintSetup) -> Tile:
    """A sheet with what it shows at the top left of what the printer reaches."""
    printable = setup.printable(page)
    return Tile(name, clip, keep, page, Point(printable.x0 - clip.x0, printable.y1 - clip.y1))


def list_seams(tiles: Sequence[Sequence[Tile]], courses: Courses) -> Iterator[Seam]:
    """Every seam between two sheets: those within the courses, then those between one and the next.

    A seam runs up or to the right, as far as both sheets are kept. The sheet to the right or below
    is the one on top.
    """
    for course in tiles:
        for first, second in pairwise(course):
            yield _join(first, second, is_upright=not courses.are_columns)
    for one, other in pairwise(tiles):
        for first in one:
            for second in other:
                seam = _join(first, second, is_upright=courses.are_columns)
                if seam.end.x - seam.start.x + seam.end.y - seam.start.y > TINY_MM:
                    yield seam


def _join(first: Tile, second: Tile, *, is_upright: bool) -> Seam:
    """The seam of two sheets, the second to the right of the first, or below it."""
    one, other = first.keep, second.keep
    if is_upright:
        low, high = max(one.y0, other.y0), min(one.y1, other.y1)
        return Seam(first.name, second.name, Point(other.x0, low), Point(other.x0, high))
    low, high = max(one.x0, other.x0), min(one.x1, other.x1)
    return Seam(first.name, second.name, Point(low, other.y1), Point(high, other.y1))


def number_near_holes(seams: Sequence[Seam], holes: Sequence[Point], lap_mm: float) -> Iterator[int]:
    """The numbers, from 1, of the holes that lie in a lap or nearer than allowed to its edges."""
    strips = [_strip(seam, lap_mm).grown(CLEAR_MM - TINY_MM) for seam in seams]
    for number, (x, y) in enumerate(holes, start=1):
        if any(strip.x0 < x < strip.x1 and strip.y0 < y < strip.y1 for strip in strips):
            yield number


def _strip(seam: Seam, lap_mm: float) -> Box:
    """The lap at a seam: to the right of one that runs up, below one that runs across."""
    (x0, y0), (x1, y1) = seam.start, seam.end
    return Box(x0, y0, x1 + lap_mm, y1) if x0 == x1 else Box(x0, y0 - lap_mm, x1, y1)
