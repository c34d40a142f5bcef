"""How far off a hole may be on the paper itself: an estimate from a stated model.

A hole is measured from the lines that set the template on the wall: upward from the level line
through its hang point, sideways from the centre line. What may be wrong with the paper:

- Scale. Of a printer that was not measured: 0.5 % of the distance, the middle of 0.2 to 1 % (desktop
  printers; from memory). Of one that was: 0.3 mm misread on the shorter of its rulers, in proportion
  (so well reads a steel ruler; from memory), and 0.1 % that stays (line accuracy of wide-format
  printers; from memory).
- Moisture. Between printer and wall, paper changes by 0.1 to 0.2 % along its grain and 0.2 to 0.4 %
  across it (bond paper, a print chemist's table at faj-chemicalimpression.blogspot.com, 2011; the span
  of humidity is not stated). The grain's direction is not known: 0.3 % both ways, the middle of what
  it does across it.
- Seams. Each between the hole and the line: 0.5 mm for laying an edge on a line, 0.3 mm for cutting it
  (common practice, no source).

These are independent of each other, so their squares add up; so do those of the two directions. Not
counted: setting the lines on the wall, drilling, the hook; nor a distance that is on no paper, since
the sheets at its ends do not join: it is measured on the wall.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import combinations
from math import ceil, dist, hypot

from templater.geometry import Box, Point
from templater.printing.model import Printer, Tiling

UNMEASURED_SCALE = 0.005
READING_MM = 0.3
REMAINING_SCALE = 0.001
MOISTURE = 0.003
LAYING_MM = 0.5
CUTTING_MM = 0.3

_STEP_MM = 0.5
"""An estimate is not finer than this."""


@dataclass(frozen=True, slots=True)
class Errors:
    """What to expect of a template's holes, ± mm: each from its lines, and one from another at most.

    ``from_top``: at most, where the template is set on the wall by its top edge and its centre line.
    None where there is no hole, or one only, or no paper between them.
    """

    holes: tuple[float, ...]
    between: float | None
    from_top: float | None


def estimate_errors(
    tiling: Tiling,
    holes: Sequence[Point],
    hang_points: Sequence[Point],
    outline: Box,
    printer: Printer | None,
) -> Errors:
    """The expected errors of a template's holes, in template coordinates."""
    paper = _Paper(tiling, _scale_error(printer))
    centre = outline.centre.x
    return Errors(
        tuple(
            paper.error_from(hole, Point(centre, hang.y))
            for hole, hang in zip(holes, hang_points, strict=True)
        ),
        max(paper.list_errors_between(holes), default=None),
        max((paper.error_from(hole, Point(centre, outline.y1)) for hole in holes), default=None),
    )


def format_error(error_mm: float) -> str:
    """An error as it is told, up to the next half millimetre and never nothing: ``± 1.5 mm``."""
    return f"± {max(1, ceil(error_mm / _STEP_MM - 1e-9)) * _STEP_MM:g} mm"


def _scale_error(printer: Printer | None) -> float:
    """What part of a distance may be wrong on paper, moisture included."""
    if printer is None:
        return hypot(UNMEASURED_SCALE, MOISTURE)
    return hypot(READING_MM / min(printer.rulers), REMAINING_SCALE, MOISTURE)


@dataclass(frozen=True, slots=True)
class _Paper:
    """A template's sheets, and what part of a distance on each may be wrong."""

    tiling: Tiling
    scale_error: float

    def error_from(self, hole: Point, lines: Point) -> float:
        """Of a hole from the upright and the level line that cross at a point."""
        x, y = lines
        seams_across = self._count_seams(hole, lambda keep: keep.x0 <= x <= keep.x1)
        seams_up = self._count_seams(hole, lambda keep: keep.y0 <= y <= keep.y1)
        return hypot(self._add(hole.x - x, seams_across), self._add(hole.y - y, seams_up))

    def list_errors_between(self, holes: Sequence[Point]) -> Iterator[float]:
        """Of each hole from each other that the same paper shows."""
        for one, other in combinations(holes, 2):
            seams = self._count_seams(one, partial(_has, other))
            if seams is not None:
                yield self._add(dist(one, other), seams)

    def _add(self, distance_mm: float, seams: int | None) -> float:
        """The error of a distance across so many seams; none where it is on no paper."""
        if seams is None:
            return 0.0
        return hypot(self.scale_error * distance_mm, hypot(LAYING_MM, CUTTING_MM) * seams**0.5)

    def _count_seams(self, hole: Point, shows: Callable[[Box], bool]) -> int | None:
        """The fewest seams between a hole's sheet and one that shows what it is measured from.

        None where the two do not join: each is set on the wall by itself.
        """
        keeps = {tile.name: tile.keep for tile in self.tiling.tiles}
        reached = {name for name, keep in keeps.items() if keep.has(hole)}
        seen, count = set(reached), 0
        while reached:
            if any(shows(keeps[name]) for name in reached):
                return count
            pairs = [(seam.under, seam.over) for seam in self.tiling.seams]
            beside = {b for a, b in pairs if a in reached} | {a for a, b in pairs if b in reached}
            reached, count = beside - seen, count + 1
            seen |= reached
        return None


def _has(point: Point, keep: Box) -> bool:
    """Whether a sheet keeps a point."""
    return keep.has(point)
