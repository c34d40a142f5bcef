"""What hangs over furniture does not reach past its ends.

What it checks:
    How far the edges of the piece or group lie inside the ends of the furniture, on the side
    where it is less: 0 in or more.

Why:
    What is wider than the furniture under it looks as if it might fall off. Common practice, no
    source.

Example:
    A bench is 80 in wide. A piece of 60 in, centred over it, ends 10 in inside: kept. One of 86
    in reaches 3 in past each end: broken, and "narrow by 6 in, to 80 in" mends it. One of 60 in
    that starts 2 in left of the bench's end is mended by "move right by 2 in".

What to write instead:
    A narrower piece, fewer pieces in the group, or a smaller ``gap``. Another band:
    ``rules: {past-the-ends: {from: 2 in}}`` asks for 2 in inside.

"""

from __future__ import annotations

from templater.geometry import Box
from templater.lengths import Unit, format_length
from templater.mounting.amounts import SLACK_MM, format_at_least, round_up, step_mm
from templater.placement.model import Plan
from templater.rules.band import Band
from templater.rules.model import Finding
from templater.rules.moves import format_moves
from templater.rules.rule import Rule
from templater.rules.settings import find_band
from templater.rules.subject import Subject

CODE = "past-the-ends"

INSIDE = Band(0.0)
"""From the furniture's end to the edge, inward, mm; common practice, no source."""


def check_past_the_ends(subject: Subject, plan: Plan) -> tuple[Finding, ...]:
    """Hold the edges of a piece or group against the ends of the furniture under it."""
    if subject.over is None:
        return ()
    box, below = subject.box, subject.over.box
    inside = min(box.x0 - below.x0, below.x1 - box.x1)
    band = find_band(plan, CODE, INSIDE)
    shown = band.format_value(inside, plan.units)
    finding = Finding(
        rule=CODE,
        subject=subject.name,
        other=subject.over.name,
        verdict=band.verdict(inside),
        figure=f"{shown.removeprefix('−')} {'past' if shown.startswith('−') else 'inside'}",
        band=f"{band.format_range(plan.units)} inside",
        mend=_mend(box, below, band, plan.units),
    )
    return (finding,)


def _mend(box: Box, below: Box, band: Band, units: Unit) -> str | None:
    """The smallest move that suffices, or where no move does, the smallest change of width."""
    left, right = box.x0 - below.x0, below.x1 - box.x1
    change = band.change(min(left, right))
    if change <= 0:
        return _change_width(box.width, -2 * change, units) if change else None
    too_wide = box.width + 2 * band.low - below.width
    if too_wide <= -step_mm(units):
        return format_moves(change if left < right else -change, 0.0, units)
    narrow = _change_width(box.width, -max(too_wide, SLACK_MM), units)
    return narrow if abs(left - right) <= SLACK_MM else f"{narrow}, in the middle over it"


def _change_width(width: float, by: float, units: Unit) -> str:
    """The act that changes the width by so many mm, more or less."""
    by_steps = round_up(abs(by), step_mm(units))
    after = format_length(width + (by_steps if by > 0 else -by_steps), units)
    return f"{'widen' if by > 0 else 'narrow'} by {format_at_least(abs(by), units)}, to {after}"


RULE = Rule(CODE, check_past_the_ends, str(__doc__))
