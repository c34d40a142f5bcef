from __future__ import annotations

import io
import struct

from PIL import Image

from templater.drawing import Polyline
from templater.geometry import Box, Point
from templater.sheets.model import Layer
from templater.to_files.png import png_bytes
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
