"""Cuts a template into the courses that take the fewest sheets.

All sheets of a course lie alike, portrait or landscape; courses of both kinds may follow each other.
(Within a row a portrait sheet could stand beside landscape ones, but it would be as low as they are,
and a landscape sheet in its place shows all that it showed.) A seam between two courses runs right
across the template; a seam within a course ends at its edges, so that only holes in or near the
course must stay clear of it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import pairwise, starmap

from templater.geometry import Box, Point
from templater.printing.courses import Courses
from templater.printing.lane import Lane, count_narrow
from templater.printing.pages import Page, Side
from templater.printing.prices import (
    SEAM_PER_MM,
    SHEET,
    Mark,
    Stretch,
    price_places,
    zones_between,
    zones_near,
)
from templater.printing.seams import Axis, choose_cuts, find_roomy
from templater.printing.search import Placing, Search


@dataclass(frozen=True, slots=True)
class CourseMaker:
    """Cuts an extent into courses on pages of some kinds: from the top, or columns from the left."""

    extent: Box
    lap: float
    pages: tuple[Page, ...]
    are_columns: bool

    @property
    def length(self) -> float:
        """How long the courses are."""
        return self.extent.height if self.are_columns else self.extent.width

    @property
    def depth(self) -> float:
        """How deep all courses are together."""
        return self.extent.width if self.are_columns else self.extent.height

    def side_along(self, page: Page) -> Side:
        """The side of a page that lies along the courses."""
        return page.down if self.are_columns else page.across

    def side_across(self, page: Page) -> Side:
        """The side of a page that lies across the courses."""
        return page.across if self.are_columns else page.down

    @property
    def axes_along(self) -> list[Axis]:
        """A course of each kind of page, to be cut into sheets."""
        return [Axis(self.length, self.side_along(page).reach, self.lap) for page in self.pages]

    @property
    def axes_across(self) -> list[Axis]:
        """The template on courses of each kind of page alone."""
        return [Axis(self.depth, self.side_across(page).reach, self.lap) for page in self.pages]

    @property
    def fewest(self) -> int:
        """How many sheets the extent needs, wherever its holes are."""
        counts = [axis.count for axis in self.axes_along]
        first, *others = self.axes_across
        if not others:
            return first.count * counts[0]
        (other,) = others
        rests = (
            Axis(self.depth - used * first.stride, other.reach, self.lap) for used in range(first.count)
        )
        mixed = (used * counts[0] + rest.count * counts[1] for used, rest in enumerate(rests))
        return min(first.count * counts[0], *mixed)

    def place(self, point: Point) -> Point:
        """A point of the template: how far along the courses and across them, from the top left."""
        x, y = point.x - self.extent.x0, self.extent.y1 - point.y
        return Point(y, x) if self.are_columns else Point(x, y)

    def cut(self, holes: Sequence[Point], hang_points: Sequence[Point]) -> Courses:
        """The courses with the lowest price.

        The reference of the level line is the extent's centre line at the holes' height.
        """
        marks = [Mark(*self.place(point), is_hole=True) for point in holes]
        marks += [Mark(*self.place(point), is_hole=False) for point in hang_points]
        marks.sort(key=lambda mark: (mark.across, mark.along, mark.is_hole))
        stretches = self._price_places(marks)
        prices = self._price_courses(marks)

        def find_run(start: int, end: int) -> tuple[int, int]:
            """The marks in or near a course: the first one, and the first one after them."""
            return stretches[start].before, stretches[end].after

        found = find_roomy(
            Search(
                self.depth,
                self.lap,
                tuple(axis.stride for axis in self.axes_across),
                max(axis.count for axis in self.axes_across) + 1,
                stretches,
                lambda kind, start, end: prices.price(kind, *find_run(start, end)),
                least_price=min(axis.count for axis in self.axes_along) * SHEET,
            ),
            fewest_steps=min(axis.count for axis in self.axes_across),
            ideal=self.fewest * SHEET,
        )
        runs = list(starmap(find_run, pairwise((0, *found.stretches))))
        cuts = [prices.cut(kind, *run) for kind, run in zip(found.kinds, runs, strict=True)]
        return self._make_courses(found, _line_up(cuts, found.kinds, runs, self.length))

    def _price_places(self, marks: Sequence[Mark]) -> list[Stretch]:
        """What a seam between two courses costs."""
        near = zones_near([mark.across for mark in marks], [mark.price for mark in marks], self.lap)
        holes = [mark.across for mark in marks if mark.is_hole]
        reference = self.depth / 2 if self.are_columns else None
        return price_places(near, zones_between(holes, reference), self.depth - self.lap)

    def _price_courses(self, marks: Sequence[Mark]) -> _CoursePrices:
        """What a course of each kind costs."""
        depths = [self.depth / axis.count for axis in self.axes_across]
        reference = None if self.are_columns else self.length / 2
        return _CoursePrices(self.axes_along, depths, marks, reference)

    def _make_courses(self, found: Placing, cuts: Sequence[tuple[float, ...]]) -> Courses:
        """The courses with their pages."""
        pages = [self.pages[kind] for kind in found.kinds]
        across = Lane(self.depth, self.lap, tuple(map(self.side_across, pages)), found.cuts)
        along = tuple(
            Lane(self.length, self.lap, (self.side_along(page),) * (len(own) + 1), own)
            for page, own in zip(pages, cuts, strict=True)
        )
        return Courses(across, along, self.are_columns, found.price)


@dataclass(slots=True)
class _CoursePrices:
    """Cuts each course once for each kind of page and each run of marks that lie in it or near it.

    ``depths`` tell for each kind how deep a course is about, for the length of its seams.
    """

    axes: Sequence[Axis]
    depths: Sequence[float]
    marks: Sequence[Mark]
    reference: float | None
    known: dict[tuple[int, int, int], tuple[int, tuple[float, ...]]] = field(default_factory=dict)

    def price(self, kind: int, first: int, last: int) -> int:
        """The price of a course with some marks, from the first to before the last."""
        return self._find(kind, first, last)[0]

    def cut(self, kind: int, first: int, last: int) -> tuple[float, ...]:
        """The cuts of a course with some marks, from the first to before the last."""
        return self._find(kind, first, last)[1]

    def _find(self, kind: int, first: int, last: int) -> tuple[int, tuple[float, ...]]:
        """Price and cuts of a course."""
        key = (kind, first, last)
        if key not in self.known:
            course = choose_cuts(self.axes[kind], self.marks[first:last], self.reference)
            seams_mm = len(course.cuts) * self.depths[kind] + self.axes[kind].length
            self.known[key] = course.price + round(seams_mm * SEAM_PER_MM), course.cuts
        return self.known[key]


def _line_up(
    cuts: Sequence[tuple[float, ...]],
    kinds: Sequence[int],
    runs: Sequence[tuple[int, int]],
    length: float,
) -> list[tuple[float, ...]]:
    """The cuts of each course; one without marks takes those of a like one with marks.

    So seams run straight on; not where that costs room for scale bars.
    """
    models: dict[tuple[int, int], tuple[float, ...]] = {}
    for own, kind, (first, last) in zip(cuts, kinds, runs, strict=True):
        if first < last:
            models.setdefault((kind, len(own)), own)
    lined_up = []
    for own, kind, (first, last) in zip(cuts, kinds, runs, strict=True):
        model = own if first < last else models.get((kind, len(own)), own)
        lined_up.append(model if count_narrow(model, length) <= count_narrow(own, length) else own)
    return lined_up
