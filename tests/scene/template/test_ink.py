"""The ink that a drawing takes, estimated before it is drawn."""

from __future__ import annotations

from math import pi

import pytest
from fontTools.pens.areaPen import AreaPen
from fontTools.ttLib import TTFont

from templater.drawing import Circle, Line, Polyline, Words
from templater.geometry import ORIGIN, Box, Point, Size
from templater.printing.model import Tile
from templater.scene.template.ink import is_small, measure_ink
from templater.typeface import face

SHEET = Box(0, 0, 100, 100)


@pytest.mark.parametrize(
    ("item", "ink"),
    [
        (Line(Point(-50, 10), Point(150, 10), 0.5), 50.0),  # 100 mm of it are on the sheet
        (Line(Point(10, 90), Point(10, 140), 0.5), 5.0),
        (Line(Point(0, 120), Point(100, 120), 0.5), 0.0),
        (Line(Point(0, 10), Point(100, 10), 0.2, (6.0, 2.0, 0.0, 2.0)), 12.0),  # 6 of each 10 mm
        (Circle(Point(50, 50), 5.0, 0.25), 2.5 * pi),
        (Circle(Point(50, 50), 2.0, 0.25, filled=True), 4 * pi),
        (Polyline((ORIGIN, Point(30, 0), Point(0, 40)), 0.5, closed=True), 60.0),  # 30 + 40 + 50 mm
        (Polyline((ORIGIN, Point(30, 0), Point(0, 40)), 0.5, filled=True), 600.0),
    ],
)
def test_lines_take_their_length_and_filled_shapes_their_area(
    item: Line | Circle | Polyline, ink: float
) -> None:
    assert measure_ink([item], SHEET) == pytest.approx(ink)


@pytest.mark.parametrize("bold", [False, True])
@pytest.mark.parametrize(
    "text", ["above the floor at the datum's place: 70 1/4 in (1784 mm)", "LEVEL LINE", "Sea kale"]
)
def test_words_take_about_the_area_of_their_letters(text: str, bold: bool) -> None:
    # By fontTools, from the outlines of the face's own file.
    font = TTFont(face(bold).path)
    glyphs, names = font.getGlyphSet(), font.getBestCmap()
    units = 0.0
    for character in text:
        pen = AreaPen(glyphs)
        glyphs[names[ord(character)]].draw(pen)
        units += abs(pen.value)
    area = units * (2.5 / font["OS/2"].sCapHeight) ** 2
    assert measure_ink([Words(ORIGIN, text, 2.5, bold=bold)]) == pytest.approx(area, rel=0.13)


@pytest.mark.parametrize(
    ("paper", "small"), [((148, 210), True), ((215.9, 279.4), False), ((297, 210), False)]
)
def test_ink_is_short_on_paper_smaller_than_a4_and_letter(
    paper: tuple[float, float], small: bool
) -> None:
    tile = Tile("A1", SHEET, SHEET, Size(*paper), ORIGIN)
    assert is_small([tile]) is small
