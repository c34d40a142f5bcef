"""The overview's table of what the rules of placing say."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from templater.rules.model import Finding, Verdict
from templater.scene.overview.chapters import NARROW, Chapter, fit_chapter, stack_columns
from templater.scene.tables import Column, Fit

MOST_BROKEN = 60
"""So many rules that are broken, on purpose or not, are listed; of more, their number is given."""

MOST_KEPT = 30
"""Rules that are kept are listed up to so many, else only counted."""

_SHAPES = {
    Verdict.BROKEN: "broken ×",
    Verdict.ACCEPTED: "accepted +",
    Verdict.KEPT: "kept ✓",
    Verdict.NOT_APPLICABLE: "n/a –",
}
_COLUMNS = (
    Column("Verdict"),
    Column("Rule", Fit.WRAPPED),
    Column("Of", Fit.WRAPPED),
    Column("Is", Fit.WRAPPED),
    Column("Asked for", Fit.WRAPPED),
    Column("What would mend it, or why it is so", Fit.WRAPPED),
)


def list_findings(findings: Sequence[Finding], width_mm: float) -> list[Chapter]:
    """What the placement rules say, the broken ones first with what mends them."""
    if not findings:
        return []
    counts = Counter(finding.verdict for finding in findings)
    shown = _choose(findings)
    heading = ", ".join(
        f"{counts[verdict]} {shape}" for verdict, shape in _SHAPES.items() if counts[verdict]
    )
    more = len(findings) - counts[Verdict.NOT_APPLICABLE] - len(shown)
    if more:
        heading += f" ({more} not listed here)"
    columns, rows = [*_COLUMNS], [_row(finding) for finding in shown]
    if width_mm < NARROW:
        stacked = "Rule, and what would mend it or why it is so"
        columns, rows = stack_columns(columns, rows, kept=1, heading=stacked)
    return [fit_chapter(f"Rules of placing: {heading}", columns, rows, width_mm, _sum_up(findings))]


def _sum_up(findings: Sequence[Finding]) -> tuple[str, ...]:
    """The rules that do not apply, in one line: how many things each does not apply to."""
    counts = Counter(found.rule for found in findings if found.verdict is Verdict.NOT_APPLICABLE)
    rules = ", ".join(f"{rule} ({count})" for rule, count in counts.items())
    return (f"Does not apply: {rules}.",) if rules else ()


def _choose(findings: Sequence[Finding]) -> list[Finding]:
    """Those that are listed: all that is broken or accepted, what is kept if that is short."""
    broken, accepted, kept = (
        [finding for finding in findings if finding.verdict is verdict]
        for verdict in (Verdict.BROKEN, Verdict.ACCEPTED, Verdict.KEPT)
    )
    return [*[*broken, *accepted][:MOST_BROKEN], *(kept if len(kept) <= MOST_KEPT else ())]


def _row(finding: Finding) -> tuple[str, ...]:
    parties = finding.subject if finding.other is None else f"{finding.subject} / {finding.other}"
    words = (finding.figure, finding.band, finding.because or finding.mend)
    return (_SHAPES[finding.verdict], finding.rule, parties, *(word or "" for word in words))
