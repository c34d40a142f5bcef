"""What hangs over furniture leaves some wall free above it."""

from __future__ import annotations

from templater.placement.model import Plan
from templater.rules.band import Band
from templater.rules.model import Finding
from templater.rules.subject import Subject, not_applicable

CODE = "clearance"

CLEARANCE = Band(6 * 25.4, 8 * 25.4)
"""From the furniture's top to the lowest edge above it, mm; common practice, no source."""


def check_clearance(subject: Subject, plan: Plan) -> tuple[Finding, ...]:
    """Hold the clear distance between furniture and what hangs over it against the usual one."""
    if subject.over is None:
        return not_applicable(CODE, subject)
    clear = subject.box.y0 - subject.over.box.y1
    finding = Finding(
        rule=CODE,
        subject=subject.name,
        other=subject.over.name,
        verdict=CLEARANCE.verdict(clear),
        figure=CLEARANCE.format_value(clear, plan.units),
        band=CLEARANCE.format_range(plan.units),
        mend=CLEARANCE.format_mend(clear, plan.units, more="raise", less="lower"),
    )
    return (finding,)
