from __future__ import annotations

from pathlib import Path
from typing import Any
from xml.etree import ElementTree as ET

import font_source_sans_pro
import pytest
from fontTools.ttLib import TTFont

from templater.drawing import Anchor, Words
from templater.geometry import Box, Point, Size
from templater.lettering import text_width
from templater.sheets.model import Layer
from templater.to_files.svg import number, svg_text
from tests.reading import SVG, SvgReading, read_svg
from tests.to_files.drawings import (
    ARROW,
    BOX,
    CHAIN,
    CLIP,
    DASHED,
    DOT,
    ITEMS,
    LINE,
    ORIGIN,
    PAPERS,
    RING,
    WORDS,
)

NEAR = 0.001


def _read(size: Size) -> SvgReading:
    layers = (Layer(ITEMS, ORIGIN, CLIP), Layer((LINE,)))
    return read_svg(svg_text(layers, Box(0, 0, *size), "Kelp <print>", top=size.height), size.height)


def _moved(*points: Point) -> list[object]:
    return [pytest.approx(point.moved(*ORIGIN), abs=NEAR) for point in points]


@pytest.fixture(params=list(PAPERS.values()), ids=list(PAPERS))
def reading(request: pytest.FixtureRequest) -> SvgReading:
    """Everything drawn on A4, on Letter and on five metres of a roll."""
    return _read(Size(*request.param))


def test_one_unit_is_one_millimetre(reading: SvgReading) -> None:
    assert (reading.width_mm, reading.height_mm) == pytest.approx(reading.ink.size, abs=NEAR)
    assert reading.view.corner == pytest.approx((0, 0), abs=NEAR)


def test_lines_and_circles_are_where_they_were_drawn(reading: SvgReading) -> None:
    line, dashed, unmoved = reading.ink.strokes
    for item, stroke in ((LINE, line), (DASHED, dashed)):
        assert [stroke.start, stroke.end] == _moved(item.start, item.end)
        assert stroke.width_mm == pytest.approx(item.width_mm, abs=NEAR)
        assert stroke.dash == pytest.approx(item.dash, abs=NEAR)
        assert stroke.clip == pytest.approx(CLIP, abs=NEAR)
    assert unmoved.start == pytest.approx(LINE.start, abs=NEAR)
    assert unmoved.clip is None
    chain, box, arrow = reading.ink.outlines
    for drawn, outline in ((CHAIN, chain), (BOX, box), (ARROW, arrow)):
        assert list(outline.points) == _moved(*drawn.points)
        assert outline.filled == drawn.filled
        assert outline.dash == pytest.approx(drawn.dash, abs=NEAR)
    assert (chain.closed, box.closed) == (False, True)
    for circle, ring in zip((RING, DOT), reading.ink.rings, strict=True):
        assert [ring.centre] == _moved(circle.centre)
        assert ring.radius_mm == pytest.approx(circle.radius_mm, abs=NEAR)
        assert ring.filled == circle.filled


def test_words_stand_where_their_anchor_says(reading: SvgReading) -> None:
    assert [run.text for run in reading.ink.runs] == [words.text for words in WORDS]
    for words, run in zip(WORDS, reading.ink.runs, strict=True):
        assert run.capital_mm == pytest.approx(words.height_mm, abs=NEAR)
        assert run.angle == pytest.approx(90 if words.turned else 0)
        width = text_width(words.text, words.height_mm, words.bold)
        back = {Anchor.START: 0.0, Anchor.MIDDLE: width / 2, Anchor.END: width}[words.anchor]
        start = words.at.moved(0, -back) if words.turned else words.at.moved(-back, 0)
        assert [run.start] == _moved(start)


def test_a_long_line_of_words_ends_where_it_should() -> None:
    # Every n moves the pen by so many units of the typeface, of which capitals have 660.
    font: Any = TTFont(Path(font_source_sans_pro.font_directory) / "SourceSansPro-Regular.ttf")
    advance, ink_end = font["hmtx"]["n"][0], font["glyf"]["n"].xMax
    words = Words(Point(0, 10), "n" * 300, 2.5)
    text = svg_text((Layer((words,)),), Box(0, 0, 700, 20), "", top=20)
    (run,) = read_svg(text, 20).ink.runs
    assert run.end.x == pytest.approx((299 * advance + ink_end) * 2.5 / 660, abs=NEAR)


def test_letters_are_outlines_each_defined_once(reading: SvgReading) -> None:
    assert "text" not in reading.tags
    assert len(set(reading.glyphs)) == len(reading.glyphs)
    weights = {(letter, words.bold) for words in WORDS for letter in words.text if not letter.isspace()}
    assert len(reading.glyphs) == len(weights)


def test_the_title_is_told_and_escaped() -> None:
    root = ET.fromstring(svg_text((), Box(0, 0, 10, 10), 'A "bell" <& horn>', top=10))
    title = root.find(f"{SVG}title")
    assert title is not None
    assert title.text == 'A "bell" <& horn>'


def test_words_with_marks_of_xml_are_told_whole() -> None:
    words = Words(Point(0, 0), 'Kelp <b>&amp;"quoted"', 2.5)
    (run,) = read_svg(svg_text((Layer((words,)),), Box(0, 0, 90, 90), "", top=90), 90).ink.runs
    assert run.text == 'Kelp <b>&amp;"quoted"'


def test_the_same_drawing_gives_the_same_bytes() -> None:
    texts = {svg_text((Layer(ITEMS),), Box(0, 0, 9, 9), "", top=9) for _ in range(2)}
    assert len(texts) == 1


@pytest.mark.parametrize(
    ("value", "shown"),
    [(0.0, "0"), (-0.0, "0"), (-0.000001, "0"), (100.0, "100"), (1.5, "1.5"), (-2.123456, "-2.12346")],
)
def test_numbers_are_short(value: float, shown: str) -> None:
    assert number(value) == shown
