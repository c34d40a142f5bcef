"""The overview's tables of what holds each piece and what that bears, and of what to buy for it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from templater.drawing import Anchor
from templater.lengths import format_both
from templater.mounting.model import Cord, Strips
from templater.mounting.notes import describe_strips
from templater.placement.model import PlacedPiece, Plan
from templater.rules.fasteners.choose import choose_fasteners
from templater.rules.fasteners.load import find_cord_load
from templater.rules.fasteners.shopping import format_cord_rating, list_shopping
from templater.rules.fasteners.wording import format_asked, format_load, judge_fastener
from templater.scene.overview.chapters import NARROW, Chapter, fit_chapter, stack_columns
from templater.scene.tables import Column, Fit
from templater.scene.wording import from_left_end

_HOLES = (
    Column("No.", anchor=Anchor.MIDDLE),
    Column("Piece", Fit.WRAPPED),
    Column("Hole", anchor=Anchor.MIDDLE),
    Column("From the left end", Fit.WRAPPED, Anchor.END),
    Column("Above the floor at the datum's place", Fit.WRAPPED, Anchor.END),
    Column("Behind it", Fit.WRAPPED),
    Column("Load", Fit.WRAPPED),
    Column("Hook or fastener", Fit.WRAPPED),
    Column("Least rating", Fit.WRAPPED),
)
_TO_BUY = (
    Column("How many", anchor=Anchor.END),
    Column("What", Fit.WRAPPED),
    Column("Rated by its maker for at least", Fit.WRAPPED),
    Column("For", Fit.WRAPPED),
)


def list_hardware(plan: Plan, width_mm: float) -> list[Chapter]:
    """What is behind each hole, what it bears and what goes into it; a rail's hooks; adhesive strips."""
    rows = [
        (str(number), piece.name, *row)
        for number, piece in enumerate(plan.pieces, start=1)
        for row in (*_hole_rows(piece, plan), *_cord_rows(piece, plan), *_strip_rows(piece, plan))
    ]
    heading = "Holes: wall, load and hardware"
    return [_fit(heading, _HOLES, rows, 3, width_mm)] if rows else []


def _hole_rows(piece: PlacedPiece, plan: Plan) -> Iterator[tuple[str, ...]]:
    pairs = zip(piece.marks, choose_fasteners(piece, plan), strict=True)
    for number, (mark, fastener) in enumerate(pairs, start=1):
        yield (
            str(number),
            from_left_end(plan, mark.hole.x),
            format_both(mark.hole.y, plan.units),
            fastener.wall.value,
            format_load(fastener.load, plan.units),
            judge_fastener(fastener, plan.units),
            format_asked(fastener, plan.units),
        )


def _cord_rows(piece: PlacedPiece, plan: Plan) -> Iterator[tuple[str, ...]]:
    for cord in piece.supports:
        if isinstance(cord, Cord):
            yield (
                "rail",
                from_left_end(plan, cord.hook.x),
                format_both(cord.hook.y, plan.units),
                "",
                format_load(find_cord_load(cord, piece), plan.units),
                f"hook for the picture rail; cord of {format_both(cord.length_mm, plan.units)}",
                format_cord_rating(cord, piece, plan.units),
            )


def _strip_rows(piece: PlacedPiece, plan: Plan) -> Iterator[tuple[str, ...]]:
    for strips in piece.supports:
        if isinstance(strips, Strips) and piece.hang is not None:
            yield ("strips", "", "", "", "", describe_strips(strips, piece.hang, plan.units), "")


def list_things_to_buy(plan: Plan, width_mm: float) -> list[Chapter]:
    """The shopping list."""
    rows = [
        (line.shown_count, line.what, line.rating, "; ".join(line.pieces))
        for line in list_shopping(plan)
    ]
    return [_fit("Shopping list", _TO_BUY, rows, 1, width_mm)] if rows else []


def _fit(
    heading: str,
    columns: Sequence[Column],
    rows: Sequence[tuple[str, ...]],
    kept: int,
    width_mm: float,
) -> Chapter:
    """A table; on narrow paper what follows the first columns stands in one, each under its name."""
    if width_mm < NARROW:
        names = [column.heading for column in columns[kept:]]
        rows = [(*row[:kept], *_name_cells(names, row[kept:])) for row in rows]
        columns, rows = stack_columns(columns, rows, kept=kept, heading=", ".join(names))
    return fit_chapter(heading, columns, rows, width_mm)


def _name_cells(names: Sequence[str], cells: Sequence[str]) -> Iterator[str]:
    """The cells, each after its name."""
    for name, cell in zip(names, cells, strict=True):
        yield f"{name.lower()}: {cell}" if cell else ""
