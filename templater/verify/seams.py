"""Holds the lines and the join marks of seams against the cut."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import dist

from templater.geometry import Point
from templater.printing.model import Seam
from templater.verify.model import NEAR_MM, Chain, Stroke
from templater.verify.stretches import leave
from templater.verify.template_marks import TemplateMarks

_SEARCH_MM = 2.0
_HALF_MM = 2.5
"""Half a diamond of a join mark reaches so far along the seam to both sides, and so far away from it."""

_LINE_MM = 7.0
_LEAST_MM, _LEAST_SHARE = 40.0, 0.25
"""So much of a seam in one stretch, in mm and as a share of it, has room for a join mark."""

_EDGE_ROOM_MM, _HOLE_ROOM_MM = 9.0, 25.0
"""An edge so near along a seam, or a hole so near to it, may leave no room for join marks."""


def check_seam_line(seam: Seam, sheet: str, strokes: Sequence[Stroke]) -> Iterator[str]:
    """Whether a seam's line is drawn on one of its two sheets, from end to end.

    It is unbroken on the sheet that is cut there, dashed on the other.
    """
    if dist(seam.start, seam.end) <= NEAR_MM:
        return
    found = [
        (max(dist(start, seam.start), dist(end, seam.end)), bool(stroke.dash))
        for stroke in strokes
        for start, end in ((stroke.start, stroke.end), (stroke.end, stroke.start))
        if abs(start.x - seam.start.x) <= _SEARCH_MM and abs(start.y - seam.start.y) <= _SEARCH_MM
    ]
    is_under = sheet == seam.under
    name = f"the line of its seam with {seam.over if is_under else seam.under}"
    off = min((off for off, _ in found), default=_SEARCH_MM + 1)
    if off > _SEARCH_MM:
        yield f"{name} is not drawn"
    elif off > NEAR_MM:
        yield f"{name} is {off:.3f} mm off"
    elif not any(dashed == is_under for off, dashed in found if off <= NEAR_MM):
        yield f"{name} is {'unbroken' if is_under else 'dashed'}"


def find_joins(
    seam: Seam, sheet: str, chains: Sequence[Chain], strokes: Sequence[Stroke]
) -> list[Point]:
    """The middles of the halves of join marks on a seam, as one of its sheets shows them.

    Half a diamond counts if it and its line across the seam stand on that sheet's side.
    """
    is_upright = seam.start.x == seam.end.x
    side = -1 if (sheet == seam.under) == is_upright else 1

    def place(middle: Point, out: float) -> Point:
        return middle.moved(side * out, 0.0) if is_upright else middle.moved(0.0, side * out)

    joins = []
    lines = [line for line in strokes if abs(dist(line.start, line.end) - _LINE_MM) <= NEAR_MM]
    for (points,) in chains:
        if len(points) == 3:
            first, tip, last = points
            middle = Point((first.x + last.x) / 2, (first.y + last.y) / 2)
            is_half = abs(dist(first, last) - 2 * _HALF_MM) + dist(tip, place(middle, _HALF_MM))
            if is_half <= NEAR_MM and _is_on(seam, first) and _is_on(seam, last):
                end = place(middle, _LINE_MM)
                has_line = any(
                    max(dist(line.start, middle), dist(line.end, end)) <= NEAR_MM for line in lines
                )
                joins += [middle] if has_line else []
    return sorted(joins)


def _is_on(seam: Seam, point: Point) -> bool:
    """Whether a point lies on a seam's line, or a little off it."""
    (x0, y0), (x1, y1) = seam.start, seam.end
    return (
        x0 - _SEARCH_MM <= point.x <= x1 + _SEARCH_MM and y0 - _SEARCH_MM <= point.y <= y1 + _SEARCH_MM
    )


def must_join(seam: Seam, marks: TemplateMarks) -> bool:
    """Whether a seam has room for join marks: it runs along no edge, and holes leave much of it free."""
    is_upright = seam.start.x == seam.end.x
    points = [(y, x) if is_upright else (x, y) for x, y in (seam.start, seam.end)]
    (low, across), (high, _) = sorted(points)
    edges = (0.0, marks.size.width if is_upright else marks.size.height)
    if any(abs(across - edge) <= _EDGE_ROOM_MM for edge in edges):
        return False
    taken = [
        (along - _HOLE_ROOM_MM, along + _HOLE_ROOM_MM)
        for along, aside in ((y, x) if is_upright else (x, y) for x, y in (*marks.holes, *marks.hangs))
        if abs(aside - across) <= _HOLE_ROOM_MM
    ]
    free = [last - first for first, last in leave((low, high), taken, NEAR_MM)]
    return max(free, default=0.0) >= max(_LEAST_MM, _LEAST_SHARE * (high - low))


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
