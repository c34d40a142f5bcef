"""Neighbouring pieces of a group stand close enough to be seen as one, and not closer.

What it checks:
    The clear distance, edge to edge, between pieces that follow each other in a row, a column, on
    a ledge or along stairs; in other groups between each piece and the one nearest to it, and
    between all that are too close: 2 to 4 in. Along stairs it is how far one could slide along the
    slope before it touches the next, more than from edge to edge. What hangs on both sides of a
    window is not measured across it. A group inside a group counts as one piece.

Why:
    Closer than 2 in, frames crowd each other; farther than 4 in, they are seen one by one and no
    longer as one group. Common practice, no source.

Example:
    Two frames 3 in apart: kept. At 10 in: broken, and "close the gap by 6 in, to 4 in" mends it.

What to write instead:
    Set the group's ``gap``, for example ``gap: 3 in``. Another band:
    ``rules: {gap: {from: 1 1/2 in, to: 5 in}}``.

"""

from __future__ import annotations

from dataclasses import replace

from templater.layout.model import Arrangement
from templater.placement.model import Plan
from templater.rules.band import Band
from templater.rules.judge import judge_length
from templater.rules.model import Finding
from templater.rules.rule import Rule
from templater.rules.settings import find_band
from templater.rules.spacing import Gap, find_gaps
from templater.rules.subject import Subject

CODE = "gap"

GAP = Band(2 * 25.4, 4 * 25.4)
"""Clear distance edge to edge, mm; common practice, no source."""


def check_gap(subject: Subject, plan: Plan) -> tuple[Finding, ...]:
    """Hold the gap of each piece of a group to its neighbour against the usual one."""
    if len(subject.parts) < 2:
        return ()
    band = find_gap_band(plan)
    along = " along the stairs" if subject.arrange is Arrangement.STAIR else ""
    found = (_judge(gap, band, plan) for gap in find_gaps(subject, plan, low_mm=band.low))
    return tuple(replace(each, figure=f"{each.figure}{along}") for each in found)


def find_gap_band(plan: Plan) -> Band:
    """The gaps that the layout, or else the trade, asks for; other rules of groups use it too."""
    return find_band(plan, CODE, GAP)


def _judge(gap: Gap, band: Band, plan: Plan) -> Finding:
    """Two pieces that are neighbours."""
    more, less = "open the gap", "close the gap"
    found = judge_length(CODE, gap.first, gap.mm, band, plan, more=more, less=less, other=gap.second)
    mend = found.mend and f"{found.mend}, to {band.format_target(gap.mm, plan.units)}"
    return replace(found, mend=mend)


RULE = Rule(CODE, check_gap, str(__doc__), judges_insides=True)
