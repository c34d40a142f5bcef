"""A hole is drilled into the middle of a stud or clear of it, not at its edge.

What it checks:
    The distance from each hole to the centre of the nearest stud: up to 10 mm the hole is in the
    stud; from 10 to 30 mm it is doubtful; beyond it is in the hollow. Without ``studs`` it is not
    checked; in masonry and concrete it does not apply.

Why:
    A stud is 38 mm wide (PS 20), and found to a few mm at best. At its edge a screw splits it or
    slides past it, and an anchor for hollow walls does not open. The limits are common practice,
    no source.

Example:
    Studs every 16 in from the wall's left end. A hole at 1219 mm meets the one at 1219.2 mm. One
    at 1000 mm is hollow: 187 mm from the stud at 812.8 mm. One at 1240 mm is 21 mm off: caution,
    and "probe first".

What to write instead:
    ``studs: {first: 8 in, every: 16 in}``, or the centres as found: ``studs: [8 in, 24 in, 39 1/2
    in]``. Move the piece, or screw a cleat ``on: studs``.

"""

from __future__ import annotations

from collections.abc import Iterator

from templater.lengths import format_length
from templater.placement.model import PlacedPiece, Plan
from templater.rules.cautions.caution import Caution, Teller, name_hole
from templater.rules.holes import (
    DOUBTFUL_MM,
    IN_STUD_MM,
    HoleWall,
    find_hole_wall,
    measure_off_stud,
)
from templater.rules.model import Finding

CODE = "stud-edge"

_TELL = Teller(CODE, "PS 20 for the stud's width; else common practice, no source")
_MEND = "probe with a thin nail first"
_ASK = "add 'studs' to 'wall'"


def check_stud_edge(piece: PlacedPiece, plan: Plan) -> Iterator[Finding]:
    """Say which holes of a piece are at the edge of a stud."""
    band = f"up to {format_length(IN_STUD_MM, plan.units)}, or {format_length(DOUBTFUL_MM, plan.units)}"
    for number, mark in enumerate(piece.marks, start=1):
        wall = find_hole_wall(mark.hole.x, plan)
        if wall is HoleWall.NOT_CHECKED:
            yield _TELL.ask(piece, _ASK)
            return
        if wall is HoleWall.DOUBTFUL:
            off = format_length(measure_off_stud(mark.hole.x, plan) or 0.0, plan.units)
            figure = f"{off} from a stud's centre"
            yield _TELL.warn(piece, figure, _MEND, band=f"{band} and more", other=name_hole(number))


CAUTION = Caution(CODE, check_stud_edge, str(__doc__), is_of_holes=True)
