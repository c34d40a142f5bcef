"""Rows of a checklist written by hand, held against the plan of one piece."""

from __future__ import annotations

from dataclasses import replace

import pytest

from templater.geometry import Point
from templater.pipeline import plan_wall
from templater.verify.check_checklist import Row, check_rows, read_rows
from templater.verify.model import Run
from tests.verify import gull


def _runs(*texts: str) -> list[Run]:
    return [Run(text, Point(0, 0), Point(1, 0), Point(0, 1), 3.5) for text in texts]


ROW = Row("Gull", "1", "−70 mm (−2 3/4 in)", "400 mm (15 3/4 in)")  # at 400, 1480 mm; the datum at 1550


def test_the_rows_of_a_checklist_are_read_from_its_words() -> None:
    runs = _runs(
        "Checklist",
        "Gull",
        "1",
        "−70 mm",
        "(−2 3/4 in)",
        "400 mm",
        "(15 3/4 in)",
        "2",
        "30 mm",
        "3 mm",
        "tick",
    )
    assert list(read_rows(runs)) == [
        Row("ChecklistGull", "1", "−70 mm (−2 3/4 in)", "400 mm (15 3/4 in)"),
        Row("", "2", "30 mm", "3 mm"),
    ]
    assert list(read_rows(_runs("Gull", "1"))) == []
    assert list(read_rows(_runs("Gull", "1", "30 mm"))) == []
    assert list(read_rows(_runs("Gull", "one", "30 mm", "40 mm"))) == []


def test_the_way_from_the_hole_before_is_read_on_one_line_or_on_two() -> None:
    runs = _runs("1", "9 mm", "8 mm", "2", "9 mm", "7 mm", "1–2: 5 mm", "(3/16 in)", "Tern", "1", "9 mm")
    runs += _runs("6 mm", "2", "9 mm", "5 mm", "1–2: 5 mm (3/16 in)", "Gull", "1", "9 mm", "8 mm")
    assert list(read_rows(runs)) == [
        Row("", "1", "9 mm", "8 mm"),
        Row("", "2", "9 mm", "7 mm", "1–2: 5 mm (3/16 in)"),
        Row("Tern", "1", "9 mm", "6 mm"),
        Row("", "2", "9 mm", "5 mm", "1–2: 5 mm (3/16 in)"),
        Row("Gull", "1", "9 mm", "8 mm"),
    ]


PAIR = b"""
title: Pair
units: mm
wall: {width: 2 m, height: 2.5 m}
datum: {height: 1500}
pieces:
  - name: Tern
    size: 400 x 300
    hang: {by: d-rings, drop: 40, apart: 300, lock: {below_top: 240}}
    place: {left: 300, bottom: 1300}
"""
# Its holes: 350 and 650 mm from the left end, 60 above the datum; the lock at 500, 140 below it. From
# the second to the lock 150 across and 200 down: 250 straight (3-4-5).
FIRST = Row("Tern", "1", "60 mm", "350 mm")
SECOND = Row("Tern", "2", "60 mm", "650 mm", "1–2: 300 mm (11 13/16 in)")
LOCK = Row("Tern", "3", "−140 mm", "500 mm", "2–3: 250 mm")


@pytest.mark.parametrize(
    ("rows", "told"),
    [
        ((FIRST, SECOND, LOCK), []),
        ((FIRST._replace(apart="0–1: 9 mm"), SECOND, LOCK), ["tern hole 1"]),
        ((FIRST, SECOND._replace(apart=""), LOCK), ["tern hole 2"]),
        ((FIRST, SECOND._replace(apart="1–2: 302 mm"), LOCK), ["tern hole 2"]),
        ((FIRST, SECOND._replace(apart="1–3: 300 mm"), LOCK), ["tern hole 2"]),
        ((FIRST, SECOND, LOCK._replace(apart="2–3: 200 mm")), ["tern hole 3"]),
    ],
)
def test_the_way_from_hole_to_hole_is_held_against_the_plan(
    rows: tuple[Row, ...], told: list[str]
) -> None:
    found = list(check_rows(rows, plan_wall(PAIR, "pair.yaml").plan))
    assert [fault.partition(" is told to be “")[0] for fault in found] == told
    assert all(fault.endswith("” from the hole before, which it is not") for fault in found)


def _compare(*rows: Row) -> list[str]:
    return list(check_rows(rows, gull.plan()))


@pytest.mark.parametrize(
    ("rows", "told"),
    [
        ([ROW], []),
        ([ROW._replace(before="Checklist of the  Gull")], []),
        ([ROW._replace(before="Gu…")], []),
        ([], ["gull hole 1 is missing"]),
        ([ROW, ROW], ["row 2 is of a hole that the plan does not have"]),
        ([ROW._replace(before="Gulls")], ["row 1 is not that of gull hole 1"]),
        ([ROW._replace(number="2")], ["row 1 is not that of gull hole 1"]),
        (
            [ROW._replace(from_datum="70 mm (2 3/4 in)")],
            ["gull hole 1 is told to be 70 mm (2 3/4 in) from the datum, not -70.0 mm"],
        ),
        (
            [ROW._replace(across="401 mm")],
            ["gull hole 1 is told to be 401 mm from the left end, not 400.0 mm"],
        ),
    ],
)
def test_the_rows_of_a_checklist(rows: list[Row], told: list[str]) -> None:
    assert _compare(*rows) == told


def test_a_name_whose_letters_may_be_drawn_in_another_order_is_let_be() -> None:
    plan = gull.plan()
    (piece,) = plan.pieces
    row = ROW._replace(before="leuchtturm")
    for name, told in (("灯台", []), ("נמל", []), ("Zürich", ["row 1 is not that of gull hole 1"])):
        named = replace(plan, pieces=(replace(piece, name=name),))
        assert list(check_rows([row], named)) == told
