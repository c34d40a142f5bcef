"""Holds the rows of the checklist against the Plan: every hole, in order, with all its measures."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from itertools import zip_longest
from math import dist
from typing import NamedTuple

from templater.placement.model import PlacedPiece, Plan
from templater.verify.model import Run
from templater.verify.read_lengths import LENGTH, plain, tells
from templater.verify.template_marks import HoleMeasures, measure_holes

_CELL = re.compile(rf"{LENGTH}|\({LENGTH}\)")
_BRACKETED = re.compile(rf"\({LENGTH}\)")
_APART = re.compile(rf"\d+–\d+: {LENGTH}")
_LAST_OF_LATIN = "\u024f"
"""Words beyond it may be drawn in another order than they are read."""


class Row(NamedTuple):
    """A row as it was read: the words before it, the hole's number, its measures from datum and end.

    ``apart`` is what it says of the way from the hole before of the same piece.
    """

    before: str
    number: str
    from_datum: str
    across: str
    apart: str = ""


def read_rows(runs: Iterable[Run]) -> Iterator[Row]:
    """The rows of the holes on a page, in the order in which they are drawn."""
    texts = [plain(run.text) for run in runs]
    before, at = "", 0
    while at < len(texts):
        cells: list[str] = []
        while texts[at].isdecimal() and _is_cell(texts, at + 1 + len(cells)):
            cells.append(texts[at + 1 + len(cells)])
        if len(cells) % 2:  # both measures take as many; the last is the next piece's name
            cells.pop()
        end = at + 1 + len(cells)
        if cells:
            half, apart = len(cells) // 2, _take_apart(texts[end : end + 2])
            halves = (" ".join(cells[:half]), " ".join(cells[half:]))
            yield Row(before, texts[at], *halves, " ".join(apart))
            before = ""
            end += len(apart)
        else:
            before += texts[at]
        at = end


def _take_apart(texts: Sequence[str]) -> Sequence[str]:
    """What of the next words tells the way from the hole before, on one line or on two."""
    if not texts or not _APART.fullmatch(texts[0]):
        return ()
    return texts if _BRACKETED.fullmatch(texts[-1]) else texts[:1]


def _is_cell(texts: Sequence[str], at: int) -> bool:
    return at < len(texts) and _CELL.fullmatch(texts[at]) is not None


def check_rows(rows: Iterable[Row], plan: Plan) -> Iterator[str]:
    """What the rows of the whole checklist say that the Plan does not."""
    wanted = [
        (piece, number, measures)
        for piece in plan.pieces
        for number, measures in enumerate(measure_holes(plan, piece), 1)
    ]
    for place, (row, one) in enumerate(zip_longest(rows, wanted), 1):
        if one is None:
            yield f"row {place} is of a hole that the plan does not have"
        elif row is None:
            yield f"{one[0].slug} hole {one[1]} is missing"
        else:
            yield from _compare(row, one, place)


def _compare(row: Row, wanted: tuple[PlacedPiece, int, HoleMeasures], place: int) -> Iterator[str]:
    piece, number, measures = wanted
    name = f"{piece.slug} hole {number}"
    if row.number != str(number) or not _ends_with(row.before, piece.name):
        yield f"row {place} is not that of {name}"
    elif not tells(row.from_datum, measures.from_datum):
        yield f"{name} is told to be {row.from_datum} from the datum, not {measures.from_datum:.1f} mm"
    elif not tells(row.across, measures.across):
        yield f"{name} is told to be {row.across} from the left end, not {measures.across:.1f} mm"
    elif not _tells_apart(row.apart, piece, number):
        yield f"{name} is told to be “{row.apart}” from the hole before, which it is not"


def _tells_apart(words: str, piece: PlacedPiece, number: int) -> bool:
    """Whether words tell how far a hole is from the one before it; of a first hole there are none."""
    if number == 1:
        return not words
    which, _, length = words.partition(": ")
    holes = (piece.marks[number - 2].hole, piece.marks[number - 1].hole)
    return which == f"{number - 1}–{number}" and tells(length, dist(*holes))


def _ends_with(words: str, name: str) -> bool:
    """Whether words end with a name; one that was cut short, or is in no Latin letters, is let be."""
    if max(name, default="") > _LAST_OF_LATIN or words.endswith("…"):
        return True
    return "".join(words.split()).endswith("".join(name.split()))
