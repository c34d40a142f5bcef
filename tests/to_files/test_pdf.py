from __future__ import annotations

import io
from collections.abc import Sequence
from dataclasses import replace
from math import dist
from typing import Any

import pikepdf
import pypdfium2
import pytest

from templater.drawing import Anchor, Link, Words
from templater.geometry import Box, Point, Size
from templater.lettering import text_width
from templater.sheets.model import Bookmark, Layer, Page, Target
from templater.to_files.pdf import write_pdf
from tests.reading import Ink, Run, read_pdf_page
from tests.to_files.drawings import (
    ARROW,
    BOX,
    CHAIN,
    CLIP,
    DASHED,
    DOT,
    LINE,
    ORIGIN,
    PAPERS,
    RING,
    WORDS,
    full_page,
    page_of,
)

NEAR = 0.001
MM = 72 / 25.4


def _written(*pages: Page) -> bytes:
    stream = io.BytesIO()
    write_pdf(pages, stream, title="Keeper's cottage")
    return stream.getvalue()


def _ink(page: Page) -> Ink:
    with pikepdf.open(io.BytesIO(_written(page))) as pdf:
        return read_pdf_page(pdf.pages[0])


def _moved(points: Sequence[Point]) -> list[object]:
    return [pytest.approx(point.moved(*ORIGIN), abs=NEAR) for point in points]


@pytest.fixture(params=list(PAPERS.values()), ids=list(PAPERS))
def size(request: pytest.FixtureRequest) -> Size:
    """A4, Letter and five metres of a roll."""
    return Size(*request.param)


def test_lines_and_circles_are_where_they_were_drawn(size: Size) -> None:
    ink = _ink(full_page(size))
    assert ink.size == pytest.approx(size, abs=NEAR)
    line, dashed, unmoved = ink.strokes
    for item, stroke in ((LINE, line), (DASHED, dashed)):
        assert [stroke.start, stroke.end] == _moved((item.start, item.end))
        assert stroke.width_mm == pytest.approx(item.width_mm, abs=NEAR)
        assert stroke.dash == pytest.approx(item.dash, abs=NEAR)
        assert stroke.clip == pytest.approx(CLIP, abs=NEAR)
    assert unmoved.start == pytest.approx(LINE.start, abs=NEAR)
    assert unmoved.clip is None
    chain, box, arrow = ink.outlines
    for drawn, outline in ((CHAIN, chain), (BOX, box), (ARROW, arrow)):
        assert list(outline.points) == _moved(drawn.points)
        assert outline.filled == drawn.filled
        assert outline.dash == pytest.approx(drawn.dash, abs=NEAR)
    assert (chain.closed, box.closed) == (False, True)
    for circle, ring in zip((RING, DOT), ink.rings, strict=True):
        assert [ring.centre] == _moved([circle.centre])
        assert ring.radius_mm == pytest.approx(circle.radius_mm, abs=NEAR)
        assert ring.filled == circle.filled


def test_words_stand_where_their_anchor_says(size: Size) -> None:
    runs = _ink(full_page(size)).runs
    assert [run.text for run in runs] == [words.text for words in WORDS]
    for words, run in zip(WORDS, runs, strict=True):
        assert run.capital_mm == pytest.approx(words.height_mm, abs=NEAR)
        assert run.angle == pytest.approx(90 if words.turned else 0)
        assert [_anchor(words, run)] == _moved([words.at])
        width = dist(run.start, run.end)
        assert width == pytest.approx(text_width(words.text, words.height_mm, words.bold), abs=NEAR)


def _anchor(words: Words, run: Run) -> Point:
    middle = Point((run.start.x + run.end.x) / 2, (run.start.y + run.end.y) / 2)
    return {Anchor.START: run.start, Anchor.MIDDLE: middle, Anchor.END: run.end}[words.anchor]


def test_another_reader_finds_the_words_in_the_same_boxes() -> None:
    words = WORDS[0]
    document = pypdfium2.PdfDocument(_written(page_of(PAPERS["a4"], Layer(WORDS))))
    text = document[0].get_textpage()
    search = text.search("Kelp print 23 5/8″")
    first, count = search.get_next()
    boxes = [text.get_charbox(first + at) for at in range(count) if at not in (4, 10, 13)]
    left, right = min(box[0] for box in boxes) / MM, max(box[2] for box in boxes) / MM
    k_top = boxes[0][3] / MM
    # Side bearings of a letter are under a tenth of its height; the K stands on the baseline.
    assert left == pytest.approx(30, abs=0.5)
    assert right == pytest.approx(30 + text_width(words.text, 3.5), abs=0.5)
    assert k_top == pytest.approx(170 + 3.5, abs=0.05)
    document.close()


def test_fonts_are_embedded_subsets_and_no_other_is_named() -> None:
    with pikepdf.open(io.BytesIO(_written(full_page(PAPERS["a4"]), full_page(PAPERS["letter"])))) as pdf:
        fonts = [font for page in pdf.pages for font in page.resources.Font.values()]
        names = {str(font.BaseFont) for font in fonts}
        assert all(name[7] == "+" and "SourceSansPro" in name for name in names)
        assert all("/FontFile2" in font.FontDescriptor for font in fonts)
        content = b"".join(page.Contents.read_bytes() for page in pdf.pages)
    assert b"Helvetica" not in _written(full_page(PAPERS["a4"])) + content


def test_pages_are_true_to_size_and_not_turned_cropped_or_rescaled() -> None:
    wide = Size(297.0, 210.0)
    pages = [full_page(size) for size in (*PAPERS.values(), wide)]
    with pikepdf.open(io.BytesIO(_written(*pages))) as pdf:
        for page, written in zip(pages, pdf.pages, strict=True):
            assert not {"/Rotate", "/CropBox", "/TrimBox", "/UserUnit"} & set(written.obj.keys())
            x0, y0, x1, y1 = map(float, written.obj.MediaBox)
            assert (x0, y0) == (0, 0)
            assert (x1 / MM, y1 / MM) == pytest.approx(page.size, abs=NEAR)
        assert not {"/MediaBox", "/Rotate", "/UserUnit"} & set(pdf.Root.Pages.keys())


def test_a_printer_is_told_to_print_at_actual_size_on_one_side() -> None:
    with pikepdf.open(io.BytesIO(_written(full_page(PAPERS["a4"])))) as pdf:
        told: dict[str, Any] = dict(pdf.Root.ViewerPreferences.items())
        assert told["/PrintScaling"] == "/None"
        assert list(told["/Enforce"]) == ["/PrintScaling"]
        assert told["/Duplex"] == "/Simplex"
        assert told["/PickTrayByPDFSize"] is True
        assert pdf.pdf_version == "1.7"


def test_labels_bookmarks_targets_and_links_lead_to_their_pages() -> None:
    first = replace(
        full_page(PAPERS["a4"]),
        label="cover 1",
        bookmarks=(Bookmark("Cover", 0),),
        links=(Link(Box(10, 20, 30, 45), "piece:kelp"),),
    )
    second = replace(
        full_page(PAPERS["letter"]),
        label="kelp A1",
        bookmarks=(Bookmark("Kelp", 0), Bookmark("Kelp A1", 1)),
        targets=(Target("piece:kelp", Point(0, 279.4)), Target("hole:kelp:1", Point(34.7, 150.125))),
    )
    with pikepdf.open(io.BytesIO(_written(first, second))) as pdf:
        assert [page.label for page in pdf.pages] == ["cover 1", "kelp A1"]
        with pdf.open_outline() as outline:
            told = [(item.title, [child.title for child in item.children]) for item in outline.root]
        assert told == [("Cover", []), ("Kelp", ["Kelp A1"])]
        hole, (page, fit, left, top, *_), piece, _ = pdf.Root.Names.Dests.Names
        assert (str(hole), str(piece), str(fit)) == ("hole:kelp:1", "piece:kelp", "/XYZ")
        assert page.objgen == pdf.pages[1].objgen
        assert (float(left) / MM, float(top) / MM) == pytest.approx((34.7, 150.125), abs=0.01)
        (link,) = pdf.pages[0].obj.Annots
        assert [float(side) / MM for side in link.Rect] == pytest.approx([10, 20, 30, 45], abs=0.01)
        assert link.Dest[0].objgen == pdf.pages[1].objgen


def test_the_same_pages_give_the_same_bytes() -> None:
    page = full_page(PAPERS["a4"])
    assert _written(page) == _written(page)


# --- pages for a printer that was measured --------------------------------------------------------

SCALE = (1.015228, 0.994)
"""Three decimals of a factor already tell; six are what a printer's factor has."""


def test_a_corrected_page_comes_out_as_it_was_drawn(size: Size) -> None:
    plain = _ink(full_page(size))
    with pikepdf.open(io.BytesIO(_written(replace(full_page(size), scale=SCALE)))) as pdf:
        (page,) = pdf.pages
        x0, y0, x1, y1 = map(float, page.mediabox)
        assert (x0, y0) == (0, 0)
        assert (x1 / MM, y1 / MM) == pytest.approx(
            (size.width * SCALE[0], size.height * SCALE[1]), abs=NEAR
        )
        printed = read_pdf_page(page, (1 / SCALE[0], 1 / SCALE[1]))
    assert printed.size == pytest.approx(plain.size, abs=NEAR)
    assert [run.text for run in printed.runs] == [run.text for run in plain.runs]
    for run, drawn in zip(printed.runs, plain.runs, strict=True):
        assert [*run.start, *run.end] == pytest.approx([*drawn.start, *drawn.end], abs=NEAR)
        assert run.capital_mm == pytest.approx(drawn.capital_mm, abs=NEAR)
    for stroke, line in zip(printed.strokes, plain.strokes, strict=True):
        assert stroke.box == pytest.approx(line.box, abs=NEAR)
        assert stroke.width_mm == pytest.approx(line.width_mm, abs=NEAR)
        assert stroke.dash == pytest.approx(line.dash, abs=NEAR)
        assert (stroke.clip is None) == (line.clip is None)
        if stroke.clip is not None:
            assert stroke.clip == pytest.approx(line.clip, abs=NEAR)
    for ring, circle in zip(printed.rings, plain.rings, strict=True):
        assert ring.centre == pytest.approx(circle.centre, abs=NEAR)
        assert ring.radius_mm == pytest.approx(circle.radius_mm, abs=NEAR)


def test_what_a_reader_jumps_to_is_where_the_ink_is_in_the_file() -> None:
    page = replace(
        full_page(PAPERS["a4"]),
        scale=SCALE,
        links=(Link(Box(10, 20, 30, 45), "hole:kelp:1"),),
        targets=(Target("hole:kelp:1", Point(34.7, 150.125)),),
    )
    with pikepdf.open(io.BytesIO(_written(page))) as pdf:
        _, (_, _, left, top, *_) = pdf.Root.Names.Dests.Names
        (link,) = pdf.pages[0].obj.Annots
        # 34.7 · 1.015228 = 35.228; 150.125 · 0.994 = 149.224
        assert (float(left) / MM, float(top) / MM) == pytest.approx((35.228, 149.224), abs=0.01)
        # 10 and 30 · 1.015228; 20 and 45 · 0.994
        sides = [float(side) / MM for side in link.Rect]
        assert sides == pytest.approx([10.152, 19.88, 30.457, 44.73], abs=0.01)


def test_a_page_without_a_printer_bears_no_transformation() -> None:
    with pikepdf.open(io.BytesIO(_written(full_page(PAPERS["a4"])))) as pdf:
        turns = [
            list(map(float, step.operands))
            for step in pikepdf.parse_content_stream(pdf.pages[0])
            if str(step.operator) == "cm"
        ]
    assert all(turn == [1, 0, 0, 1, 0, 0] for turn in turns)
