from __future__ import annotations

from dataclasses import replace

import pytest

from templater.errors import Fault, Place
from templater.geometry import Point
from templater.layout.model import (
    Arrangement,
    Group,
    Layout,
    Ledge,
    LeftRight,
    OpenChoice,
    Piece,
    Position,
    Stair,
)
from tests.builders import group, inches, layout, piece, place_layout, position
from tests.placement.surroundings import obstacle, with_inner, with_things

AT = Place("hall.yaml", 9, 5)
WINDOW = obstacle("sash window", 60, 30, 96, 80)
DOOR = obstacle("landing door", 106, 0, 138, 80)
STAIR = Stair(inches(7.5), inches(10), Point(inches(20), inches(7.5)), LeftRight.RIGHT)


def faults_of(wall: Layout) -> tuple[Fault, ...]:
    return place_layout(with_things(wall, WINDOW, DOOR)).faults


def pieces(names: str) -> list[Piece]:
    """Pieces of 16 x 20 in."""
    return [piece(name) for name in names]


def place_at(**keys: object) -> Position:
    return replace(position(at=AT), **keys)  # type: ignore[arg-type]


@pytest.mark.parametrize("file", ["hall.yaml", "stair hall.yaml"])
def test_what_is_left_open_names_the_act(file: str) -> None:
    at = Place(file, 9, 5)
    choice = OpenChoice(arrange=True, gap=True, pool=("A", "B"), count=None)
    wall = layout(pieces("AB"), groups=[replace(group("landing", "", at=at), open_choice=choice)])
    wall = replace(wall, pieces=tuple(replace(each, position=None) for each in wall.pieces))
    shown = file if " " not in file else f"'{file}'"
    expected = Fault("'landing' leaves its arrangement open", f"run: templater arrange {shown}", at)
    assert faults_of(wall) == (expected,)


def test_too_wide_for_the_room_between_two_things() -> None:
    # From the window's edge at 96 in to the door's at 106 in: 10 in; 16 - 10.
    wall = layout([piece("A", place=place_at(between=("landing door", "sash window")))])
    assert faults_of(wall) == (
        Fault(
            "piece 'A' is 6 in (152 mm) too wide to hang between 'sash window' and 'landing door', "
            "10 in (254 mm) apart",
            "make it narrower by at least 6 in (152 mm)",
            AT,
        ),
    )


def test_a_room_that_is_just_wide_enough() -> None:
    wall = layout([piece("A", inches(10), place=place_at(between=("landing door", "sash window")))])
    assert faults_of(wall) == ()


@pytest.mark.parametrize(
    ("left", "message"),
    [
        (90, "they overlap by 6 in (152 mm) across"),
        (96, "they touch"),
    ],
)
def test_no_room_between_things_that_do_not_stand_apart(left: float, message: str) -> None:
    wall = layout([piece("A", place=place_at(between=("sash window", "clock"), bottom_mm=0.0))])
    clock = obstacle("clock", left, 82, left + 12, 94)
    (fault,) = place_layout(with_things(wall, WINDOW, clock)).faults
    assert fault.message == f"piece 'A' has no room between 'sash window' and 'clock': {message}"
    assert fault.hint == "name two things that stand apart"


def test_past_the_wall_between_its_end_and_a_thing_is_told_once() -> None:
    row = group("row", "ABCD", place=place_at(between=("left end", "sash window")))
    (fault,) = faults_of(layout(pieces("ABCD"), groups=[row]))
    # 4 x 16 + 3 x 3 = 73; 73 - 60 = 13 in.
    assert fault.message == (
        "group 'row' is 13 in (330 mm) too wide to hang between 'left end' and 'sash window', "
        "60 in (1524 mm) apart"
    )


def spread(arrange: Arrangement, length: float, place: Position | None = None) -> Group:
    return replace(group("trio", "ABC", arrange=arrange, place=place, at=AT), spread_mm=inches(length))


@pytest.mark.parametrize(
    ("arrange", "length", "message"),
    [
        # Three of 16 x 20 in: 48 in wide, 60 in tall.
        (Arrangement.ROW, 45, "3 in (76 mm) too wide for its 'spread', 45 in (1143 mm)"),
        (Arrangement.COLUMN, 50, "10 in (254 mm) too tall for its 'spread', 50 in (1270 mm)"),
        (Arrangement.ROW, 48, None),
    ],
)
def test_too_much_for_a_spread(arrange: Arrangement, length: float, message: str | None) -> None:
    wall = layout(
        pieces("ABC"), groups=[spread(arrange, length, position(left=inches(150), bottom=0.0))]
    )
    if message is None:
        assert faults_of(wall) == ()
        return
    amount = message.split(" too")[0]
    hint = f"make 'spread' longer by at least {amount}, or take something out"
    assert faults_of(wall) == (Fault(f"what is in group 'trio' is {message}", hint, AT),)


def test_a_spread_around_a_thing_has_to_hold_it_too() -> None:
    clock = obstacle("clock", 98, 55, 102, 65)
    wall = layout(pieces("ABC"), groups=[spread(Arrangement.ROW, 50, place_at(around="clock"))])
    (fault,) = place_layout(with_things(wall, clock)).faults
    assert "is 2 in (51 mm) too wide" in fault.message  # 48 + 4 - 50


def test_a_spread_of_an_inner_group_is_looked_at_too() -> None:
    inner = spread(Arrangement.ROW, 45)
    outer = group("outer", ["D", "trio"], arrange=Arrangement.COLUMN, place=position(left=inches(150)))
    (fault,) = faults_of(with_inner(layout(pieces("ABCD"), groups=[outer, inner]), "trio"))
    assert fault.message.startswith("what is in group 'trio' is 3 in (76 mm) too wide")


def on_ledge(width: float, place: Position | None = None) -> Layout:
    """Two pieces, 16 + 3 + 16 = 35 in wide, on a ledge."""
    shelf = group("shelf", "AB", arrange=Arrangement.LEDGE, place=place or position(right=0.0), at=AT)
    shelf = replace(shelf, ledge=Ledge("shelf ledge", inches(40)))
    wall = layout([*pieces("AB"), piece("shelf ledge", inches(width), inches(2))], groups=[shelf])
    return replace(wall, pieces=tuple(replace(each, position=None) for each in wall.pieces))


def test_a_row_wider_than_its_ledge() -> None:
    assert faults_of(on_ledge(32)) == (
        Fault(
            "the row of group 'shelf' is 3 in (76 mm) wider than its ledge",
            "make the ledge's 'width' longer by at least 3 in (76 mm), or the 'gap' smaller",
            AT,
        ),
    )


def test_a_row_as_wide_as_its_ledge() -> None:
    assert faults_of(on_ledge(35)) == ()


def along_stairs(place: Position | None = None) -> Group:
    return replace(
        group("flight", "AB", arrange=Arrangement.STAIR, place=place or position(left=0.0), at=AT),
        stair=STAIR,
    )


@pytest.mark.parametrize("key", ["bottom", "top"])
def test_stairs_take_no_height(key: str) -> None:
    place = place_at(left_mm=0.0, **{f"{key}_mm": inches(40)})
    assert faults_of(layout(pieces("AB"), groups=[along_stairs(place)])) == (
        Fault(
            f"group 'flight' hangs along stairs, which gives its height, so '{key}' does not apply",
            "remove it, or use 'eye_line', measured up from the steps' edges",
            AT,
        ),
    )


@pytest.mark.parametrize("key", ["eye_line", "bottom", "top"])
def test_a_ledge_takes_no_other_height(key: str) -> None:
    (fault,) = faults_of(on_ledge(48, place_at(right_mm=0.0, **{f"{key}_mm": inches(60)})))
    assert fault.message == (
        f"group 'shelf' hangs on a ledge, which gives its height, so '{key}' does not apply"
    )
    assert fault.hint == "remove it, or use the ledge's 'height'"


def test_stairs_are_no_part_of_another_group() -> None:
    outer = group("outer", ["C", "flight"], place=position(right=0.0))
    wall = with_inner(layout(pieces("ABC"), groups=[outer, along_stairs()]), "flight")
    assert faults_of(wall) == (
        Fault(
            "group 'flight' hangs along stairs, so it cannot be part of another group",
            "take it out of the other group",
            AT,
        ),
    )


@pytest.mark.parametrize("arrange", [Arrangement.GRID, Arrangement.PLACED])
def test_only_rows_and_columns_hang_around_things(arrange: Arrangement) -> None:
    corners = (Point(0, 0), Point(inches(30), 0))
    ring = group("ring", "AB", arrange=arrange, place=place_at(around="clock"))
    ring = replace(ring, columns=2, corners=corners)
    clock = obstacle("clock", 0, 84, 10, 94)
    (fault,) = place_layout(with_things(layout(pieces("AB"), groups=[ring]), clock)).faults
    assert fault.message == (
        "group 'ring' is to hang around 'clock', but is no row or column of two or more"
    )
    assert fault.hint == "use 'beside', or arrange two pieces or more as a row or column"


def test_one_piece_cannot_hang_around_a_thing() -> None:
    clock = obstacle("clock", 0, 84, 10, 94)
    alone = layout([piece("A", place=place_at(around="clock"))])
    (fault,) = place_layout(with_things(alone, clock)).faults
    assert fault.message.startswith("piece 'A' is to hang around 'clock', but is no row")
