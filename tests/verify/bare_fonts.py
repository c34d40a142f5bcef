"""Fonts that tell no letters, as Ghostscript leaves them: outlines, widths, and codes of their own."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import Any

import font_source_sans_pro
import pikepdf
from fontTools.ttLib import TTFont
from fontTools.ttLib.tables._c_m_a_p import CmapSubtable

CODES = {**{code: chr(code) for code in range(0x20, 0x7F)}, 0x80: "−"}
"""The letters of the small kit."""

_KEPT = ("head", "hhea", "hmtx", "maxp", "loca", "glyf", "cvt ", "post")
_NO_CHANGE: Mapping[int, str] = {}


def open_face(bold: bool = False) -> Any:
    """A weight of the typeface."""
    name = "SourceSansPro-Bold.ttf" if bold else "SourceSansPro-Regular.ttf"
    return TTFont(Path(font_source_sans_pro.font_directory) / name)


def make_font(
    codes: Mapping[int, str] = CODES,
    bold: bool = False,
    change: Callable[[Any], None] | None = None,
    others: Mapping[int, str] = _NO_CHANGE,
    page: int = 0xF000,
) -> bytes:
    """A font with the letters of these codes; of ``others`` one table tells another, from a page on."""
    font = open_face(bold)
    names = font.getBestCmap()
    if change is not None:
        change(font)
    for tag in set(font.keys()) - {*_KEPT, "cmap", "GlyphOrder"}:
        del font[tag]
    symbols = {page + code: names[ord(letter)] for code, letter in {**codes, **others}.items()}
    single = {code: names[ord(letter)] for code, letter in codes.items()}
    font["cmap"].tables = [_table(4, 3, symbols), _table(6, 1, single)]
    made = BytesIO()
    font.save(made)
    return made.getvalue()


@cache
def plain_font(bold: bool = False) -> bytes:
    """The font of the small kit, made once."""
    return make_font(bold=bold)


def _table(kind: int, platform: int, letters: Mapping[int, str]) -> Any:
    """A table of codes: of platform 3 for symbols, of platform 1 for single bytes."""
    table = CmapSubtable.newSubtable(kind)
    table.platformID, table.platEncID, table.language = platform, 0, 0
    table.cmap = dict(letters)
    return table


def embed(document: pikepdf.Pdf, content: bytes, **keys: Any) -> Any:
    """A font of a PDF that has nothing to tell its letters by but the file within it."""
    about = pikepdf.Dictionary(
        Type=pikepdf.Name.FontDescriptor,
        FontName=pikepdf.Name("/AAAAAA+Bare"),
        Flags=4,
        FontFile2=document.make_stream(content),
    )
    font = {
        "Type": pikepdf.Name.Font,
        "Subtype": pikepdf.Name.TrueType,
        "BaseFont": pikepdf.Name("/AAAAAA+Bare"),
        "FirstChar": 0,
        "LastChar": 255,
        "Widths": pikepdf.Array(_list_widths()),
        "FontDescriptor": document.make_indirect(about),
        **keys,
    }
    return document.make_indirect(pikepdf.Dictionary(**font))


@cache
def _list_widths() -> list[int]:
    """How wide the letters of the small kit are, in thousandths of an em, the typeface's own units."""
    font = open_face()
    names, widths = font.getBestCmap(), font["hmtx"]
    return [widths[names[ord(CODES[code])]][0] if code in CODES else 0 for code in range(256)]
