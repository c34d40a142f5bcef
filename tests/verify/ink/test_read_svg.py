"""Drawings written by hand: their ink, their size, and what makes them unreadable."""

from __future__ import annotations

from pathlib import Path

import pytest

from templater.geometry import Box, Point, Size
from templater.verify.ink.read_svg import Drawing, read_svg
from templater.verify.model import Chain, Ink, Ring, Run, Stroke, UnreadableError
from tests.verify.near import near

LINE = '<line x1="1" y1="2" x2="3" y2="2" stroke="#000" stroke-width="0.5"/>'


def _read(
    tmp_path: Path, body: str, *, sides: str = 'width="90mm" height="70mm"', top: float | None = 60.0
) -> Drawing:
    path = tmp_path / "drawing.svg"
    head = f'<svg xmlns="http://www.w3.org/2000/svg" {sides} viewBox="-10 -20 90 70">'
    path.write_text(
        f'{head}<title>Gull</title><g fill="none" stroke="#000" stroke-width="0.5">{body}</g></svg>',
        "utf-8",
    )
    return read_svg(path, top)


def _stroke(x0: float, y0: float, x1: float, y1: float, width: float = 0.5) -> Stroke:
    ends = Point(x0, y0), Point(x1, y1)
    return Stroke(near(ends[0]), near(ends[1]), near(width), (), None)


def test_where_the_view_of_a_drawing_lies(tmp_path: Path) -> None:
    # From -20 to 50 down, with the line 60 as its zero: from 80 down to 10; without it, from its foot.
    assert _read(tmp_path, "").view == Box(-10.0, 10.0, 80.0, 80.0)
    assert _read(tmp_path, "", top=None).view == Box(-10.0, 0.0, 80.0, 70.0)
    assert _read(tmp_path, LINE, top=None).ink.strokes == [_stroke(1, 48, 3, 48)]


@pytest.mark.parametrize(
    ("sides", "size"),
    [
        ('width="90mm" height="70mm"', Size(90, 70)),
        ('width="9cm" height="70.5mm"', Size(90, 70.5)),
        ('width="2in" height="1in"', Size(50.8, 25.4)),
        ('width="90" height="70mm"', None),
        ('height="70mm"', None),
        ('width="90mm"', None),
        ('width="90mmm" height="70mm"', None),
    ],
)
def test_the_physical_size_of_a_drawing(tmp_path: Path, sides: str, size: Size | None) -> None:
    assert _read(tmp_path, "", sides=sides).size == (size and pytest.approx(size))


@pytest.mark.parametrize(
    ("body", "ink"),
    [
        ('<line x1="1" y1="2" x2="3" y2="4"/>', Ink([_stroke(1, 58, 3, 56)])),
        (
            '<line x1="1" y1="2" x2="3" y2="4" stroke-dasharray="2 1"/>',
            Ink([_stroke(1, 58, 3, 56)._replace(dash=(2.0, 1.0))]),
        ),
        ('<circle cx="5" cy="6" r="7"/>', Ink(rings=[Ring(Point(5, 54), 7.0, None)])),
        (
            '<polyline points="1,2 3,4 5,2"/>',
            Ink(chains=[Chain((Point(1, 58), Point(3, 56), Point(5, 58)))]),
        ),
        ('<polyline points="1,2 3,4"/>', Ink([_stroke(1, 58, 3, 56)])),
        (
            '<polygon points="1,2 3,4 5,2"/>',
            Ink(chains=[Chain((Point(1, 58), Point(3, 56), Point(5, 58), Point(1, 58)))]),
        ),
        ('<polygon fill="#000" stroke="none" points="1,2 3,9 5,2"/>', Ink(areas=[Box(1, 51, 5, 58)])),
        ('<circle fill="black" stroke="none" cx="5" cy="6" r="7"/>', Ink(areas=[Box(-2, 47, 12, 61)])),
        ('<g stroke="#000000"><line x1="1" y1="2" x2="3" y2="4"/></g>', Ink([_stroke(1, 58, 3, 56)])),
        (
            '<g aria-label="A" fill="#000"><use href="#a"/></g>',
            Ink(runs=[Run("A", Point(0, 60), Point(1, 0), Point(0, -1), 1000.0)]),
        ),
        ('<defs><line x1="1" y1="2" x2="3" y2="4"/></defs><desc/><metadata/>', Ink()),
        ('<line x1="1" y1="2" x2="3" y2="4" stroke-width="0.1"/>', Ink([_stroke(1, 58, 3, 56, 0.1)])),
        ('<line x1="1" y1="2" x2="3" y2="4" stroke-width="2"/>', Ink([_stroke(1, 58, 3, 56, 2.0)])),
    ],
)  # fmt: skip
def test_what_is_drawn(tmp_path: Path, body: str, ink: Ink) -> None:
    assert _read(tmp_path, body).ink == ink


@pytest.mark.parametrize(
    ("transform", "x", "y"),
    [
        # The point (4, 3), y down.
        ("translate(10 20)", 14, 23),
        ("translate(10)", 14, 3),
        ("scale(2)", 8, 6),
        ("scale(2 3)", 8, 9),
        ("rotate(90)", -3, 4),
        ("rotate(-90)", 3, -4),
        ("rotate(180)", -4, -3),
        ("matrix(2 0 1 3 5 6)", 16, 15),  # 2 x 4 + 1 x 3 + 5; 3 x 3 + 6
        ("matrix(1,2,0,1,0,0)", 4, 11),
        ("translate(10 20) scale(2)", 18, 26),
        ("scale(2) translate(10 20)", 28, 46),
        ("translate( 10 , 20 )\nscale( 2 )", 18, 26),
    ],
)
def test_a_transformation(tmp_path: Path, transform: str, x: float, y: float) -> None:
    circle = f'<circle transform="{transform}" fill="#000" stroke="none" cx="4" cy="3" r="0"/>'
    (area,) = _read(tmp_path, circle).ink.areas
    assert area == pytest.approx(Box(x, 60 - y, x, 60 - y))


def test_sizes_grow_with_their_drawing(tmp_path: Path) -> None:
    ink = _read(
        tmp_path,
        '<g transform="scale(2)"><circle cx="4" cy="3" r="5"/><circle fill="#000" stroke="none" cx="4"'
        ' cy="3" r="5"/><line x1="1" y1="2" x2="3" y2="2" stroke-dasharray="2 1"/>'
        '<g transform="translate(1 2) scale(0.003)" aria-label="A" fill="#000"/></g>',
    ).ink
    assert ink.rings == [Ring(Point(8, 54), 10.0, None)]
    assert ink.areas == [Box(-2, 44, 18, 64)]
    assert ink.strokes == [_stroke(2, 56, 6, 56, 1.0)._replace(dash=(4.0, 2.0))]
    (run,) = ink.runs
    assert (run.text, run.at, run.em_mm) == ("A", near(Point(2, 56)), near(6.0))
    assert (*run.right, *run.up) == pytest.approx((0.006, 0.0, 0.0, -0.006))


def test_words_that_run_upward(tmp_path: Path) -> None:
    group = '<g transform="translate(10 20) rotate(-90) scale(0.003)" aria-label="A" fill="#000"/>'
    (run,) = _read(tmp_path, group).ink.runs
    assert (*run.at, run.em_mm) == pytest.approx((10.0, 40.0, 3.0))
    assert (*run.right, *run.up) == pytest.approx((0.0, 0.003, 0.003, 0.0))


@pytest.mark.parametrize(
    "body",
    [
        '<line x1="1" y1="2" x2="3" y2="4" stroke-width="0.09"/>',
        '<line x1="1" y1="2" x2="3" y2="4" stroke-width="2.1"/>',
        '<g transform="scale(0.1)"><line x1="1" y1="2" x2="3" y2="4"/></g>',
        '<line x1="1" y1="2" x2="3" y2="4" stroke="#111"/>',
        '<line x1="1" y1="2" x2="3" y2="4" stroke="none"/>',
        '<line x1="1" y1="2" x2="3" y2="4" fill="#000"/>',
        '<polygon fill="#fff" points="1,2 3,4 5,2"/>',
        '<polygon fill="red" points="1,2 3,4 5,2"/>',
        '<polygon fill="#000" stroke="red" points="1,2 3,4 5,2"/>',
        '<polygon fill="#fff" stroke="none" points="1,2 3,4 5,2"/>',
        '<polygon fill="#000" points="1,2 3,4 5,2"/>',
        '<g aria-label="A" fill="#fff"/>',
        '<g aria-label="A"/>',
        '<g transform="rotate(90 5 5)"/>',
        '<g transform="scale(1 2 3)"/>',
        '<g transform="matrix(1 0 0 1 0)"/>',
        '<g transform="translate(1 2 3)"/>',
        '<g opacity="0.5"/>',
        '<line aria-label="A" x1="1" y1="2" x2="3" y2="4"/>',
    ],
)
def test_what_makes_a_drawing_unreadable(tmp_path: Path, body: str) -> None:
    with pytest.raises(UnreadableError):
        _read(tmp_path, body)
