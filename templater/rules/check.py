"""Holds every rule of the trade against everything on the wall."""

from __future__ import annotations

from collections.abc import Iterator, Set

from templater.placement.model import Plan
from templater.rules import (
    balance,
    clearance,
    door_swing,
    eye_line,
    gap,
    group_as_one,
    near_ceiling,
    near_corner,
    near_miss,
    near_opening,
    past_the_ends,
    size_against_wall,
    uneven_gaps,
    width_over_furniture,
)
from templater.rules.accept import accept_findings
from templater.rules.cautions.check import check_cautions
from templater.rules.model import Finding, Verdict
from templater.rules.opposed import tell_opposed
from templater.rules.rule import Rule
from templater.rules.settings import is_on
from templater.rules.subject import Subject, find_subjects

RULES: tuple[Rule, ...] = (
    width_over_furniture.RULE,
    past_the_ends.RULE,
    clearance.RULE,
    gap.RULE,
    eye_line.RULE,
    group_as_one.RULE,
    uneven_gaps.RULE,
    near_miss.RULE,
    balance.RULE,
    near_ceiling.RULE,
    near_corner.RULE,
    near_opening.RULE,
    door_swing.RULE,
    size_against_wall.RULE,
)
"""Every rule, in the order in which findings are told. A new rule is a new file and a line here."""


def check_all(plan: Plan) -> tuple[Finding, ...]:
    """What the rules say of everything on the wall, then the cautions."""
    return (*tell_opposed(check_rules(plan)), *check_cautions(plan))


def check_rules(plan: Plan, about: Set[str] | None = None) -> tuple[Finding, ...]:
    """What each rule says of each stand-alone piece and group, subject by subject.

    ``about``: only of those that are named so, or in which or beside which something is.
    """
    findings = (
        finding
        for subject in find_subjects(plan)
        if about is None or not about.isdisjoint(_list_names(subject))
        for rule in RULES
        for finding in _check(rule, subject, plan)
    )
    return accept_findings(plan, findings)


def _list_names(subject: Subject) -> Iterator[str]:
    """What a finding about a subject may name."""
    yield subject.name
    yield from (name for name, _ in subject.parts)
    yield from (facing.name for facing in subject.facing)


def _check(rule: Rule, subject: Subject, plan: Plan) -> tuple[Finding, ...]:
    """What a rule says; that it does not apply, where it has nothing to say or is turned off."""
    is_asked = is_on(plan, rule.code) and (rule.judges_insides or not subject.is_inside)
    found = rule.check(subject, plan) if is_asked else ()
    return found or (Finding(rule.code, subject.name, None, Verdict.NOT_APPLICABLE, None, None, None),)
