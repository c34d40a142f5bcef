"""Holds the ink of one sheet, in template coordinates, against what its piece must show."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from itertools import chain
from math import dist, isclose

from templater.geometry import Box, Point
from templater.verify.model import NEAR_MM, Findings, Ink, Stroke
from templater.verify.rulers import check_rulers
from templater.verify.targets import Target, find_targets
from templater.verify.template_marks import RING_MM, TemplateMarks

_SEARCH_MM = 2.0
"""A mark that is off is looked for so far from its place."""

_OUTLINE_WIDTH = 0.35
_HOLE_GAP_MM = RING_MM + 2.0
_PIECE_MM = 1.0
_DATUM_DASH, _CENTRE_DASH = 6, 4
"""Dashes and gaps of the datum's line (two dots) and of centre lines (one dot)."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """One sheet of a piece: its ink in template coordinates, and the part of the template it shows."""

    name: str
    ink: Ink
    clip: Box


def check_sheet(sheet: Sheet, marks: TemplateMarks) -> Findings:
    """Every check of a sheet, in the order of their worth; the first that finds faults has its say.

    What is wrong with the whole sheet (its size, how it lies) makes every mark wrong: it is told alone.
    """
    checks: tuple[Callable[[Sheet, TemplateMarks], Findings], ...] = (
        lambda sheet, _marks: Findings(tuple(check_reading(sheet.ink))),
        lambda sheet, _marks: Findings(tuple(check_rulers(sheet.ink))),
        _check_shift,
        _check_holes,
        lambda sheet, marks: Findings(tuple(_check_outline(sheet, marks))),
        lambda sheet, marks: Findings(tuple(_check_seams(sheet, marks))),
        lambda sheet, marks: Findings(tuple(_check_guides(sheet, marks))),
    )
    passed: list[Findings] = []
    for check in checks:
        found = check(sheet, marks)
        passed.append(found)
        if found.faults:
            break
    return Findings.gather(passed)
