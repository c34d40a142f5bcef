"""The straight lines of a template, and the marks of its holes; nothing enters a hole's ring."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from templater.drawing import Dash, Item, Line, Polyline
from templater.geometry import ORIGIN, Box, Point, Size
from templater.mounting.model import Mark
from templater.placement.model import PlacedPiece, Plan
from templater.rules.holes import STUD_HALF_MM
from templater.scene.lines import FINE, MEDIUM, THIN, centre_dash, datum_dash, spaced_dash
from templater.scene.marks import ARM, RING_RADIUS, draw_target
from templater.scene.template.board import EDGES, Cover

_BORDER = 1.0
"""What interrupts a line is told with so much clear ground round it, mm."""

FAR = 1e6
"""Farther than any template reaches, mm."""

SAME_MM = 0.5
"""Two heights nearer than this are drawn and named as one."""


@dataclass(frozen=True, slots=True)
class TemplateLines:
    """Draws upright and level lines of one template, each left out near its holes."""

    size: Size
    datum_y: float
    marks: tuple[Mark, ...]
    studs: tuple[float, ...] = ()

    @classmethod
    def of(cls, piece: PlacedPiece, plan: Plan) -> TemplateLines:
        """The lines of a piece, in its template's coordinates, and the centres of studs behind it."""
        datum_y = plan.datum.height_mm - piece.box.y0
        centres = (stud - piece.box.x0 for stud in plan.studs)
        studs = tuple(x for x in centres if -STUD_HALF_MM <= x <= piece.size.width + STUD_HALF_MM)
        return cls(piece.size, datum_y, piece.template_marks(), studs)

    @property
    def has_datum(self) -> bool:
        """Whether the datum crosses the paper."""
        return 0 <= self.datum_y <= self.size.height

    @property
    def datum_is_centre(self) -> bool:
        """Whether the datum runs through the piece's middle and stands for its centre line."""
        return abs(self.datum_y - self.size.height / 2) < SAME_MM

    @property
    def datum(self) -> Line:
        """The datum, where it crosses the paper."""
        return self._across(self.datum_y, THIN, datum_dash(THIN))

    @property
    def levels(self) -> tuple[Line, ...]:
        """The lines through the hang points, one a height."""
        return tuple(self._across(y, THIN) for y in sorted({mark.hang.y for mark in self.marks}))

    @property
    def centre_up(self) -> Line:
        """The upright centre line."""
        x = self.size.width / 2
        return Line(Point(x, 0), Point(x, self.size.height), FINE, centre_dash(FINE))

    @property
    def centre_across(self) -> Line:
        """The level centre line."""
        return self._across(self.size.height / 2, FINE, centre_dash(FINE))

    def find_zone(self, line: Line) -> Box:
        """All that is nearer to an upright or level line than to any other line of its direction."""
        if line.start.y == line.end.y:
            places = [each.start.y for each in (*self.levels, self.centre_across)]
            low, high = _find_nearer(
                line.start.y, [*places, *([self.datum_y] if self.has_datum else [])]
            )
            return Box(-FAR, low, FAR, high)
        places = [each.start.x for each in (*self.stud_lines, self.centre_up)]
        low, high = _find_nearer(line.start.x, places)
        return Box(low, -FAR, high, FAR)

    @property
    def named_studs(self) -> Iterable[tuple[str, Line]]:
        """The centre line of each stud behind the paper; of one beside it the edge that shows."""
        for centre in self.studs:
            edges = (centre - STUD_HALF_MM, centre + STUD_HALF_MM)
            if self._is_inside(centre):
                yield "stud centre", self._up(centre)
            else:
                yield from (("stud edge", self._up(x)) for x in edges if self._is_inside(x))

    @property
    def stud_lines(self) -> tuple[Line, ...]:
        """The centres and edges of those studs, but for what the upright centre line stands for."""
        xs = (x + off for x in self.studs for off in (-STUD_HALF_MM, 0.0, STUD_HALF_MM))
        middle = self.size.width / 2
        return tuple(self._up(x) for x in xs if self._is_inside(x) and abs(x - middle) >= SAME_MM)

    def list_lines(self) -> Iterable[tuple[Line, Cover]]:
        """Every line whole, and what it covers: the outline, which is cut; what may be interrupted."""
        width, height = self.size
        corners = [ORIGIN, Point(width, 0), Point(width, height), Point(0, height)]
        for start, end in zip(corners, [*corners[1:], ORIGIN], strict=True):
            yield Line(start, end, MEDIUM), Cover.SIDES if start.x == end.x else Cover.ENDS
        if self.has_datum:
            yield self.datum, Cover.LEVEL
        for level in self.levels:
            yield level, Cover.LEVEL
        yield self.centre_up, Cover.UPRIGHT
        for stud in self.stud_lines:
            yield stud, Cover.STUD
        if not self.datum_is_centre:
            yield self.centre_across, Cover.ACROSS

    def draw_lines(self, interruptions: Sequence[Box] = ()) -> Iterable[tuple[Line, Cover]]:
        """The lines, left out near holes and, except the outline, where words stand on them.

        The datum and the level lines run on through the clear border of what stands beside them.
        """
        for line, cover in self.list_lines():
            is_edge = cover in EDGES
            radius = RING_RADIUS + 1 if is_edge else ARM + 1
            boxes: Sequence[Box] = () if is_edge else interruptions
            if cover is Cover.LEVEL:
                y = line.start.y
                boxes = [box for box in boxes if box.y0 + _BORDER < y < box.y1 - _BORDER]
            for part in _break(line, self.marks, radius, boxes):
                yield part, cover

    def draw_holes(self) -> Iterable[Item]:
        """The holes, and the hang points that lie outside their rings."""
        for mark in self.marks:
            yield from draw_target(mark.hole)
            if self.shows_hang(mark):
                yield _hang_mark(mark)

    def shows_hang(self, mark: Mark) -> bool:
        """Whether a hang point is marked: it lies outside the hole's ring."""
        return abs(mark.hang.y - mark.hole.y) > RING_RADIUS

    def _is_inside(self, x: float) -> bool:
        """Whether an upright line is on the paper and can be told from the outline."""
        return SAME_MM <= x <= self.size.width - SAME_MM

    def _up(self, x: float) -> Line:
        """An upright line of what is hidden in the wall, from edge to edge."""
        return Line(Point(x, 0), Point(x, self.size.height), FINE, spaced_dash(FINE))

    def _across(self, y: float, width_mm: float, dash: Dash = ()) -> Line:
        """A level line from edge to edge."""
        return Line(Point(0, y), Point(self.size.width, y), width_mm, dash)


def _find_nearer(place: float, places: Iterable[float]) -> tuple[float, float]:
    """From where to where a place is nearer than any of the others."""
    others = [other for other in places if abs(other - place) >= SAME_MM]
    return (
        max(((other + place) / 2 for other in others if other < place), default=-FAR),
        min(((other + place) / 2 for other in others if other > place), default=FAR),
    )


def _break(line: Line, marks: Iterable[Mark], radius: float, boxes: Iterable[Box]) -> Iterable[Line]:
    """An upright or level line, left out within a radius of each hole and in the boxes given."""
    (start, end), level = (line.start, line.end), line.start.y == line.end.y
    across = start.y if level else start.x
    gaps = [*_near_holes(marks, level, across, radius), *_in_boxes(boxes, level, across)]
    low, high = sorted((start.x, end.x) if level else (start.y, end.y))
    for first, last in _left_over(low, high, gaps):
        ends = ((first, across), (last, across)) if level else ((across, first), (across, last))
        yield Line(Point(*ends[0]), Point(*ends[1]), line.width_mm, line.dash)


def _near_holes(
    marks: Iterable[Mark], level: bool, across: float, radius: float
) -> Iterable[tuple[float, float]]:
    """The stretch of a line that lies within a radius of each hole."""
    for mark in marks:
        along, off = mark.hole if level else (mark.hole.y, mark.hole.x)
        aside = off - across
        if abs(aside) < radius:
            half = (radius * radius - aside * aside) ** 0.5
            yield along - half, along + half


def _in_boxes(boxes: Iterable[Box], level: bool, across: float) -> Iterable[tuple[float, float]]:
    """The stretch of a line that lies in each box it crosses."""
    for box in boxes:
        if level and box.y0 <= across <= box.y1:
            yield box.x0, box.x1
        if not level and box.x0 <= across <= box.x1:
            yield box.y0, box.y1


def _left_over(
    low: float, high: float, gaps: Iterable[tuple[float, float]]
) -> Iterable[tuple[float, float]]:
    """What is left of a stretch when the gaps are taken out."""
    at = low
    for first, last in sorted(gaps):
        if first > at:
            yield at, min(first, high)
        at = max(at, last)
    if at < high:
        yield at, high


def _hang_mark(mark: Mark) -> Polyline:
    """A small triangle whose tip is the hang point, on the side away from the hole."""
    x, y = mark.hang
    base = y - 3.0 if mark.hole.y > y else y + 3.0
    corners = (mark.hang, Point(x - 1.5, base), Point(x + 1.5, base))
    return Polyline(corners, FINE, closed=True, filled=True)
