"""A fastener does not go so deep into a stud that it reaches a cable bored through it.

What it checks:
    How far a nail or screw enters a stud: its ``length`` less the ``board``, at most 1 1/4 in. It
    is held against holes in a stud and doubtful ones. Without a length it is not checked; without
    ``studs`` or ``board`` only where the fastener is short enough in any case.

Why:
    A cable bored through a stud need be no farther than 1 1/4 in from its edge, unless a steel
    plate guards it: NEC 300.4(A)(1).

Example:
    Through a board of 1/2 in a screw of 1 3/4 in enters a stud by 1 1/4 in: kept. One of 2 in
    enters by 1 1/2 in: caution, and "no longer than 1 3/4 in".

What to write instead:
    ``hardware: [{name: brass hook, length: 1 3/4 in}]`` and ``hook: brass hook`` in ``hang``, with
    ``board`` and ``studs`` in ``wall``. Use a shorter fastener, or two.

"""

from __future__ import annotations

from collections.abc import Iterator

from templater.lengths import format_length
from templater.mounting.amounts import SLACK_MM
from templater.placement.model import PlacedPiece, Plan
from templater.rules.band import Band
from templater.rules.cautions.caution import Caution, Teller, name_hole
from templater.rules.holding import Holding, find_holding
from templater.rules.holes import HoleWall, find_hole_wall
from templater.rules.model import Finding

CODE = "deep-fastener"

DEPTH = Band(0.0, 1.25 * 25.4)
"""How far a fastener may enter a stud, mm; NEC 300.4(A)(1)."""

_TELL = Teller(CODE, "NEC 300.4(A)(1)")
_ASK_LENGTH = "add 'hook' to 'hang', and its 'length' to 'hardware'"
_ASK_BOARD = "add 'board' to 'wall'"
_ASK_STUDS = "add 'studs' to 'wall'"


def check_deep_fastener(piece: PlacedPiece, plan: Plan) -> Iterator[Finding]:
    """Hold the depth of a piece's fasteners in the studs that they meet against the least safe one."""
    walls = [find_hole_wall(mark.hole.x, plan) for mark in piece.marks]
    if set(walls) <= {HoleWall.SOLID, HoleWall.HOLLOW} or piece.hang is None:
        return
    if find_holding(piece, plan) is Holding.LEDGE:
        yield _TELL.ask(piece, f"see that its screws go into a stud by {DEPTH.format_range(plan.units)}")
        return
    length = piece.hang.hook.length_mm if piece.hang.hook else None
    if length is None:
        yield _TELL.ask(piece, _ASK_LENGTH)
        return
    depth, band = length - (plan.board_mm or 0.0), DEPTH.format_range(plan.units)
    if depth <= DEPTH.high + SLACK_MM:
        figure = f"{DEPTH.format_value(max(depth, 0.0), plan.units)} deep at most"
        yield _TELL.clear(piece, figure, band)
    elif plan.board_mm is None or HoleWall.NOT_CHECKED in walls:
        yield _TELL.ask(piece, _ASK_BOARD if plan.board_mm is None else _ASK_STUDS)
    else:
        figure = f"{DEPTH.format_value(depth, plan.units)} deep in a stud"
        most = format_length(DEPTH.high + plan.board_mm, plan.units)
        for number, wall in enumerate(walls, start=1):
            if wall in (HoleWall.STUD, HoleWall.DOUBTFUL):
                mend = f"use a fastener no longer than {most}"
                yield _TELL.warn(piece, figure, mend, band=band, other=name_hole(number))


CAUTION = Caution(CODE, check_deep_fastener, str(__doc__), is_of_holes=True)
