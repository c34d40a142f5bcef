"""The packaged typeface: how wide words are, which characters it lacks, what a letter looks like.

Source Sans (SIL Open Font License) comes as a package, so that a kit looks the same on every
machine. Heights are those of the capitals (ISO 3098); an em is larger by the face's own ratio.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import cache
from pathlib import Path
from typing import Any

from templater.drawing import Anchor, Words
from templater.geometry import Box

LINE_PITCH = 1.9
"""Baseline to baseline in capital heights (ISO 3098: 1.9 h where accents occur)."""

DESCENT = 0.42
"""How far below the baseline a letter may reach, in capital heights (the face's 273 / 660)."""

ASCENT = 1.16
"""How far above the baseline a lower-case ascender or a bracket may reach, in capital heights."""


_UNPARTED = re.compile(r"(?<=\d) (?=\d+/\d|in\b|mm\b)")


class Face:
    """One weight of the typeface, read once."""

    def __init__(self, path: Path) -> None:
        from fontTools.ttLib import TTFont

        self.path = path
        self._font: Any = TTFont(path, lazy=True)
        self._glyph_names: dict[int, str] = self._font.getBestCmap()
        self.units_per_em: int = self._font["head"].unitsPerEm
        self.cap_height: int = self._font["OS/2"].sCapHeight
        metrics = self._font["hmtx"]
        self._advances = {code: metrics[name][0] for code, name in self._glyph_names.items()}
        self._advances[0xA0] = self._advances[0x20]  # a space that does not part is a space
        self._missing_advance: int = metrics[".notdef"][0]
        self._outlines: dict[int, str] = {}

    def advance(self, character: str) -> int:
        """How far a character moves the pen, font units; the face is set without kerning."""
        return int(self._advances.get(ord(character), self._missing_advance))

    def lacks(self, text: str) -> str:
        """The characters of a text that the face has no letter for, each once, in order."""
        return "".join(dict.fromkeys(c for c in text if ord(c) not in self._glyph_names))

    def outline(self, character: str) -> str:
        """A character's outline as SVG path data in font units, y up; empty for a space."""
        code = ord(character)
        if code not in self._outlines:
            from fontTools.pens.svgPathPen import SVGPathPen

            glyphs = self._font.getGlyphSet()
            pen = SVGPathPen(glyphs)
            glyphs[self._glyph_names.get(code, ".notdef")].draw(pen)
            self._outlines[code] = pen.getCommands()
        return self._outlines[code]

    def em_mm(self, height_mm: float) -> float:
        """The em, mm, that gives capitals of the height asked for."""
        return height_mm * self.units_per_em / self.cap_height


@cache
def face(bold: bool = False) -> Face:
    """The regular or the bold weight."""
    import font_source_sans_pro

    name = "SourceSansPro-Bold.ttf" if bold else "SourceSansPro-Regular.ttf"
    return Face(Path(font_source_sans_pro.font_directory) / name)


@cache
def _width_in_ems(text: str, bold: bool) -> float:
    weight = face(bold)
    return sum(weight.advance(character) for character in text) / weight.cap_height


def text_width(text: str, height_mm: float, bold: bool = False) -> float:
    """The width of one line of words, mm."""
    return _width_in_ems(text, bold) * height_mm


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

    A number is never parted from its fraction or its unit.
    """
    bound = _UNPARTED.sub("\N{NO-BREAK SPACE}", text)
    lines = _fill(bound.split(" "), height_mm, width_mm, bold)
    return [line.replace("\N{NO-BREAK SPACE}", " ") for line in lines]


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
        while text_width(line, height_mm, bold) > width_mm and len(line) > 1:
            cut = _fitting(line, height_mm, width_mm, bold)
            lines.append(line[:cut])
            line = line[cut:]
    return [*lines, line] if line else lines


def _fitting(word: str, height_mm: float, width_mm: float, bold: bool) -> int:
    """How many characters of a word fit in a width; at least one."""
    cut = len(word)
    while cut > 1 and text_width(word[:cut], height_mm, bold) > width_mm:
        cut -= 1
    return cut


def shorten(text: str, height_mm: float, width_mm: float, bold: bool = False) -> str:
    """The text, or as much of it as fits followed by an ellipsis."""
    if text_width(text, height_mm, bold) <= width_mm:
        return text
    room = width_mm - text_width("…", height_mm, bold)
    return text[: _fitting(text, height_mm, room, bold)].rstrip() + "…"
