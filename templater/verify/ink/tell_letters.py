"""Tells the letters of a font that names none by their outlines, which are the packaged typeface's.

Ghostscript leaves out the tables of letters, and copies the outlines as they are. A glyph that differs
from every letter in its outline or its width is unknown, and nothing is read with its font.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from io import BytesIO
from logging import NullHandler, getLogger
from pathlib import Path
from typing import Any, NamedTuple

from templater.typeface import face
from templater.verify.model import UnreadableError

_SYMBOLIC = 4
"""Set where codes go straight to the font's own table of glyphs (ISO 32000-1, table 123)."""

_SYMBOL_TABLE, _BYTE_TABLE = (3, 0), (1, 0)
_SYMBOL_PAGES = (0x0000, 0xF000, 0xF100, 0xF200)
"""Where the first of these tables has the codes 0 to 255 (ISO 32000-1, 9.6.6.4)."""

_MOST_PARTS = 16
"""A glyph is made up of so many others at most; a letter with two accents is of three."""

_ROUNDING = 1
"""Ghostscript rounds how far a glyph stands from its start so far, in thousandths of an em."""


_IN_SILENCE = NullHandler()


class Shape(NamedTuple):
    """How wide a glyph is and what draws it from its own left edge, in whole thousandths of an em."""

    width: int
    steps: tuple[Any, ...]


class Glyphs:
    """The glyphs of one font. Fonts that are damaged raise errors of all kinds."""

    def __init__(self, content: Path | BytesIO) -> None:
        from fontTools.ttLib import TTFont

        getLogger("fontTools").addHandler(_IN_SILENCE)  # or it would talk to the user of odd tables
        self.font: Any = TTFont(content, lazy=True)
        self._glyphs = self.font.getGlyphSet()
        self._grown: float = 1000 / self.font["head"].unitsPerEm

    def width(self, name: str) -> int:
        """How wide a glyph is."""
        return self._whole(self._glyphs[name].width)

    def draw(self, name: str) -> tuple[Shape, int]:
        """A glyph's shape, and where it begins. Raises ValueError where it is of too many parts."""
        steps = _record(self._glyphs, name)
        left = min((point[0] for _, points in steps for point in points if point), default=0.0)

        def place(point: tuple[float, float] | None) -> tuple[int, int] | None:
            return point and (self._whole(point[0] - left), self._whole(point[1]))

        drawn = tuple((step, *map(place, points)) for step, points in steps)
        return Shape(self.width(name), drawn), self._whole(left)

    def _whole(self, length: float) -> int:
        """A length in whole thousandths of an em."""
        return round(length * self._grown)


def _record(glyphs: Any, name: str) -> list[tuple[str, tuple[Any, ...]]]:
    """The steps that draw a glyph, those of its parts among them."""
    from fontTools.pens.recordingPen import DecomposingRecordingPen

    class Pen(DecomposingRecordingPen):  # type: ignore[misc]
        parts = 0

        def addComponent(self, *part: Any) -> None:  # noqa: N802  # the interface of fontTools
            self.parts += 1
            if self.parts > _MOST_PARTS:
                raise ValueError("a glyph of too many parts")
            super().addComponent(*part)

    pen = Pen(glyphs)
    glyphs[name].draw(pen)
    return list(pen.value)


class Typeface:
    """One weight of the packaged typeface, by the shapes of its letters."""

    def __init__(self, bold: bool) -> None:
        self._glyphs = Glyphs(face(bold).path)
        self._names: dict[int, str] = self._glyphs.font.getBestCmap()
        self._by_width: dict[int, list[int]] = {}
        for code, name in self._names.items():
            self._by_width.setdefault(self._glyphs.width(name), []).append(code)
        self._letters: dict[int, dict[Shape, list[tuple[int, str]]]] = {}

    def find(self, shape: Shape, left: int) -> str | None:
        """The letter of a shape that begins there; of letters that look alike the first, as A of Α."""
        if shape.width not in self._letters:
            self._letters[shape.width] = self._list_letters(shape.width)
        alike = self._letters[shape.width].get(shape, ())
        return next((letter for begins, letter in alike if abs(begins - left) <= _ROUNDING), None)

    def _list_letters(self, width: int) -> dict[Shape, list[tuple[int, str]]]:
        """The letters that are so wide: where each begins."""
        found: dict[Shape, list[tuple[int, str]]] = {}
        for code in sorted(self._by_width.get(width, ())):
            shape, left = self._glyphs.draw(self._names[code])
            found.setdefault(shape, []).append((left, chr(code)))
        return found


_open_typeface = cache(Typeface)


def tell_letters(font: Any) -> dict[int, str]:
    """The letters of the codes of a TrueType font without tables. Raises UnreadableError."""
    about = font.get("/FontDescriptor", {})
    is_plain = font.get("/Subtype") == "/TrueType" and "/Encoding" not in font
    if not is_plain or "/FontFile2" not in about or not int(about.get("/Flags", 0)) & _SYMBOLIC:
        raise UnreadableError("its words cannot be read: a font does not tell its letters")
    try:
        shapes = dict(_list_shapes(Glyphs(BytesIO(about.FontFile2.read_bytes()))))
    except Exception as error:  # fontTools raises what it comes upon
        raise UnreadableError("its words cannot be read: a font in it is damaged") from error
    return {code: _find_letter(code, *shape) for code, shape in shapes.items()}


def _list_shapes(glyphs: Glyphs) -> Iterator[tuple[int, tuple[Shape, int]]]:
    """The shape of each code; one that the font's tables send to different glyphs has none."""
    tables = [((one.platformID, one.platEncID), one.cmap) for one in glyphs.font["cmap"].tables]
    for code in range(256):
        names, is_told = set(), False
        for kind, names_by_code in tables:
            for page in _SYMBOL_PAGES if kind == _SYMBOL_TABLE else (0,):
                if page + code in names_by_code:
                    names.add(names_by_code[page + code])
                    is_told = is_told or kind in (_SYMBOL_TABLE, _BYTE_TABLE)
        if len(names) == 1 and is_told:
            yield code, glyphs.draw(*names)


def _find_letter(code: int, shape: Shape, left: int) -> str:
    """The letter that looks so in one of the two weights. Raises UnreadableError."""
    for bold in (False, True):
        letter = _open_typeface(bold).find(shape, left)
        if letter is not None:
            return letter
    raise UnreadableError(
        "its words cannot be read: a font does not tell its letters, and the shape of its code"
        f" {code} is no letter of the typeface"
    )
