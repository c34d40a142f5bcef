"""Cuts a template into the courses that take the fewest sheets.

All sheets of a course lie alike, portrait or landscape; courses of both kinds may follow each other.
(Within a row a portrait sheet could stand beside landscape ones, but it would be as low as they are,
and a landscape sheet in its place shows all that it showed.) A seam between two courses runs right
across the template; a seam within a course ends at its edges, so that only holes in or near the
course must stay clear of it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from templater.geometry import Box, Point
from templater.printing.courses import Courses
from templater.printing.lane import Lane
from templater.printing.pages import Page, Side
from templater.printing.prices import (
    SEAM_MM,
    SHEET,
    Mark,
    Stretch,
    price_places,
    zones_between,
    zones_near,
)
from templater.printing.search import Placing, Search
from templater.printing.seams import Axis, choose_cuts, find_roomy


@dataclass(frozen=True, slots=True)
class CourseMaker:
    """Cuts an extent into courses on pages of some kinds; ``are_columns`` from the left, else from the top."""

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
        centre = self.place(self.extent.centre)
        return self._cut(
            marks,
            None if self.are_columns else centre.x,
            centre.y if self.are_columns else None,
        )

    def _cut(
        self, marks: Sequence[Mark], reference_along: float | None, reference_across: float | None
    ) -> Courses:
        """The cheapest courses for marks sorted by where they lie across the courses."""
        near = zones_near([mark.across for mark in marks], [mark.price for mark in marks], self.lap)
        holes = [mark.across for mark in marks if mark.is_hole]
        stretches = price_places(near, zones_between(holes, reference_across), self.depth - self.lap)
        along, across = self.axes_along, self.axes_across

        @cache
        def cut_course(kind: int, first: int, last: int) -> Placing:
            return choose_cuts(along[kind], marks[first:last], reference_along)

        def price_course(kind: int, start: int, end: int) -> int:
            course = cut_course(kind, stretches[start].before, stretches[end].after)
            seams = len(course.cuts) * across[kind].stride + self.length
            return course.price + round(seams) * SEAM_MM

        search = Search(
            self.depth,
            self.lap,
            tuple(axis.stride for axis in across),
            max(axis.count for axis in across) + 1,
            stretches,
            price_course,
        )
        fewest_steps = min(axis.count for axis in across)
        found = find_roomy(search, fewest_steps=fewest_steps, ideal=self.fewest * SHEET)
        runs = _list_runs(found, stretches)
        cuts = [cut_course(kind, *run).cuts for kind, run in zip(found.kinds, runs, strict=True)]
        return self._make_courses(found, _line_up(cuts, found.kinds, runs))

    def _make_courses(self, found: Placing, cuts: Sequence[tuple[float, ...]]) -> Courses:
        """The courses with their pages."""
        pages = [self.pages[kind] for kind in found.kinds]
        across = Lane(self.depth, self.lap, tuple(map(self.side_across, pages)), found.cuts)
        along = tuple(
            Lane(self.length, self.lap, (self.side_along(page),) * (len(own) + 1), own)
            for page, own in zip(pages, cuts, strict=True)
        )
        return Courses(across, along, self.are_columns, found.price)


def _list_runs(found: Placing, stretches: Sequence[Stretch]) -> list[tuple[int, int]]:
    """For each course the numbers of the marks in it or near it, as from the first to before the last."""
    starts = (0, *(stretches[number].before for number in found.stretches[:-1]))
    ends = (stretches[number].after for number in found.stretches)
    return list(zip(starts, ends, strict=True))


def _line_up(
    cuts: Sequence[tuple[float, ...]], kinds: Sequence[int], runs: Sequence[tuple[int, int]]
) -> list[tuple[float, ...]]:
    """The cuts of each course; a course without marks takes those of a like one with marks."""
    models = {
        (kind, len(own)): own
        for own, kind, (first, last) in zip(cuts, kinds, runs, strict=True)
        if first < last
    }
    return [
        own if first < last else models.get((kind, len(own)), own)
        for own, kind, (first, last) in zip(cuts, kinds, runs, strict=True)
    ]
