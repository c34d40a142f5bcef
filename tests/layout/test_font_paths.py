from __future__ import annotations

import pytest

from templater.errors import Place
from templater.layout.model import FontFile
from templater.layout.texts import list_texts
from tests.layout.files import SMALL, WIDE, change, check_faults, read_sound

PUT_THERE = "put the font file into the folder of the layout, and write its name alone"


def test_without_the_key_no_font_is_given() -> None:
    assert read_sound(SMALL).fonts == ()


def test_one_font_is_given_by_its_name() -> None:
    layout = read_sound(SMALL + "font: Lamp Room.ttf\n")
    assert layout.fonts == (FontFile("Lamp Room.ttf", Place("hall.yaml", 12, 7)),)


def test_several_fonts_are_given_in_their_order() -> None:
    layout = read_sound(SMALL + "font: [a.ttf, fonts/b.otf]\n")
    assert layout.fonts == (
        FontFile("a.ttf", Place("hall.yaml", 12, 8)),
        FontFile("fonts/b.otf", Place("hall.yaml", 12, 15)),
    )


@pytest.mark.parametrize(
    "path", ["/etc/fonts/a.ttf", "C:/a.ttf", "c:a.ttf", "\\\\shelf\\a.ttf", "\\a.ttf"]
)
def test_a_font_is_named_from_the_folder_of_the_layout(path: str) -> None:
    check_faults(
        f"{SMALL}font: ¦{path}\n",
        f"'font' is {path!r}, which does not start in the layout's folder => {PUT_THERE}",
    )


def test_what_is_no_name_of_a_font_is_refused() -> None:
    needs = "'font' needs the name of a font file, or a list of them, but is a mapping"
    empty = "'font' has no value => write one after the colon, or remove the key"
    check_faults(SMALL + "font: ¦{file: a.ttf}\n", f"{needs} => write one value in its place")
    check_faults(SMALL + "font: ¦[{file: a.ttf}]\n", f"{needs} => write one value in its place")
    check_faults(SMALL + "font: ¦''\n", empty)
    check_faults(
        SMALL + "font: ¦[]\n", "'font' needs 1 to 8 fonts, but has 0 => list the fonts it needs"
    )
    check_faults(
        f"{SMALL}font: ¦[{', '.join(['a.ttf'] * 9)}]\n",
        "'font' needs 1 to 8 fonts, but has 9 => list the fonts it needs",
    )
    check_faults(
        f"{SMALL}font: ¦{'a' * 251}\n", f"'font' has 251 characters, more than 250 => {PUT_THERE}"
    )
    check_faults(
        SMALL + 'font: ¦"a\\u202e.ttf"\n',
        "'font' is 'a\\u202e.ttf', with a character that cannot be seen => remove it",
    )


def test_every_text_of_a_layout_is_found_and_no_path() -> None:
    text = change("because: the stairs put the eye higher here", "because: the stairs are high", WIDE)
    found = set(list_texts(read_sound(text + "issue: B\nfont: a.ttf\n")))
    assert {"Long wall", "settle", "sash window", "six", "the stairs are high", "B"} <= found
    assert not {"a.ttf", "hall.yaml"} & found
