from __future__ import annotations

from pathlib import Path
from typing import Any

import font_source_sans_pro
import pytest
from fontTools.ttLib import TTFont
from hypothesis import given, settings
from hypothesis import strategies as st

from templater.given_fonts import GivenFont, span_outline
from templater.typesetting import ASCENT, DESCENT, Part, Typesetter, current_typesetter, set_by, set_line
from tests.made_fonts import CAPITAL, HEBREW, hebrew_font, make_font

OWN: Any = TTFont(Path(font_source_sans_pro.font_directory) / "SourceSansPro-Regular.ttf")
KANJI = {"絵": 1000, "霧": 900}


def own_width(text: str) -> int:
    """The sum of the advances that the typeface's own file tells."""
    names = OWN.getBestCmap()
    return sum(OWN["hmtx"][names[ord(character)]][0] for character in text)


def seen(typesetter: Typesetter, text: str) -> str:
    """The line from left to right as it is drawn."""
    return "".join(part.text for part in typesetter.set_line(text).parts)


# --- which letters come from where ----------------------------------------------------------------


def test_what_the_typeface_has_is_set_as_one_part() -> None:
    line = Typesetter([hebrew_font()], []).set_line("Kelp print 23 5/8″ · Ärö λ")
    assert line.parts == (Part(0.0, "Kelp print 23 5/8″ · Ärö λ"),)
    assert line.width == own_width("Kelp print 23 5/8″ · Ärö λ")


def test_only_what_the_typeface_lacks_comes_from_a_given_font() -> None:
    font = GivenFont(make_font({**KANJI, "K": 3000, "3": 3000}))
    line = Typesetter([font], []).set_line("K絵3霧")
    assert [(part.text, part.glyph is None) for part in line.parts] == [
        ("K", True),
        ("絵", False),
        ("3", True),
        ("霧", False),
    ]
    starts = [0, own_width("K"), own_width("K") + 1000, own_width("K3") + 1000]
    assert [part.at for part in line.parts] == starts
    assert line.width == own_width("K3") + 1000 + 900


def test_the_first_font_that_has_a_letter_draws_it() -> None:
    fonts = [hebrew_font(), GivenFont(make_font(KANJI)), GivenFont(make_font({"絵": 500, "灯": 500}))]
    line = Typesetter(fonts, []).set_line("絵灯")
    assert [part.glyph and part.glyph.advance for part in line.parts] == [1000, 500]


def test_letters_are_scaled_until_their_capitals_are_as_high() -> None:
    font = GivenFont(make_font({"絵": 400}, capital=440, span=(0, 440)))
    line = Typesetter([font], ["絵"]).set_line("絵")
    assert line.width == pytest.approx(400 * 660 / 440)
    (part,) = line.parts
    assert part.glyph is not None
    assert span_outline(part.glyph.outline) == pytest.approx((0, 660))


@pytest.mark.parametrize("span", [(-900, 300), (0, 1400), (-700, 1500), (200, 900)])
def test_no_letter_of_a_name_leaves_the_height_of_a_line(span: tuple[int, int]) -> None:
    font = GivenFont(make_font({"絵": 1000}, span=span))
    (part,) = Typesetter([font], ["Fog 絵"]).set_line("絵").parts
    assert part.glyph is not None
    low, high = span_outline(part.glyph.outline)
    assert -DESCENT * CAPITAL <= low < high <= ASCENT * CAPITAL
    # As large as the line lets it: all but a tenth of a capital of the line's height, or its own size.
    assert high - low == pytest.approx(min(span[1] - span[0], (DESCENT + ASCENT - 0.1) * CAPITAL))


def test_a_mark_without_a_composed_letter_stands_on_its_letter() -> None:
    # x with a macron: the typeface has both, and says where the mark goes; no composed letter exists.
    line = Typesetter().set_line("ax̄b")
    assert [part.text for part in line.parts] == ["a", "x̄", "b"]
    assert line.width == own_width("axb")
    mark = line.parts[1].glyph
    assert mark is not None
    _, high = span_outline(mark.outline)
    assert high > OWN["glyf"]["x"].yMax + 50


def test_bold_words_have_bold_marks() -> None:
    regular, bold = (Typesetter().set_line("x̄", bold).parts[0].glyph for bold in (False, True))
    assert regular != bold


def test_what_is_unseen_by_itself_takes_no_room_and_is_not_lacking() -> None:
    typesetter = Typesetter()
    assert typesetter.set_line("a\u200cb\u200d\ufe0f").width == own_width("ab")
    assert seen(typesetter, "a\u200cb\u200d\ufe0f") == "ab"
    assert typesetter.lacks("a\u200c\u200d\ufe0f\U000e0100") == ""


def test_a_space_that_the_typeface_lacks_is_a_space() -> None:
    typesetter = Typesetter()
    assert seen(typesetter, "a\u3000b\u2009c\u00a0d") == "a b c\u00a0d"
    assert typesetter.lacks("\u3000\u2009") == ""
    wide = Typesetter([GivenFont(make_font({**KANJI, "\u3000": 1000}))])
    assert wide.set_line("絵\u3000霧").width == 2900


# --- right to left --------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("read", "drawn"),
    [
        # Unicode Standard Annex 9, 3.4, the first examples of L2 (from memory), with Hebrew letters in
        # place of the capitals there: "car means CAR." and "<car MEANS CAR.=" with its sign turned.
        ("car means שלום.", "car means םולש."),
        ("שלום", "םולש"),
        ("שלום אבג", "גבא םולש"),
        ("a שלום אבג b", "a גבא םולש b"),
        ("שלום, אבג", "גבא ,םולש"),
        # What stands beside words to the left is not moved by them:
        ("hole 2 of שלום: 304 mm", "hole 2 of םולש: 304 mm"),
        ("שלום 1 of 2", "םולש 1 of 2"),
        ("23 1/2 in שלום 3 in", "23 1/2 in םולש 3 in"),
        ("(שלום)", "(םולש)"),
        ("שלום / אבג", "גבא / םולש"),
        ("שלום (2) אבג", "גבא (2) םולש"),
        ("שלום 12 אבג", "גבא 12 םולש"),
        ("ש > ל", "ל < ש"),
        ("x > y", "x > y"),
        ("שלו…", "…ולש"),
    ],
)
def test_words_to_the_left_are_drawn_in_their_order(read: str, drawn: str) -> None:
    assert seen(Typesetter([hebrew_font()], []), read) == drawn


@pytest.mark.parametrize(
    ("read", "drawn"),
    [
        ("שלום 2", "2 םולש"),
        ("שלום (2)", "(2) םולש"),
        ("hole 1 of שלום 2: 304 mm", "hole 1 of 2 םולש: 304 mm"),
        # A name that begins with Latin letters runs to the right, but a number after words to the left
        # belongs to these (Unicode Standard Annex 9, rules W7 and N1).
        ("Fog שלום 2", "Fog 2 םולש"),
        ("Fog שלום 2, from שלום (2)", "Fog 2 םולש, from (2) םולש"),
    ],
)
def test_a_name_is_ordered_by_itself(read: str, drawn: str) -> None:
    names = ["שלום 2", "שלום (2)", "Fog שלום 2", "plain"]
    assert seen(Typesetter([hebrew_font()], names), read) == drawn


def test_a_name_is_found_only_where_no_word_goes_on_beside_it() -> None:
    typesetter = Typesetter([hebrew_font()], ["ש", "ש 2"])
    assert seen(typesetter, "שלום שש 2, ש 2: 3") == "שש םולש 2, 2 ש: 3"


def test_each_letter_to_the_left_stands_where_it_is_drawn() -> None:
    line = Typesetter([hebrew_font()]).set_line("אב")
    # Bet, 450 wide, comes first; alef, 400 wide, right of it.
    assert [(part.text, part.at) for part in line.parts] == [("ב", 0), ("א", HEBREW["ב"])]
    assert line.width == HEBREW["א"] + HEBREW["ב"]


FONTS = [hebrew_font(), GivenFont(make_font({**KANJI, "ب": 500, "٣": 500, "\u05b8": 100}))]
LETTERS = [*HEBREW, *KANJI, *"ab12 ()<-.,:…/", "灯", "é", "\u05b8", "\u0304", "٣", "ب"]


@settings(deadline=None)
@given(
    st.text(st.sampled_from(LETTERS), max_size=25),
    st.lists(st.text(st.sampled_from(LETTERS), min_size=1)),
)
def test_every_character_is_drawn_once_and_no_two_in_one_place(text: str, names: list[str]) -> None:
    line = Typesetter(FONTS, names).set_line(text)
    turned = str.maketrans("><)", "<<(")  # what is turned round counts as what it was
    drawn = sorted("".join(part.text for part in line.parts).translate(turned))
    assert drawn == sorted(text.translate(turned))
    at = 0.0
    for part in line.parts:
        assert part.at == pytest.approx(at)
        at += part.glyph.advance if part.glyph else sum(map(_advance, part.text))
    assert line.width == pytest.approx(at)


def _advance(character: str) -> int:
    names = OWN.getBestCmap()
    return int(OWN["hmtx"][names.get(ord(character), ".notdef")][0])


@settings(deadline=None)
@given(st.text(st.sampled_from([*HEBREW, " "]), min_size=1, max_size=12), st.integers(0, 9999))
def test_a_measure_beside_a_name_is_never_moved(name: str, figure: int) -> None:
    line = seen(Typesetter(FONTS, [name.strip()]), f"hole 2 of {name}: {figure} mm, {figure} in")
    assert line.startswith("hole 2 of ")
    assert line.endswith(f": {figure} mm, {figure} in")


# --- what is lacking, and by whom lines are set ----------------------------------------------------


def test_what_nothing_can_draw_is_told_with_the_act_that_mends_it() -> None:
    assert Typesetter().tell_lacking(["Kelp", "Ärö λ Ж"]) is None
    assert Typesetter().tell_lacking(["מר", "Kelp 絵מ"]) == (
        "empty boxes on paper for letters that the typeface does not have:"
        " U+05DE מ, U+05E8 ר, U+7D75 絵; add to the layout 'font:' with the file of a font that has them"
    )
    assert Typesetter([hebrew_font()]).tell_lacking(["שלום 絵"]) == (
        "empty boxes on paper for letters that neither the typeface nor 'font:' has:"
        " U+7D75 絵; add to 'font:' the file of a font that has them"
    )


def test_of_very_many_letters_the_first_are_told() -> None:
    told = Typesetter().tell_lacking([chr(0x4E00 + number) for number in range(20)])
    assert told is not None
    assert "U+4E0B 下 and 8 more; add" in told
    assert "U+4E0C" not in told


def test_a_letter_that_nothing_has_is_an_empty_box_as_wide_as_the_typefaces_own() -> None:
    line = Typesetter([hebrew_font()]).set_line("a絵")
    assert line.parts == (Part(0.0, "a絵"),)
    assert line.width == own_width("a") + OWN["hmtx"][".notdef"][0]


def test_lines_are_set_by_the_typesetter_of_the_block() -> None:
    plain = set_line("א").width
    outer, inner = Typesetter([hebrew_font()]), Typesetter([GivenFont(make_font({"א": 777}))])
    with set_by(outer):
        assert set_line("א").width == HEBREW["א"]
        with pytest.raises(KeyError, match="777"), set_by(inner):
            raise KeyError(set_line("א").width)
        assert current_typesetter() is outer
    assert set_line("א").width == plain


def test_the_same_line_is_set_the_same_by_every_typesetter() -> None:
    def draw() -> list[tuple[float, str, object]]:
        typesetter = Typesetter([hebrew_font(), GivenFont(make_font(KANJI))], ["שלום 2"])
        parts = typesetter.set_line("שלום 2 絵").parts
        return [(part.at, part.text, part.glyph and part.glyph.outline) for part in parts]

    assert draw() == draw()


def test_one_shape_is_one_object_wherever_it_stands() -> None:
    typesetter = Typesetter([hebrew_font()])
    first, second = typesetter.set_line("אא").parts
    assert first.glyph is second.glyph is typesetter.set_line("a א").parts[1].glyph
