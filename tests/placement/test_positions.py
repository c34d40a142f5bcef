from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from templater.layout.model import Arrangement, Group, Layout, LeftRight, Position
from tests.builders import furniture, group, inches, layout, piece, plan_of, position
from tests.placement.surroundings import in_inches, obstacle, with_things

WINDOW = obstacle("sash window", 60, 30, 96, 80)
DOOR = obstacle("landing door", 150, 0, 182, 80)
THERMOSTAT = obstacle("thermostat", 98, 58, 102, 63)


def asked(**keys: object) -> Position:
    """A position by the name of its fields beside the usual ones."""
    return replace(position(), **keys)  # type: ignore[arg-type]


def place(where: Position) -> tuple[float, ...]:
    """A piece of 16 x 20 in, on a wall of 200 x 96 in, that is asked to a position."""
    wall = layout(
        [piece("Tide chart", place=where)], furniture=[furniture("bench", inches(100), inches(30))]
    )
    return in_inches(plan_of(with_things(wall, WINDOW, DOOR)).pieces[0].box)


@pytest.mark.parametrize(
    ("where", "corner"),
    [
        # The window is from 60 to 96 in; clearance 7 in unless given; eye line 60 in: from 50 in.
        (asked(beside="sash window", side=LeftRight.LEFT), (37, 50)),  # 60 - 7 - 16
        (asked(beside="sash window", side=LeftRight.RIGHT), (103, 50)),  # 96 + 7
        (asked(beside="sash window", side=LeftRight.RIGHT, clearance_mm=inches(2)), (98, 50)),
        (asked(beside="bench", side=LeftRight.RIGHT, clearance_mm=0.0), (130, 50)),
        (asked(beside="sash window", side=LeftRight.LEFT, top_mm=inches(80)), (37, 60)),
        (asked(between=("sash window", "landing door")), (115, 50)),  # (96 + 150) / 2 - 8
        (asked(between=("landing door", "sash window")), (115, 50)),
        (asked(between=("left end", "sash window"), eye_line_mm=inches(57)), (22, 47)),  # 30 - 8
        (asked(between=("right end", "landing door")), (183, 50)),  # (182 + 200) / 2 - 8
        (asked(between=("bench", "landing door")), (132, 50)),  # (130 + 150) / 2 - 8
    ],
)
def test_positions_by_things(where: Position, corner: tuple[float, float]) -> None:
    assert place(where) == pytest.approx((*corner, corner[0] + 16, corner[1] + 20))


def around(names: str, whole: Group | None = None, **keys: object) -> Layout:
    """Pieces of 16 x 20, 10 x 12 and 20 x 8 in, of these names, around the thermostat."""
    sizes = {"A": (16, 20), "B": (10, 12), "C": (20, 8)}
    pieces = [piece(name, *(inches(side) for side in sizes[name])) for name in names]
    whole = whole or group("row", names)
    asking = replace(whole, position=asked(around="thermostat", **keys))
    return with_things(layout(pieces, groups=[asking]), THERMOSTAT)


def boxes_of(wall: Layout) -> list[tuple[float, ...]]:
    return [in_inches(each.box) for each in plan_of(wall).pieces]


def test_a_row_leaves_the_thing_in_its_middle() -> None:
    # The thermostat: 98 to 102 in, its middle 60.5 in up. Left of it the first half of the pieces,
    # 3 in away; centred on it up and down.
    a, b = boxes_of(around("AB"))
    assert a == pytest.approx((79, 50.5, 95, 70.5))
    assert b == pytest.approx((105, 54.5, 115, 66.5))


def test_of_an_odd_number_the_larger_half_hangs_to_the_right() -> None:
    a, b, c = boxes_of(around("ABC"))
    assert a[2] == pytest.approx(95)
    assert b[0] == pytest.approx(105)
    assert c[0] == pytest.approx(118)  # 115 + 3


def test_a_row_around_a_thing_keeps_the_height_it_is_asked_to() -> None:
    a, b = boxes_of(around("AB", bottom_mm=inches(52)))
    assert (a[1], b[1]) == pytest.approx((52, 56))
    assert (a[2], b[0]) == pytest.approx((95, 105))


COLUMN = group("column", "AB", arrange=Arrangement.COLUMN)


def test_a_column_leaves_the_thing_in_its_middle() -> None:
    # The thermostat: 58 to 63 in up, its middle 100 in along.
    a, b = boxes_of(around("AB", COLUMN))
    assert a == pytest.approx((92, 66, 108, 86))
    assert b == pytest.approx((95, 43, 105, 55))


def test_a_column_stands_where_the_thing_is_not_in_the_walls_middle() -> None:
    # 60 in farther left, of a wall whose middle is at 100 in.
    wall = with_things(around("AB", COLUMN), obstacle("thermostat", 38, 58, 42, 63))
    a, b = boxes_of(wall)
    assert a == pytest.approx((32, 66, 48, 86))
    assert b == pytest.approx((35, 43, 45, 55))


@pytest.mark.parametrize(
    ("keys", "left"),
    [
        ({"left_mm": inches(96)}, 96),
        ({"centre_mm": inches(101)}, 93),  # the wider one, 16 in, about 101
        ({"right_mm": inches(90)}, 94),  # 200 - 90 - 16
    ],
)
def test_a_column_around_a_thing_keeps_to_whatever_it_is_asked_across(
    keys: dict[str, Any], left: float
) -> None:
    assert boxes_of(around("AB", COLUMN, **keys))[0] == pytest.approx((left, 66, left + 16, 86))


@pytest.mark.parametrize(
    ("keys", "bottom"),
    [
        ({"bottom_mm": inches(52)}, 52),
        ({"top_mm": inches(73)}, 53),  # the higher one, 20 in
        ({"eye_line_mm": inches(61)}, 51),
    ],
)
def test_a_row_around_a_thing_keeps_to_whatever_it_is_asked_up(
    keys: dict[str, Any], bottom: float
) -> None:
    assert boxes_of(around("AB", **keys))[0] == pytest.approx((79, bottom, 95, bottom + 20))


def test_a_column_around_a_thing_keeps_to_the_side_it_is_asked_to() -> None:
    a, b = boxes_of(around("AB", COLUMN, left_mm=inches(96)))
    assert a == pytest.approx((96, 66, 112, 86))
    assert b == pytest.approx((99, 43, 109, 55))


def test_a_row_spread_around_a_thing_counts_it_in() -> None:
    # (42 - 16 - 4 - 10) / 4 = 3 in.
    spread = plan_of(around("AB", replace(group("row", "AB"), spread_mm=inches(42))))
    assert spread.groups[0].gap_mm == pytest.approx(inches(3))
    assert [in_inches(each.box) for each in spread.pieces] == [
        pytest.approx(box) for box in boxes_of(around("AB"))
    ]


@pytest.mark.parametrize(
    ("where", "lefts"),
    [
        # Three of 20 in over 100 in: 10 in at both ends and between, wherever the 100 in begin.
        (position(), (60, 90, 120)),  # in the middle of 200 in: from 50 in
        (position(left=0.0), (10, 40, 70)),
        (position(left=inches(30)), (40, 70, 100)),
        (position(right=0.0), (110, 140, 170)),
        (position(centre=inches(60)), (20, 50, 80)),
    ],
)
def test_a_spread_row_is_placed_with_the_space_at_its_ends(
    where: Position, lefts: tuple[float, ...]
) -> None:
    row = replace(group("trio", "ABC", place=where), spread_mm=inches(100))
    plan = plan_of(layout([piece(name, inches(20), inches(20)) for name in "ABC"], groups=[row]))
    assert [each.box.x0 / 25.4 for each in plan.pieces] == pytest.approx(lefts)
    assert plan.groups[0].box.width == pytest.approx(inches(80))


def test_even_gaps_over_the_whole_wall() -> None:
    # Even spacing, gap = (wall - sum of widths) / (n + 1): (100 - 60) / 4 = 10 in; left edges at 10,
    # 40 and 70, centres at 20, 50 and 80 (the usual gallery rule).
    row = replace(group("trio", "ABC"), spread_mm=inches(100))
    wall = layout(
        [piece(name, inches(20), inches(20)) for name in "ABC"], groups=[row], width=inches(100)
    )
    plan = plan_of(wall)
    assert [each.box.x0 / 25.4 for each in plan.pieces] == pytest.approx([10, 40, 70])
    assert [each.box.centre.x / 25.4 for each in plan.pieces] == pytest.approx([20, 50, 80])
    assert plan.groups[0].gap_mm == pytest.approx(inches(10))


@pytest.mark.parametrize(
    ("where", "bottoms"),
    [
        # Two of 10 in over 50 in: (50 - 20) / 3 = 10 in; the lower, then the upper.
        (position(bottom=inches(20)), (30, 50)),
        (position(top=inches(90)), (50, 70)),
        (position(), (45, 65)),  # its middle at the eye line, 60 in
    ],
)
def test_a_spread_column_is_placed_with_the_space_at_its_ends(
    where: Position, bottoms: tuple[float, float]
) -> None:
    column = group("pair", "AB", arrange=Arrangement.COLUMN, place=where)
    pieces = [piece(name, inches(20), inches(10)) for name in "AB"]
    plan = plan_of(layout(pieces, groups=[replace(column, spread_mm=inches(50))]))
    assert [each.box.y0 / 25.4 for each in reversed(plan.pieces)] == pytest.approx(bottoms)


@pytest.mark.parametrize(
    ("where", "left", "bottom"),
    [
        (position(left=inches(30), bottom=inches(20)), 30, 30),
        (position(right=inches(30), top=inches(90)), 150, 50),  # 200 - 30 - 20; 90 - 10 - 30
    ],
)
def test_a_spread_column_has_no_space_beside_it(where: Position, left: float, bottom: float) -> None:
    column = group("pair", "AB", arrange=Arrangement.COLUMN, place=where)
    pieces = [piece(name, inches(20), inches(10)) for name in "AB"]
    plan = plan_of(layout(pieces, groups=[replace(column, spread_mm=inches(50))]))
    assert tuple(plan.groups[0].box.corner) == pytest.approx((inches(left), inches(bottom)))


@pytest.mark.parametrize(
    ("where", "left", "bottom"),
    [
        (position(left=inches(30), bottom=inches(20)), 40, 20),
        (position(right=inches(30), top=inches(90)), 80, 70),  # 200 - 30 - 10 - 80; 90 - 20
    ],
)
def test_a_spread_row_has_no_space_above_or_below(where: Position, left: float, bottom: float) -> None:
    row = group("trio", "ABC", place=where)
    pieces = [piece(name, inches(20), inches(20)) for name in "ABC"]
    plan = plan_of(layout(pieces, groups=[replace(row, spread_mm=inches(100))]))
    assert tuple(plan.groups[0].box.corner) == pytest.approx((inches(left), inches(bottom)))
