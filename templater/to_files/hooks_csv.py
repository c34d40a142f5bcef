"""The holes as a table for other programs."""

from __future__ import annotations

import csv
from io import StringIO

from templater.placement.model import Plan

COLUMNS = ("piece", "hole", "x_mm", "y_mm", "hang_x_mm", "hang_y_mm", "drop_mm", "load_n")


def hooks_csv(plan: Plan) -> str:
    """One row a hole, wall coordinates in mm with three decimals, the static load in newton."""
    text = StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(COLUMNS)
    for piece in plan.pieces:
        for number, mark in enumerate(piece.marks, 1):
            lengths = (*mark.hole, *mark.hang, piece.box.y1 - mark.hang.y)
            load = "" if mark.load_n is None else _decimal(mark.load_n)
            writer.writerow((piece.slug, number, *map(_decimal, lengths), load))
    return text.getvalue()


def _decimal(value: float) -> str:
    shown = f"{value:.3f}"
    return "0.000" if shown == "-0.000" else shown
