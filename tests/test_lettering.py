from __future__ import annotations

import unicodedata
from collections.abc import Iterator

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templater.drawing import Anchor, Words
from templater.geometry import Point
from templater.given_fonts import GivenFont
from templater.lettering import part_width, shorten, text_width, words_box, wrap
from templater.typesetting import Typesetter, set_by
from tests.made_fonts import HEBREW, hebrew_font, make_font

KANJI = "灯台守の娘が北の礁で難破する帆船を見守る"
FONTS = (hebrew_font(), GivenFont(make_font(dict.fromkeys(KANJI, 900))))


@pytest.fixture(autouse=True)
def _given_fonts() -> Iterator[None]:
    with set_by(Typesetter(FONTS)):
        yield


def test_letters_of_a_given_font_are_as_wide_as_it_says() -> None:
    # Alef is 400 units wide in a font with the typeface's capitals: 660 units are the height.
    assert text_width("א", 6.6) == pytest.approx(4.0)
    box = words_box(Words(Point(100, 50), "אא", 6.6, Anchor.END))
    assert (box.x0, box.x1) == pytest.approx((92, 100))


@pytest.mark.parametrize("letter", ["W", "絵", "ש"])
def test_a_name_of_300_letters_without_a_space_is_broken_to_the_width(letter: str) -> None:
    lines = wrap(letter * 300, 2.5, 50)
    assert "".join(lines) == letter * 300
    assert all(text_width(line, 2.5) <= 50 for line in lines)
    assert all(text_width(line + letter, 2.5) > 50 for line in lines[:-1])


@pytest.mark.parametrize("letter", ["W", "絵", "ש"])
def test_a_name_of_300_letters_without_a_space_is_cut_with_an_ellipsis(letter: str) -> None:
    cut = shorten(letter * 300, 2.5, 50)
    assert cut == letter * (len(cut) - 1) + "…"
    assert text_width(cut, 2.5) <= 50 < text_width(letter + cut, 2.5)


def test_a_mark_is_not_parted_from_its_letter() -> None:
    joined = "x\u0304" * 40
    for line in wrap(joined, 2.5, 7):
        assert line[0] == "x"
        assert line[-1] == "\u0304"
    assert shorten(joined, 2.5, 7).endswith("x\u0304…")
    assert wrap("x\u0304\u0307\u0323", 2.5, 0.1) == ["x\u0304\u0307\u0323"]


def test_a_letter_wider_than_the_room_stands_alone() -> None:
    assert wrap("WWW", 2.5, 0.5) == ["W", "W", "W"]
    assert shorten("WWW", 2.5, 0.5) == "W…"


def test_a_word_too_long_is_broken_at_its_hyphens_first() -> None:
    room = text_width("width-over-furn", 2.5)
    assert wrap("width-over-furniture", 2.5, room) == ["width-over-", "furniture"]
    assert wrap("width-over-furniture", 2.5, text_width("furniture", 2.5)) == [
        "width-",
        "over-",
        "furniture",
    ]
    # A word that fits a line stays whole, and so do numbers.
    assert wrap("of the long-winded notice", 2.5, text_width("long-winded", 2.5)) == [
        "of the",
        "long-winded",
        "notice",
    ]
    for number in ("-12345678", "1234-5678", "12–345678", "A-1234567"):
        first, last = wrap(number, 2.5, text_width(number, 2.5) - 0.2)
        assert (first, last) == (number[:-1], number[-1])


def test_the_width_of_the_widest_part_is_what_a_column_needs() -> None:
    text = "the width-over-furniture of 12 1/2 in"
    least = part_width(text, 2.5)
    assert least == pytest.approx(
        max(text_width("furniture", 2.5), text_width("12\u00a01/2\u00a0in", 2.5))
    )
    assert wrap(text, 2.5, least) == ["the", "width-", "over-", "furniture", "of", "12 1/2 in"]
    assert part_width("", 2.5) == 0.0


@settings(deadline=None)
@given(
    st.text(st.sampled_from([*KANJI, *HEBREW, *"abW- 12", "\u0304"]), max_size=40),
    st.floats(4, 60),
)
def test_lines_hold_all_letters_and_stay_within_the_width(text: str, width_mm: float) -> None:
    lines = wrap(text, 2.5, width_mm)
    assert "".join(lines).replace(" ", "") == text.replace(" ", "")
    for line in lines:
        letters = [each for each in line if not unicodedata.combining(each)]
        assert text_width(line, 2.5) <= width_mm or len(letters) <= 1


@pytest.mark.parametrize(
    "measure", ["23 5/8 in", "12 mm", "93.2 N", "9.5 kg", "6 lb", "4 oz", "67 %", "± 1"]
)
def test_a_number_stays_with_its_unit(measure: str) -> None:
    # One letter less than the whole fits: all of the measure goes on in the next line.
    text = f"load {measure}"
    assert wrap(text, 2.5, text_width(text, 2.5) - 0.5) == ["load", measure]
