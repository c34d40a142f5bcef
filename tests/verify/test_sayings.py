"""What sheets say in words, told apart: rows of one block from those of the next under it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from templater.geometry import Box, Point, Size
from templater.pipeline import plan_wall
from templater.verify.check_checklist import Row, read_rows
from templater.verify.check_parts import Part, check_part
from templater.verify.check_spacers import Strips, check_strips
from templater.verify.hole_words import check_hole_words
from templater.verify.model import Ink, Run
from templater.verify.own_words import check_revision, read_number
from templater.verify.template_marks import HoleMeasures, TemplateMarks

ROW = 4.75  # 1.9 times capitals of 2.5 mm (ISO 3098: 1.9 h from line to line where accents occur)
MEASURES = HoleMeasures(across=600.0, height=1500.0, from_datum=0.0, drop=50.0, rise=0.0, aside=0.0)
MARKS = TemplateMarks(
    Size(200.0, 200.0), (Point(100.0, 150.0),), (Point(100.0, 150.0),), (MEASURES,), (150.0,), None, ()
)
PAIR = b"""
title: Pair
units: mm
wall: {width: 2 m, height: 2.6 m}
pieces: [{name: Gull, size: 200 x 200}, {name: Tern, size: 200 x 200}]
groups: [{name: pair, pieces: [Gull, Tern], arrange: row, gap: 42.5}]
"""


def _say(*rows: tuple[str, float]) -> list[Run]:
    """Rows of words, each with how far it stands below the one before."""
    runs, y = [], 100.0
    for text, down in rows:
        y -= down
        runs.append(Run(text, Point(20.0, y), Point(1.0, 0.0), Point(0.0, 1.0), 3.5))
    return runs


def test_the_centre_line_under_a_holes_words_tells_its_own_measure() -> None:
    runs = _say(
        ("HOLE 1 of 1", 0.0),
        ("from the wall's left end: 600 mm", ROW),
        ("CENTRE LINE, plumb (upright)", 7.0),
        ("from the wall's left end: 612 mm", ROW),
    )
    assert not list(check_hole_words(runs, MARKS))


def test_every_row_of_a_holes_own_words_is_read() -> None:
    runs = _say(
        ("HOLE 1 of 1", 0.0),
        ("from the wall's left end: 600 mm", ROW),
        ("drop, frame's top edge to hang", ROW),
        ("point: 52 mm", ROW),
    )
    (fault,) = check_hole_words(runs, MARKS)
    assert fault.startswith("hole 1 is told to be 52 mm below the frame's top edge")


def test_a_strip_for_a_gap_of_half_a_millimetre_may_be_drawn_a_hair_narrower() -> None:
    # 42.5 mm is told as 43 mm; on paper, rounded to 0.0001 pt, it may measure 42.4999 mm.
    plan = plan_wall(PAIR, "pair.yaml").plan
    assert not list(check_strips([Strips([42.49995], ["43 mm (1 11/16 in)"], [])], plan))
    assert list(check_strips([Strips([42.49995], ["42 mm (1 5/8 in)"], [])], plan))


def _ink(*texts: str) -> Ink:
    return Ink(runs=_say(*((text, 20.0) for text in texts)))


def test_a_piece_may_be_called_as_pages_say_of_themselves() -> None:
    ink = _ink("page 3 of 9", "rev ABCDEF", "page 4 of 12", "rev K7M2Q4")
    names = "Hall\npage 3 of 9\nrev ABCDEF"
    assert read_number(ink, names) == (4, 12)
    assert read_number(ink, "Hall") is None
    assert not list(check_revision(ink, "K7M2Q4", names))
    assert list(check_revision(ink, "K7M2Q4", "Hall"))
    # Its own words are read where a name is the same.
    assert read_number(_ink("page 3 of 9"), names) == (3, 9)


def test_a_piece_may_be_called_by_a_length_in_the_checklist() -> None:
    first, second = read_rows(
        _ink("Gull", "1", "+30 mm", "534 mm", "12 mm", "1", "+40 mm", "700 mm").runs
    )
    assert first == Row("Gull", "1", "+30 mm", "534 mm")
    assert second == Row("12 mm", "1", "+40 mm", "700 mm")


@pytest.mark.parametrize(
    "name", ["HOLE 1 of 1", "from the wall's left end: 12 mm", "HOLES, from the wall's left end 1: 3 mm"]
)
def test_a_piece_may_be_called_as_sheets_say_of_holes(name: str) -> None:
    runs = _say(("HOLE 1 of 1", 0.0), (name, ROW), ("from the wall's left end: 600 mm", ROW))
    assert not list(check_hole_words(runs, replace(MARKS, given=f"Hall\n{name}")))


@pytest.mark.parametrize(("bottom", "count"), [(900, 0), (980, 1)])
def test_a_part_of_the_wall_shows_the_holes_of_the_pieces_that_it_shows(bottom: int, count: int) -> None:
    # 200 tall, its hole 60 - 10 = 50 above its top: at 1150 and 1230, both in the part; so is the second
    # piece's upper edge, at 1180, and not the first one's, at 1100.
    source = f"""
title: Part
units: mm
wall: {{width: 2 m, height: 2.6 m}}
pieces:
  - name: Gull
    size: 200 x 200
    hang: {{by: nail, drop: 10, rise: 60}}
    place: {{left: 200, bottom: {bottom}}}
"""
    plan = plan_wall(source.encode(), "part.yaml").plan
    part = Part(10.0, Box(0.0, 1120.0, 1000.0, 2000.0))
    assert len(list(check_part(Ink(), part, plan))) == count
