"""A font that a layout gives for letters that the typeface lacks: checked, shaped, outlined.

HarfBuzz joins, reorders and stacks letters as their script asks (OpenType), and draws every kind of
outline: TrueType, CFF, variable. All measures are in the font's own units, y up.
"""

from __future__ import annotations

import struct
import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby, pairwise
from typing import TYPE_CHECKING, Any, TypeAlias

if TYPE_CHECKING:
    import uharfbuzz

Outline: TypeAlias = tuple[tuple[str, tuple[float, ...]], ...]
"""A filled shape: ``M``, ``L``, ``C`` and ``Z`` as SVG has them, each with its coordinates."""

_FORBIDS_ALL = 0x0002
_FORBIDS_PARTS = 0x0100
_FORBIDS_OUTLINES = 0x0200
"""What a font's maker allows to be done with it (OpenType, OS/2, fsType)."""

_WEIGHTS = {False: 400.0, True: 700.0}
"""Regular and bold on the weight axis of a variable font (OpenType, wght)."""

_USUAL_CAPITAL = 0.7
"""The height of capitals in ems where a font does not tell it."""


class FontError(Exception):
    """A font that cannot be used: why, as the end of a sentence, and the act that mends it."""

    def __init__(self, message: str, hint: str) -> None:
        super().__init__(message)
        self.message, self.hint = message, hint


@dataclass(frozen=True, slots=True, eq=False)
class Shaped:
    """What is drawn for the characters of a text that cannot be parted, and how wide it is.

    A font gives the same object for the same shape.
    """

    text: str
    advance: float
    outline: Outline


class GivenFont:
    """One font file. Raises FontError where its letters cannot be drawn, or must not be."""

    def __init__(self, content: bytes) -> None:
        import uharfbuzz

        _check_kind(content)
        self._face = uharfbuzz.Face(uharfbuzz.Blob(content))
        _check_tables(content, self._face)
        self._fonts = {bold: self._weigh(bold) for bold in (False, True)}
        self._characters = self._face.unicodes
        self._outlines: dict[tuple[int, bool], Outline] = {}
        self._shapes: dict[tuple[object, ...], Shaped] = {}
        self.cap_height = self._measure_capitals()
        if not self._characters:
            raise FontError("which has no letters", _OTHER)

    def _weigh(self, bold: bool) -> uharfbuzz.Font:
        """The font at its regular or bold weight, if it has several."""
        import uharfbuzz

        font = uharfbuzz.Font(self._face)
        font.set_variations({"wght": _WEIGHTS[bold]})
        return font

    def _measure_capitals(self) -> float:
        """The height of its capitals; of a font that has none, what would suit its letters."""
        import uharfbuzz

        em = self._face.upem
        told = self._fonts[False].get_metric_position(uharfbuzz.OTMetricsTag.CAP_HEIGHT) or 0
        return float(told) if 0.4 * em <= told <= em else _USUAL_CAPITAL * em

    def draws(self, character: str) -> bool:
        """Whether it has an outline for a character, or a place for one that has none."""
        if ord(character) not in self._characters:
            return False
        if unicodedata.category(character)[0] in "ZCM":
            return True
        glyph = self._fonts[False].get_nominal_glyph(ord(character))
        return bool(glyph and self._outline(glyph, bold=False))

    def shape(self, text: str, *, to_left: bool, bold: bool = False) -> list[Shaped]:
        """The letters of a text of one script, from left to right as they are drawn."""
        import uharfbuzz

        buffer = uharfbuzz.Buffer()
        buffer.language = "und"  # or HarfBuzz would ask the machine
        buffer.add_str(text)
        buffer.guess_segment_properties()
        buffer.direction = "rtl" if to_left else "ltr"
        uharfbuzz.shape(self._fonts[bold], buffer)
        positions = buffer.glyph_positions or ()  # None where nothing is drawn
        glyphs = list(zip(buffer.glyph_infos, positions, strict=True))
        starts = sorted({info.cluster for info, _ in glyphs})
        ends = dict(pairwise([*starts, len(text)]))
        return [
            self._assemble(text[start : ends[start]], list(parts), bold)
            for start, parts in groupby(glyphs, key=lambda glyph: glyph[0].cluster)
        ]

    def _assemble(self, text: str, parts: Sequence[Any], bold: bool) -> Shaped:
        """Letters and the marks on them as one shape."""
        key = (text, bold, *((info.codepoint, *position.position) for info, position in parts))
        if key not in self._shapes:
            self._shapes[key] = self._draw(text, parts, bold)
        return self._shapes[key]

    def _draw(self, text: str, parts: Sequence[Any], bold: bool) -> Shaped:
        at = 0.0
        outline: list[tuple[str, tuple[float, ...]]] = []
        for info, position in parts:
            glyph = self._outline(info.codepoint, bold)
            outline += move_outline(glyph, at + position.x_offset, position.y_offset)
            at += position.x_advance
        return Shaped(text, at, tuple(outline))

    def _outline(self, glyph: int, bold: bool) -> Outline:
        if (glyph, bold) not in self._outlines:
            pen = _Pen()
            self._fonts[bold].draw_glyph_with_pen(glyph, pen)
            self._outlines[glyph, bold] = tuple(pen.outline)
        return self._outlines[glyph, bold]


def move_outline(outline: Outline, dx: float, dy: float, scale: float = 1.0) -> Outline:
    """The outline grown by a factor, then moved."""
    return tuple(
        (command, tuple(value * scale + (dy if at % 2 else dx) for at, value in enumerate(values)))
        for command, values in outline
    )


def span_outline(outline: Outline) -> tuple[float, float]:
    """How far an outline reaches down and up, its curves' handles counted; 0, 0 of an empty one."""
    heights = [height for _, values in outline for height in values[1::2]]
    return min(heights, default=0.0), max(heights, default=0.0)


class _Pen:
    """Takes in one glyph's outline; a curve with one handle becomes one with two."""

    def __init__(self) -> None:
        self.outline: list[tuple[str, tuple[float, ...]]] = []
        self._at = (0.0, 0.0)

    def moveTo(self, point: tuple[float, float]) -> None:  # noqa: N802  # the interface of fontTools
        self._add("M", point)

    def lineTo(self, point: tuple[float, float]) -> None:  # noqa: N802
        self._add("L", point)

    def curveTo(self, *points: tuple[float, float]) -> None:  # noqa: N802
        self._add("C", *points)

    def qCurveTo(self, handle: tuple[float, float], end: tuple[float, float]) -> None:  # noqa: N802
        first, second = (
            tuple(corner + (pull - corner) * 2 / 3 for corner, pull in zip(near, handle, strict=True))
            for near in (self._at, end)
        )
        self._add("C", first, second, end)

    def closePath(self) -> None:  # noqa: N802
        self.outline.append(("Z", ()))

    def _add(self, command: str, *points: tuple[float, ...]) -> None:
        self.outline.append((command, tuple(value for point in points for value in point)))
        self._at = (points[-1][0], points[-1][1])


_OTHER = "name another font's .ttf, .otf or .ttc file"
_AGAIN = "fetch the font file again, or name another"
_KINDS = {b"\0\1\0\0", b"OTTO", b"true", b"ttcf"}
_WEB = {b"wOFF", b"wOF2"}


def _check_kind(content: bytes) -> None:
    """Raise FontError unless the file begins as a font or a collection of fonts."""
    if content[:4] in _WEB:
        raise FontError("which is a font packed for web pages", "name the font's .ttf or .otf file")
    if content[:4] not in _KINDS:
        raise FontError("which is no TrueType or OpenType font", _OTHER)


def _check_tables(content: bytes, face: uharfbuzz.Face) -> None:
    """Raise FontError unless all of a font is there, it has outlines and may be used."""
    tables = _find_tables(content)
    is_whole = all(start + length <= len(content) for start, length in tables.values())
    if not is_whole or not tables.keys() >= {b"cmap", b"head", b"hmtx", b"maxp"} or not face.glyph_count:
        raise FontError("which is damaged", _AGAIN)
    if not tables.keys() & {b"glyf", b"CFF ", b"CFF2"}:
        raise FontError("which holds pictures of its letters, not outlines", _OTHER)
    start, _ = tables.get(b"OS/2", (len(content), 0))
    allowed = int.from_bytes(content[start + 8 : start + 10], "big")
    if allowed & 0xF == _FORBIDS_ALL or allowed & (_FORBIDS_PARTS | _FORBIDS_OUTLINES):
        raise FontError("whose maker forbids its letters in documents (fsType)", _OTHER)


def _find_tables(content: bytes) -> dict[bytes, tuple[int, int]]:
    """Where each table of the first font starts and how long it is (OpenType, table directory)."""
    try:
        start = struct.unpack_from(">I", content, 12)[0] if content[:4] == b"ttcf" else 0
        (count,) = struct.unpack_from(">H", content, start + 4)
        rows = [struct.unpack_from(">4sIII", content, start + 12 + 16 * at) for at in range(count)]
    except struct.error:
        return {}
    return {tag: (offset, length) for tag, _, offset, length in rows}
