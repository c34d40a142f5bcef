from __future__ import annotations

from dataclasses import replace

import pytest

from templater.errors import Fault, Place
from templater.layout.model import Arrangement, Furniture, LeftRight, Obstacle, Position
from templater.lengths import Unit
from tests.builders import furniture, group, inches, layout, piece, place_layout, position
from tests.placement.surroundings import SLOPE, obstacle, with_ceiling, with_things

AT = Place("hall.yaml", 9, 5)


def piece_faults(place: Position, width: float = 16, height: float = 20) -> tuple[Fault, ...]:
    work = piece("Tide chart", inches(width), inches(height), place=place)
    return place_layout(layout([work])).faults


@pytest.mark.parametrize(
    ("place", "message", "hint"),
    [
        # A piece of 16 x 20 in on a wall of 200 x 96 in.
        (
            position(left=inches(-3), at=AT),
            "piece 'Tide chart' reaches 3 in (76 mm) past the wall's left end",
            "move it right by at least 3 in (76 mm)",
        ),
        (
            position(centre=inches(194), at=AT),  # 194 + 8 - 200
            "piece 'Tide chart' reaches 2 in (51 mm) past the wall's right end",
            "move it left by at least 2 in (51 mm)",
        ),
        (
            position(eye_line=inches(90.5), at=AT),  # 90 1/2 + 10 - 96
            "piece 'Tide chart' reaches 4 1/2 in (114 mm) above the ceiling",
            "move it down by at least 4 1/2 in (114 mm)",
        ),
        (
            position(top=inches(19), at=AT),
            "piece 'Tide chart' reaches 1 in (25 mm) below the floor",
            "move it up by at least 1 in (25 mm)",
        ),
        (
            position(left=-0.01, at=AT),  # never "0 in"
            "piece 'Tide chart' reaches 1/16 in (2 mm) past the wall's left end",
            "move it right by at least 1/16 in (2 mm)",
        ),
    ],
)
def test_past_one_side(place: Position, message: str, hint: str) -> None:
    assert piece_faults(place) == (Fault(message, hint, AT),)


def test_every_side_is_told() -> None:
    faults = piece_faults(position(right=inches(-1), bottom=inches(90)))
    assert [fault.message for fault in faults] == [
        "piece 'Tide chart' reaches 1 in (25 mm) past the wall's right end",
        "piece 'Tide chart' reaches 14 in (356 mm) above the ceiling",
    ]


def test_what_no_move_can_mend_says_so() -> None:
    assert piece_faults(position(at=AT), width=210, height=100) == (
        Fault(
            "piece 'Tide chart' is 10 in (254 mm) wider than the wall",
            "make it narrower by at least 10 in (254 mm), or correct the wall's size",
            AT,
        ),
        Fault(
            "piece 'Tide chart' is 4 in (102 mm) taller than the wall",
            "make it lower by at least 4 in (102 mm), or correct the wall's size",
            AT,
        ),
    )


@pytest.mark.parametrize(
    "place",
    [position(left=0.0, bottom=0.0), position(right=0.0, top=inches(96)), position(left=-1e-7)],
)
def test_touching_the_ends_is_fine(place: Position) -> None:
    assert piece_faults(place) == ()


def test_a_group_is_told_once() -> None:
    wall = layout(
        [piece(name, 400, 500) for name in "ABC"],
        groups=[group("trio", "ABC", gap=50, place=position(left=-1300.0, at=AT))],
        units=Unit.MILLIMETRE,
    )
    assert place_layout(wall).faults == (
        Fault(
            "group 'trio' reaches 1300 mm (51 3/16 in) past the wall's left end",
            "move it right by at least 1300 mm (51 3/16 in)",
            AT,
        ),
    )


@pytest.mark.parametrize(
    ("item", "messages"),
    [
        (
            furniture("boot bench", inches(-2), at=AT),
            ["furniture 'boot bench' reaches 2 in (51 mm) past the wall's left end"],
        ),
        (
            furniture("boot bench", inches(121), at=AT),
            ["furniture 'boot bench' reaches 1 in (25 mm) past the wall's right end"],
        ),
        (
            furniture("dresser", inches(20), inches(40), inches(97), at=AT),
            ["furniture 'dresser' is 1 in (25 mm) taller than the wall"],
        ),
        (furniture("boot bench", inches(120), height=inches(96), at=AT), []),
    ],
)
def test_furniture_must_stand_within_the_wall(item: Furniture, messages: list[str]) -> None:
    faults = place_layout(layout([], furniture=[item])).faults
    assert [fault.message for fault in faults] == messages
    assert all(fault.place == AT for fault in faults)


@pytest.mark.parametrize(
    ("thing", "message"),
    [
        (
            obstacle("hatch", 190, 60, 203, 80, at=AT),
            "'hatch' reaches 3 in (76 mm) past the wall's right end",
        ),
        (obstacle("hatch", 150, 80, 160, 98, at=AT), "'hatch' reaches 2 in (51 mm) above the ceiling"),
        (
            obstacle("hatch", -2, 40, 10, 50, at=AT),
            "'hatch' reaches 2 in (51 mm) past the wall's left end",
        ),
    ],
)
def test_things_in_the_way_must_be_within_the_wall(thing: Obstacle, message: str) -> None:
    (fault,) = place_layout(with_things(layout([]), thing)).faults
    assert fault.message == message
    assert fault.place == AT


def test_things_in_the_way_may_lie_over_one_another_and_over_furniture() -> None:
    wall = layout([], furniture=[furniture("boot bench", inches(30))])
    things = obstacle("window", 40, 20, 80, 60), obstacle("thermostat", 70, 50, 90, 70)
    assert place_layout(with_things(wall, *things)).faults == ()


@pytest.mark.parametrize(
    ("place", "amount"),
    [
        # 16 x 20 in; at its right edge, x in, the ceiling is 96 - (x - 100) / 2 in up.
        (position(left=inches(144), bottom=inches(48), at=AT), "2 in (51 mm)"),  # 68 - (96 - 30)
        (position(left=inches(140), bottom=inches(48), at=AT), None),  # 68 at 156 in: 96 - 28
        (position(left=inches(60), bottom=inches(76), at=AT), None),
        (position(left=inches(60), bottom=inches(80), at=AT), "4 in (102 mm)"),
        (position(left=inches(92), bottom=inches(76), at=AT), "4 in (102 mm)"),  # 108 in: 92
    ],
)
def test_into_the_sloping_ceiling(place: Position, amount: str | None) -> None:
    wall = with_ceiling(layout([piece("Tide chart", place=place)]), SLOPE)
    faults = place_layout(wall).faults
    if amount is None:
        assert faults == ()
        return
    message = f"piece 'Tide chart' reaches {amount} into the sloping ceiling"
    assert faults == (Fault(message, f"move it down by at least {amount}", AT),)


def test_a_ceiling_may_dip_between_the_upper_corners() -> None:
    # A beam at 100 in, 76 in up; the piece from 92 to 108 in, up to 78 in.
    place = position(centre=inches(100), top=inches(78), at=AT)
    wall = with_ceiling(layout([piece("Tide chart", place=place)]), [(0, 96), (100, 76), (200, 96)])
    (fault,) = place_layout(wall).faults
    assert fault.message == "piece 'Tide chart' reaches 2 in (51 mm) into the sloping ceiling"


def test_a_group_follows_the_ceiling_piece_by_piece() -> None:
    # Small pieces at the sides, under a roof of 1 in 1 over 100 in: A and C, 10 in high, end at
    # 65 in, 17 in from the middle; B, 20 in high, at 70 in.
    works = [
        piece(name, inches(10), inches(height)) for name, height in zip("ABC", (10, 20, 10), strict=True)
    ]
    row = group("trio", "ABC", gap=inches(2))
    for top, faults in ((82, 0), (81, 1)):
        wall = with_ceiling(layout(works, groups=[row]), [(0, top - 100), (100, top), (200, top - 100)])
        assert len(place_layout(wall).faults) == faults  # at 17 in the ceiling is at 82 - 17 = 65 in


@pytest.mark.parametrize("item", [furniture("wardrobe", inches(150), inches(40), inches(60), at=AT)])
def test_furniture_under_a_sloping_ceiling(item: Furniture) -> None:
    (fault,) = place_layout(with_ceiling(layout([], furniture=[item]), SLOPE)).faults
    # At 190 in: 51 in.
    assert fault.message == "furniture 'wardrobe' reaches 9 in (229 mm) into the sloping ceiling"


def test_no_room_beside_a_thing() -> None:
    place = replace(position(at=AT), beside="hatch", side=LeftRight.LEFT, clearance_mm=inches(2))
    wall = with_things(layout([piece("Tide chart", place=place)]), obstacle("hatch", 15, 40, 40, 70))
    assert place_layout(wall).faults == (
        Fault(
            "piece 'Tide chart' reaches 3 in (76 mm) past the wall's left end",  # 15 - 2 - 16
            "make it narrower by at least 3 in (76 mm)",
            AT,
        ),
    )


@pytest.mark.parametrize(
    ("arrange", "message", "hint"),
    [
        # Around a hatch from 15 to 40 in, 75 to 85 in up: 16 + 3 left of it, 20 + 3 above it.
        (
            Arrangement.ROW,
            "4 in (102 mm) past the wall's left end",
            "narrower by at least 4 in (102 mm)",
        ),
        (Arrangement.COLUMN, "12 in (305 mm) above the ceiling", "lower by at least 12 in (305 mm)"),
    ],
)
def test_no_room_around_a_thing(arrange: Arrangement, message: str, hint: str) -> None:
    place = replace(position(at=AT), around="hatch")
    pair = group("pair", "AB", arrange=arrange, place=place)
    wall = with_things(
        layout([piece("A"), piece("B")], groups=[pair]), obstacle("hatch", 15, 75, 40, 85)
    )
    (fault,) = place_layout(wall).faults
    assert fault.message == f"group 'pair' reaches {message}"
    assert fault.hint == f"make what hangs on that side {hint}"
