"""Holds the spacers, strips as wide as the gaps of the groups, against the Plan."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Iterator
from typing import NamedTuple

from templater.placement.model import PlacedGroup, Plan
from templater.verify.ink.rectangles import read_rectangle
from templater.verify.model import NEAR_MM, Ink
from templater.verify.read_lengths import LENGTH, plain, tells

_STRIP = re.compile(rf"gap ({LENGTH}): hold.*")
_TOO_WIDE = re.compile(rf"gap ({LENGTH}): too wide")
_LEAST_MM = 1.0
_SAME_MM = 0.1
"""Gaps that differ less share a strip."""

_LEAST_LENGTH_MM = 50.0


class Strips(NamedTuple):
    """What a page of spacers shows: how wide its strips are, what they say, what is too wide for one."""

    widths_mm: list[float]
    sayings: list[str]
    too_wide: list[str]


def read_strips(ink: Ink, given: str) -> Strips:
    """The strips of a page, in the order in which they are drawn; ``given`` are the layout's texts."""
    texts = [plain(run.text) for run in ink.runs]
    return Strips(
        list(_measure_strips(ink)),
        [match[1] for text in texts if (match := _STRIP.fullmatch(text)) and text not in given],
        _TOO_WIDE.findall(" ".join(texts)),
    )


def _measure_strips(ink: Ink) -> Iterator[float]:
    """How wide each long closed rectangle is."""
    for (points,) in ink.chains:
        box = read_rectangle(points)
        if box is not None and box.width >= _LEAST_LENGTH_MM:
            yield box.height


def check_strips(pages: Iterable[Strips], plan: Plan, cards: Collection[str] = ()) -> Iterator[str]:
    """Whether each gap of a group has its strip, and each strip is as wide as it says and as a gap.

    Beside ``cards``, the names of pieces of which only the holes are printed, there is no strip.
    """
    strips = list(pages)
    gaps = [
        group.gap_mm
        for group in plan.groups
        if group.gap_mm >= _LEAST_MM and _is_met(group, plan, cards)
    ]
    widths = [width for page in strips for width in page.widths_mm]
    for page in strips:
        if len(page.widths_mm) != len(page.sayings):
            yield f"{len(page.widths_mm)} strips have {len(page.sayings)} names"
            continue
        for width, saying in zip(page.widths_mm, page.sayings, strict=True):
            off, gap = min(((abs(width - gap), gap) for gap in gaps), default=(width, width))
            if off > NEAR_MM:
                yield f"a strip is {width:.3f} mm wide, {off:.3f} mm off the gap that is nearest"
            elif not tells(saying, gap):
                yield f"a strip that is {width:.1f} mm wide says that it is {saying}"
    too_wide = [text for page in strips for text in page.too_wide]
    for gap in sorted(set(gaps)):
        is_there = any(abs(width - gap) <= _SAME_MM + NEAR_MM for width in widths)
        if not is_there and not any(tells(text, gap) for text in too_wide):
            yield f"the gap of {gap:.1f} mm has no strip"


def _is_met(group: PlacedGroup, plan: Plan, cards: Collection[str]) -> bool:
    """Whether two neighbours in a group hang its gap apart, both with their sides on paper."""
    return any(
        neighbour.name in group.pieces and abs(neighbour.gap_mm - group.gap_mm) < _SAME_MM
        for piece in plan.pieces
        if piece.name in group.pieces and piece.name not in cards
        for neighbour in piece.neighbours
        if neighbour.name not in cards
    )
