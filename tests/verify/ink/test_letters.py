"""What the tables of a font say of the letters of its codes, and what may draw a drawing's words."""

from __future__ import annotations

from pathlib import Path

import pikepdf
import pytest

from templater.verify.ink.read_fonts import read_letters
from templater.verify.ink.read_svg import read_svg
from templater.verify.model import UnreadableError

TABLE = b"1 beginbfrange <0000> <ffff> <0000> endbfrange"


def test_the_widths_of_a_font_of_two_bytes_come_one_by_one_and_in_ranges() -> None:
    # The example of ISO 32000-1, 9.7.4.3: 120 is 400 wide, 121 is 325, 122 is 500, and 7080 to 8032
    # are 1000; from memory.
    with pikepdf.new() as document:
        inner = pikepdf.Dictionary(W=pikepdf.Array([120, [400, 325, 500], 7080, 8032, 1000]))
        font = pikepdf.Dictionary(
            Subtype=pikepdf.Name.Type0,
            Encoding=pikepdf.Name("/Identity-H"),
            DescendantFonts=pikepdf.Array([inner]),
            ToUnicode=document.make_stream(TABLE),
        )
        widths = read_letters(font).widths
    assert {code: widths[code] for code in (120, 121, 122)} == {120: 400, 121: 325, 122: 500}
    assert {code for code, width in widths.items() if width == 1000} == set(range(7080, 8033))
    assert len(widths) == 3 + 953


def test_widths_one_by_one_may_come_last() -> None:
    with pikepdf.new() as document:
        inner = pikepdf.Dictionary(W=pikepdf.Array([7, 8, 1000, 120, [400, 325]]))
        font = pikepdf.Dictionary(
            Subtype=pikepdf.Name.Type0,
            Encoding=pikepdf.Name("/Identity-H"),
            DescendantFonts=pikepdf.Array([inner]),
            ToUnicode=document.make_stream(TABLE),
        )
        assert read_letters(font).widths == {7: 1000, 8: 1000, 120: 400, 121: 325}


@pytest.mark.parametrize("drawn", ['<line x1="0" y1="0" x2="9" y2="9"/>', '<circle r="5"/>', "<zig/>"])
def test_words_that_hide_other_ink_are_refused(tmp_path: Path, drawn: str) -> None:
    path = tmp_path / "words.svg"
    words = f'<g aria-label="Kelp print" fill="#000"><use href="#k"/>{drawn}</g>'
    path.write_text(
        '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">'
        f"{words}</svg>",
        "utf-8",
    )
    with pytest.raises(UnreadableError, match="more than letters"):
        read_svg(path)
