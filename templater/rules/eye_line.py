"""What hangs by itself has its centre on the eye line."""

from __future__ import annotations

from templater.placement.model import Plan
from templater.rules.band import Band
from templater.rules.model import Finding
from templater.rules.subject import Subject, not_applicable

CODE = "eye-line"

TOLERANCE_MM = 25.4
"""How far off the eye line a centre may be, one inch; common practice, no source."""


def check_eye_line(subject: Subject, plan: Plan) -> tuple[Finding, ...]:
    """Hold the centre's height against the eye line; furniture below sets a height of its own."""
    if subject.over is not None:
        return not_applicable(CODE, subject)
    band = Band(plan.eye_line_mm - TOLERANCE_MM, plan.eye_line_mm + TOLERANCE_MM)
    height = subject.box.centre.y
    finding = Finding(
        rule=CODE,
        subject=subject.name,
        other=None,
        verdict=band.verdict(height),
        figure=band.format_value(height, plan.units),
        band=band.format_range(plan.units),
        mend=band.format_mend(height, plan.units, more="raise", less="lower"),
    )
    return (finding,)
