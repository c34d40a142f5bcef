"""What the commands say of letters that can and cannot be drawn."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.made_fonts import HEBREW, make_font, write_hall
from tests.running import Run

LACKING = (
    "empty boxes on paper for letters that the typeface does not have:"
    " U+05D1 \u2067ב\u2069, U+05D2 \u2067ג\u2069;"
    " add to the layout 'font:' with the file of a font that has them\n"
)
OUTSIDE = (
    "walls/hall.yaml:3:7: 'font' names '../hebrew.ttf', which lies outside the folder of the layout\n"
    "  put the font file into the folder of the layout, and name it without a folder before it\n"
)


def test_check_and_measure_tell_the_letters_that_no_font_has(run: Run) -> None:
    write_hall(Path("walls"), "", "Fog בג")
    assert run("check", "walls/hall.yaml")[2] == LACKING
    code, out, err = run("measure", "walls/hall.yaml", "--out", "form.pdf")
    assert (code, out, err) == (0, "form.pdf: print it, fill it in, send it back\n", LACKING)


def test_with_a_font_that_has_them_nothing_is_told(run: Run) -> None:
    write_hall(Path("walls"), "font: hebrew.ttf\n", "Fog בג")
    Path("walls/hebrew.ttf").write_bytes(make_font(HEBREW))
    assert run("check", "walls/hall.yaml")[2] == ""
    assert run("measure", "walls/hall.yaml", "--out", "form.pdf")[2] == ""


@pytest.mark.parametrize("words", [("check",), ("kit",), ("measure",), ("arrange",)])
def test_a_font_outside_the_folder_of_the_layout_ends_every_command(run: Run, words: tuple[str]) -> None:
    write_hall(Path("walls"), "font: ../hebrew.ttf\n", "Fog בג")
    Path("hebrew.ttf").write_bytes(make_font(HEBREW))
    assert run(*words, "walls/hall.yaml") == (3, "", OUTSIDE)
    assert {path.name for path in Path("walls").iterdir()} == {"hall.yaml"}
