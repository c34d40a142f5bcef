"""The proof's readers beside readers that share no code with them."""

from __future__ import annotations

from math import dist
from pathlib import Path

import pikepdf
import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.geometry import Point, Size
from templater.verify.ink.read_fonts import read_string
from templater.verify.ink.read_pdf import open_pdf
from templater.verify.ink.read_svg import read_svg
from templater.verify.model import Ink, UnreadableError
from tests.kits import MadeKit
from tests.reading import Ink as OtherInk

POINTS = 72 / 25.4  # a point is 1/72 in (ISO 32000-1, 8.3.2.3)


def _assert_same(ink: Ink, other: OtherInk) -> None:
    """Both readers found the same lines, circles and words, in the same order."""
    assert len(ink.strokes) == len(other.strokes)
    for stroke, line in zip(ink.strokes, other.strokes, strict=True):
        assert dist(stroke.start, line.start) + dist(stroke.end, line.end) < 1e-6
        assert stroke.width_mm == pytest.approx(line.width_mm)
        assert stroke.dash == pytest.approx(line.dash)
        assert (stroke.clip is None) == (line.clip is None)
        assert stroke.clip is None or stroke.clip == pytest.approx(line.clip)
    rings = [ring for ring in other.rings if not ring.filled]
    assert [ring.centre for ring in ink.rings] == [
        pytest.approx(ring.centre, abs=1e-4) for ring in rings
    ]
    assert [ring.radius_mm for ring in ink.rings] == pytest.approx(
        [ring.radius_mm for ring in rings],
        abs=4e-3,  # of curves, whose points are rounded to 0.01 pt where the page is large
    )
    assert [run.text for run in ink.runs] == [run.text for run in other.runs]


def test_a_kits_pages_are_read_alike_by_another_reader(kit: MadeKit) -> None:
    with open_pdf(kit.folder / "kit.pdf") as document:
        assert document.count == len(kit.pages)
        for number, other in enumerate(kit.pages, 1):
            assert document.read_paper(number) == pytest.approx(other.size)
            _assert_same(document.read_ink(number), other)


def test_a_kits_drawings_are_read_alike_by_another_reader(kit: MadeKit) -> None:
    for slug, piece in kit.pieces.items():
        _, y0, _, y1 = piece["rect_mm"]
        other = kit.template(slug)
        drawing = read_svg(kit.folder / "templates" / f"{slug}.svg", y1 - y0)
        assert drawing.size == pytest.approx((other.width_mm, other.height_mm))
        assert drawing.view == pytest.approx(other.view)
        _assert_same(drawing.ink, other.ink)


def _page(tmp_path: Path, content: str) -> Path:
    """A file of one page 100 mm square with this content."""
    path = tmp_path / "page.pdf"
    with pikepdf.new() as document:
        page = document.add_blank_page(page_size=(100 * POINTS, 100 * POINTS))
        page.Contents = document.make_stream(content.encode("latin-1"))
        document.save(path)
    return path


def _ink(tmp_path: Path, content: str) -> Ink:
    with open_pdf(_page(tmp_path, content)) as document:
        assert document.read_paper(1) == pytest.approx(Size(100, 100), abs=1e-3)
        return document.read_ink(1)


def test_transformations_pile_up_and_are_taken_off_again(tmp_path: Path) -> None:
    # 72 points are 25.4 mm. Within: first moved by (1 in, 0), then doubled; so (1, 1) in -> (4, 2) in.
    ink = _ink(
        tmp_path, "q 2 0 0 2 0 0 cm q 1 0 0 1 72 0 cm 0 0 m 72 72 l S Q 0 0 m 72 0 l S Q 0 0 m 72 0 l S"
    )
    ends = [(*stroke.start, *stroke.end) for stroke in ink.strokes]
    assert ends[0] == pytest.approx((50.8, 0, 101.6, 50.8))
    assert ends[1] == pytest.approx((0, 0, 50.8, 0))
    assert ends[2] == pytest.approx((0, 0, 25.4, 0))
    # A line is 1 point wide by default, 0.3528 mm; doubled inside.
    assert [stroke.width_mm for stroke in ink.strokes] == pytest.approx(
        [25.4 / 36, 25.4 / 36, 25.4 / 72]
    )


def test_a_printers_factors_and_an_origin_are_taken_out(tmp_path: Path) -> None:
    with open_pdf(_page(tmp_path, "72 72 m 144 72 l S")) as document:
        ink = document.read_ink(1, (2.0, 0.5), Point(25.4, 12.7))
    # Across: (25.4 - 25.4) / 2 and (50.8 - 25.4) / 2; up: (25.4 - 12.7) / 0.5.
    (stroke,) = ink.strokes
    assert (*stroke.start, *stroke.end) == pytest.approx((0, 25.4, 12.7, 25.4))


def test_clips_meet_and_end_with_the_state_they_belong_to(tmp_path: Path) -> None:
    ink = _ink(
        tmp_path,
        "q 0 0 144 144 re W n q 72 72 144 144 re W* n 0 0 m 1 1 l S Q 0 0 m 1 1 l S Q 0 0 m 1 1 l S",
    )
    inner, outer, none = (stroke.clip for stroke in ink.strokes)
    assert inner == pytest.approx((25.4, 25.4, 50.8, 50.8))
    assert outer == pytest.approx((0, 0, 50.8, 50.8))
    assert none is None


@pytest.mark.parametrize(
    "content",
    [
        "0 0 m 1 1 l X",  # an operator that is not known
        "0 0 m 1 l S",  # a number too few
        "0 0 m 1 1 1 l S",  # one too many
        "/Form Do",
        "0.5 g 0 0 9 9 re f",  # ink that is not black
        "1 0 0 RG 0 0 m 9 9 l S",
        "0 0 0 0.9 k 0 0 9 9 re f",
        "0 w 0 0 m 9 9 l S",  # a line that may not be seen
        "9 w 0 0 m 9 9 l S",  # one that may hide others
        "/OC /Layer BDC 0 0 m 9 9 l S EMC",
        "7 Tr",
        "Q",
        "q",
        "(words) Tj",
        "0 0 m 1 1 l S }",
        "0 0 m 1 1 2 2 3 3 c S",
        "1 1 l S",
        "0 0 m 5 0 l 5 5 l W n",  # a clip that is no rectangle
        "1 0 0 1 0 cm",
        "0 0 m 1 1 l S (words",
        "0 0 m 1 1 l S %ends\n(",
    ],
)
def test_what_cannot_be_followed_is_refused(tmp_path: Path, content: str) -> None:
    with pytest.raises(UnreadableError):
        _ink(tmp_path, content)


def test_comments_and_odd_spaces_are_no_ink(tmp_path: Path) -> None:
    ink = _ink(tmp_path, "% a note (with words\n0\t0 m\r\n 72.\f.0 l S%end")
    (stroke,) = ink.strokes
    assert (*stroke.start, *stroke.end) == pytest.approx((0, 0, 25.4, 0))


@given(st.binary(max_size=40))
def test_a_string_is_read_as_pikepdf_writes_it(content: bytes) -> None:
    assert read_string(pikepdf.String(content).unparse()) == content


# ISO 32000-1, table 3 and the examples below it.
@pytest.mark.parametrize(
    ("written", "meant"),
    [
        (rb"(a\(b\)\\)", rb"a(b)" + b"\\"),
        (rb"(\053\53\0053)", b"++\x053"),
        (b"(one\\\ntwo)", b"onetwo"),
        (b"<901FA>", b"\x90\x1f\xa0"),
        (rb"(\n\t\q)", b"\n\tq"),
        (b"(a (b) c)", b"a (b) c"),
    ],
)
def test_strings_are_read_by_the_standard(written: bytes, meant: bytes) -> None:
    assert read_string(written) == meant


SVG = '<svg xmlns="http://www.w3.org/2000/svg" width="{}" height="{}" viewBox="0 0 100 50">{}</svg>'
LINE = '<line x1="1" y1="2" x2="3" y2="2" stroke="#000" stroke-width="0.5"/>'


def _drawing(tmp_path: Path, body: str, width: str = "100mm", height: str = "5cm") -> Path:
    path = tmp_path / "drawing.svg"
    path.write_text(SVG.format(width, height, body), encoding="utf-8")
    return path


def test_transformations_of_a_drawing_act_from_the_last_to_the_first(tmp_path: Path) -> None:
    group = (
        f'<g fill="none" transform="translate(10 20) scale(2)"><g transform="rotate(90)">{LINE}</g></g>'
    )
    drawing = read_svg(_drawing(tmp_path, group))
    # Turned by 90 degrees (y points down): (1, 2) -> (-2, 1); doubled, moved: (6, 22); y up: 50 - 22.
    (stroke,) = drawing.ink.strokes
    assert stroke.start == pytest.approx(Point(6, 28))
    assert stroke.end == pytest.approx(Point(6, 24))
    assert stroke.width_mm == pytest.approx(1.0)
    assert drawing.size == pytest.approx(Size(100, 50))


@pytest.mark.parametrize(("width", "height"), [("100", "50mm"), ("100%", "50mm"), ("100px", "50px")])
def test_a_size_without_a_unit_of_length_is_none(tmp_path: Path, width: str, height: str) -> None:
    assert read_svg(_drawing(tmp_path, "", width, height)).size is None


@pytest.mark.parametrize(
    "body",
    [
        '<g fill="none"><path d="M0 0L1 1"/></g>',
        '<g fill="none"><svg><image/></svg></g>',
        f'<g fill="none" style="display: none">{LINE}</g>',
        f'<g fill="none" display="none">{LINE}</g>',
        f'<g fill="none" transform="skewX(3)">{LINE}</g>',
        f'<g fill="none" clip-path="url(#a)">{LINE}</g>',
        f'<g fill="none" stroke-opacity="0">{LINE}</g>',
        f'<g fill="none">{LINE.replace("#000", "#fff")}</g>',
        f'<g fill="none">{LINE.replace("0.5", "0")}</g>',
        f'<g fill="none" aria-label="words">{LINE}</g>',
        '<polygon fill="#fff" stroke="none" points="0,0 9,0 9,9"/>',
        '<g fill="none"><line x1="1"/></g>',
        "<g>",
    ],
)
def test_a_drawing_that_cannot_be_followed_is_refused(tmp_path: Path, body: str) -> None:
    with pytest.raises(UnreadableError):
        read_svg(_drawing(tmp_path, body))
