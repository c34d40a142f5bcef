from __future__ import annotations

import io
import struct

import cairosvg
from PIL import Image, ImageChops

from templater.drawing import Polyline, Words
from templater.geometry import Box, Point
from templater.sheets.model import Layer
from templater.to_files.png import _write_letters_out, png_bytes
from templater.to_files.svg import svg_text

SQUARE = Polyline((Point(10, 20), Point(20, 20), Point(20, 30), Point(10, 30)), 0.2, filled=True)


def _picture() -> bytes:
    view = Box(0, 0, 127.0, 63.5)
    return png_bytes(svg_text((Layer((SQUARE,)),), view, "", top=63.5))


def test_the_picture_has_150_dots_an_inch_and_says_so() -> None:
    picture = _picture()
    # 127 mm = 5 in, 63.5 mm = 2.5 in.
    assert Image.open(io.BytesIO(picture)).size == (750, 375)
    # PNG specification, 11.3.5.3: dots a metre across and up, then 1 for metres. 150 / 0.0254 = 5905.5.
    at = picture.index(b"pHYs")
    assert struct.unpack(">IIB", picture[at + 4 : at + 13]) == (5906, 5906, 1)
    assert picture.index(b"IHDR") < at < picture.index(b"IDAT")


def test_ink_is_where_it_was_drawn_on_white() -> None:
    grey = Image.open(io.BytesIO(_picture())).convert("L")
    dots = 150 / 25.4
    for x, y, level in ((15, 25, 0), (9.5, 25, 255), (20.5, 25, 255), (15, 19.5, 255), (15, 30.5, 255)):
        assert grey.getpixel((int(x * dots), int((63.5 - y) * dots))) == level


def test_letters_look_as_the_drawings_own_references_have_them() -> None:
    words = (Words(Point(5, 40), "Öl & Nebel 1⅝″", 5.0), Words(Point(60, 5), "UP", 9.0, turned=True))
    svg = svg_text((Layer(words),), Box(0, 0, 127.0, 63.5), "", top=63.5)
    referred = cairosvg.svg2png(svg.encode(), dpi=96, scale=150 / 96, background_color="white")
    expected, found = (Image.open(io.BytesIO(each)).convert("L") for each in (referred, png_bytes(svg)))
    assert expected.getextrema() == (0, 255)
    assert "<use" in svg
    assert "<use" not in _write_letters_out(svg)
    assert ImageChops.difference(expected, found).getbbox() is None
