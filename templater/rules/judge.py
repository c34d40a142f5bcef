"""Makes the finding of a length that is held against a band, the form that most rules share."""

from __future__ import annotations

from templater.lengths import format_length
from templater.placement.model import Plan
from templater.rules.band import Band
from templater.rules.model import Finding


def judge_length(
    rule: str,
    subject: str,
    mm: float,
    band: Band,
    plan: Plan,
    *,
    more: str,
    less: str,
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


def judge_share(
    rule: str, subject: str, width: float, band: Band, plan: Plan, *, of: float, other: str | None = None
) -> Finding:
    """Hold a width against a band of percent of another one; both in mm."""
    lengths = Band(of * band.low / 100, of * band.high / 100)
    mend = lengths.format_mend(width, plan.units, more="widen", less="narrow")
    return Finding(
        rule=rule,
        subject=subject,
        other=other,
        verdict=lengths.verdict(width),
        figure=f"{band.format_percent(width / of * 100)} of {format_length(of, plan.units)}",
        band=band.format_percents(),
        mend=mend and f"{mend}, to {lengths.format_target(width, plan.units)}",
    )
