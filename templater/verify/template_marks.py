"""What a piece's paper must show, from the Plan and the cut alone, in template coordinates.

The sizes of the marks are stated here once more, and on purpose: the proof takes none from what draws.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from templater.geometry import Box, Point, Size
from templater.placement.model import PlacedPiece, Plan
from templater.printing.model import Seam
from templater.verify.model import Expected

RING_MM = 5.0
"""Radius of the ring round a hole."""

ARM_MM = 10.0
"""How far a hole's cross reaches to each side."""


@dataclass(frozen=True, slots=True)
class HoleMeasures:
    """What is told of a hole in words, mm: where it is on the wall, and where its hang point is.

    ``aside``: to the right of the middle of the furniture below, 0 where there is none.
    """

    across: float
    height: float
    from_datum: float
    drop: float
    rise: float
    aside: float


@dataclass(frozen=True, slots=True)
class TemplateMarks:
    """A piece's size, its holes in their order, its level lines, datum (if it crosses), its seams.

    ``hangs`` are the hang points of the holes, ``given`` the layout's texts.
    """

    size: Size
    holes: tuple[Point, ...]
    hangs: tuple[Point, ...]
    measures: tuple[HoleMeasures, ...]
    levels: tuple[float, ...]
    datum: float | None
    seams: tuple[Seam, ...]
    given: str = ""


def expect_marks(expected: Expected, slug: str) -> TemplateMarks:
    """The marks of one piece; seams reach as far as its outline and the crosses of its holes."""
    plan, tiling = expected.plan, expected.tilings[slug]
    piece = expected.pieces[slug]
    marks = piece.template_marks()
    holes = tuple(mark.hole for mark in marks)
    whole = Box.around(
        (
            Box(0.0, 0.0, *piece.size),
            *(Box(x - ARM_MM, y - ARM_MM, x + ARM_MM, y + ARM_MM) for x, y in holes),
        )
    )
    datum = plan.datum.height_mm - piece.box.y0
    return TemplateMarks(
        piece.size,
        holes,
        tuple(mark.hang for mark in marks),
        tuple(measure_holes(plan, piece)),
        tuple(sorted({mark.hang.y for mark in marks})),
        datum if 0 <= datum <= piece.size.height else None,
        tuple(
            Seam(seam.under, seam.over, _within(seam.start, whole), _within(seam.end, whole))
            for seam in tiling.seams
        ),
        expected.given,
    )


def measure_holes(plan: Plan, piece: PlacedPiece) -> Iterator[HoleMeasures]:
    """What is told of each hole of a piece."""
    middle = None if piece.over is None else piece.over.box.centre.x
    for mark in piece.marks:
        (x, y), hang = mark.hole, mark.hang
        yield HoleMeasures(
            across=x,
            height=y,
            from_datum=y - plan.datum.height_mm,
            drop=piece.box.y1 - hang.y,
            rise=hang.y - y,
            aside=0.0 if middle is None else x - middle,
        )


def _within(point: Point, box: Box) -> Point:
    """The point of a box that is nearest."""
    return Point(min(max(point.x, box.x0), box.x1), min(max(point.y, box.y0), box.y1))
