from dataclasses import replace

import pytest

from templater.drawing import Line
from templater.geometry import Box
from templater.layout.model import Hanger, Layout
from templater.pipeline import plan_wall
from templater.scene.guide.measure_form import draw_measure_form
from templater.scene.guide.measure_pictures import SKETCH, draw_apart, draw_drop, draw_rise
from tests import builders
from tests.scene.pages import (
    PAPERS,
    assert_inside,
    assert_words_apart,
    assert_words_clear_of_lines,
    blank_form,
    text_of,
    words_of,
)


def _layout() -> Layout:
    rings = builders.hanging(Hanger.D_RINGS, 76.2, apart=304.8)
    wire = builders.hanging(Hanger.WIRE, 57.15, rise=12.7)
    pieces = (
        builders.piece("Tide chart", hang=wire, weight_kg=2.72155422),
        builders.piece("Kelp print", hang=rings),
        builders.piece("Gull study, framed by the keeper's widow in driftwood and brass"),
    )
    known = builders.layout(pieces, furniture=[builders.furniture("boot bench", 762.0)])
    return replace(known, from_whom="Ines Harbour", contact="ines@cottage.example")


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("known", [True, False])
def test_pages_are_clean(paper: str, known: bool) -> None:
    form = blank_form(paper)
    for page in draw_measure_form(_layout() if known else None, form):
        assert_inside(page.items, form.inner)
        assert_words_apart(page)
        assert_words_clear_of_lines(page)


def test_what_the_layout_knows_is_filled_in() -> None:
    text = text_of(draw_measure_form(_layout(), blank_form("a4")))
    # 57.15 mm = 2 1/4 in, 12.7 mm = 1/2 in, 2.72155422 kg = 6 lb (1 lb = 0.45359237 kg)
    assert "1. Tide chart 16 in 20 in wire 2 1/4 in – 1/2 in 6 lb" in text
    assert "2. Kelp print 16 in 20 in d-rings 3 in 12 in" in text
    assert "boot bench 30 in 80 in 34 in" in text
    assert "Send it back to: Ines Harbour, ines@cottage.example" in text
    assert "200 in 96 in inches" in text


def test_a_blank_form_asks_for_everything() -> None:
    text = text_of(draw_measure_form(None, blank_form("a4")))
    for words in (
        "Wall, width",
        "Furniture at the wall",
        "Piece Width Height Hangs by Drop Apart Rise Weight",
        "Remarks. Of the wall also: how thick its board is",
        "pull the wire up",
        "Left and right are always as you see them from the front",
    ):
        assert words in text
    assert "Send it back" not in text


def test_a_blank_form_has_room_for_twelve_pieces() -> None:
    pages = draw_measure_form(None, blank_form("a4"))
    (heading,) = [words for page in pages for words in words_of(page) if words.text == "Hangs by"]
    (last,) = [page for page in pages if heading in page.items]
    rules = {
        round(item.start.y, 3)
        for item in last.items
        if isinstance(item, Line) and item.box.width > 150 and item.start.y < heading.at.y
    }
    # under the heading: its own rule, 12 rows; then the remarks: top, heading, 3 rows
    assert len(rules) == 1 + 12 + 5


WIDE = """\
title: Lamp tower
units: mm
wall:
  width: 4000
  ceiling: [[0, 2600], [2000, 2600], [4000, 1900]]
  surface: drywall
  studs: {first: 200, every: 400}
openings:
  - {name: store door, kind: door, left: 100, bottom: 0, width: 900, height: 2000, swing: left}
fixtures:
  - {name: light switch, left: 1100, middle: 1100, width: 80, height: 120}
pieces:
  - {name: Tide chart, size: 400 x 300, place: {left: 1500}}
"""


def test_what_is_in_the_wall_and_in_the_way_is_asked() -> None:
    text = text_of(draw_measure_form(None, blank_form("a4")))
    for words in (
        "Made of Left end to middle of first stud Stud to stud, middles Ceiling at left end",
        "Doors, windows, switches, sockets, heaters",
        "Of a door, write on which side it has its hinges.",
        "where it bends, tell under Remarks",
    ):
        assert words in text


def test_what_the_layout_knows_of_the_wall_is_filled_in() -> None:
    text = text_of(draw_measure_form(plan_wall(WIDE.encode(), "tower.yaml").layout, blank_form("a4")))
    assert "Ceiling at right end drywall 200 mm 400 mm 2600 mm 1900 mm" in text
    assert "store door 100 mm 0 mm 900 mm 2000 mm" in text
    assert "light switch 1100 mm 1040 mm 80 mm 120 mm" in text  # 1100 - 120 / 2


def test_studs_at_uneven_distances_have_no_spacing() -> None:
    uneven = WIDE.replace("{first: 200, every: 400}", "[200, 600, 1050]")
    text = text_of(draw_measure_form(plan_wall(uneven.encode(), "tower.yaml").layout, blank_form("a4")))
    assert "drywall 200 mm 2600 mm 1900 mm" in text


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_a_blank_form_takes_two_pages(paper: str) -> None:
    assert len(draw_measure_form(None, blank_form(paper))) == 2


def test_sketches_keep_to_their_room() -> None:
    for sketch in (draw_drop(), draw_apart(), draw_rise()):
        assert_inside(sketch, Box(0.0, 0.0, *SKETCH))
