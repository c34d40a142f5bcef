"""Makes the finding of a length that is held against a band, the form that most rules share."""

from __future__ import annotations

from templater.placement.model import Plan
from templater.rules.band import Band
from templater.rules.model import Finding


def judge_length(
    rule: str, subject: str, mm: float, band: Band, plan: Plan, *, more: str, less: str,
    other: str | None = None,
) -> Finding:
    """Hold a length against a band; ``more`` and ``less`` are the acts that change it."""
    return Finding(
        rule=rule,
        subject=subject,
        other=other,
        verdict=band.verdict(mm),
        figure=band.format_value(mm, plan.units),
        band=band.format_range(plan.units),
        mend=band.format_mend(mm, plan.units, more=more, less=less),
    )
