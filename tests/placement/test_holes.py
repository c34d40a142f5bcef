from __future__ import annotations

import pytest

from templater.errors import Fault, Place
from templater.layout.model import Hanger, Position
from tests.builders import hanging, inches, layout, piece, place_layout, position
from tests.placement.surroundings import SLOPE, obstacle, with_ceiling, with_things

AT = Place("hall.yaml", 9, 5)


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


def test_a_sound_piece_does_not_hide_the_next_ones_hole() -> None:
    sound = piece("Log book", hang=hanging(rise=0.0), place=position(left=0.0, top=inches(70)))
    hang = hanging(Hanger.NAIL, inches(0.5), rise=inches(2), at=AT)
    work = piece("Tide chart", hang=hang, place=position(right=0.0, top=inches(96)))
    bare = piece("Outline", hang=None, place=position(top=inches(70)))
    faults = place_layout(layout([sound, bare, work])).faults
    assert [fault.message for fault in faults] == [
        "a hole of piece 'Tide chart' would be 1 1/2 in (38 mm) above the ceiling"
    ]


def test_a_hole_above_a_sloping_ceiling() -> None:
    # The piece under the slope ends 1 in below it at its right edge (160 in: 66 in); its hole, at its
    # middle, 152 in: 70 in, is at 65 - 2 + 9 = 72 in.
    hang = hanging(Hanger.NAIL, inches(2), rise=inches(9), at=AT)
    place = position(left=inches(144), top=inches(65))
    wall = with_ceiling(layout([piece("Tide chart", hang=hang, place=place)]), SLOPE)
    (fault,) = place_layout(wall).faults
    assert fault.message == "a hole of piece 'Tide chart' would be 2 in (51 mm) above the ceiling"


def test_a_hole_within_a_frame_past_the_ceiling_is_told_by_its_frame() -> None:
    hang = hanging(Hanger.NAIL, inches(1), rise=0.0)
    work = piece("Tide chart", hang=hang, place=position(top=inches(100)))
    (fault,) = place_layout(layout([work])).faults
    assert fault.message == "piece 'Tide chart' reaches 4 in (102 mm) above the ceiling"


@pytest.mark.parametrize(
    ("place", "drop", "rise", "message", "act"),
    [
        # The window: 30 to 80 in up. The piece ends at 29 in; its hole is at 29 - 1 + 4 = 32 in.
        (position(top=inches(29)), 1, 4, "2 in (51 mm) above the lower edge of 'sash window'", "lower"),
        # The piece starts at 82 in; 12 in high; its hole is at 94 - 11 - 4 = 79 in.
        (
            position(bottom=inches(82)),
            11,
            -4,
            "1 in (25 mm) below the upper edge of 'sash window'",
            "raise",
        ),
    ],
)
def test_a_hole_in_something_in_the_way(
    place: Position, drop: float, rise: float, message: str, act: str
) -> None:
    hang = hanging(Hanger.NAIL, inches(drop), rise=inches(rise), at=AT)
    wall = layout([piece("Tide chart", inches(12), inches(12), hang=hang, place=place)])
    amount = message.split(")", maxsplit=1)[0] + ")"
    assert place_layout(with_things(wall, obstacle("sash window", 80, 30, 120, 80))).faults == (
        Fault(
            f"a hole of piece 'Tide chart' would be {message}",
            f"{act} the piece by at least {amount}, or check the hanger's 'rise'",
            AT,
        ),
    )
