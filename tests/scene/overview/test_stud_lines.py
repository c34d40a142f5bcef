"""Studs on templates and on the elevation."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from math import hypot

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.drawing import Item, Line, Words
from templater.geometry import Box, Point, Size
from templater.lettering import words_box
from templater.placement.model import PlacedPiece, Plan
from templater.scene.lines import FINE, short_dash, spaced_dash
from templater.scene.overview.elevation import fit_elevation
from templater.scene.overview.stud_lines import draw_studs
from templater.scene.overview.title_block import draw_key
from templater.scene.template.board import Cover
from templater.scene.template.guide_lines import TemplateLines
from tests.scene.templates import draw, placed, plan_for
from tests.scene.walls import INCH, bench_wall, landscape_form

DASH = spaced_dash(FINE)


def studs_on(width: float, *studs: float) -> list[float]:
    """Where the lines of studs are on a template; its left edge is at 500 mm on the wall."""
    lines = TemplateLines.of(*with_studs(width, *studs))
    return [round(line.start.x, 3) for line, cover in lines.list_lines() if cover is Cover.STUD]


def with_studs(width: float, *studs: float) -> tuple[PlacedPiece, Plan]:
    piece = placed(Size(width, 400), [(100.0, 350.0)])
    return piece, plan_for(piece, studs=studs)


@pytest.mark.parametrize(
    ("studs", "lines"),
    [
        # A template from 500 to 800 mm; a 2 x 4 is 1 1/2 in wide (PS 20): 19.05 mm to each side.
        ((580.0,), [60.95, 80.0, 99.05]),
        ((510.0,), [10.0, 29.05]),
        ((490.0,), [9.05]),
        ((480.0,), []),
        ((810.0,), [290.95]),
        ((650.0,), [130.95, 169.05]),  # its centre is the piece's own centre line, at 150 mm
        ((500.2,), [19.25]),  # as good as the outline
        ((520.0, 780.0), [0.95, 20.0, 39.05, 260.95, 280.0, 299.05]),
    ],
)
def test_where_a_studs_lines_are(studs: tuple[float, ...], lines: list[float]) -> None:
    assert studs_on(300, *studs) == pytest.approx(lines)


@given(st.lists(st.floats(400, 900), max_size=4))
def test_no_line_of_a_stud_enters_a_ring(studs: list[float]) -> None:
    lines = TemplateLines.of(*with_studs(300, *studs))
    (hole,) = (mark.hole for mark in lines.marks)
    for line, cover in lines.draw_lines():
        if cover is Cover.STUD:
            x, (y0, y1) = line.start.x, sorted((line.start.y, line.end.y))
            near = min(max(hole.y, y0), y1)
            assert hypot(x - hole.x, near - hole.y) > 5.0


def test_studs_look_like_no_line_that_is_cut_or_levelled() -> None:
    lines = TemplateLines.of(*with_studs(300, 580.0))
    looks = {line.dash for line, cover in lines.list_lines() if cover is not Cover.STUD}
    assert DASH not in {*looks, short_dash(FINE)}


def test_each_centre_is_named() -> None:
    piece = placed(Size(900, 250), [(450.0, 200.0)])
    drawn = draw(piece, "a3", studs=(600.0, 1000.0))
    assert drawn.label_text().count("stud centre") == 2 * len(
        [tile for tile in drawn.sheets if tile.keep.x0 < 100 < tile.keep.x1]
    )
    assert "stud" not in draw(piece, "a3").label_text()


def test_of_a_stud_beside_the_paper_the_edge_is_named() -> None:
    piece = placed(Size(300, 250), [(150.0, 200.0)])
    text = draw(piece, "a3", studs=(490.0,)).label_text()
    assert (text.count("stud edge"), text.count("stud centre")) == (1, 0)


def test_a_stud_behind_the_centre_line_is_named_though_its_line_is_not_drawn() -> None:
    piece = placed(Size(300, 250), [(150.0, 200.0)])
    drawn = draw(piece, "a3", studs=(650.0,))
    assert "stud centre" in drawn.label_text()
    assert [line.start.x for line in drawn.lines if line.dash == DASH and line.start.x == 150.0] == []


def elevation(*studs: float) -> tuple[Item, ...]:
    """The wall with the bench on a page; studs in inches."""
    plan = replace(bench_wall(), studs=tuple(stud * INCH for stud in studs))
    room = landscape_form("letter").inner
    return fit_elevation(plan, [room.size]).draw(plan, Point(room.x0, room.y1)).items


def stud_lines(items: Iterable[Item]) -> list[Line]:
    return [item for item in items if isinstance(item, Line) and item.dash == DASH]


def test_the_elevation_shows_studs_behind_what_hangs_and_stands() -> None:
    # The wall is 96 in high. At 48 in the bench hides 34 in of a stud and Tide chart 20 in.
    (free,), behind = stud_lines(elevation(128)), stud_lines(elevation(48))
    whole = free.end.y - free.start.y
    seen = sum(line.end.y - line.start.y for line in behind)
    assert seen == pytest.approx(whole * (96 - 34 - 20) / 96)
    assert stud_lines(elevation()) == []


def test_no_stud_runs_through_words() -> None:
    items = elevation(*range(0, 196, 16))
    words = [words_box(item) for item in items if isinstance(item, Words)]
    lines = stud_lines(items)
    assert len(lines) > 12
    assert not [box for box in words for line in lines if box.meets(line.box.grown(0.1))]


def test_the_key_tells_of_studs_where_there_are_any() -> None:
    def text(plan: Plan) -> str:
        return " ".join(item.text for item in draw_key(plan, 100.0).items if isinstance(item, Words))

    assert "the centre of a stud" in text(replace(bench_wall(), studs=(400.0,)))
    assert "stud" not in text(bench_wall())


def test_studs_end_at_a_sloping_ceiling() -> None:
    frame, slope = Box(0, 0, 100, 50), (Point(0, 50), Point(50, 50), Point(100, 30))
    tops = [line.end.y for line in draw_studs([25, 75], frame, (), solids=(), ceiling=slope)]
    assert tops == pytest.approx([50, 40])


def test_studs_that_bunch_on_paper_are_drawn_once() -> None:
    frame = Box(0, 0, 100, 50)
    lines = draw_studs([10, 11, 30, 101], frame, (), solids=(), ceiling=())
    assert [line.start.x for line in lines] == [10, 30]
