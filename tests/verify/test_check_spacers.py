"""Strips drawn by hand: which are told as strips, and what is wrong with each."""

from __future__ import annotations

from dataclasses import replace

import pytest

from templater.geometry import Point
from templater.pipeline import plan_wall
from templater.verify.check_spacers import Strips, check_strips, read_strips
from templater.verify.model import Chain, Ink, Run

PAIR = b"""
title: Pair
units: mm
wall: {width: 2 m, height: 2.6 m}
pieces: [{name: Gull, size: 200 x 200}, {name: Tern, size: 200 x 200}]
groups: [{name: pair, pieces: [Gull, Tern], arrange: row, gap: 60}]
"""
SAYING = "60 mm (2 3/8 in)"  # 60 / 25.4 = 2.362; 2 3/8 = 2.375


def _run(text: str) -> Run:
    return Run(text, Point(10, 10), Point(1, 0), Point(0, 1), 3.5)


def _strip(width: float, length: float = 150.0, bend: float = 0.0) -> Chain:
    """A closed rectangle, of which one corner may be a little lower."""
    corners = (
        Point(20, 30),
        Point(20 + length, 30),
        Point(20 + length, 30 + width - bend),
        Point(20, 30 + width),
    )
    return Chain((*corners, corners[0]))


def _told(*pages: Strips) -> list[str]:
    return list(check_strips(pages, plan_wall(PAIR, "pair.yaml").plan))


def test_strips_are_read_with_what_they_say() -> None:
    words = [
        _run(f"gap {SAYING}: hold it between two frames"),
        _run("gap 9 mm: hold"),
        _run("gap 200 mm: too"),
        _run("wide"),
    ]
    strips = [
        _strip(60.0),
        _strip(60.0, length=49.9),
        Chain(_strip(60.0).points[:4]),
        _strip(60.0, bend=0.5),
    ]
    read = read_strips(Ink(chains=strips, runs=words), "gap 9 mm: hold")
    assert read == Strips([60.0], [SAYING], ["200 mm"])
    assert read_strips(Ink(chains=[_strip(60.0, length=50.1)]), "").widths_mm == [60.0]
    upright = Chain(tuple(Point(y, x) for x, y in _strip(60.0).points))
    assert read_strips(Ink(chains=[upright]), "").widths_mm == [150.0]  # they all lie level


@pytest.mark.parametrize(
    ("pages", "told"),
    [
        ([Strips([60.0], [SAYING], [])], []),
        ([Strips([60.009], [SAYING], [])], []),
        ([Strips([], [], []), Strips([60.0], [SAYING], [])], []),
        ([Strips([], [], [SAYING])], []),
        ([], ["the gap of 60.0 mm has no strip"]),
        ([Strips([], [], ["70 mm"])], ["the gap of 60.0 mm has no strip"]),
        (
            [Strips([60.02], [SAYING], [])],
            ["a strip is 60.020 mm wide, 0.020 mm off the gap that is nearest"],
        ),
        (
            [Strips([59.98], [SAYING], [])],
            ["a strip is 59.980 mm wide, 0.020 mm off the gap that is nearest"],
        ),
        ([Strips([60.0], ["70 mm"], [])], ["a strip that is 60.0 mm wide says that it is 70 mm"]),
        ([Strips([60.0], [], [])], ["1 strips have 0 names"]),
        (
            [Strips([60.0, 60.0], [SAYING], []), Strips([70.0], ["70 mm"], [])],
            [
                "2 strips have 1 names",
                "a strip is 70.000 mm wide, 10.000 mm off the gap that is nearest",
            ],
        ),
    ],
)
def test_what_is_wrong_with_strips(pages: list[Strips], told: list[str]) -> None:
    assert _told(*pages) == told


def test_a_strip_where_no_group_is() -> None:
    plan = replace(plan_wall(PAIR, "pair.yaml").plan, groups=())
    told = "a strip is 60.000 mm wide, 60.000 mm off the gap that is nearest"
    assert list(check_strips([Strips([60.0], [SAYING], [])], plan)) == [told]


def test_a_gap_that_no_two_pieces_of_a_group_keep_needs_no_strip() -> None:
    plan = plan_wall(PAIR, "pair.yaml").plan
    (pair,) = plan.groups
    missing = ["the gap of 60.0 mm has no strip"]
    assert list(check_strips([], plan)) == missing
    assert list(check_strips([], replace(plan, groups=(replace(pair, gap_mm=70.0),)))) == []
    assert list(check_strips([], replace(plan, groups=(replace(pair, gap_mm=60.05),)))) != []
    # A neighbour that is in no group with it, though it hangs so near.
    assert list(check_strips([], replace(plan, groups=(replace(pair, pieces=("Gull",)),)))) == []
    assert list(check_strips([], replace(plan, groups=(replace(pair, gap_mm=0.9),)))) == []


def test_beside_a_card_there_is_no_strip() -> None:
    plan = plan_wall(PAIR, "pair.yaml").plan
    assert list(check_strips([], plan)) == ["the gap of 60.0 mm has no strip"]
    for cards in ({"Gull"}, {"Tern"}, {"Gull", "Tern"}):
        assert list(check_strips([], plan, cards)) == []
        strip = Strips([60.0], [SAYING], [])
        assert list(check_strips([strip], plan, cards)) != []  # it would set the papers wrong
    assert list(check_strips([Strips([60.0], [SAYING], [])], plan, {"Wick card"})) == []
