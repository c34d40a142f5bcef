"""Holds the larger views of parts of the wall against the Plan: the crosses of their holes."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import NamedTuple

from templater.geometry import Box, Point
from templater.placement.model import Plan
from templater.verify.ink.rectangles import read_rectangle
from templater.verify.model import NEAR_MM, Ink
from templater.verify.nearest import Points
from templater.verify.read_lengths import LENGTH, plain, read_lengths
from templater.verify.straight import list_straight
from templater.verify.targets import find_crosses

_HEADING = re.compile(
    rf"Part \d+ of \d+\. .*?1:([\d/ ]+)\)?\. From ({LENGTH}) to ({LENGTH}) from the left end,"
    rf" from ({LENGTH}) to ({LENGTH}) above the floor\."
)
_ARM_MM = 1.0
_EDGE_MM = 2.0
"""The heading tells a window in whole millimetres or sixteenths of an inch, some more is let be."""


class Part(NamedTuple):
    """What a page says of the part of the wall that it shows: scale, and window in wall mm."""

    ratio: float
    window: Box


def read_part(ink: Ink) -> Part | None:
    """The part that a page shows; None where it shows none."""
    match = _HEADING.search(" ".join(plain(run.text) for run in ink.runs))
    if match is None:
        return None
    x0, x1, y0, y1 = (read_lengths(side)[0][0] for side in match.groups()[1:])
    return Part(float(sum(map(Fraction, match[1].split()))), Box(x0, y0, x1, y1))


def check_part(ink: Ink, part: Part, plan: Plan) -> Iterator[str]:
    """Whether the holes of a part are marked at their places, one against the others and the pieces.

    A hole high above its piece may lie in the part while its piece does not, and is not shown then.
    """
    level, upright = list_straight(ink.strokes)
    crosses = [cross.at for cross in find_crosses(level, upright, _ARM_MM)]
    seen, inner = part.window.grown(_EDGE_MM), part.window.grown(-_EDGE_MM)
    holes = {
        f"{piece.slug} hole {number}": (mark.hole, inner.has(mark.hole) and inner.meets(piece.box))
        for piece in plan.pieces
        for number, mark in enumerate(piece.marks, 1)
        if seen.has(mark.hole)
    }
    origin = _find_origin(ink, part, plan, crosses, [hole for hole, _ in holes.values()])
    left = Points(crosses)
    for name, (hole, is_demanded) in holes.items():
        place = Point(origin.x + hole.x / part.ratio, origin.y + hole.y / part.ratio)
        if left.take(place, NEAR_MM) is None and is_demanded:
            yield f"{name} is not marked at its place"
    for x, y in left:
        at = (x - origin.x) * part.ratio, (y - origin.y) * part.ratio
        yield f"a hole is marked where the plan has none, at {at[0]:.0f}, {at[1]:.0f} mm of the wall"


def _find_origin(
    ink: Ink, part: Part, plan: Plan, crosses: Sequence[Point], holes: Sequence[Point]
) -> Point:
    """Where the wall's left end at the floor would lie: the place that most pieces and crosses tell."""
    tellers = [*_tell_by_pieces(ink, part, plan)]
    if not tellers:
        tellers = [
            Point(x - hole.x / part.ratio, y - hole.y / part.ratio) for x, y in crosses for hole in holes
        ]
    cells: dict[tuple[int, int], list[Point]] = {}
    for x, y in tellers:
        cells.setdefault((round(x / NEAR_MM), round(y / NEAR_MM)), []).append(Point(x, y))
    agreed = max(cells.values(), key=len, default=[Point(0.0, 0.0)])
    return Point(sum(x for x, _ in agreed) / len(agreed), sum(y for _, y in agreed) / len(agreed))


def _tell_by_pieces(ink: Ink, part: Part, plan: Plan) -> Iterator[Point]:
    """Where the wall's origin would lie by each rectangle that is as large as a piece."""
    whole = [piece.box for piece in plan.pieces if part.window.grown(_EDGE_MM).holds(piece.box)]
    for (points,) in ink.chains:
        if (drawn := read_rectangle(points)) is None:
            continue
        for box in whole:
            width, height = box.width / part.ratio, box.height / part.ratio
            if max(abs(drawn.width - width), abs(drawn.height - height)) <= NEAR_MM:
                yield Point(drawn.x0 - box.x0 / part.ratio, drawn.y0 - box.y0 / part.ratio)
