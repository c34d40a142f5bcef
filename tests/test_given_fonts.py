from __future__ import annotations

from io import BytesIO

import pytest
from fontTools.ttLib import TTFont

from templater.given_fonts import FontError, GivenFont, Outline, move_outline, span_outline
from tests.made_fonts import CAPITAL, HEBREW, SIDE, make_collection, make_font, make_variable, save_font

OTHER = "name another font's .ttf, .otf or .ttc file"
AGAIN = "fetch the font file again, or name another"
FORBIDDEN = "whose maker forbids its letters in documents (fsType)"


def _corners(outline: Outline) -> set[tuple[float, ...]]:
    return {values for _, values in outline if values}


def _box(
    width: float, left: float = 0.0, span: tuple[float, float] = (0, CAPITAL)
) -> set[tuple[float, ...]]:
    """The corners of a letter of that advance, which starts at ``left``."""
    return {(left + x, y) for x in (SIDE, width - SIDE) for y in span}


@pytest.mark.parametrize("kind", ["glyf", "CFF"])
def test_a_letter_has_the_outline_and_the_advance_of_the_file(kind: str) -> None:
    font = GivenFont(make_font({"絵": 900}, kind=kind))
    (shaped,) = font.shape("絵", to_left=False)
    assert (shaped.text, shaped.advance) == ("絵", 900)
    assert _corners(shaped.outline) == _box(900)
    assert shaped.outline[0][0] == "M"
    assert shaped.outline[-1] == ("Z", ())


def test_words_to_the_left_are_drawn_from_their_end() -> None:
    shaped = GivenFont(make_font(HEBREW)).shape("שלום", to_left=True)
    assert [each.text for each in shaped] == ["ם", "ו", "ל", "ש"]


def test_letters_that_join_take_the_shapes_of_their_places() -> None:
    # A font in which a beh is 500 wide alone, 300 at the start of a word, 200 in it, 400 at its end.
    features = (
        "languagesystem DFLT dflt; languagesystem arab dflt;"
        "feature init { sub u628 by first; } init; feature medi { sub u628 by inner; } medi;"
        "feature fina { sub u628 by last; } fina;"
    )
    hidden = {"first": 300, "inner": 200, "last": 400}
    font = GivenFont(make_font({"ب": 500}, hidden=hidden, features=features))
    assert [each.advance for each in font.shape("ب", to_left=True)] == [500]
    assert [each.advance for each in font.shape("ببب", to_left=True)] == [400, 200, 300]


def test_a_letter_made_of_two_stands_for_both() -> None:
    features = (
        "languagesystem DFLT dflt; languagesystem arab dflt;"
        "feature rlig { sub u644 u627 by both; } rlig;"
    )
    font = GivenFont(make_font({"ل": 400, "ا": 250}, hidden={"both": 600}, features=features))
    (shaped,) = font.shape("لا", to_left=True)
    assert (shaped.text, shaped.advance) == ("لا", 600)


def test_a_mark_is_one_shape_with_the_letter_it_stands_on() -> None:
    font = GivenFont(make_font({"ש": 600, "\u05b8": 300}))
    (shaped,) = font.shape("ש\u05b8", to_left=True)
    assert shaped.text == "ש\u05b8"
    assert len([command for command, _ in shaped.outline if command == "M"]) == 2


def test_a_variable_font_is_taken_at_regular_and_bold() -> None:
    # From weight 100 to 900 the box grows by 320: by 3/8 of it at 400, by 6/8 at 700.
    font = GivenFont(make_variable("絵", 400, 320))
    (regular,), (bold,) = (font.shape("絵", to_left=False, bold=bold) for bold in (False, True))
    assert _corners(regular.outline) == _box(400 + 120)
    assert _corners(bold.outline) == _box(400 + 240)
    assert (regular.advance, bold.advance) == (520, 640)


def test_of_a_collection_the_first_font_is_taken() -> None:
    font = GivenFont(make_collection(make_font({"絵": 900}), make_font({"絵": 500})))
    assert font.shape("絵", to_left=False)[0].advance == 900


def test_a_font_draws_what_it_has_an_outline_for() -> None:
    font = GivenFont(make_font({"絵": 900, "霧": 0, "\u3000": 0}))
    drawn = [font.draws(each) for each in "絵霧\u3000灯"]  # an empty letter, but a space that is one
    assert drawn == [True, False, True, False]


@pytest.mark.parametrize(("told", "taken"), [(500, 500), (0, 700), (1200, 700)])
def test_a_height_of_capitals_out_of_reason_is_taken_as_seven_tenths(told: int, taken: float) -> None:
    assert GivenFont(make_font({"絵": 900}, capital=told)).cap_height == taken


def _without(table: str) -> bytes:
    font = TTFont(BytesIO(make_font(HEBREW)))
    del font[table]
    return save_font(font)


SOUND = make_font(HEBREW)


@pytest.mark.parametrize(
    ("content", "message", "hint"),
    [
        (b"", "which is no TrueType or OpenType font", OTHER),
        (b"title: Lamp room\n", "which is no TrueType or OpenType font", OTHER),
        (
            b"wOF2" + SOUND[4:],
            "which is a font packed for web pages",
            "name the font's .ttf or .otf file",
        ),
        (b"ttcf", "which is damaged", AGAIN),
        (SOUND[:6], "which is damaged", AGAIN),
        (SOUND[:200], "which is damaged", AGAIN),
        (SOUND[:-200], "which is damaged", AGAIN),
        (_without("cmap"), "which is damaged", AGAIN),
        (_without("glyf"), "which holds pictures of its letters, not outlines", OTHER),
        (make_font({}), "which has no letters", OTHER),
        (make_font(HEBREW, rights=0x0002), FORBIDDEN, OTHER),
        (make_font(HEBREW, rights=0x0104), FORBIDDEN, OTHER),
        (make_font(HEBREW, rights=0x0200), FORBIDDEN, OTHER),
    ],
)
def test_a_font_that_cannot_be_used_is_refused(content: bytes, message: str, hint: str) -> None:
    with pytest.raises(FontError) as refused:
        GivenFont(content)
    assert (refused.value.message, refused.value.hint) == (message, hint)


@pytest.mark.parametrize("rights", [0x0000, 0x0004, 0x0008, 0x000C])
def test_a_font_that_may_be_embedded_is_taken(rights: int) -> None:
    # OpenType, OS/2, fsType: 0 installable, 4 to preview and print, 8 editable.
    assert GivenFont(make_font(HEBREW, rights=rights)).draws("א")


def test_a_file_damaged_anywhere_is_refused_or_drawn_without_a_fault() -> None:
    for at in range(0, len(SOUND), 3):
        damaged = SOUND[:at] + bytes([SOUND[at] ^ 0xFF]) + SOUND[at + 1 :]
        try:
            font = GivenFont(damaged)
        except FontError:
            continue
        font.shape("".join(each for each in HEBREW if font.draws(each)), to_left=True)


def test_an_outline_is_grown_and_moved() -> None:
    outline: Outline = (("M", (1.0, 2.0)), ("C", (0.0, -3.0, 4.0, 5.0, 6.0, 7.0)), ("Z", ()))
    moved = move_outline(outline, 10.0, 20.0, 2.0)
    assert moved == (("M", (12.0, 24.0)), ("C", (10.0, 14.0, 18.0, 30.0, 22.0, 34.0)), ("Z", ()))
    assert span_outline(outline) == (-3.0, 7.0)
    assert span_outline(()) == (0.0, 0.0)
