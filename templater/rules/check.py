"""Holds every rule of the trade against everything on the wall."""

from __future__ import annotations

from templater.placement.model import Plan
from templater.rules.clearance import check_clearance
from templater.rules.eye_line import check_eye_line
from templater.rules.gap import check_gap
from templater.rules.model import Finding
from templater.rules.past_the_ends import check_past_the_ends
from templater.rules.subject import Rule, find_subjects
from templater.rules.width_over_furniture import check_width_over_furniture

RULES: tuple[Rule, ...] = (
    check_width_over_furniture,
    check_past_the_ends,
    check_clearance,
    check_gap,
    check_eye_line,
)
"""Every rule, in the order in which findings are told. A new rule is a new file and a line here."""


def check_rules(plan: Plan) -> tuple[Finding, ...]:
    """What each rule says of each stand-alone piece and group, subject by subject."""
    return tuple(
        finding for subject in find_subjects(plan) for rule in RULES for finding in rule(subject, plan)
    )
