"""Holds the table of holes against the Plan."""

from __future__ import annotations

import csv
from collections.abc import Iterator, Sequence
from itertools import zip_longest
from pathlib import Path

from templater.placement.model import Plan
from templater.verify.model import UnreadableError

_COLUMNS = ["piece", "hole", "x_mm", "y_mm", "hang_x_mm", "hang_y_mm", "drop_mm", "load_n"]
_DECIMALS_MM = 0.0006
"""The table has three decimals."""


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
