"""Holds heights against bands; a mend that raises or lowers onto something else says so."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from templater.mounting.amounts import SLACK_MM, round_up, step_mm
from templater.placement.model import Plan
from templater.rules.band import Band
from templater.rules.judge import judge_length
from templater.rules.model import Finding
from templater.rules.subject import Subject


def judge_height(
    rule: str,
    subject: Subject,
    mm: float,
    band: Band,
    plan: Plan,
    *,
    upward: bool,
    other: str | None = None,
) -> Finding:
    """Hold a length against a band; it grows as the subject goes up, or as it goes down."""
    more, less = ("raise", "lower") if upward else ("lower", "raise")
    found = judge_length(rule, subject.name, mm, band, plan, more=more, less=less, other=other)
    if found.mend is None:
        return found
    shown = round_up(abs(band.change(mm)), step_mm(plan.units))
    is_up = (band.change(mm) > 0) is upward
    names = list(_list_in_the_way(subject, shown if is_up else -shown, plan))
    if not names:
        return found
    return replace(found, mend=f"{found.mend}; then over {'; '.join(names)}: hang it elsewhere")


def _list_in_the_way(subject: Subject, up_mm: float, plan: Plan) -> Iterator[str]:
    """The furniture, openings and fixtures that a subject would cover so much higher."""
    boxes = [piece.box.moved(0.0, up_mm).grown(-SLACK_MM) for piece in subject.pieces]
    whole = subject.box.moved(0.0, up_mm)
    stands = ((each.name, each.box) for each in plan.furniture)
    fixed = ((each.name, each.box) for each in plan.obstacles)
    for name, taken in (*stands, *fixed):
        if whole.meets(taken) and any(box.meets(taken) for box in boxes):
            yield name
