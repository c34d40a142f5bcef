"""Over stairs nobody works from a ladder that was made for a level floor.

What it checks:
    Whether a hole, or the middle of a piece without one, is over stairs: above the line through the
    edges of the steps of any group that hangs along ``stair``, as far as that line is above the
    floor, or over something whose kind or name says that it is stairs. Where a flight ends at its
    top is not known: what hangs on the landing may be told of too.

Why:
    A ladder that stands on steps tips or slides, and the fall is longer. What its maker made for
    stairs, a platform or a ladder with legs that can be set, stands level. Common practice, no
    source.

Example:
    A flight that rises 7 1/2 in over each 10 in, its first edge 30 in from the wall's left end: a
    hole 80 in from there and 96 in above the floor is over it: caution. One 10 in from the left end
    is not.

What to write instead:
    Nothing: heed it. The maker's instructions go first.

"""

from __future__ import annotations

from collections.abc import Iterator

from templater.geometry import Point
from templater.mounting.model import Cord
from templater.placement.model import PlacedPiece, Plan
from templater.rules.cautions.caution import Caution, Teller
from templater.rules.cautions.things import STAIRS, list_under
from templater.rules.flights import is_above_steps
from templater.rules.model import Finding

CODE = "over-stairs"

_TELL = Teller(CODE, "common practice, no source")
ACT = (
    "set no common ladder on the steps: take a platform or a ladder made for stairs, as its maker says,"
    " or a scaffold, and a second person"
)
"""What is to be done over stairs, in the words of every page."""


def check_over_stairs(piece: PlacedPiece, plan: Plan) -> Iterator[Finding]:
    """Say whether somebody must work over stairs to hang a piece."""
    is_over = any(is_above_steps(point, plan) for point in _list_points(piece))
    if is_over or any(thing.is_of(STAIRS) for thing in list_under(piece, plan)):
        yield _TELL.warn(piece, "over the stairs", ACT)


def is_over_stairs(plan: Plan) -> bool:
    """Whether somebody must work over stairs to hang anything of a wall."""
    return any(found for piece in plan.pieces for found in check_over_stairs(piece, plan))


def _list_points(piece: PlacedPiece) -> list[Point]:
    """Where hands must reach to hang a piece."""
    holes = [mark.hole for mark in piece.marks]
    hooks = [support.hook for support in piece.supports if isinstance(support, Cord)]
    return [*holes, *hooks] or [piece.box.centre]


CAUTION = Caution(CODE, check_over_stairs, str(__doc__))
