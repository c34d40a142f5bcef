"""The overview's tables: every hole, the furniture, what the rules say, what is to be noted."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence

from templater.drawing import Anchor
from templater.lengths import format_both
from templater.placement.model import PlacedPiece, Plan
from templater.printing.error import Errors, format_error
from templater.rules.model import Finding, Verdict
from templater.scene.overview.chapters import NARROW, Chapter, fit_chapter, stack_columns
from templater.scene.overview.named_things import furniture_key
from templater.scene.tables import Column, Fit, table_width
from templater.scene.wording import (
    format_size,
    format_size_both,
    from_datum,
    from_left_end,
    from_middle,
)

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


_HOLE_COLUMNS = (
    Column("No.", anchor=Anchor.MIDDLE),
    Column("Piece", Fit.NAMED),
    Column("Width × height", anchor=Anchor.MIDDLE),
    Column("Hole", anchor=Anchor.MIDDLE),
    Column("Hole, from the left end", anchor=Anchor.END),
    Column("Piece's middle, from the left end", anchor=Anchor.END),
    Column("Hole, from the furniture's middle", anchor=Anchor.END),
    Column("Furniture", Fit.NAMED),
    Column("Hole, above the floor at the datum's place", anchor=Anchor.END),
    Column("Hole, from the datum (−\N{NO-BREAK SPACE}down)", anchor=Anchor.END),
    Column("Error on paper (estimate)", anchor=Anchor.MIDDLE),
)
_NAMES, _SIZE, _ACROSS, _FURNITURE, _UP, _ERROR = (0, 1, 3), (2,), (4, 5), (6, 7), (8, 9), (10,)

_Errors = Mapping[str, Errors]
"""What to expect of the holes of each piece, by its slug."""


def list_holes(plan: Plan, width_mm: float, errors: _Errors | None = None) -> list[Chapter]:
    """The table of every hole, no wider than asked: on narrow paper it falls into several tables."""
    overs = {piece.over.name for piece in plan.pieces if piece.over}
    expected = errors or {}
    measures = (*_SIZE, *_ACROSS, *_FURNITURE[: min(len(overs), 2)], *_UP, *(_ERROR if errors else ()))
    for joint in (" ", "\n"):
        rows = [
            (*row, error)
            for number, piece in _number(plan)
            for row, error in zip(
                _hole_rows(plan, number, piece, joint), _list_errors(piece, expected), strict=True
            )
        ]
        whole = _pick(rows, sorted((*_NAMES, *measures)), "Holes", width_mm)
        if _is_within(whole, width_mm):
            return [whole]
    return _split(rows, measures, width_mm)


def _split(rows: Sequence[Sequence[str]], measures: Sequence[int], width_mm: float) -> list[Chapter]:
    """Tables of the same holes, each with as many of the measures as it has room for."""
    groups: list[list[int]] = [[]]
    for index in measures:
        wider = _pick(rows, (*_NAMES, *groups[-1], index), "", width_mm)
        if groups[-1] and not _is_within(wider, width_mm):
            groups.append([])
        groups[-1].append(index)
    return [
        _pick(rows, (*_NAMES, *group), f"Holes, table {number} of {len(groups)}", width_mm)
        for number, group in enumerate(groups, start=1)
    ]


def _is_within(chapter: Chapter, width_mm: float) -> bool:
    return table_width(chapter.columns) <= width_mm + 1e-6


def _number(plan: Plan) -> Iterable[tuple[int, PlacedPiece]]:
    return enumerate(plan.pieces, start=1)


def _pick(
    rows: Sequence[Sequence[str]], indexes: Sequence[int], heading: str, width_mm: float
) -> Chapter:
    """The table of holes with some of its columns."""
    chosen = [[row[index] for index in indexes] for row in rows]
    return fit_chapter(heading, [_HOLE_COLUMNS[i] for i in indexes], chosen, width_mm)


def _hole_rows(plan: Plan, number: int, piece: PlacedPiece, joint: str) -> Iterable[tuple[str, ...]]:
    """A row for each hole of a piece, or one for its top edge if it has none."""

    def split(text: str) -> str:
        return text.replace(" (", f"{joint}(")

    names = (str(number), piece.name, format_size(piece.size, plan.units))
    middle = split(from_left_end(plan, piece.box.centre.x))
    over = piece.over.name if piece.over else ""
    if not piece.marks:
        top = piece.box.y1
        heights = (split(format_both(top, plan.units)), split(from_datum(plan, top)))
        yield *names, f"no hole:{joint}its top edge", "", middle, "", over, *heights
    for index, mark in enumerate(piece.marks, start=1):
        x, y = mark.hole
        yield (
            *names,
            str(index),
            split(from_left_end(plan, x)),
            middle,
            split(from_middle(plan, x, piece.over)) if piece.over else "",
            over,
            split(format_both(y, plan.units)),
            split(from_datum(plan, y)),
        )


def _list_errors(piece: PlacedPiece, errors: _Errors) -> Iterable[str]:
    """What to expect of each hole of a piece, where it is known; one cell at the least."""
    if piece.marks and piece.slug in errors:
        return [format_error(error) for error in errors[piece.slug].holes]
    return [""] * max(1, len(piece.marks))


def list_furniture(plan: Plan, width_mm: float) -> list[Chapter]:
    """Where each piece of furniture stands."""
    columns = (
        Column("Key", anchor=Anchor.MIDDLE),
        Column("Furniture", Fit.WRAPPED),
        Column("Width × height", Fit.WRAPPED),
        Column("Left edge, from the left end", Fit.WRAPPED, Anchor.END),
        Column("Middle, from the left end", Fit.WRAPPED, Anchor.END),
    )
    rows = [
        (
            furniture_key(number),
            thing.name,
            format_size_both(thing.box.size, plan.units),
            from_left_end(plan, thing.box.x0),
            from_left_end(plan, thing.box.centre.x),
        )
        for number, thing in enumerate(plan.furniture, start=1)
    ]
    return [fit_chapter("Furniture", columns, rows, width_mm)] if rows else []


def list_notes(plan: Plan, width_mm: float) -> list[Chapter]:
    """What is not known, or assumed, about single pieces."""
    columns = (
        Column("No.", anchor=Anchor.MIDDLE),
        Column("Piece", Fit.NAMED),
        Column("Note", Fit.WRAPPED),
    )
    rows = [(str(number), piece.name, note) for number, piece in _number(plan) for note in piece.notes]
    return [fit_chapter("Notes", columns, rows, width_mm)] if rows else []


def list_findings(findings: Sequence[Finding], width_mm: float) -> list[Chapter]:
    """What the placement rules say, the broken ones first with what mends them."""
    if not findings:
        return []
    counts = Counter(finding.verdict for finding in findings)
    shown = _choose_findings(findings)
    heading = ", ".join(
        f"{counts[verdict]} {shape}" for verdict, shape in _SHAPES.items() if counts[verdict]
    )
    more = len(findings) - counts[Verdict.NOT_APPLICABLE] - len(shown)
    if more:
        heading += f" ({more} not listed here)"
    columns, rows = [*_FINDING_COLUMNS], [_finding_row(finding) for finding in shown]
    if width_mm < NARROW:
        stacked = "Rule, and what would mend it or why it is so"
        columns, rows = stack_columns(columns, rows, kept=1, heading=stacked)
    return [fit_chapter(f"Rules of placing: {heading}", columns, rows, width_mm, _sum_up(findings))]


def _sum_up(findings: Sequence[Finding]) -> tuple[str, ...]:
    """The rules that do not apply, in one line: how many things each does not apply to."""
    counts = Counter(found.rule for found in findings if found.verdict is Verdict.NOT_APPLICABLE)
    rules = ", ".join(f"{rule} ({count})" for rule, count in counts.items())
    return (f"Does not apply: {rules}.",) if rules else ()


def _choose_findings(findings: Sequence[Finding]) -> list[Finding]:
    """Those that are listed: all that is broken or accepted, what is kept if that is short."""
    broken, accepted, kept = (
        [finding for finding in findings if finding.verdict is verdict]
        for verdict in (Verdict.BROKEN, Verdict.ACCEPTED, Verdict.KEPT)
    )
    return [*[*broken, *accepted][:MOST_BROKEN], *(kept if len(kept) <= MOST_KEPT else ())]


_FINDING_COLUMNS = (
    Column("Verdict"),
    Column("Rule", Fit.WRAPPED),
    Column("Of", Fit.WRAPPED),
    Column("Is", Fit.WRAPPED),
    Column("Asked for", Fit.WRAPPED),
    Column("What would mend it, or why it is so", Fit.WRAPPED),
)


def _finding_row(finding: Finding) -> tuple[str, ...]:
    parties = finding.subject if finding.other is None else f"{finding.subject} / {finding.other}"
    words = (finding.figure, finding.band, finding.because or finding.mend)
    return (_SHAPES[finding.verdict], finding.rule, parties, *(word or "" for word in words))
