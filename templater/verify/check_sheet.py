"""Holds one sheet of a piece, in template coordinates, against what it must show."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial
from itertools import chain

from templater.geometry import Box
from templater.verify.guides import check_guides_drawn, check_guides_lie, check_guides_whole, list_guides
from templater.verify.hole_words import check_hole_words
from templater.verify.holes import check_holes
from templater.verify.level_words import check_level_words
from templater.verify.lines import check_edges, check_edges_whole, list_edges
from templater.verify.model import Findings, Ink
from templater.verify.rulers import check_rulers, find_rulers
from templater.verify.seams import check_seam_line
from templater.verify.straight import list_straight
from templater.verify.targets import find_targets
from templater.verify.template_marks import ARM_MM, RING_MM, TemplateMarks

_TURN = 1e-3
"""Letters lean so far at most, as a share of their size."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet of a piece: its ink in template coordinates, and the part of the template it shows.

    One without a name is the whole template as one drawing. ``keep`` is what is seen of it once the
    sheets are taped, ``others`` what each other sheet shows. One that is cut out of a page it shares
    has no rulers of its own.
    """

    name: str
    ink: Ink
    clip: Box
    keep: Box
    is_shared: bool = False
    others: tuple[Box, ...] = ()


def check_sheet(sheet: Sheet, marks: TemplateMarks) -> Findings:
    """The first thing that is wrong with a sheet, in the order of how much else it makes wrong."""
    ink = sheet.ink
    level, upright = list_straight(ink.strokes)
    rulers = [] if sheet.is_shared else find_rulers(level, upright)
    targets = find_targets(level, upright, ink.rings, arm_mm=ARM_MM, ring_mm=RING_MM)
    holes = check_holes(targets, marks.holes, sheet.clip, ink.areas)
    edges = list_edges(level, upright, sheet.clip, marks)
    guides = list_guides(level, upright, sheet.keep, marks)
    lines = (
        partial(check_reading, ink),
        lambda: () if sheet.is_shared else check_rulers(rulers, sheet.clip.size),
        lambda: holes.faults,
        partial(check_edges, edges),
        partial(_check_seams, sheet, marks),
        partial(check_edges_whole, edges),
        partial(check_guides_lie, level, upright, marks),
        partial(check_guides_whole, guides, marks.holes, rulers, ink, sheet.others)
        if sheet.name
        else partial(check_guides_drawn, guides, marks.holes),
        partial(check_hole_words, ink.runs, marks),
        partial(check_level_words, ink.runs, marks),
    )
    faults = next((found for check in lines if (found := tuple(check()))), ())
    return Findings(faults, holes.offsets_mm)


def check_reading(ink: Ink) -> Iterator[str]:
    """Whether words can be read level or upward, which tells a mirrored or a turned page."""
    for _, _, (a, b), (c, d), _ in ink.runs:
        size = max(abs(a), abs(b)) * _TURN
        if a * d - b * c <= 0:
            yield "it is upside down as in a mirror: its y axis is turned" if a > 0 else "it is mirrored"
            return
        if not (abs(b) <= size and a > 0) and not (abs(a) <= size and b > 0):
            yield "it is turned"
            return


def _check_seams(sheet: Sheet, marks: TemplateMarks) -> Iterator[str]:
    """Whether each seam of the sheet is drawn on it."""
    own = (seam for seam in marks.seams if sheet.name in (seam.under, seam.over))
    return chain.from_iterable(check_seam_line(seam, sheet.name, sheet.ink.strokes) for seam in own)
