"""What hangs over furniture does not reach past its ends.

What it checks:
    How far the edges of the piece or group lie inside the ends of the furniture, on the side
    where it is less: 0 in or more.

Why:
    What is wider than the furniture under it looks as if it might fall off. Common practice, no
    source.

Example:
    A bench is 80 in wide. A piece of 60 in, centred over it, ends 10 in inside: kept. One of 86
    in reaches 3 in past each end: broken, and "narrow by 6 in, to 80 in" mends it.

What to write instead:
    A narrower piece, fewer pieces in the group, or a smaller ``gap``. Another band:
    ``rules: {past-the-ends: {from: 2 in}}`` asks for 2 in inside.

"""

from __future__ import annotations

from templater.lengths import Unit, format_length
from templater.mounting.amounts import format_at_least, round_up, step_mm
from templater.placement.model import Plan
from templater.rules.band import Band
from templater.rules.model import Finding
from templater.rules.rule import Rule
from templater.rules.settings import find_band
from templater.rules.subject import Subject

CODE = "past-the-ends"

INSIDE = Band(0.0)
"""From the furniture's end to the edge, inward, mm; common practice, no source."""


def check_past_the_ends(subject: Subject, plan: Plan) -> tuple[Finding, ...]:
    """Hold the edges of a piece or group against the ends of the furniture under it.

    The mend leaves the centre where it is.
    """
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
        mend=_change_width(box.width, -2 * band.change(inside), plan.units),
    )
    return (finding,)


def _change_width(width: float, by: float, units: Unit) -> str | None:
    """The act that changes the width by so many mm; None where nothing is to be changed."""
    if not by:
        return None
    by_steps = round_up(abs(by), step_mm(units))
    after = format_length(width + (by_steps if by > 0 else -by_steps), units)
    return f"{'widen' if by > 0 else 'narrow'} by {format_at_least(abs(by), units)}, to {after}"


RULE = Rule(CODE, check_past_the_ends, str(__doc__))
