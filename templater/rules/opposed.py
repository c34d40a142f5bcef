"""Says of a mend that raises or lowers which rules it leaves broken, since they ask the opposite."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from templater.rules import clearance, eye_line, near_ceiling
from templater.rules.model import Finding, Verdict

_OF_HEIGHT = (clearance.CODE, eye_line.CODE, near_ceiling.CODE)
"""Each asks for a range of heights: where one is too low and another too high, no height keeps both."""

_OPPOSITE = {"raise": "lower", "lower": "raise"}


def tell_opposed(findings: Sequence[Finding]) -> tuple[Finding, ...]:
    """The findings; where two ask to move one thing both up and down, each names the other."""
    asked: dict[tuple[str, str], list[str]] = {}
    for finding in findings:
        if way := _find_way(finding):
            asked.setdefault((finding.subject, way), []).append(finding.rule)
    return tuple(
        _tell(finding, asked.get((finding.subject, _OPPOSITE.get(_find_way(finding), "")), ()))
        for finding in findings
    )


def _find_way(finding: Finding) -> str:
    """``raise`` or ``lower``; empty where a finding asks for neither."""
    is_asked = finding.verdict is Verdict.BROKEN and finding.rule in _OF_HEIGHT
    word = (finding.mend or "").split(" ", 1)[0] if is_asked else ""
    return word if word in _OPPOSITE else ""


def _tell(finding: Finding, others: Iterable[str]) -> Finding:
    names = ", ".join(dict.fromkeys(others))
    return replace(finding, mend=f"{finding.mend}; then still broken: {names}") if names else finding
