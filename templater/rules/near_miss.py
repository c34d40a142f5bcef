"""Edges or centres that almost line up do line up.

What it checks:
    Neighbours, within a group and on the wall: side by side, how far their tops, middles or
    bottoms are from one line, whichever are nearest to it; one above the other, their left
    edges, middles or right edges. Broken is what is more than 1/8 in off and no more than 1/2 in.
    On the wall a group counts as one piece. It does not apply within a flight of stairs.

Why:
    What is in line looks meant, and so does what is clearly not; in between it looks like a
    mistake. Common practice, no source.

Example:
    Two frames side by side with their tops at 70 in and 70 1/4 in, their middles and bottoms
    farther apart: broken, and "raise by 1/4 in" of the first mends it. Tops 2 in apart: kept.

What to write instead:
    Give both the same ``eye_line``, ``top`` or ``left``, or the group an ``align``. What counts
    as a near-miss is set with ``rules: {near-miss: {from: 1/4 in, to: 1 in}}``.

"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import inf

from templater.geometry import Box
from templater.layout.model import Arrangement
from templater.lengths import format_length
from templater.mounting.amounts import SLACK_MM, round_down, round_up, step_mm
from templater.placement.model import Plan
from templater.rules.band import Band
from templater.rules.facing import Facing, find_facing
from templater.rules.model import Finding, Verdict
from templater.rules.moves import format_alignment
from templater.rules.rule import Rule
from templater.rules.settings import find_band
from templater.rules.subject import Subject

CODE = "near-miss"

NEAR_MISS = Band(25.4 / 8, 25.4 / 2)
"""How far off one line reads as a mistake, mm; common practice, no source."""


@dataclass(frozen=True, slots=True)
class _Pair:
    """Two things side by side or one above the other, and the move of the first to a line, mm."""

    name: str
    other: Facing
    move: float

    @property
    def off(self) -> float:
        """How far from one line the two are, mm."""
        return abs(self.move)


def check_near_miss(subject: Subject, plan: Plan) -> tuple[Finding, ...]:
    """Hold neighbours' edges and centres against being in line, or clearly out of line."""
    band = find_miss_band(plan)
    pairs = list(_find_pairs(subject))
    missed = [pair for pair in pairs if _is_missed(pair, band)]
    if missed:
        return tuple(_tell(pair, band, plan) for pair in missed)
    nearest = min(pairs, key=lambda pair: pair.off, default=None)
    return () if nearest is None else (_tell(nearest, band, plan),)


def find_miss_band(plan: Plan) -> Band:
    """What counts as a near-miss, never less than a ruler shows; past the usual high end, nothing."""
    band = find_band(plan, CODE, NEAR_MISS)
    low = max(band.low, step_mm(plan.units) / 2 + SLACK_MM)
    return Band(low, low if band.high == inf else max(low, band.high))


def _find_pairs(subject: Subject) -> Iterator[_Pair]:
    yield from (_pair(subject.name, subject.box, other) for other in subject.facing)
    if subject.arrange is not Arrangement.STAIR:
        boxes = dict(subject.parts)
        for name, others in find_facing(subject.parts).items():
            yield from (_pair(name, boxes[name], other) for other in others)


def _pair(name: str, box: Box, other: Facing) -> _Pair:
    near = other.box
    if other.is_beside:
        moves = (near.centre.y - box.centre.y, near.y1 - box.y1, near.y0 - box.y0)
    else:
        moves = (near.centre.x - box.centre.x, near.x0 - box.x0, near.x1 - box.x1)
    return _Pair(name, other, min(moves, key=abs))


def _tell(pair: _Pair, band: Band, plan: Plan) -> Finding:
    """What is said of a pair: of a near-miss with its mend, else of the nearest to a line."""
    is_missed = _is_missed(pair, band)
    dx, dy = (0.0, pair.move) if pair.other.is_beside else (pair.move, 0.0)
    return Finding(
        rule=CODE,
        subject=pair.name,
        other=pair.other.name,
        verdict=Verdict.BROKEN if is_missed else Verdict.KEPT,
        figure=f"{format_length(_round(pair.off, band, plan), plan.units)} out of line",
        band=_tell_band(band, plan),
        mend=format_alignment(dx, dy, plan.units) if is_missed else None,
    )


def _is_missed(pair: _Pair, band: Band) -> bool:
    return band.low + SLACK_MM < pair.off <= band.high + SLACK_MM


def _round(off: float, band: Band, plan: Plan) -> float:
    """A distance from a line as it is shown, on the side of both ends on which it is."""
    step = step_mm(plan.units)
    if off <= band.low + SLACK_MM:
        return Band(0.0, band.low).rounded(off, step)
    up = round_up(off, step)
    return min(up, round_down(band.high, step)) if off <= band.high + SLACK_MM else up


def _tell_band(band: Band, plan: Plan) -> str:
    low = format_length(round_down(band.low, step_mm(plan.units)), plan.units)
    high = format_length(round_down(band.high, step_mm(plan.units)), plan.units)
    return f"at most {low}, or over {high}"


RULE = Rule(CODE, check_near_miss, str(__doc__), judges_insides=True)
