"""The overview's table of cautions: what to mind, where, and who says so."""

from __future__ import annotations

from collections.abc import Sequence

from templater.rules.cautions.together import Told, tell_together
from templater.rules.model import Finding, Verdict
from templater.scene.overview.chapters import NARROW, Chapter, fit_chapter, stack_columns
from templater.scene.tables import Column, Fit

MOST_LISTED = 60
"""So many cautions are listed; of more, their number is given."""

_SHAPE = "caution !"
_HEADING = "Cautions: likelihoods, not a survey. Use a detector; local codes and licensed trades decide"
_COLUMNS = (
    Column("Verdict"),
    Column("Caution", Fit.WRAPPED),
    Column("Of", Fit.WRAPPED),
    Column("Is", Fit.WRAPPED),
    Column("What to do", Fit.WRAPPED),
    Column("Source", Fit.WRAPPED),
)


def list_cautions(findings: Sequence[Finding], width_mm: float) -> list[Chapter]:
    """What is to be heeded; what could not be judged is summed up; what is clear is not told."""
    told = tell_together(found for found in findings if found.verdict is Verdict.CAUTION)
    notes = _sum_up(findings)
    columns, rows = [*_COLUMNS], [_row(each) for each in told[:MOST_LISTED]]
    if width_mm < NARROW:
        heading = "Caution, what to do, and its source"
        columns, rows = stack_columns(columns, rows, kept=1, heading=heading)
    more = len(told) - len(rows)
    heading = _HEADING + (f" ({more} more: ask whoever made this kit)" if more else "")
    table = fit_chapter(heading, columns, rows, width_mm, notes)
    return [table] if rows or notes else []


def _sum_up(findings: Sequence[Finding]) -> tuple[str, ...]:
    """The cautions that could not be judged, of how many pieces each, and what a reader can do."""
    missing = [found for found in findings if found.verdict is Verdict.NOT_CHECKED]
    subjects: dict[str, set[str]] = {}
    for found in missing:
        subjects.setdefault(found.rule, set()).add(found.subject)
    rules = ", ".join(f"{rule} ({len(names)})" for rule, names in subjects.items())
    if not rules:
        return ()
    return (f"Not checked: {rules}. Judge these at the wall, or ask whoever made this kit.",)


def _row(told: Told) -> tuple[str, ...]:
    finding = told.finding
    cells = (finding.rule, told.parties, finding.figure, finding.act, told.source)
    return (_SHAPE, *(cell or "" for cell in cells))
