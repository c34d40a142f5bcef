from __future__ import annotations

import pytest

from templater.errors import Fault, Place
from templater.layout.model import Furniture, Hanger, Position
from templater.lengths import Unit
from tests.builders import furniture, group, hanging, inches, layout, piece, place_layout, position

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
    ("place", "drop", "rise", "message"),
    [
        # The frame ends at the ceiling; the holes 1/2 in below it plus a rise of 2 in.
        (position(top=inches(96)), 0.5, 2, "1 1/2 in (38 mm) above the ceiling"),
        (position(bottom=0.0), 19.5, -1, "1/2 in (13 mm) below the floor"),
    ],
)
def test_a_hole_off_the_wall_is_told_once(
    place: Position, drop: float, rise: float, message: str
) -> None:
    hang = hanging(Hanger.D_RINGS, inches(drop), rise=inches(rise), apart=inches(8), at=AT)
    (fault,) = place_layout(layout([piece("Tide chart", hang=hang, place=place)])).faults
    assert fault.message == f"a hole of piece 'Tide chart' would be {message}"
    assert fault.place == AT
    assert "rise" in fault.hint


def test_a_hole_within_a_frame_past_the_ceiling_is_told_by_its_frame() -> None:
    hang = hanging(Hanger.NAIL, inches(1), rise=0.0)
    work = piece("Tide chart", hang=hang, place=position(top=inches(100)))
    (fault,) = place_layout(layout([work])).faults
    assert fault.message == "piece 'Tide chart' reaches 4 in (102 mm) above the ceiling"
