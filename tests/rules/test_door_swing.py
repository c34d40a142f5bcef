from __future__ import annotations

import pytest

from templater.layout.model import LeftRight
from tests.rules.plans import box, findings_of, hung, obstacle, row, told, wall

CODE = "door-swing"
DOOR = obstacle("landing door", box(90, 0, 32, 80), kind="door", swing=LeftRight.RIGHT)  # to 122 in


@pytest.mark.parametrize(
    ("left", "bottom", "verdict", "figure", "mend"),
    [
        # The leaf covers 122 to 154 in, up to 80 in. The piece is 16 x 10 in.
        (154, 60, "kept", "0 in clear of the leaf", None),
        (160, 60, "kept", "6 in clear of the leaf", None),
        (149, 60, "broken", "5 in behind the leaf", "move right by 5 in (127 mm)"),
        (130, 78, "broken", "2 in behind the leaf", "raise by 2 in (51 mm)"),
        (130, 80, "kept", "0 in clear of the leaf", None),
        (60, 60, "kept", "46 in clear of the leaf", None),
    ],
)
def test_behind_the_leaf(
    left: float, bottom: float, verdict: str, figure: str, mend: str | None
) -> None:
    (found,) = findings_of(wall([hung("A", box(left, bottom, 16, 10))], obstacles=[DOOR]), CODE)
    assert told(found) == ("A", verdict, figure, mend)
    assert (found.other, found.band) == ("landing door", "0 in or more clear")


def test_a_door_that_swings_to_the_left() -> None:
    door = obstacle("pantry door", box(90, 0, 32, 80), kind="door", swing=LeftRight.LEFT)
    (found,) = findings_of(wall([hung("A", box(45, 60, 16, 10))], obstacles=[door]), CODE)
    assert told(found)[1:] == ("broken", "3 in behind the leaf", "move left by 3 in (76 mm)")


def test_a_group_is_moved_as_one() -> None:
    (found,) = findings_of(wall(groups=[row("trio", 140, 60, (3, 3))], obstacles=[DOOR]), CODE)
    assert told(found) == ("trio", "broken", "14 in behind the leaf", "move right by 14 in (356 mm)")


def test_a_door_that_does_not_fold_back_is_no_matter() -> None:
    door = obstacle("pantry door", box(90, 0, 32, 80), kind="door")
    assert findings_of(wall([hung("A", box(125, 60, 16, 10))], obstacles=[door]), CODE) == []


def test_the_way_out_does_not_end_on_a_window() -> None:
    # 5 in to the right the window starts at 156 in; beyond it, at 176 in, is 27 in from 149; up is 20.
    window = obstacle("sash window", box(156, 30, 20, 50))
    mend = "raise by 20 in (508 mm); then broken: near-opening"  # the corners touch
    (found,) = findings_of(wall([hung("A", box(149, 60, 7, 10))], obstacles=[DOOR, window]), CODE)
    assert told(found)[1:] == ("broken", "5 in behind the leaf", mend)


@pytest.mark.parametrize(("left", "move"), [(61, "19 in (483 mm)"), (73, "31 in (787 mm)")])
def test_a_way_out_that_ends_beside_a_window_says_so(left: float, move: str) -> None:
    # The leaf covers 58 to 90 in. To its left the piece, 16 in wide, starts at 42, where the window
    # ends: 3 in are asked for. Over the leaf its centre is at 85 in, off the eye line. At 73 in it is
    # too near an opening already, the door.
    door = obstacle("pantry door", box(90, 0, 32, 80), kind="door", swing=LeftRight.LEFT)
    window = obstacle("sash window", box(22, 30, 20, 50))
    (found,) = findings_of(wall([hung("A", box(left, 55, 16, 10))], obstacles=[door, window]), CODE)
    assert told(found)[3] == f"move left by {move}; then broken: near-opening"


def test_the_way_out_does_not_end_off_the_wall_or_on_another_piece() -> None:
    # Left of the door B ends at 75 in: 15 in of wall are left, too little for 16; right the wall ends.
    pieces = [hung("A", box(138, 76, 16, 10)), hung("B", box(0, 0, 75, 88))]
    (found, _) = findings_of(wall(pieces, width=156, height=97, obstacles=[DOOR]), CODE)
    assert told(found)[3] == "raise by 4 in (102 mm)"
    low = wall(pieces, width=156, height=88, obstacles=[DOOR])
    assert findings_of(low, CODE)[0].mend == (
        "no free place found near: make room for it, or hang it elsewhere"
    )
