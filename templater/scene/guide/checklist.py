"""The checklist: a row for every hole, to be measured again and ticked on the wall."""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot

from templater.drawing import Anchor
from templater.lengths import Unit, format_both, format_signed_both
from templater.mounting.model import Mark
from templater.placement.model import PlacedPiece, Plan
from templater.rules.cautions.hook_rise import BEAR_AT_CROSS, check_hook_rise
from templater.scene.contents import tell_no_hole
from templater.scene.guide.flow import Listing, Part, column_width, draw_page_heads, flow
from templater.scene.model import Form, PageDrawing
from templater.scene.passages import draw_paragraph
from templater.scene.tables import Column, Fit, fit_columns, leave_out_empty
from templater.scene.wording import describe_datum

ROOMY = 150.0
"""From this width on a length and its other unit stand on one line, mm."""

NARROW = 112.0
"""Below this width lengths stand in one system, and the boxes to tick have letters, mm.

The boxes have letters below ROOMY already where some piece has more than one hole.
"""

ROW = 7.5
"""Height of a row, so that a pencil finds its square, mm."""

_MOST_NAMED = 20

_HOLE_TO_HOLE = (
    "Hole to hole: measure straight from the middle of one cross of a piece to that of the next; 1–2 is"
    " from its first to its second."
)


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
        f"The datum is the one line that you draw across the wall, {describe_datum(plan)}.",
        "± datum: measure from the datum to the cross; + is up, − is down. From the left end: measure"
        " level from the wall's left end, as you face the wall.",
        *([_HOLE_TO_HOLE] if _has_neighbours(plan) else []),
        "Tick checked when all distances are right, drilled when the hole is made, hung when the"
        " piece hangs and is level.",
    )
    title = draw_paragraph(plan.title, width, bold=True, most_lines=2)
    rises = (draw_paragraph(text, width, bold=True) for text in _tell_rises(plan))
    return [title, *(draw_paragraph(text, width) for text in texts), *rises]


def _tell_rises(plan: Plan) -> Iterator[str]:
    """Of which pieces nobody knows how far a hook's nail is above the place where it bears."""
    names: dict[str, list[str]] = {}
    for piece in plan.pieces:
        for figure in {each.figure or "": None for each in check_hook_rise(piece, plan)}:
            names.setdefault(figure, []).append(piece.name)
    for figure, told in names.items():
        many = f"{len(told)} pieces, as their templates tell"
        whose = "; ".join(told) if len(told) <= _MOST_NAMED else many
        yield f"{whose}: {figure}: {BEAR_AT_CROSS}."


def _tell_proof(plan: Plan) -> list[str]:
    """What was measured before this file was handed over; a file that does not hold never is."""
    count = plan.hole_count
    if not count:
        return []
    holes = "1 hole was" if count == 1 else f"{count} holes were"
    return [f"{holes} re-read from this file; none is farther than 0.01 mm from the plan."]


def _hole_rows(plan: Plan, width: float) -> list[Part]:
    rows = tuple(row for piece in plan.pieces for row in _rows_of(piece, plan, width))
    is_crowded = width < (ROOMY if _has_neighbours(plan) else NARROW)
    ticks = ("c", "d", "h") if is_crowded else ("checked", "drilled", "hung")
    columns, rows = leave_out_empty(
        (
            Column("Piece", Fit.WRAPPED),
            Column("no." if is_crowded else "Hole", anchor=Anchor.MIDDLE),
            Column("± datum", anchor=Anchor.END),
            Column("From the left end", anchor=Anchor.END),
            Column("Hole to hole", anchor=Anchor.END),
            *(Column(word, anchor=Anchor.MIDDLE, to_tick=True) for word in ticks),
        ),
        rows,
    )
    legend = [draw_paragraph("c: checked, d: drilled, h: hung", width)] if is_crowded else []
    groups = tuple(len(piece.marks) for piece in plan.pieces)
    listing = Listing(fit_columns(columns, rows, width), rows, ROW, groups=groups)
    return [*legend, listing] if rows else []


def _rows_of(piece: PlacedPiece, plan: Plan, width: float) -> list[tuple[str, ...]]:
    """A row for each hole of one piece; the other system of units goes where there is no room."""
    joint = " " if width >= ROOMY else "\n"
    rows: list[tuple[str, ...]] = []
    for number, (before, mark) in enumerate(zip((None, *piece.marks), piece.marks, strict=False), 1):
        across = format_both(mark.hole.x, plan.units).replace(" (", f"{joint}(")
        offset = format_signed_both(mark.hole.y - plan.datum.height_mm, plan.units, joint)
        apart = _measure_apart(before, mark, number, plan.units).replace(" (", "\n(")
        if width < NARROW:
            offset, across, apart = (words.split("\n")[0] for words in (offset, across, apart))
        rows.append((piece.name, str(number), offset, across, apart, "", "", ""))
    return rows


def _measure_apart(before: Mark | None, mark: Mark, number: int, units: Unit) -> str:
    """``1–2: 12 in (305 mm)``, straight from the hole before of the same piece, if there is one."""
    if before is None:
        return ""
    (x, y), (other_x, other_y) = mark.hole, before.hole
    return f"{number - 1}–{number}: {format_both(hypot(x - other_x, y - other_y), units)}"


def _has_neighbours(plan: Plan) -> bool:
    """Whether some piece has more than one hole."""
    return any(len(piece.marks) > 1 for piece in plan.pieces)


def _bare_rows(plan: Plan, width: float) -> list[Part]:
    """The pieces that hang without a hole, and those whose hardware nobody has measured yet."""
    rows = tuple((piece.name, tell_no_hole(piece, plan), "") for piece in plan.pieces if not piece.marks)
    if not rows:
        return []
    columns = (
        Column("Piece", Fit.WRAPPED),
        Column("Hole", Fit.WRAPPED),
        Column("hung", anchor=Anchor.MIDDLE, to_tick=True),
    )
    words = "There is nothing to drill for these pieces. Their templates show where they go."
    listing = Listing(fit_columns(columns, rows, width), rows, ROW)
    return [draw_paragraph(words, width), listing]
