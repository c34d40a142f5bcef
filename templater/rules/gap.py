"""Neighbouring pieces of a group stand close enough to be seen as one, and not closer."""

from __future__ import annotations

from itertools import pairwise

from templater.placement.model import PlacedPiece, Plan
from templater.rules.band import Band
from templater.rules.model import Finding
from templater.rules.subject import Subject, not_applicable

CODE = "gap"

GAP = Band(2 * 25.4, 4 * 25.4)
"""Clear distance edge to edge, mm; common practice, no source."""


def check_gap(subject: Subject, plan: Plan) -> tuple[Finding, ...]:
    """Hold the gap of each piece of a group to the next against the usual one."""
    if len(subject.pieces) < 2:
        return not_applicable(CODE, subject)
    return tuple(_check_pair(first, second, plan) for first, second in pairwise(subject.pieces))


def _check_pair(first: PlacedPiece, second: PlacedPiece, plan: Plan) -> Finding:
    """Two pieces that follow each other, side by side or one under the other."""
    gap = -min(first.box.overlap(second.box))
    mend = GAP.format_mend(gap, plan.units, more="open the gap", less="close the gap")
    return Finding(
        rule=CODE,
        subject=first.name,
        other=second.name,
        verdict=GAP.verdict(gap),
        figure=GAP.format_value(gap, plan.units),
        band=GAP.format_range(plan.units),
        mend=mend and f"{mend}, to {GAP.format_target(gap, plan.units)}",
    )
