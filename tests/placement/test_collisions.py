from __future__ import annotations

import re
from dataclasses import replace
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templater.errors import Fault, Place
from templater.geometry import Box
from templater.layout.model import Position
from templater.lengths import Unit, parse_length
from templater.placement.collisions import MAX_OVERLAPS, overlapping_pairs
from tests.builders import furniture, group, inches, layout, piece, place_layout, position
from tests.placement.surroundings import obstacle, with_things

AT = Place("hall.yaml", 9, 5)


def test_two_pieces_over_one_another() -> None:
    # 16 x 20 in each: A from (20, 50), B from (34, 65): 36 - 34 = 2 in across, 70 - 65 = 5 in up.
    wall = layout(
        [
            piece("A", place=position(left=inches(20), bottom=inches(50))),
            piece("B", place=position(left=inches(34), bottom=inches(65), at=AT)),
        ]
    )
    assert place_layout(wall).faults == (
        Fault(
            "piece 'B' hangs over 'A' by 2 in (51 mm) across and 5 in (127 mm) up",
            "move piece 'B' right by at least 2 in (51 mm), or up by at least 5 in (127 mm)",
            AT,
        ),
    )


def test_a_small_piece_within_a_large_one_must_move_all_the_way_out() -> None:
    # B, 4 x 4 in, from 21 to 25 in; A from 20 to 36: out by 25 - 20 = 5 in. Up: 55 - 50 = 5 in.
    wall = layout(
        [
            piece("A", place=position(left=inches(20), bottom=inches(50))),
            piece("B", inches(4), inches(4), place=position(left=inches(21), bottom=inches(51))),
        ]
    )
    (fault,) = place_layout(wall).faults
    assert fault.message == "piece 'B' hangs over 'A' by 4 in (102 mm) across and 4 in (102 mm) up"
    assert fault.hint == (
        "move piece 'B' left by at least 5 in (127 mm), or down by at least 5 in (127 mm)"
    )


@pytest.mark.parametrize(
    ("place", "count"),
    [
        (position(left=inches(36), bottom=inches(50)), 0),  # touching exactly
        (position(left=inches(36) - 1e-7, bottom=inches(50)), 0),
        (position(left=inches(36) - 1e-5, bottom=inches(50)), 1),
        (position(left=inches(20), bottom=inches(70)), 0),
    ],
)
def test_touching_is_fine(place: Position, count: int) -> None:
    first = piece("A", place=position(left=inches(20), bottom=inches(50)))
    assert len(place_layout(layout([first, piece("B", place=place)])).faults) == count


def test_grouped_pieces_are_told_by_their_own_names() -> None:
    wall = layout(
        [piece("A"), piece("B"), piece("C", place=position(left=inches(110)))],
        groups=[group("pair", "AB")],  # 35 in wide: A from 82.5 to 98.5, B from 101.5 to 117.5 in
    )
    (fault,) = place_layout(wall).faults
    assert fault.message == "piece 'C' hangs over 'B' by 7 1/2 in (191 mm) across and 20 in (508 mm) up"


def test_of_a_group_all_is_moved() -> None:
    # As above; C, 16 x 20 in, is at 99 to 115 and A is free of it. Both move right by 115 - 82 1/2, or
    # left by 117 1/2 - 99, which is less; up and down are alike.
    wall = layout(
        [piece("C", place=position(left=inches(99))), piece("A"), piece("B")],
        groups=[group("pair", "AB")],
    )
    (fault,) = place_layout(wall).faults
    assert fault.hint == (
        "move group 'pair' left by at least 18 1/2 in (470 mm), or down by at least 20 in (508 mm)"
    )


@pytest.mark.parametrize(
    ("place", "message"),
    [
        # The bench: 30 to 110 in, 34 in high.
        (
            position(left=inches(100), bottom=inches(31), at=AT),
            "piece 'Tide chart' hangs behind 'boot bench', 3 in (76 mm) below its top",
        ),
        (
            position(left=inches(50), bottom=inches(2), at=AT),
            "piece 'Tide chart' hangs behind 'boot bench', 32 in (813 mm) below its top",
        ),
        (
            position(above="boot bench", clearance=inches(-1), at=AT),
            "piece 'Tide chart' hangs behind 'boot bench', 1 in (25 mm) below its top",
        ),
    ],
)
def test_behind_furniture(place: Position, message: str) -> None:
    wall = layout([piece("Tide chart", place=place)], furniture=[furniture("boot bench", inches(30))])
    (fault,) = place_layout(wall).faults
    assert fault.message == message
    assert fault.place == AT
    amount = message.split(", ")[1].removesuffix(" below its top")
    assert fault.hint == f"raise it by at least {amount}, or move it to one side"


def test_a_group_behind_furniture_is_told_once() -> None:
    wall = layout(
        [piece("A"), piece("B", height=inches(30)), piece("C")],
        groups=[group("trio", "ABC", place=position(eye_line=inches(40)))],  # B's bottom at 25 in
        furniture=[furniture("boot bench", inches(60))],
    )
    (fault,) = place_layout(wall).faults
    assert fault.message == "group 'trio' hangs behind 'boot bench', 9 in (229 mm) below its top"


WINDOW = obstacle("sash window", 60, 30, 96, 80)


@pytest.mark.parametrize(
    ("place", "amounts", "hint"),
    [
        # 16 x 20 in over the window's right edge by 96 - 90, its top by 80 - 70.
        (
            position(left=inches(90), bottom=inches(70), at=AT),
            "6 in (152 mm) across and 10 in (254 mm) up",
            "move it right by at least 6 in (152 mm), or up by at least 10 in (254 mm)",
        ),
        # Over its left edge by 64 - 60, its sill by 36 - 30.
        (
            position(left=inches(48), bottom=inches(16), at=AT),
            "4 in (102 mm) across and 6 in (152 mm) up",
            "move it left by at least 4 in (102 mm), or down by at least 6 in (152 mm)",
        ),
        # All of it over the pane: left 80 - 60 = 20, right 96 - 64 = 32, up 80 - 50, down 70 - 30.
        (
            position(left=inches(64), bottom=inches(50), at=AT),
            "16 in (406 mm) across and 20 in (508 mm) up",
            "move it left by at least 20 in (508 mm), or up by at least 30 in (762 mm)",
        ),
    ],
)
def test_over_something_in_the_way(place: Position, amounts: str, hint: str) -> None:
    wall = with_things(layout([piece("Tide chart", place=place)]), WINDOW)
    message = f"piece 'Tide chart' hangs over 'sash window' by {amounts}"
    assert place_layout(wall).faults == (Fault(message, hint, AT),)


@pytest.mark.parametrize(
    "place",
    [position(left=inches(96)), position(left=inches(70), bottom=inches(80) - 5e-7)],
)
def test_touching_something_in_the_way_is_fine(place: Position) -> None:
    wall = with_things(layout([piece("Tide chart", height=inches(16), place=place)]), WINDOW)
    assert place_layout(wall).faults == ()


def test_a_group_is_told_once_and_moved_so_that_all_of_it_is_clear() -> None:
    # A to C, 10 in wide, 2 in apart: 80 to 90, 92 to 102 and 104 to 114 in; only A and B are over the
    # window's edge at 96 in. Right by 96 - 80, or up by 80 - 50 = 30.
    row = group("trio", "ABC", gap=inches(2), place=position(left=inches(80), at=AT))
    wall = layout([piece(name, inches(10)) for name in "ABC"], groups=[row])
    assert place_layout(with_things(wall, WINDOW)).faults == (
        Fault(
            "group 'trio' hangs over 'sash window' by 10 in (254 mm) across and 20 in (508 mm) up",
            "move it right by at least 16 in (406 mm), or up by at least 30 in (762 mm)",
            AT,
        ),
    )


def test_an_outer_member_of_a_group_in_a_group_is_seen_over_a_thing() -> None:
    # A from 80 to 96 in, then 2 in to the pair B, C, which is clear of the clock.
    pair = replace(group("pair", "BC", gap=inches(2)), position=None)
    row = group("all", ["A", "pair"], gap=inches(2), place=position(left=inches(80), at=AT))
    wall = layout([piece(name) for name in "ABC"], groups=[row, pair])
    (fault,) = place_layout(with_things(wall, obstacle("clock", 85, 55, 90, 65))).faults
    assert fault.message.startswith("group 'all' hangs over 'clock' by 5 in (127 mm) across")


def test_fixtures_count_like_openings() -> None:
    clock = obstacle("ship's clock", 95, 55, 105, 65)
    wall = replace(layout([piece("Tide chart")]), fixtures=(clock,))
    (fault,) = place_layout(wall).faults
    assert fault.message.startswith("piece 'Tide chart' hangs over \"ship's clock\" by")


def test_a_thing_in_the_gap_of_a_group_is_fine() -> None:
    row = group("pair", "AB", gap=inches(10))
    wall = with_things(
        layout([piece("A"), piece("B")], groups=[row]), obstacle("clock", 96, 50, 104, 60)
    )
    assert place_layout(wall).faults == ()


def test_every_thing_in_the_way_is_told() -> None:
    wall = layout(
        [piece("Tide chart")], furniture=[furniture("boot bench", inches(30), height=inches(55))]
    )
    faults = place_layout(
        with_things(wall, obstacle("clock", 90, 60, 95, 65), obstacle("bell", 105, 60, 120, 65))
    ).faults
    assert [fault.message.split(" by ")[0].split(",")[0] for fault in faults] == [
        "piece 'Tide chart' hangs behind 'boot bench'",
        "piece 'Tide chart' hangs over 'clock'",
        "piece 'Tide chart' hangs over 'bell'",
    ]


@settings(max_examples=60)
@given(
    st.lists(st.tuples(st.integers(2, 12), st.integers(2, 12)), min_size=1, max_size=4),
    st.integers(10, 90),
    st.integers(10, 60),
    st.booleans(),
)
def test_each_act_that_the_hint_names_mends_it(
    sizes: list[tuple[int, int]], left: int, bottom: int, across: bool
) -> None:
    thing = obstacle("window", 60, 40, 80, 60)
    works = [piece(str(number), inches(w), inches(h)) for number, (w, h) in enumerate(sizes)]

    def faults(dx: float, dy: float) -> tuple[Fault, ...]:
        where = position(left=inches(left + dx), bottom=inches(bottom + dy))
        row = group("row", [each.name for each in works], gap=inches(1), place=where)
        return place_layout(with_things(layout(works, groups=[row], height=inches(200)), thing)).faults

    before = faults(0, 0)
    if not before:
        return
    acts = re.findall(r"(left|right|up|down) by at least ([0-9/ ]+ in) ", before[0].hint)
    way, amount = acts[0 if across else 1]
    x, y = {"left": (-1, 0), "right": (1, 0), "up": (0, 1), "down": (0, -1)}[way]
    by = float(parse_length(amount) / Unit.INCH.mm)
    messages = [fault.message for fault in faults(x * by, y * by)]
    assert not any("hangs over" in message for message in messages)


def test_resting_on_furniture_is_no_fault() -> None:
    wall = layout(
        [piece("A", place=position(above="boot bench", clearance=0.0))],
        furniture=[furniture("boot bench", inches(30))],
    )
    assert place_layout(wall).faults == ()


def test_all_overlaps_of_a_heap_are_told() -> None:
    faults = place_layout(layout([piece(str(number)) for number in range(10)])).faults
    assert len(faults) == 45  # 10 x 9 / 2 pairs
    assert len({fault.message for fault in faults}) == 45


def test_a_great_heap_is_cut_short_and_says_so() -> None:
    faults = place_layout(layout([piece(str(number)) for number in range(100)])).faults
    assert len(faults) == MAX_OVERLAPS + 1  # of 4,950 pairs
    assert faults[-1].message == "more than 500 pairs of pieces hang over one another; not all are named"


COORDINATE = st.integers(0, 40).map(float)
BOXES = st.lists(
    st.builds(
        lambda x, y, width, height: Box(x, y, x + width, y + height),
        COORDINATE,
        COORDINATE,
        st.integers(1, 12).map(float),
        st.integers(1, 12).map(float),
    ),
    max_size=25,
)


@given(BOXES)
def test_the_sweep_finds_what_a_look_at_every_pair_finds(boxes: list[Box]) -> None:
    expected = [
        (first, second)
        for second in range(len(boxes))
        for first in range(second)
        if boxes[first].x0 < boxes[second].x1
        and boxes[second].x0 < boxes[first].x1
        and boxes[first].y0 < boxes[second].y1
        and boxes[second].y0 < boxes[first].y1
    ]
    assert sorted(overlapping_pairs(boxes)) == sorted(expected)


@pytest.mark.parametrize("turned", [False, True])
def test_the_sweep_takes_the_axis_along_which_things_are_spread(turned: bool) -> None:
    class Counted(Box):
        looks = 0

        def overlap(self, other: Box):  # type: ignore[no-untyped-def]
            Counted.looks += 1
            return super().overlap(other)

    heights = list(range(0, 20_000, 10))
    Random(1).shuffle(heights)
    boxes = [Counted(y, 0, y + 8, 500) if turned else Counted(0, y, 500, y + 8) for y in heights]
    assert list(overlapping_pairs(boxes)) == []
    assert Counted.looks < 10 * len(boxes)  # every pair would be two million looks
