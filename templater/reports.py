"""What ``check`` shows in a terminal: every hole's place, and every rule's verdict."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from typing import TYPE_CHECKING

from templater.lengths import format_both
from templater.placement.model import PlacedPiece, Plan
from templater.rules.model import Finding
from templater.scene.wording import from_datum

if TYPE_CHECKING:
    from rich.table import Table

_WIDTH_IN_FILES = 120
"""Columns of a report that goes to a file or a pipe, where no terminal says how wide it is."""


def print_report(plan: Plan, findings: Sequence[Finding]) -> None:
    """Print both tables and the pieces' notes on stdout."""
    from rich.console import Console

    console = Console(highlight=False, width=None if sys.stdout.isatty() else _WIDTH_IN_FILES)
    console.print(_positions(plan))
    for piece in plan.pieces:
        for note in piece.notes:
            console.print(f"{piece.name}: {note}", markup=False)
    console.print(_verdicts(findings))


def _table(*columns: str) -> Table:
    from rich import box
    from rich.table import Table

    table = Table(box=box.SIMPLE_HEAD)
    for column in columns:
        table.add_column(column, overflow="fold")
    return table


def _positions(plan: Plan) -> Table:
    table = _table("piece", "hole", "from the left end", "above the floor", "from the datum")
    for piece in plan.pieces:
        for row in _piece_rows(plan, piece):
            table.add_row(*row)
    return table


def _piece_rows(plan: Plan, piece: PlacedPiece) -> Sequence[tuple[str, ...]]:
    from rich.markup import escape

    name = escape(piece.name)
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


def _verdicts(findings: Sequence[Finding]) -> Table:
    from rich.markup import escape

    table = _table("rule", "for", "verdict", "measured", "asked for", "what would mend it")
    for finding in findings:
        subject = finding.subject + (f" / {finding.other}" if finding.other else "")
        shown = (finding.figure, finding.band, finding.mend)
        cells = (finding.rule, subject, finding.verdict.value, *(cell or "" for cell in shown))
        table.add_row(*map(escape, cells))
    return table
