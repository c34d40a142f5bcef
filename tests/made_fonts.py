"""Small fonts made for tests: every letter is a black box, so that all measures are known.

A letter as wide as its advance leaves 50 units free at each side; an em has 1000.
"""

from __future__ import annotations

from collections.abc import Mapping
from io import BytesIO
from pathlib import Path

from fontTools.feaLib.builder import addOpenTypeFeaturesFromString
from fontTools.fontBuilder import FontBuilder
from fontTools.pens.basePen import AbstractPen
from fontTools.pens.t2CharStringPen import T2CharStringPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib import TTFont
from fontTools.ttLib.tables.TupleVariation import TupleVariation
from fontTools.ttLib.ttCollection import TTCollection

from templater.given_fonts import GivenFont

SIDE = 50
"""What a box leaves free at each side."""

CAPITAL = 660
"""The height of a box: the typeface's own capitals, so that nothing is scaled."""

HEBREW = dict(zip("אבגדשלום", range(400, 800, 50), strict=True))
"""Advances of some Hebrew letters, each its own."""


def make_font(
    advances: Mapping[str, int],
    *,
    kind: str = "glyf",
    capital: int = CAPITAL,
    span: tuple[int, int] = (0, CAPITAL),
    rights: int = 0,
    hidden: Mapping[str, int] | None = None,
    features: str = "",
) -> bytes:
    """A font file with a box for each character; ``hidden`` glyphs are reached by features alone.

    A character's glyph is called ``u`` with its number in hex. ``span`` is how far boxes reach down
    and up; ``rights`` is the fsType of its maker.
    """
    widths = {f"u{ord(character):x}": advance for character, advance in advances.items()}
    widths |= hidden or {}
    builder = FontBuilder(1000, isTTF=kind == "glyf")
    builder.setupGlyphOrder([".notdef", *widths])
    builder.setupCharacterMap({ord(character): f"u{ord(character):x}" for character in advances})
    if kind == "glyf":
        builder.setupGlyf(
            {name: _tt_box(width, span) for name, width in {".notdef": 0, **widths}.items()}
        )
    else:
        boxes = {name: _cff_box(width, span) for name, width in {".notdef": 0, **widths}.items()}
        builder.setupCFF("Boxes", {"FullName": "Boxes"}, boxes, {})
    builder.setupHorizontalMetrics(
        {".notdef": (600, 0), **{name: (w, SIDE) for name, w in widths.items()}}
    )
    builder.setupHorizontalHeader(ascent=800, descent=-200)
    builder.setupNameTable({"familyName": "Boxes", "styleName": "Regular"})
    builder.setupOS2(sCapHeight=capital, fsType=rights, version=4)
    builder.setupPost()
    if features:
        addOpenTypeFeaturesFromString(builder.font, features)
    return save_font(builder.font)


def save_font(font: TTFont | TTCollection) -> bytes:
    """The file of a font or of a collection."""
    stream = BytesIO()
    font.save(stream)
    return stream.getvalue()


def make_variable(character: str, light: int, more: int) -> bytes:
    """A font whose one box is ``light`` wide at weight 100, its default, and ``more`` wider at 900."""
    font = TTFont(BytesIO(make_font({character: light})))
    builder = FontBuilder(font=font)
    builder.setupFvar([("wght", 100, 100, 900, "Weight")], [])
    name = f"u{ord(character):x}"
    # Four corners, two of which move; then the left, right, top and bottom of the letter itself.
    moves = [(0, 0), (0, 0), (more, 0), (more, 0), (0, 0), (more, 0), (0, 0), (0, 0)]
    builder.setupGvar({name: [TupleVariation({"wght": (0, 1.0, 1.0)}, moves)]})
    return save_font(font)


def make_collection(*fonts: bytes) -> bytes:
    """Several fonts in one file."""
    collection = TTCollection()
    collection.fonts = [TTFont(BytesIO(font)) for font in fonts]
    return save_font(collection)


def hebrew_font(**changes: object) -> GivenFont:
    """Boxes for some Hebrew letters."""
    return GivenFont(make_font(HEBREW, **changes))  # type: ignore[arg-type]


def write_hall(folder: Path, font: str, *names: str) -> Path:
    """A layout with pieces of these names, which gives fonts."""
    folder.mkdir(exist_ok=True)
    pieces = "".join(
        f"  - {{name: '{name}', size: 4 x 5, hang: {{by: nail, drop: 1}}, place: {{centre: {at}}}}}\n"
        for at, name in zip(range(20, 500, 30), names, strict=False)
    )
    layout = folder / "hall.yaml"
    text = f"title: Lamp room\nunits: in\n{font}wall: {{width: 500, height: 90}}\npieces:\n{pieces}"
    layout.write_text(text, encoding="utf-8")
    return layout


def _corners(width: int, span: tuple[int, int]) -> list[tuple[int, int]]:
    (low, high), right = span, width - SIDE
    return [(SIDE, low), (SIDE, high), (right, high), (right, low)]


def _draw_box(pen: AbstractPen, width: int, span: tuple[int, int]) -> None:
    if width:
        first, *rest = _corners(width, span)
        pen.moveTo(first)
        for corner in rest:
            pen.lineTo(corner)
        pen.closePath()


def _tt_box(width: int, span: tuple[int, int]) -> object:
    pen = TTGlyphPen(None)
    _draw_box(pen, width, span)
    return pen.glyph()


def _cff_box(width: int, span: tuple[int, int]) -> object:
    pen = T2CharStringPen(width or 600, None)
    _draw_box(pen, width, span)
    return pen.getCharString()
