"""What hangs over furniture is about two thirds of its width."""

from __future__ import annotations

from templater.lengths import format_length
from templater.placement.model import Plan
from templater.rules.band import Band
from templater.rules.model import Finding
from templater.rules.subject import Subject, not_applicable

CODE = "width-over-furniture"

PERCENT = Band(60.0, 75.0)
"""Of the furniture's width; common practice, no source."""


def check_width_over_furniture(subject: Subject, plan: Plan) -> tuple[Finding, ...]:
    """Hold the width of a piece or group against that of the furniture under it."""
    if subject.over is None:
        return not_applicable(CODE, subject)
    width, below = subject.box.width, subject.over.box.width
    band = Band(below * PERCENT.low / 100, below * PERCENT.high / 100)
    share = PERCENT.rounded(width / below * 100, 1.0)
    mend = band.format_mend(width, plan.units, more="widen", less="narrow")
    finding = Finding(
        rule=CODE,
        subject=subject.name,
        other=subject.over.name,
        verdict=band.verdict(width),
        figure=f"{share:.0f} % of {format_length(below, plan.units)}",
        band=f"{PERCENT.low:.0f}–{PERCENT.high:.0f} %",
        mend=mend and f"{mend}, to {band.format_target(width, plan.units)}",
    )
    return (finding,)
