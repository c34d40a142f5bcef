"""How wide words are, what room they take, and how they are broken into lines or shortened.

Heights are those of the capitals (ISO 3098); an em is larger by the typeface's own ratio.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterable

from templater.drawing import Anchor, Words
from templater.geometry import Box
from templater.reading_order import is_joined
from templater.typeface import face
from templater.typesetting import ASCENT, DESCENT, measure_plain, set_line

__all__ = [
    "ASCENT",
    "DESCENT",
    "LINE_PITCH",
    "part_width",
    "shorten",
    "text_width",
    "words_box",
    "wrap",
]

LINE_PITCH = 1.9
"""Baseline to baseline in capital heights (ISO 3098: 1.9 h where accents occur)."""

_UNPARTED = re.compile(r"(?<=\d) (?=\d+/\d|(?:in|mm|kg|lb|oz|N)\b|%)|(?<=±) ")

_HYPHEN = re.compile(r"(?<=[^\W\d_]-)(?=[^\W\d_])")
"""Where a word may go on in the next line: behind a hyphen between letters, never at a number."""


def text_width(text: str, height_mm: float, bold: bool = False) -> float:
    """The width of one line of words, mm."""
    plain = measure_plain(text, bold)
    width = set_line(text, bold).width if plain is None else plain
    return width / face(bold).cap_height * height_mm


def words_box(words: Words) -> Box:
    """The box that the words may touch, from the lowest descender to the highest accent."""
    width = text_width(words.text, words.height_mm, words.bold)
    before = {Anchor.START: 0.0, Anchor.MIDDLE: width / 2, Anchor.END: width}[words.anchor]
    below, above = DESCENT * words.height_mm, ASCENT * words.height_mm
    (x, y) = words.at
    if words.turned:
        return Box(x - above, y - before, x + below, y - before + width)
    return Box(x - before, y - below, x - before + width, y + above)


def wrap(text: str, height_mm: float, width_mm: float, bold: bool = False) -> list[str]:
    """The text broken into lines no wider than asked; a word too long is broken inside.

    It is broken at a hyphen if it has one. A number is never parted from its sign, its fraction or
    its unit.
    """
    lines = _fill(_list_words(text), height_mm, width_mm, bold)
    return [line.replace("\N{NO-BREAK SPACE}", " ") for line in lines]


def part_width(text: str, height_mm: float, bold: bool = False) -> float:
    """The least width at which no word of the text is broken but at its hyphens, mm."""
    parts = (part for word in _list_words(text) for part in _HYPHEN.split(word))
    return max((text_width(part, height_mm, bold) for part in parts), default=0.0)


def _list_words(text: str) -> list[str]:
    """What stays on one line where there is room for it, numbers with their units among it."""
    return _UNPARTED.sub("\N{NO-BREAK SPACE}", text).split(" ")


def _fill(words: Iterable[str], height_mm: float, width_mm: float, bold: bool) -> list[str]:
    """Words put into lines no wider than asked."""
    lines: list[str] = []
    line = ""
    for word in filter(None, words):
        longer = f"{line} {word}" if line else word
        if text_width(longer, height_mm, bold) <= width_mm:
            line = longer
            continue
        if line:
            lines.append(line)
        line = word
        while text_width(line, height_mm, bold) > width_mm:
            cut = _find_hyphen(line, _fitting(line, height_mm, width_mm, bold))
            if cut == len(line):
                break
            lines.append(line[:cut])
            line = line[cut:]
    return [*lines, line] if line else lines


def _find_hyphen(word: str, most: int) -> int:
    """Behind which of the first characters of a word its last hyphen is, or all of them."""
    return max((match.start() for match in _HYPHEN.finditer(word[: most + 1])), default=most)


def _fitting(word: str, height_mm: float, width_mm: float, bold: bool) -> int:
    """How many characters of a word fit in a width; at least one letter, with the marks on it."""
    cuts = [*(at for at in range(1, len(word)) if not is_joined(word[at])), len(word)]
    fitting = bisect_right(cuts, width_mm, key=lambda at: text_width(word[:at], height_mm, bold))
    return cuts[max(fitting - 1, 0)]


def shorten(text: str, height_mm: float, width_mm: float, bold: bool = False) -> str:
    """The text, or as much of it as fits followed by an ellipsis."""
    if text_width(text, height_mm, bold) <= width_mm:
        return text
    room = width_mm - text_width("…", height_mm, bold)
    return text[: _fitting(text, height_mm, room, bold)].rstrip() + "…"
