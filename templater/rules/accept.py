"""Turns rules that are broken on purpose into accepted ones, and finds where that says nothing."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from templater.errors import Fault
from templater.layout.model import Acceptance
from templater.placement.model import Plan
from templater.quoting import quote
from templater.rules.model import Finding, Verdict
from templater.rules.settings import is_on


def accept_findings(plan: Plan, findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """The findings, those accepted that the layout says are broken on purpose.

    What is accepted for a group is so for all in it; what is said of one of them by name goes first.
    """
    reasons: dict[tuple[str, str], str] = {}
    for accepted in plan.accepted:
        reasons[accepted.rule, accepted.subject] = accepted.because
    for accepted in plan.accepted:
        for name in _list_inside(plan, accepted.subject):
            reasons.setdefault((accepted.rule, name), accepted.because)
    return tuple(_accept(finding, reasons.get((finding.rule, finding.subject))) for finding in findings)


def find_idle_acceptances(plan: Plan, findings: Sequence[Finding]) -> tuple[Fault, ...]:
    """What is to be said of each acceptance of a rule that is no longer broken."""
    broken = {
        (finding.rule, finding.subject) for finding in findings if finding.verdict is Verdict.ACCEPTED
    }
    return tuple(
        _tell_idle(accepted, plan)
        for accepted in plan.accepted
        if not any(
            (accepted.rule, name) in broken
            for name in (accepted.subject, *_list_inside(plan, accepted.subject))
        )
    )


def _list_inside(plan: Plan, name: str) -> list[str]:
    """The names of all pieces and groups in a group, at any depth; none for a piece."""
    inner = [group for group in plan.groups if group.name == name]
    for group in inner:  # grows on the way: what is found is looked into in turn
        inner.extend(each for each in plan.groups if each.within == group.name)
    return [each for group in inner for each in (group.name, *group.pieces) if each != name]


def _accept(finding: Finding, because: str | None) -> Finding:
    if because is None or finding.verdict is not Verdict.BROKEN:
        return finding
    return replace(finding, verdict=Verdict.ACCEPTED, because=because)


def _tell_idle(accepted: Acceptance, plan: Plan) -> Fault:
    why = "is not broken" if is_on(plan, accepted.rule) else "is turned off"
    message = f"'accept' no longer applies: {accepted.rule} {why} for {quote(accepted.subject)}"
    return Fault(message, "remove it from 'accept'", accepted.at)
