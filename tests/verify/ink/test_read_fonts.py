"""Tables of fonts written by hand, and what the bytes of words mean by them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pikepdf
import pytest

from templater.verify.ink.read_fonts import Letters, read_letters, read_string
from templater.verify.model import UnreadableError
from tests.verify.near import near

Array, Dictionary, Name = pikepdf.Array, pikepdf.Dictionary, pikepdf.Name
UNKNOWN = "\ufffd"


@pytest.fixture
def document() -> Iterator[pikepdf.Pdf]:
    with pikepdf.new() as made:
        yield made


def _read(document: pikepdf.Pdf, table: str, **keys: Any) -> Letters:
    keys = {"Subtype": Name.TrueType, "ToUnicode": document.make_stream(table.encode("latin-1")), **keys}
    return read_letters(Dictionary(**{key: value for key, value in keys.items() if value is not None}))


@pytest.mark.parametrize(
    ("table", "words"),
    [
        ("1 beginbfchar <41> <0061> endbfchar", "a" + UNKNOWN * 3),
        ("2 beginbfchar\n<41> <0061>\n<42>\t<03A9>\nendbfchar", "aΩ" + UNKNOWN * 2),
        ("1 beginbfchar <43> <00660069> endbfchar", UNKNOWN * 2 + "fi" + UNKNOWN),  # a ligature
        ("1 beginbfrange <41> <43> <0061> endbfrange", "abc" + UNKNOWN),
        ("1 beginbfrange <42> <44> [<0078> <0079> <007A>] endbfrange", UNKNOWN + "xyz"),
        ("2 beginbfrange <41> <41> <0061> <43> <44> [<0078> <0079>] endbfrange", "a" + UNKNOWN + "xy"),
        (
            "1 beginbfrange <41> <42> <0061> endbfrange 1 beginbfchar <43> <0078> endbfchar",
            "abx" + UNKNOWN,
        ),
        ("1 beginbfchar <41> <0061> endbfchar 1 beginbfchar <42> <0062> endbfchar", "ab" + UNKNOWN * 2),
        ("1 beginbfchar <41> <0009> <42> <0020> endbfchar", UNKNOWN + " " + UNKNOWN * 2),  # no control
        ("1 beginbfchar <41> <D83DDC26> endbfchar", "\U0001f426" + UNKNOWN * 3),
    ],
)  # fmt: skip
def test_the_letters_of_a_table(document: pikepdf.Pdf, table: str, words: str) -> None:
    assert _read(document, table).spell(b"(ABCD)") == words
    assert _read(document, table).spell(b"<41424344>") == words
    wide = _read(
        document,
        table,
        Subtype=Name.Type0,
        Encoding=Name("/Identity-H"),
        DescendantFonts=Array([Dictionary()]),
    )
    assert wide.spell(b"<0041004200430044>") == words
    assert wide.spell(b"<01410142>") == UNKNOWN * 2


@pytest.mark.parametrize("kind", ["TrueType", "Type1", "Type3"])
def test_widths_count_from_the_first_letter(document: pikepdf.Pdf, kind: str) -> None:
    letters = _read(document, "", Subtype=Name(f"/{kind}"), FirstChar=65, Widths=Array([500, 600.5]))
    assert (letters.widths, letters.code_bytes) == ({65: 500.0, 66: 600.5}, 1)
    assert _read(document, "", Subtype=Name(f"/{kind}"), Widths=Array([500])).widths == {0: 500.0}
    assert _read(document, "", Subtype=Name(f"/{kind}")).widths == {}


def test_where_the_words_of_a_list_begin() -> None:
    # A and B are 0.5 and 0.7 em wide; a shift of 601 thousandths begins other words, one of 600 none.
    letters = Letters({65: "A", 66: "B"}, {65: 500.0, 66: 700.0})
    assert list(letters.spell_list(b"[(AB) -600 (A)]")) == [(0.0, "ABA")]
    assert list(letters.spell_list(b"[(AB) -601 (A)]")) == [(0.0, "AB"), (near(1.801), "A")]
    assert list(letters.spell_list(b"[(AB) 601 (A)]")) == [(0.0, "AB"), (near(0.599), "A")]
    assert list(letters.spell_list(b"[-100 (A) -50 -601 (B) -1000]")) == [(0.1, "A"), (near(1.251), "B")]
    assert list(letters.spell_list(b"[-700]")) == []
    assert list(letters.spell_list(b"[(A(B)A) 10 <42>]")) == [(0.0, "A(B)AB")]
    wide = Letters({65: "A"}, {65: 500.0}, 2)
    assert list(wide.spell_list(b"[<00410041> -700 <0041>]")) == [(0.0, "AA"), (near(1.7), "A")]


@pytest.mark.parametrize(
    "keys",
    [
        {"ToUnicode": None},
        {"Subtype": Name.MMType1},
        {"Subtype": Name.Type0},
        {"Subtype": Name.Type0, "Encoding": Name("/Identity-V")},
        {"Subtype": Name.TrueType, "ToUnicode": None, "Encoding": Name("/Identity-H")},
    ],
)
def test_fonts_that_do_not_tell_their_letters(document: pikepdf.Pdf, keys: dict[str, Any]) -> None:
    with pytest.raises(UnreadableError, match="its words cannot be read"):
        _read(document, "", **keys)


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        (b"<9>", b"\x90"),
        (b"<90 1f>", b"\x90\x1f"),
        (rb"(\7\08a)", b"\x07\x008a"),
        (rb"(\501)", b"A"),  # 0o501 is 321, of which the high bit is let fall: 65
        (b"(a\\\r\nb)", b"ab"),
        (b"(a\\\rb)", b"ab"),
        (rb"(\r\b\f)", b"\r\b\f"),
    ],
)
def test_the_bytes_of_strings(written: bytes, meant: bytes) -> None:
    # ISO 32000-1, 7.3.4.2, table 3; from memory.
    assert read_string(written) == meant
