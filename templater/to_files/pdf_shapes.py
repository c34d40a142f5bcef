"""Letters of given fonts in a PDF: each shape once, in fonts of type 3 that tell what it means.

Such a font (ISO 32000-1, 9.6.5) holds plain outlines, so that every kind of font file can be drawn by
it, and its table of letters gives a name back in the order of reading when it is searched or copied.
"""

from __future__ import annotations

import zlib
from collections.abc import Sequence
from typing import Any

from reportlab.pdfbase import pdfdoc

from templater.given_fonts import span_outline
from templater.typesetting import Glyph

_MOST = 256
"""How many letters one font can hold: a letter is one byte."""

_OPERATORS = {"M": "m", "L": "l", "C": "c", "Z": "h"}


class ShapeFonts:
    """The shapes that one document uses; ``units`` of them are an em."""

    def __init__(self, canvas: Any, units: int) -> None:
        self._canvas, self._units = canvas, units
        self._numbers: dict[Glyph, int] = {}

    def show(self, glyph: Glyph, size: float, matrix: Sequence[float]) -> None:
        """Draw a shape on the open page, its origin and axes as the matrix of a text has them."""
        font, code = divmod(self._numbers.setdefault(glyph, len(self._numbers)), _MOST)
        placed = " ".join(f"{value:.6f}" for value in matrix)
        self._canvas._code.append(f"BT /Shapes{font} {size:.6f} Tf {placed} Tm <{code:02x}> Tj ET")

    def close(self) -> None:
        """Add the fonts to the document, once all its pages are drawn."""
        document, glyphs = self._canvas._doc, list(self._numbers)
        for number, first in enumerate(range(0, len(glyphs), _MOST)):
            font = self._make_font(glyphs[first : first + _MOST])
            known = document.idToObject[pdfdoc.BasicFonts].dict
            known[f"Shapes{number}"] = document.Reference(font)

    def _make_font(self, glyphs: Sequence[Glyph]) -> Any:
        names = [f"g{code}" for code in range(len(glyphs))]
        drawn = (_stream(_draw(glyph)) for glyph in glyphs)
        references = map(self._canvas._doc.Reference, drawn)
        scale = 1 / self._units
        return pdfdoc.PDFDictionary(
            {
                "Type": pdfdoc.PDFName("Font"),
                "Subtype": pdfdoc.PDFName("Type3"),
                "FontBBox": pdfdoc.PDFArray([0, 0, 0, 0]),  # not told; each letter tells its own
                "FontMatrix": pdfdoc.PDFArray([scale, 0, 0, scale, 0, 0]),
                "CharProcs": pdfdoc.PDFDictionary(dict(zip(names, references, strict=True))),
                "Encoding": pdfdoc.PDFDictionary(
                    {
                        "Type": pdfdoc.PDFName("Encoding"),
                        "Differences": pdfdoc.PDFArray([0, *map(pdfdoc.PDFName, names)]),
                    }
                ),
                "FirstChar": 0,
                "LastChar": len(glyphs) - 1,
                "Widths": pdfdoc.PDFArray([round(glyph.advance, 3) for glyph in glyphs]),
                "Resources": pdfdoc.PDFDictionary({}),
                "ToUnicode": self._canvas._doc.Reference(_stream(_tell_letters(glyphs))),
            }
        )


def _stream(content: str) -> Any:
    stream = pdfdoc.PDFStream(content=zlib.compress(content.encode("ascii")))
    stream.dictionary["Filter"] = pdfdoc.PDFName("FlateDecode")
    return stream


def _draw(glyph: Glyph) -> str:
    """A shape as content: its width and its box, which the handles of its curves may widen; then it."""
    across = [value for _, values in glyph.outline for value in values[::2]]
    low, high = span_outline(glyph.outline)
    box = (min(across, default=0.0), low, max(across, default=0.0), high)
    path = (" ".join([*map(_number, values), _OPERATORS[key]]) for key, values in glyph.outline)
    head = " ".join(map(_number, (glyph.advance, 0.0, *box)))
    return "\n".join([f"{head} d1", *path, "f"])


def _number(value: float) -> str:
    return f"{value:.2f}"


def _tell_letters(glyphs: Sequence[Glyph]) -> str:
    """Which characters each letter stands for (ISO 32000-1, 9.10.3)."""
    rows = [
        f"<{code:02x}> <{glyph.text.encode('utf-16-be').hex()}>" for code, glyph in enumerate(glyphs)
    ]
    parts = [rows[first : first + 100] for first in range(0, len(rows), 100)]  # at most 100 a part
    body = "\n".join("\n".join([f"{len(part)} beginbfchar", *part, "endbfchar"]) for part in parts)
    return (
        "/CIDInit /ProcSet findresource begin 12 dict begin begincmap\n"
        "/CIDSystemInfo << /Registry (Shapes) /Ordering (UCS) /Supplement 0 >> def\n"
        "/CMapName /Shapes def /CMapType 2 def\n"
        f"1 begincodespacerange <00> <ff> endcodespacerange\n{body}\n"
        "endcmap CMapName currentdict /CMap defineresource pop end end"
    )
