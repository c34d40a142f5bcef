"""Holds the lines and the join marks of seams against the cut."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import dist

from templater.geometry import Box, Point
from templater.printing.model import Seam
from templater.verify.model import NEAR_MM, Chain, Stroke
from templater.verify.template_marks import TemplateMarks

_SEARCH_MM = 2.0
_HALF_MM = 2.5
"""Half a diamond of a join mark reaches so far along the seam to both sides, and so far away from it."""

_LINE_MM = 7.0
_SIZE_OFF = 0.2
_LEAST_MM = 20.0
"""A seam as long as this has join marks, if no line runs along it."""

_REACH_MM = 8.0
_HOLE_ROOM_MM = 25.0
"""A line so near along a seam, or a hole so near to it, may leave no room for join marks."""


def check_seam_line(seam: Seam, sheet: str, strokes: Sequence[Stroke]) -> Iterator[str]:
    """Whether a seam's line is drawn on one of its two sheets, from end to end."""
    if dist(seam.start, seam.end) <= NEAR_MM:
        return
    offsets = [
        max(dist(start, seam.start), dist(end, seam.end))
        for stroke in strokes
        for start, end in ((stroke.start, stroke.end), (stroke.end, stroke.start))
        if abs(start.x - seam.start.x) <= _SEARCH_MM and abs(start.y - seam.start.y) <= _SEARCH_MM
    ]
    other = seam.over if sheet == seam.under else seam.under
    if not offsets or min(offsets) > _SEARCH_MM:
        yield f"the line of its seam with {other} is not drawn"
    elif min(offsets) > NEAR_MM:
        yield f"the line of its seam with {other} is {min(offsets):.3f} mm off"


def find_joins(seam: Seam, chains: Sequence[Chain], strokes: Sequence[Stroke]) -> list[Point]:
    """The middles of the halves of join marks on a seam, as one of its sheets shows them.

    Half a diamond counts if its line across the seam begins at its middle.
    """
    joins = []
    lines = [line for line in strokes if abs(dist(line.start, line.end) - _LINE_MM) <= _SIZE_OFF]
    for (points,) in chains:
        if len(points) == 3:
            first, tip, last = points
            middle = Point((first.x + last.x) / 2, (first.y + last.y) / 2)
            is_half = abs(dist(first, last) - 2 * _HALF_MM) + abs(dist(middle, tip) - _HALF_MM)
            if is_half <= _SIZE_OFF and _is_on(seam, first) and _is_on(seam, last):
                has_line = any(dist(line.start, middle) <= NEAR_MM for line in lines)
                joins += [middle] if has_line else []
    return sorted(joins)


def _is_on(seam: Seam, point: Point) -> bool:
    """Whether a point lies on a seam's line, or a little off it."""
    (x0, y0), (x1, y1) = seam.start, seam.end
    return (
        x0 - _SEARCH_MM <= point.x <= x1 + _SEARCH_MM and y0 - _SEARCH_MM <= point.y <= y1 + _SEARCH_MM
    )


def must_join(seam: Seam, marks: TemplateMarks) -> bool:
    """Whether a seam has room enough for join marks: nothing stands near it from end to end."""
    is_upright = seam.start.x == seam.end.x
    across = seam.start.x if is_upright else seam.start.y
    datum = () if marks.datum is None else (marks.datum,)
    beside = (0.0, marks.size.width) if is_upright else (0.0, marks.size.height, *marks.levels, *datum)
    room = Box.around((Box(*seam.start, *seam.start), Box(*seam.end, *seam.end))).grown(_HOLE_ROOM_MM)
    return (
        dist(seam.start, seam.end) >= _LEAST_MM
        and all(abs(across - place) > _REACH_MM for place in beside)
        and not any(map(room.has, marks.holes))
    )


def check_joins(seam: Seam, under: Sequence[Point], over: Sequence[Point]) -> Iterator[str]:
    """Whether both sheets of a seam show the same join marks, and on its line."""
    name = f"the join marks of {seam.under} and {seam.over}"
    if len(under) != len(over):
        yield f"{name} differ in number: {len(under)} and {len(over)}"
        return
    apart = max((dist(one, other) for one, other in zip(under, over, strict=True)), default=0.0)
    is_upright = seam.start.x == seam.end.x
    away = max(
        (
            abs(join.x - seam.start.x) if is_upright else abs(join.y - seam.start.y)
            for join in (*under, *over)
        ),
        default=0.0,
    )
    if apart > NEAR_MM:
        yield f"{name} do not meet: they are {apart:.3f} mm apart"
    elif away > NEAR_MM:
        yield f"{name} are {away:.3f} mm off their seam"
