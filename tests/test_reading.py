"""The reader itself, on files written by hand; 72 points are 25.4 mm."""

from __future__ import annotations

import pikepdf
import pytest

from templater.geometry import Box, Point
from tests.reading import Ink, read_pdf_page, read_svg


def _ink(content: bytes) -> Ink:
    pdf = pikepdf.new()
    page = pdf.add_blank_page(page_size=(144, 288))
    page.Contents = pdf.make_stream(content)
    return read_pdf_page(page)


def test_a_line_is_found_through_the_whole_stack_of_transformations() -> None:
    ink = _ink(b"q 1 0 0 1 36 0 cm q 2 0 0 2 36 36 cm 3 w [4 1] 0 d 0 0 m 36 0 l S Q Q 0 0 m 0 72 l S")
    moved, plain = ink.strokes
    assert ink.size == pytest.approx((50.8, 101.6))
    assert [*moved.start, *moved.end] == pytest.approx([25.4, 12.7, 50.8, 12.7])
    assert moved.width_mm == pytest.approx(6 / 72 * 25.4)
    assert moved.dash == pytest.approx((8 / 72 * 25.4, 2 / 72 * 25.4))
    assert plain.end == pytest.approx((0, 25.4))
    assert not plain.dash


def test_a_print_at_999_per_mille_is_noticed() -> None:
    ink = _ink(b"q .999 0 0 .999 0 0 cm 0 0 m 72 0 l S Q")
    assert ink.strokes[0].end.x == pytest.approx(25.3746)
    assert abs(ink.strokes[0].end.x - 25.4) > 0.01


def test_clipping_holds_until_it_is_undone() -> None:
    ink = _ink(b"q 0 0 72 36 re W n 0 0 m 9 9 l S Q 0 0 m 9 9 l S")
    assert [stroke.clip for stroke in ink.strokes] == [pytest.approx(Box(0, 0, 25.4, 12.7)), None]


@pytest.mark.parametrize(
    "content",
    [
        b"1 0 0 rg 0 0 m 9 0 l S",  # a colour
        b"q 2 0 0 1 0 0 cm 0 0 m 9 0 l S Q",  # lengths across and up differ
        b"0 0 m 9 0 0 9 9 9 c S",  # a curve that is no circle
        b"0 0 m 9 0 9 0 9 9 c 9 9 0 9 0 9 c 0 9 0 0 0 0 c 0 0 5 0 5 0 c S",
        b"q 0 0 m 9 0 l S",  # a state that is never brought back
    ],
)
def test_ink_that_the_reader_does_not_understand_is_an_error(content: bytes) -> None:
    with pytest.raises(ValueError, match=r"colour|differ|no circle|without its Q"):
        _ink(content)


def test_an_operator_that_the_reader_does_not_know_is_an_error() -> None:
    with pytest.raises(KeyError):
        _ink(b"/Image Do")


def test_an_svg_is_read_with_y_up() -> None:
    reading = read_svg(
        '<svg xmlns="http://www.w3.org/2000/svg" width="2in" height="25.4mm" viewBox="-5 -10 50.8 25.4">'
        '<g fill="none" stroke="#000" transform="translate(1 2) rotate(90) scale(2 2)">'
        '<line x1="0" y1="0" x2="3" y2="0" stroke-width="0.25"/></g></svg>',
        top=30.0,
    )
    assert (reading.width_mm, reading.height_mm) == pytest.approx((50.8, 25.4))
    assert reading.view == pytest.approx(Box(-5, 14.6, 45.8, 40))
    (line,) = reading.ink.strokes
    # Three units to the right, doubled, turned clockwise by 90 degrees: six down from (1, 30 - 2).
    assert [line.start, line.end] == [pytest.approx(Point(1, 28)), pytest.approx(Point(1, 22))]
    assert line.width_mm == pytest.approx(0.5)
