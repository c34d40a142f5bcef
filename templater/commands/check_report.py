"""What ``check`` shows: places, sheets, hardware, cautions and verdicts."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence

from templater.commands.tables import TextTable, open_console
from templater.lengths import format_both
from templater.mounting.notes import note_supports
from templater.placement.model import PlacedPiece, Plan
from templater.printing.model import Coverage, SheetCounts
from templater.rules.cautions.together import split_findings, tell_together
from templater.rules.check import RULES
from templater.rules.fasteners.choose import choose_fasteners
from templater.rules.fasteners.shopping import list_shopping
from templater.rules.fasteners.wording import format_asked, format_load, judge_fastener
from templater.rules.model import Finding, Verdict
from templater.rules.settings import is_on
from templater.scene.wording import from_datum


def print_report(
    plan: Plan,
    findings: Sequence[Finding],
    counts: SheetCounts,
    *,
    paper: str,
    names: Iterable[str],
    show_all: bool,
) -> None:
    """Print all tables and the pieces' notes on stdout; ``names`` are all that the layout gives.

    Where rules do not apply, each is told once, unless ``show_all`` asks for every finding.
    """
    console = open_console(names)
    console.print(_positions(plan))
    for piece in plan.pieces:
        for note in (*note_supports(piece.supports, piece.hang, plan.units), *piece.notes):
            console.print(f"{piece.name}: {note}", markup=False)
    for table in (_sheets(plan, counts, paper), _hardware(plan), _things_to_buy(plan)):
        if table.rows:
            console.print(table)
    rules, cautions = split_findings(findings)
    console.print(_cautions(cautions))
    console.print(_count_cautions(cautions), markup=False)
    console.print(_verdicts(plan, rules, show_all=show_all))
    console.print(_count(rules), markup=False)


def _sheets(plan: Plan, counts: SheetCounts, paper: str) -> TextTable:
    """How many sheets of a paper the templates take with each cover."""
    table = TextTable(
        f"sheets of {paper}", *(cover.value for cover in Coverage), "", to_right=range(1, 4)
    )
    for piece in plan.pieces:
        figures = (str(counts.by_cover[cover][piece.slug]) for cover in Coverage)
        shares = f"shares {counts.shared[piece.slug]}" if piece.slug in counts.shared else ""
        table.add_row(piece.name, *figures, shares)
    totals = (str(counts.total(cover)) for cover in Coverage)
    table.add_row("all pieces", *totals, "", is_bold=True)
    return table


def _positions(plan: Plan) -> TextTable:
    table = TextTable("piece", "hole", "from the left end", "above the floor", "from the datum")
    for piece in plan.pieces:
        for row in _piece_rows(plan, piece):
            table.add_row(*row)
    return table


def _piece_rows(plan: Plan, piece: PlacedPiece) -> Sequence[tuple[str, ...]]:
    name = piece.name
    spots = [(str(number), mark.hole) for number, mark in enumerate(piece.marks, 1)]
    spots = spots or [("no hole; centre", piece.box.centre)]
    return [
        (
            name,
            hole,
            format_both(at.x, plan.units),
            format_both(at.y, plan.units),
            from_datum(plan, at.y),
        )
        for hole, at in spots
    ]


def _hardware(plan: Plan) -> TextTable:
    """What each hole bears and takes."""
    table = TextTable("piece", "hole", "behind it", "load", "fastener", "least rating")
    for piece in plan.pieces:
        for number, fastener in enumerate(choose_fasteners(piece, plan), 1):
            cells = (
                format_load(fastener.load, plan.units),
                judge_fastener(fastener, plan.units),
                format_asked(fastener, plan.units),
            )
            table.add_row(piece.name, str(number), fastener.wall.value, *cells)
    return table


def _things_to_buy(plan: Plan) -> TextTable:
    """The shopping list of the wall."""
    table = TextTable("how many", "what to buy", "rated for at least", "for")
    for line in list_shopping(plan):
        cells = (line.what, line.rating, "; ".join(line.pieces))
        table.add_row(line.shown_count, *cells)
    return table


def _verdicts(plan: Plan, findings: Sequence[Finding], *, show_all: bool) -> TextTable:
    """What the rules say, the broken ones first."""
    table = TextTable(
        "rule",
        "for / with",
        "verdict",
        "measured",
        "asked for",
        "mend, or why it is so",
        unbroken=(0, 2),
    )
    for verdict in _ORDER:
        found = [finding for finding in findings if finding.verdict is verdict]
        is_short = verdict is Verdict.NOT_APPLICABLE and not show_all
        for cells in _sum_up(plan, found) if is_short else map(_row, found):
            table.add_row(*cells, is_bold=verdict is Verdict.BROKEN)
    return table


_ORDER = (Verdict.BROKEN, Verdict.ACCEPTED, Verdict.KEPT, Verdict.NOT_APPLICABLE)


def _row(finding: Finding) -> tuple[str, ...]:
    parties = finding.subject + (f" / {finding.other}" if finding.other else "")
    why = f"because: {finding.because}" if finding.because else finding.mend
    shown = (finding.figure or "", finding.band or "", why or "")
    return (finding.rule, parties, finding.verdict.value, *shown)


def _cautions(findings: Sequence[Finding]) -> TextTable:
    """What is to be heeded, then what could not be judged; what is clear is not told."""
    table = TextTable("caution", "of", "verdict", "measured", "what to do", "source", unbroken=(0, 2))
    for verdict in (Verdict.CAUTION, Verdict.NOT_CHECKED):
        for told in tell_together(each for each in findings if each.verdict is verdict):
            finding = told.finding
            cells = (finding.figure or "", finding.mend or "", told.source)
            table.add_row(finding.rule, told.parties, verdict.value, *cells)
    return table


def _count_cautions(findings: Sequence[Finding]) -> str:
    """How many cautions there are, and what they are worth."""
    counts = Counter(finding.verdict for finding in findings)
    heeded, unknown = counts[Verdict.CAUTION], counts[Verdict.NOT_CHECKED]
    return (
        f"{heeded} caution{'' if heeded == 1 else 's'}, {unknown} not checked. They are likelihoods, not"
        " a survey: use a detector; local codes and licensed trades decide."
    )


def _sum_up(plan: Plan, findings: Sequence[Finding]) -> Iterator[tuple[str, ...]]:
    """A row for each rule that does not apply to some pieces or groups."""
    for code in (rule.code for rule in RULES):
        names = [finding.subject for finding in findings if finding.rule == code]
        parties = names[0] if len(names) == 1 else f"{len(names)} pieces and groups"
        why = "" if is_on(plan, code) else "turned off in the layout"
        if names:
            yield code, parties, Verdict.NOT_APPLICABLE.value, "", "", why


def _count(findings: Sequence[Finding]) -> str:
    """How many findings there are of each kind."""
    counts = Counter(finding.verdict for finding in findings)
    kinds = ", ".join(f"{counts[verdict]} {verdict.value}" for verdict in _ORDER)
    return f"{kinds}. 'templater check --explain RULE' tells more of a rule."
