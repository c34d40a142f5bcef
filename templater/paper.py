"""Papers by the names that people and standards give them.

ISO A: ISO 216. Letter, Legal, Tabloid and ANSI C to E: ASME Y14.1 (ANSI A and B are Letter and
Tabloid). Arch A to E: the architectural series that doubles from 9 x 12 in.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from templater.geometry import Size
from templater.lengths import LengthError, Unit, find_unit, parse_length, parse_size
from templater.quoting import find_nearest, list_words, quote, suggest

MAX_PAGE_MM = 5080.0
"""The longest page we make: 14,400 points, a portability limit of ISO 32000-1 Annex C.2."""

MIN_PAGE = Size(125.0, 165.0)
"""The least paper, short side first, on which a sheet's block, rulers and words find room, mm."""

_TOO_SMALL = frozenset({"a6", "a7", "a8", "a9", "a10"})
"""Papers of ISO 216 that people have, and on which no template can be printed."""


@dataclass(frozen=True, slots=True)
class Paper:
    """A paper as it is fed: portrait, or a roll of which only the width is fixed.

    ``size`` is mm; for a roll its height is the longest page that may be cut from it.
    """

    name: str
    size: Size
    is_roll: bool = False


def _mm(width: float, height: float) -> Size:
    return Size(float(width), float(height))


def _inches(width: float, height: float) -> Size:
    return Size(width * 254 / 10, height * 254 / 10)


_SIZES = {
    "a5": _mm(148, 210),
    "a4": _mm(210, 297),
    "a3": _mm(297, 420),
    "a2": _mm(420, 594),
    "a1": _mm(594, 841),
    "a0": _mm(841, 1189),
    "letter": _inches(8.5, 11),
    "legal": _inches(8.5, 14),
    "tabloid": _inches(11, 17),
    "ansi c": _inches(17, 22),
    "ansi d": _inches(22, 34),
    "ansi e": _inches(34, 44),
    "arch a": _inches(9, 12),
    "arch b": _inches(12, 18),
    "arch c": _inches(18, 24),
    "arch d": _inches(24, 36),
    "arch e": _inches(36, 48),
}

PAPERS = {name: Paper(name, size) for name, size in _SIZES.items()}
"""Every named paper, by its name in lower case."""


def default_paper(units: Unit | None) -> Paper:
    """Letter where people read inches, A4 elsewhere."""
    return PAPERS["letter" if units is not None and units.is_imperial else "a4"]


def parse_paper(text: str, bare_unit: Unit | None = None) -> Paper:
    """A paper from its name, ``w x h`` or ``roll 24 in``. Raises LengthError."""
    name = re.sub(r"[\s_-]+", " ", text.strip().lower())
    if name in PAPERS:
        return PAPERS[name]
    full_name = name if find_unit(name) or bare_unit is None else f"{name} {bare_unit.value}"
    if roll := re.fullmatch(r"\s*roll\s+(.+)", text, re.IGNORECASE):
        width_mm = float(parse_length(roll.group(1), bare_unit))
        return _checked(Paper(full_name, Size(width_mm, MAX_PAGE_MM), is_roll=True), text)
    if re.search(r"\d\D*[x×]", name):
        short_mm, long_mm = sorted(float(side) for side in parse_size(text, bare_unit))
        return _checked(Paper(full_name.replace("×", "x"), Size(short_mm, long_mm)), text)
    if name in _TOO_SMALL:
        raise LengthError(f"{quote(text)} is too small for a template", "the least paper is a5")
    raise LengthError(
        f"{quote(text)} is not a paper{suggest(find_nearest(name, PAPERS))}",
        f"use {list_words(list(PAPERS))}; or 'roll 24 in', or a size such as 13 x 19 in",
    )


def _checked(paper: Paper, text: str) -> Paper:
    """The paper, if its sides are within reason."""
    least = MIN_PAGE
    (width, height) = paper.size
    if width < least.width or not least.height <= height <= MAX_PAGE_MM:
        raise LengthError(
            f"{quote(text)} is too small or too large for a paper",
            f"the least is {least.width:.0f} x {least.height:.0f} mm, the longest side"
            f" {MAX_PAGE_MM:.0f} mm",
        )
    return paper
