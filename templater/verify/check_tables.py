"""Holds the manifest and the table of holes against the Plan."""

from __future__ import annotations

import csv
from collections.abc import Iterator, Sequence
from itertools import zip_longest
from math import dist, inf
from pathlib import Path

from templater.geometry import Point
from templater.placement.model import PlacedPiece, Plan
from templater.verify.model import Expected, PageRecord, Record, UnreadableError

_COLUMNS = ["piece", "hole", "x_mm", "y_mm", "hang_x_mm", "hang_y_mm", "drop_mm", "load_n"]
_DECIMALS_MM = 0.0006
"""The table has three decimals, the manifest more."""


def check_hooks(path: Path, plan: Plan) -> Iterator[str]:
    """What the table of holes says that the Plan does not. Raises UnreadableError."""
    try:
        with path.open(encoding="utf-8", newline="") as stream:
            header, *rows = [*csv.reader(stream)] or [[]]
    except (csv.Error, UnicodeDecodeError) as error:
        raise UnreadableError(f"it is no table ({error})") from error
    if header != _COLUMNS:
        yield "its first line does not name the columns"
        return
    for line, (row, wanted) in enumerate(zip_longest(rows, _list_rows(plan)), 2):
        if wanted is None:
            yield f"line {line} is of a hole that the plan does not have"
        elif row is None:
            yield f"{wanted[0]} hole {wanted[1]} is missing"
        else:
            yield from _compare(row, wanted, line)


def _list_rows(plan: Plan) -> Iterator[tuple[str, str, tuple[float | None, ...]]]:
    """Piece, number and figures of every hole."""
    for piece in plan.pieces:
        for number, mark in enumerate(piece.marks, 1):
            figures = (*mark.hole, *mark.hang, piece.box.y1 - mark.hang.y, mark.load_n)
            yield piece.slug, str(number), figures


def _compare(
    row: Sequence[str], wanted: tuple[str, str, tuple[float | None, ...]], line: int
) -> Iterator[str]:
    slug, number, figures = wanted
    if row[:2] != [slug, number] or len(row) != len(_COLUMNS):
        yield f"line {line} is not that of {slug} hole {number}"
        return
    for column, cell, figure in zip(_COLUMNS[2:], row[2:], figures, strict=True):
        if not _is_same(cell, figure):
            told = "nothing" if figure is None else f"{figure:.3f}"
            yield f"{slug} hole {number}: {column} is {cell or 'nothing'}, the plan has {told}"


def _is_same(cell: str, figure: float | None) -> bool:
    try:
        return cell == "" if figure is None else abs(float(cell) - figure) <= _DECIMALS_MM
    except ValueError:
        return False


def check_record(record: Record, expected: Expected) -> Iterator[str]:
    """What the manifest says of pieces and sheets that the Plan and the cut do not."""
    slugs = [piece.slug for piece in expected.plan.pieces]
    if [piece.slug for piece in record.pieces] != slugs:
        yield "its pieces are not those of the plan"
        return
    pages: dict[str | None, list[PageRecord]] = {}
    for page in record.pages:
        pages.setdefault(page.piece, []).append(page)
    for told, piece in zip(record.pieces, expected.plan.pieces, strict=True):
        boxes = zip(told.box, piece.box, strict=True)
        if max(abs(one - other) for one, other in boxes) > _DECIMALS_MM or told.name != piece.name:
            yield f"{piece.slug}: its name or its place is not that of the plan"
        for what, points, wanted in (
            ("hole", told.holes, [mark.hole for mark in piece.marks]),
            ("hang point", told.hang_points, [mark.hang for mark in piece.marks]),
        ):
            if (off := _farthest(points, wanted)) > _DECIMALS_MM:
                amount = "another number" if off == inf else f"{off:.3f} mm off"
                yield f"{piece.slug}: a {what} is not that of the plan ({amount})"
        yield from _check_sheets(pages.get(piece.slug, ()), piece, expected)


def _farthest(points: Sequence[Point], wanted: Sequence[Point]) -> float:
    if len(points) != len(wanted):
        return inf
    return max((dist(one, other) for one, other in zip(points, wanted, strict=True)), default=0.0)


def _check_sheets(pages: Sequence[PageRecord], piece: PlacedPiece, expected: Expected) -> Iterator[str]:
    """Whether the manifest lists every sheet of a piece once and rightly, and each hole is on one."""
    tiles = expected.tilings[piece.slug].tiles
    if [page.sheet for page in pages] != [tile.name for tile in tiles]:
        yield f"{piece.slug}: its sheets are not those of the cut"
        return
    for page, tile in zip(pages, tiles, strict=True):
        sides = zip(page.clip or (inf,) * 4, tile.clip, strict=True)
        if max(abs(one - other) for one, other in sides) > _DECIMALS_MM:
            yield f"{piece.slug} sheet {tile.name}: it does not show the part that the cut gives it"
    for number, mark in enumerate(piece.template_marks(), 1):
        if not any(tile.clip.has(mark.hole) for tile in tiles):
            yield f"{piece.slug} hole {number} is on no sheet"
