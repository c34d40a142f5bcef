"""The overview's tables of every hole, and of what is to be noted about single pieces."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from templater.drawing import Anchor
from templater.lengths import format_both
from templater.placement.model import PlacedPiece, Plan
from templater.printing.error import Errors, format_error
from templater.scene.overview.chapters import Chapter, fit_chapter
from templater.scene.tables import Column, Fit, table_width
from templater.scene.wording import format_size, from_datum, from_left_end, from_middle

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


def list_notes(plan: Plan, width_mm: float) -> list[Chapter]:
    """What is not known, or assumed, about single pieces."""
    columns = (
        Column("No.", anchor=Anchor.MIDDLE),
        Column("Piece", Fit.NAMED),
        Column("Note", Fit.WRAPPED),
    )
    rows = [(str(number), piece.name, note) for number, piece in _number(plan) for note in piece.notes]
    return [fit_chapter("Notes", columns, rows, width_mm)] if rows else []
