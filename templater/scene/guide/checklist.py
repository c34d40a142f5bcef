"""The checklist: a row for every hole, to be measured again and ticked on the wall."""

from __future__ import annotations

from templater.drawing import Anchor
from templater.lengths import format_both, format_signed_both
from templater.placement.model import PlacedPiece, Plan
from templater.scene.guide.flow import Listing, Part, column_width, draw_page_heads, flow
from templater.scene.model import Form, PageDrawing
from templater.scene.passages import draw_paragraph
from templater.scene.tables import Column, Fit, fit_columns
from templater.scene.wording import describe_datum

ROOMY = 150.0
"""From this width on a length and its other unit stand on one line, mm."""

NARROW = 112.0
"""Below this width lengths stand in one system, and the boxes to tick have letters, mm."""

ROW = 7.5
"""Height of a row, so that a pencil finds its square, mm."""


def draw_checklist(plan: Plan, form: Form, *, revision: str) -> tuple[PageDrawing, ...]:
    """Every hole with its two distances and its boxes; then the pieces that have no hole."""
    width = column_width(form)
    first, later = draw_page_heads("Checklist", form)
    parts = [*_introduction(plan, width, revision), *_hole_rows(plan, width), *_bare_rows(plan, width)]
    return flow(parts, form, title="Checklist", first_head=first, later_head=later)


def _introduction(plan: Plan, width: float, revision: str) -> list[Part]:
    texts = (
        f"Revision {revision}.",
        *_tell_proof(plan),
        f"The datum is the one level line across the wall, {describe_datum(plan)}.",
        "± datum: measure from the datum line to the cross; + is up, − is down. From the left end:"
        " measure level from the wall's left end, as you face the wall.",
        "Tick checked when both distances are right, drilled when the hole is made, hung when the"
        " piece hangs and is level.",
    )
    title = draw_paragraph(plan.title, width, bold=True, most_lines=2)
    return [title, *(draw_paragraph(text, width) for text in texts)]


def _tell_proof(plan: Plan) -> list[str]:
    """What was measured before this file was handed over; a file that does not hold never is."""
    count = plan.hole_count
    if not count:
        return []
    holes = "1 hole was" if count == 1 else f"{count} holes were"
    return [f"{holes} re-read from this file; none is farther than 0.01 mm from the plan."]


def _hole_rows(plan: Plan, width: float) -> list[Part]:
    rows = tuple(row for piece in plan.pieces for row in _rows_of(piece, plan, width))
    ticks = ("checked", "drilled", "hung") if width >= NARROW else ("c", "d", "h")
    columns = (
        Column("Piece", Fit.WRAPPED),
        Column("Hole" if width >= NARROW else "no.", anchor=Anchor.MIDDLE),
        Column("± datum", anchor=Anchor.END),
        Column("From the left end", anchor=Anchor.END),
        *(Column(word, anchor=Anchor.MIDDLE, to_tick=True) for word in ticks),
    )
    legend = [draw_paragraph("c: checked, d: drilled, h: hung", width)] if width < NARROW else []
    return [*legend, Listing(fit_columns(columns, rows, width), rows, ROW)] if rows else []


def _rows_of(piece: PlacedPiece, plan: Plan, width: float) -> list[tuple[str, ...]]:
    """A row for each hole of one piece; the other system of units goes where there is no room."""
    joint = " " if width >= ROOMY else "\n"
    rows: list[tuple[str, ...]] = []
    for number, mark in enumerate(piece.marks, 1):
        across = format_both(mark.hole.x, plan.units).replace(" (", f"{joint}(")
        offset = format_signed_both(mark.hole.y - plan.datum.height_mm, plan.units, joint)
        if width < NARROW:
            offset, across = (words.split(joint)[0] for words in (offset, across))
        rows.append((piece.name, str(number), offset, across, "", "", ""))
    return rows


def _bare_rows(plan: Plan, width: float) -> list[Part]:
    """The pieces that hang without a hole, and those whose hardware nobody has measured yet."""
    rows = tuple((piece.name, "no hole", "") for piece in plan.pieces if not piece.marks)
    if not rows:
        return []
    columns = (
        Column("Piece", Fit.WRAPPED),
        Column("Hole"),
        Column("hung", anchor=Anchor.MIDDLE, to_tick=True),
    )
    words = (
        "There is nothing to drill for these pieces. Their templates show where they go, and by what"
        " they hang if the layout says so."
    )
    listing = Listing(fit_columns(columns, rows, width), rows, ROW)
    return [draw_paragraph(words, width), listing]
