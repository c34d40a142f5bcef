"""What hangs over furniture does not reach past its ends."""

from __future__ import annotations

from templater.lengths import Unit, format_length
from templater.mounting.amounts import format_at_least, round_up, step_mm
from templater.placement.model import Plan
from templater.rules.band import Band
from templater.rules.model import Finding
from templater.rules.subject import Subject, not_applicable

CODE = "past-the-ends"


def check_past_the_ends(subject: Subject, plan: Plan) -> tuple[Finding, ...]:
    """Hold the edges of a piece or group against the ends of the furniture under it.

    Common practice, no source. The mend leaves the centre where it is.
    """
    if subject.over is None:
        return not_applicable(CODE, subject)
    box, below = subject.box, subject.over.box
    inside = min(box.x0 - below.x0, below.x1 - box.x1)
    band = Band(0.0, below.width)
    shown = band.format_value(inside, plan.units)
    finding = Finding(
        rule=CODE,
        subject=subject.name,
        other=subject.over.name,
        verdict=band.verdict(inside),
        figure=f"{shown.removeprefix('−')} past" if band.change(inside) else f"{shown} inside",
        band="0 or more inside",
        mend=_narrow(box.width, 2 * band.change(inside), plan.units),
    )
    return (finding,)


def _narrow(width: float, by: float, units: Unit) -> str | None:
    """The act that takes so many mm off the width; None where nothing is to be taken off."""
    if not by:
        return None
    left = width - round_up(by, step_mm(units))
    return f"narrow by {format_at_least(by, units)}, to {format_length(left, units)}"
