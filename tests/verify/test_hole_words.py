"""Words of a sheet written by hand: the numbers of holes beside them, and what is told of each."""

from __future__ import annotations

from dataclasses import replace

import pytest

from templater.geometry import Point, Size
from templater.verify.hole_words import check_hole_words
from templater.verify.model import Run
from templater.verify.template_marks import HoleMeasures, TemplateMarks

# Two holes 100 mm apart, the second one 30 mm under the datum and left of the furniture's middle.
FIRST = HoleMeasures(across=600.0, height=1500.0, from_datum=0.0, drop=50.0, rise=10.0, aside=60.0)
SECOND = HoleMeasures(across=700.0, height=1470.0, from_datum=-30.0, drop=80.0, rise=-12.0, aside=-40.0)
HOLES = (Point(50.0, 150.0), Point(150.0, 120.0))
MARKS = TemplateMarks(Size(200.0, 200.0), HOLES, HOLES, (FIRST, SECOND), (), None, ())


def _rows(*texts: str, x: float = 20.0, y: float = 60.0, pitch: float = 4.75) -> list[Run]:
    """Rows under each other."""
    return [
        Run(text, Point(x, y - pitch * number), Point(1, 0), Point(0, 1), 3.5)
        for number, text in enumerate(texts)
    ]


def _told(*runs: Run, marks: TemplateMarks = MARKS) -> list[str]:
    return list(check_hole_words(runs, marks))


@pytest.mark.parametrize(
    ("x", "y", "is_near"),
    [(60.9, 150, True), (61.1, 150, False), (50, 139.1, True), (50, 138.9, False), (39.1, 160.9, True)],
)
def test_the_number_beside_a_hole(x: float, y: float, is_near: bool) -> None:
    (run,) = _rows("1", x=x, y=y)
    assert _told(run) == []
    assert _told(run._replace(text="2")) == (["hole 1 bears the number 2"] if is_near else [])
    assert _told(run._replace(text="two")) == []


def test_a_number_between_two_holes_may_be_either() -> None:
    marks = replace(MARKS, holes=(Point(50.0, 150.0), Point(55.0, 150.0)))
    for number, told in (("1", []), ("2", []), ("3", ["hole 1 bears the number 3"])):
        (run,) = _rows(number, x=52.0, y=155.0)
        assert _told(run, marks=marks) == told


SAYINGS = (
    "from the wall's left end: {}",
    "from the datum: {}",
    "above the floor at the datum's place: {}",
    "drop, frame's top edge to hang point: {}",
    "hang point: {} the hole",
    "from the middle of the sea chest: {}",
)
OF_FIRST = ("600 mm", "0 mm", "1500 mm", "50 mm", "10 mm above", "60 mm right")
OF_SECOND = ("700 mm", "−30 mm", "1470 mm", "80 mm", "12 mm below", "40 mm left")
MEANINGS = (
    ("from the wall's left end", "600.0"),
    ("from the datum", "0.0"),
    ("above the floor", "1500.0"),
    ("below the frame's top edge with its hang point", "50.0"),
    ("from its hang point", "10.0"),
    ("from the furniture's middle", "60.0"),
)


def _block(heading: str, measures: tuple[str, ...]) -> list[str]:
    return [heading, *(saying.format(told) for saying, told in zip(SAYINGS, measures, strict=True))]


def test_what_is_told_of_each_hole() -> None:
    assert _told(*_rows(*_block("HOLE 1 of 2", OF_FIRST))) == []
    assert _told(*_rows(*_block("HOLE 2 of 2", OF_SECOND))) == []
    # One block under the other, and one beside it.
    both = _block("HOLE 1", OF_FIRST) + _block("HOLE 2", OF_SECOND)
    assert _told(*_rows(*both)) == []
    assert _told(*_rows(*_block("HOLE 1", OF_FIRST)), *_rows(*_block("HOLE 2", OF_SECOND), x=90.0)) == []
    assert len(_told(*_rows(*_block("HOLE 1", OF_SECOND)))) == 6
    assert len(_told(*_rows(*_block("HOLE 2", OF_FIRST)))) == 6


@pytest.mark.parametrize("at", range(6))
def test_each_measure_is_held_against_the_plan(at: int) -> None:
    other = ("601 mm", "1 mm", "1501 mm", "51 mm", "10 mm below", "60 mm left")[at]
    measures = (*OF_FIRST[:at], other, *OF_FIRST[at + 1 :])
    meaning, wanted = MEANINGS[at]
    assert _told(*_rows(*_block("HOLE 1 of 2", measures))) == [
        f"hole 1 is told to be {other} {meaning}, the plan has {wanted} mm"
    ]
    # What a name says too is let be, and only that.
    given = SAYINGS[at].format(other)
    assert _told(*_rows(*_block("HOLE 1 of 2", measures)), marks=replace(MARKS, given=given)) == []
    assert len(_told(*_rows(*_block("HOLE 1", OF_SECOND)), marks=replace(MARKS, given=given))) == 5


OF_THE_OTHER = (
    "hole 2 is told to be 50 mm below the frame's top edge with its hang point, the plan has 80.0 mm"
)


@pytest.mark.parametrize(
    ("heading", "told"),
    [
        ("HOLE 3", ["it tells of HOLE 3, which the plan does not have"]),
        ("HOLE 1 of 3", ["it tells of HOLE 1 of 3, which the plan does not have"]),
        ("HOLE 1 of 1", ["it tells of HOLE 1 of 1, which the plan does not have"]),
        ("HOLES 1, 3", ["it tells of HOLES 1, 3, which the plan does not have"]),
        ("HOLES 1, 2", [OF_THE_OTHER]),
        ("ALL HOLES", [OF_THE_OTHER]),
        ("HOLES 2", [OF_THE_OTHER]),
        ("HOLE one", []),
    ],
)  # fmt: skip
def test_headings(heading: str, told: list[str]) -> None:
    assert _told(*_rows(heading, SAYINGS[3].format("50 mm"))) == told


def test_what_is_told_of_all_holes_is_held_against_the_first_too() -> None:
    told = _told(*_rows("ALL HOLES", SAYINGS[3].format("80 mm")))
    assert [fault.split(" is told")[0] for fault in told] == ["hole 1"]


def test_a_heading_of_no_hole_ends_no_search() -> None:
    runs = [
        *_rows("HOLE 3", SAYINGS[3].format("50 mm")),
        *_rows("HOLE 1", SAYINGS[3].format("51 mm"), x=90.0),
    ]
    assert len(_told(*runs)) == 2


def test_rows_of_one_block_stand_one_under_the_other() -> None:
    rows = _rows("HOLE 1 of 2", SAYINGS[3].format("51 mm"))
    assert len(_told(*rows)) == 1
    assert _told(*_rows("HOLE 1 of 2", SAYINGS[3].format("51 mm"), pitch=5.1)) == []
    assert _told(*_rows("HOLE 1 of 2", SAYINGS[3].format("51 mm"), pitch=-4.0)) == []
    assert _told(*_rows("HOLE 1 of 2", SAYINGS[3].format("51 mm"), pitch=0.0)) == []
    assert _told(rows[0], rows[1]._replace(at=rows[1].at.moved(0.02, 0.0))) == []
    assert _told(rows[1], rows[0]) == []


KEY = "HOLES, from the wall's left end"


@pytest.mark.parametrize(
    ("rows", "told"),
    [
        (["1: 600 mm 2: 700 mm"], []),
        (["1: 600 mm", "2: 700 mm (27 9/16 in)"], []),
        (
            ["1: 601 mm 2: 700 mm"],
            ["hole 1 is told to be 601 mm from the wall's left end, the plan has 600.0 mm"],
        ),
        (["1: 600 mm 3: 700 mm"], ["it tells of hole 3, which the plan does not have"]),
    ],
)  # fmt: skip
def test_a_key_of_holes(rows: list[str], told: list[str]) -> None:
    assert _told(*_rows(KEY, *rows)) == told
    assert _told(*_rows(KEY, *rows), marks=replace(MARKS, given=f"{KEY} and more")) == []
