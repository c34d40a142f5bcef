"""The packaged typeface: what its letters look like, how wide they are, which it lacks.

Source Sans (SIL Open Font License) comes as a package, so that a kit looks the same on every
machine.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any


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

    def has(self, character: str) -> bool:
        """Whether the face has a letter for a character."""
        return ord(character) in self._glyph_names

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
