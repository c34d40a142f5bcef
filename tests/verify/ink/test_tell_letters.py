"""Fonts that tell no letters: what their outlines are known by, and what is not known."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from io import BytesIO
from itertools import pairwise
from logging import getLogger
from typing import Any

import pikepdf
import pytest
from fontTools.ttLib import TTFont
from fontTools.ttLib.tables._g_l_y_f import Glyph, GlyphComponent
from fontTools.ttLib.tables.DefaultTable import DefaultTable

from templater.verify.ink.tell_letters import tell_letters
from templater.verify.model import UnreadableError
from tests.verify.bare_fonts import CODES, embed, make_font, open_face, plain_font

Name = pikepdf.Name


@pytest.fixture
def document() -> Iterator[pikepdf.Pdf]:
    with pikepdf.new() as made:
        yield made


def _name(letter: str, bold: bool = False) -> str:
    """What the typeface calls the glyph of a letter."""
    return str(open_face(bold).getBestCmap()[ord(letter)])


def _edit(letter: str, act: Callable[[Any], None]) -> Callable[[Any], None]:
    """A change to the outline of one letter."""

    def change(font: Any) -> None:
        act(font["glyf"][_name(letter)])

    return change


def _widen(letter: str, wider: int, starts: int) -> Callable[[Any], None]:
    """A change to how wide a letter is, and where it starts."""

    def change(font: Any) -> None:
        width, left = font["hmtx"][_name(letter)]
        font["hmtx"][_name(letter)] = (width + wider, left + starts)

    return change


@pytest.mark.parametrize("bold", [False, True])
def test_letters_are_told_by_their_outlines_in_both_weights(document: pikepdf.Pdf, bold: bool) -> None:
    assert tell_letters(embed(document, plain_font(bold))) == CODES


@pytest.mark.parametrize("page", [0x0000, 0xF000, 0xF100, 0xF200])  # ISO 32000-1, 9.6.6.4
def test_codes_are_told_on_the_pages_for_symbols(document: pikepdf.Pdf, page: int) -> None:
    font = make_font({1: "A", 2: "B"}, others={2: "C"}, page=page)
    assert tell_letters(embed(document, font)) == {1: "A"}


def test_it_is_the_outline_that_counts_and_not_the_code(document: pikepdf.Pdf) -> None:
    codes = {1: "7", 0x37: "1", 200: "é", 201: "×", 202: "Ж"}
    assert tell_letters(embed(document, make_font(codes))) == codes


def test_of_letters_that_look_alike_it_is_the_latin_one(document: pikepdf.Pdf) -> None:
    # Greek capital alpha, Cyrillic small o.
    codes = {1: "\u0391", 2: "\u043e"}
    assert tell_letters(embed(document, make_font(codes))) == {1: "A", 2: "o"}


def test_a_letter_may_start_a_thousandth_off(document: pikepdf.Pdf) -> None:
    # So Ghostscript rounds letters that start before their place.
    font = make_font({1: "A"}, change=_widen("A", 0, 1))
    assert tell_letters(embed(document, font)) == {1: "A"}


def _move_a_point(glyph: Any) -> None:
    x, y = glyph.coordinates[0]
    glyph.coordinates[0] = (x + 2, y)


def _empty(glyph: Any) -> None:
    glyph.numberOfContours = 0
    del glyph.coordinates, glyph.flags, glyph.endPtsOfContours


@pytest.mark.parametrize(
    "change",
    [
        _widen("A", 0, 2),
        _widen("A", 1, 0),
        _edit("A", _move_a_point),
        _edit("A", _empty),  # a space is not as wide as an A
    ],
)
def test_a_letter_that_is_none_of_the_typeface(
    document: pikepdf.Pdf, change: Callable[[Any], None]
) -> None:
    font = make_font({1: "A", 2: "B"}, change=change)
    with pytest.raises(UnreadableError, match="the shape of its code 1 is no letter of the typeface"):
        tell_letters(embed(document, font))


def test_a_code_of_two_glyphs_is_unknown(document: pikepdf.Pdf) -> None:
    # Readers of PDFs choose between the two tables as they like.
    font = make_font({1: "7", 2: "B"}, others={1: "1"})
    assert tell_letters(embed(document, font)) == {2: "B"}


def test_tables_for_other_uses_tell_nothing_but_may_differ(document: pikepdf.Pdf) -> None:
    font = TTFont(BytesIO(make_font({0x41: "A", 0x42: "B"})))
    single = font["cmap"].getcmap(1, 0)
    single.ensureDecompiled()
    single.platformID, single.platEncID = 3, 1
    single.cmap = {0x41: _name("A"), 0x42: _name("C"), 0x43: _name("C")}
    saved = BytesIO()
    font.save(saved)
    assert tell_letters(embed(document, saved.getvalue())) == {0x41: "A"}


def test_a_font_as_large_again_is_the_same(document: pikepdf.Pdf) -> None:
    def grow(font: Any) -> None:
        font["head"].unitsPerEm = 2000
        glyph, (width, left) = font["glyf"][_name("A")], font["hmtx"][_name("A")]
        glyph.coordinates.scale((2, 2))
        font["hmtx"][_name("A")] = (2 * width, 2 * left)

    assert tell_letters(embed(document, make_font({1: "A"}, change=grow))) == {1: "A"}


@pytest.mark.parametrize(
    "keys",
    [
        {"Subtype": Name.Type1},
        {"Subtype": Name.Type3},
        {"Encoding": Name.WinAnsiEncoding},
        {"FontDescriptor": pikepdf.Dictionary(Flags=4)},
    ],
)
def test_what_tells_no_letters(document: pikepdf.Pdf, keys: dict[str, Any]) -> None:
    with pytest.raises(UnreadableError, match=r"a font does not tell its letters$"):
        tell_letters(embed(document, plain_font(), **keys))


def test_a_font_whose_codes_do_not_go_straight_to_its_glyphs(document: pikepdf.Pdf) -> None:
    font = embed(document, plain_font())
    font.FontDescriptor.Flags = 32
    with pytest.raises(UnreadableError, match=r"a font does not tell its letters$"):
        tell_letters(font)


@pytest.mark.parametrize("content", [b"", b"nothing", plain_font()[:3000], plain_font()[:90000]])
def test_a_damaged_font(document: pikepdf.Pdf, content: bytes) -> None:
    with pytest.raises(UnreadableError, match="a font in it is damaged"):
        tell_letters(embed(document, content))


def test_a_font_with_odd_tables_is_read_in_silence(
    document: pikepdf.Pdf, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def add_bytes(font: Any) -> None:
        table = DefaultTable("hmtx")
        table.data = font["hmtx"].compile(font) + bytes(2)
        font.tables["hmtx"] = table
        font.recalcBBoxes = False  # it would read the table

    font = make_font({1: "A"}, change=add_bytes)
    monkeypatch.setattr(getLogger(), "handlers", [])
    assert tell_letters(embed(document, font)) == {1: "A"}
    assert capsys.readouterr() == ("", "")


def test_a_glyph_of_too_many_parts_is_not_drawn(document: pikepdf.Pdf) -> None:
    # 2^40 parts of parts: each glyph is made of the one before it, twice.
    names = [_name(chr(code)) for code in range(0x21, 0x21 + 41)]

    def nest(font: Any) -> None:
        for inner, outer in pairwise(names):
            glyph = Glyph()
            glyph.numberOfContours, glyph.xMin, glyph.yMin, glyph.xMax, glyph.yMax = -1, 0, 0, 0, 0
            glyph.components = [_part(inner), _part(inner)]
            font["glyf"].glyphs[outer] = glyph
        font["glyf"].glyphs[names[0]] = Glyph()
        font.recalcBBoxes = False  # it would draw them all

    font = make_font({1: chr(0x21 + 40)}, change=nest)
    with pytest.raises(UnreadableError, match="a font in it is damaged"):
        tell_letters(embed(document, font))


def _part(name: str) -> GlyphComponent:
    """Another glyph as it is."""
    part = GlyphComponent()
    part.glyphName, part.x, part.y, part.flags = name, 0, 0, 0x0002
    return part
