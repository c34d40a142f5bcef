"""Tells findings that say the same of several pieces or holes together, lest they drown what matters."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from templater.rules.cautions.check import CAUTIONS
from templater.rules.model import Finding, Verdict

_OF_HOLES = {caution.code for caution in CAUTIONS if caution.is_of_holes}
_MOST_NAMED = 3

_CODES = {caution.code for caution in CAUTIONS}


@dataclass(frozen=True, slots=True)
class Told:
    """What is said once: ``parties`` names those it is said of; ``finding`` is the first of them."""

    parties: str
    finding: Finding

    @property
    def source(self) -> str:
        """Who says so; of what is not checked there is nothing to prove."""
        return (self.finding.because or "") if self.finding.verdict is Verdict.CAUTION else ""


def split_findings(findings: Sequence[Finding]) -> tuple[list[Finding], list[Finding]]:
    """The findings of the rules, and those of the cautions."""
    rules = [finding for finding in findings if finding.rule not in _CODES]
    return rules, [finding for finding in findings if finding.rule in _CODES]


def tell_together(findings: Iterable[Finding]) -> tuple[Told, ...]:
    """The findings of cautions, what is said alike told once, in the order of the first of each.

    Of several pieces, up to three are named, of more their number; all holes of one piece are. What
    is to be heeded at holes is told piece by piece.
    """
    alike: dict[Finding, list[Finding]] = {}
    for finding in findings:
        alike.setdefault(_strip(finding), []).append(finding)
    return tuple(Told(_name_parties(found), found[0]) for found in alike.values())


def _strip(finding: Finding) -> Finding:
    """A finding without what may differ between those that are told together."""
    if finding.rule in _OF_HOLES and finding.other is not None:
        subject = finding.subject if finding.verdict is Verdict.CAUTION else ""
        return replace(finding, subject=subject, other=None)
    return replace(finding, subject="")


def _name_parties(found: list[Finding]) -> str:
    """``Tide chart; Fog bell / long sofa``, or with holes that differ ``A / hole 1; B / hole 2``."""
    others: dict[str, dict[str, None]] = {}
    for finding in found:
        others.setdefault(finding.subject, {}).update({finding.other: None} if finding.other else {})
    shared = {tuple(each) for each in others.values()}
    many = f"{len(others)} pieces" if len(others) > _MOST_NAMED else ""
    if len(shared) == 1:
        return _add_others(many or "; ".join(others), *shared)
    return many or "; ".join(_add_others(name, tuple(each)) for name, each in others.items())


def _add_others(names: str, others: tuple[str, ...]) -> str:
    return f"{names} / {', '.join(others)}" if others else names
