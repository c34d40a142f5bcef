from __future__ import annotations

import pytest

from tests.rules.plans import box, findings_of, grouped, hung, obstacle, row, told, wall

CODE = "near-opening"
WINDOW = obstacle("sash window", box(40, 30, 36, 50))  # 40 to 76 in, 30 to 80 in


@pytest.mark.parametrize(
    ("left", "bottom", "verdict", "figure", "mend"),
    [
        # At least 3 in; common practice, no source. The piece is 16 x 10 in.
        (79, 50, "kept", "3 in", None),
        (100, 50, "kept", "24 in", None),
        (77, 50, "broken", "1 in", "move right by 2 in (51 mm)"),
        (22, 50, "broken", "2 in", "move left by 1 in (25 mm)"),
        (50, 82, "broken", "2 in", "raise by 1 in (25 mm)"),
        (50, 19, "broken", "1 in", "lower by 2 in (51 mm)"),
        (77.5, 81, "broken", "1 1/2 in", "move right by 1 1/2 in (38 mm)"),  # past a corner
    ],
)
def test_beside_a_window(
    left: float, bottom: float, verdict: str, figure: str, mend: str | None
) -> None:
    (found,) = findings_of(wall([hung("A", box(left, bottom, 16, 10))], obstacles=[WINDOW]), CODE)
    assert told(found) == ("A", verdict, figure, mend)
    assert (found.other, found.band) == ("sash window", "3 in or more")


def test_a_group_is_moved_as_one() -> None:
    (found,) = findings_of(wall(groups=[row("trio", 77, 50, (3, 3))], obstacles=[WINDOW]), CODE)
    assert told(found) == ("trio", "broken", "1 in", "move right by 2 in (51 mm)")


def test_around_a_window_each_piece_is_moved_by_itself() -> None:
    parts = [("A", box(22, 50, 16, 10)), ("B", box(77, 50, 16, 10))]
    found = findings_of(wall(groups=[grouped("pair", parts)], obstacles=[WINDOW]), CODE)
    assert [told(each) for each in found] == [
        ("B", "broken", "1 in", "move right by 2 in (51 mm)"),
        ("A", "broken", "2 in", "move left by 1 in (25 mm)"),
    ]


def test_of_what_is_far_enough_only_the_nearest_is_told() -> None:
    clock = obstacle("clock", box(120, 60, 10, 10), kind="clock")
    (found,) = findings_of(wall([hung("A", box(90, 60, 10, 10))], obstacles=[WINDOW, clock]), CODE)
    assert (found.other, found.figure) == ("sash window", "14 in")


def test_a_move_does_not_leave_the_wall() -> None:
    # The door starts at 20 in, the piece ends at 18: 1 in to the left would do, but only 1/2 in of
    # wall is there. Its lower edge is at 60 in; 3 in above the door is 83 in.
    door = obstacle("door", box(20, 0, 30, 80), kind="door")
    plan = wall([hung("A", box(0.5, 60, 17.5, 14))], obstacles=[door], height=110)
    assert findings_of(plan, CODE)[0].mend == "raise by 23 in (584 mm)"


def test_a_move_does_not_land_on_another_window() -> None:
    # The windows are 19 in apart, the piece 16 in wide: at 77 in it is 1 in from the first, 2 in from
    # the other. No place between is 3 in from both, so it goes below, to 17 in: 33 in. Above, as
    # far, its top edge would be at 93 in, 3 in under the ceiling: near-ceiling.
    other = obstacle("far window", box(95, 30, 36, 50))
    (first, second) = findings_of(
        wall([hung("A", box(77, 50, 16, 10))], obstacles=[WINDOW, other]), CODE
    )
    assert told(first)[3] == told(second)[3] == "lower by 33 in (838 mm)"


def test_a_move_does_not_land_on_another_piece() -> None:
    # 2 in to the right B begins, too near: 16 in of wall are left of it. It ends at 130 in.
    pieces = [hung("A", box(77, 50, 16, 10)), hung("B", box(94, 30, 36, 50))]
    found = findings_of(wall(pieces, obstacles=[WINDOW]), CODE)[0]
    assert told(found) == ("A", "broken", "1 in", "lower by 33 in (838 mm)")


def test_a_move_that_breaks_no_other_rule_goes_before_a_shorter_one() -> None:
    # The centre is on the eye line, 60 in. The door ends at 50 in, 1 in left of the piece; a move of
    # 2 in to the right brings it within 1 in of the hatch at 70 in. Above the door, 31 in up, it is off
    # the eye line; right of the hatch it stays on it.
    doors = [
        obstacle("door", box(20, 0, 30, 80), kind="door"),
        obstacle("hatch", box(70, 40, 20, 30), kind="hatch"),
    ]
    plan = wall([hung("A", box(51, 52, 16, 16))], obstacles=doors)
    # 90 + 3 - 51 = 42 in to the right; up, 80 + 3 - 52 = 31 in.
    assert [each.mend for each in findings_of(plan, CODE)] == ["move right by 42 in (1067 mm)"]


def test_what_every_move_breaks_is_named() -> None:
    # Left of the door are 15 in, too few for 16, right of it 18, too few for 16 and 3. Above it, 31 in
    # up, the centre is at 91 in; the top edge, at 99 in, is 21 in under the ceiling.
    door = obstacle("door", box(15, 0, 35, 80), kind="door")
    plan = wall([hung("A", box(51, 52, 16, 16))], obstacles=[door], width=68, height=120)
    (found,) = findings_of(plan, CODE)
    assert found.mend == "raise by 31 in (787 mm); then broken: eye-line"


def test_a_move_along_two_axes_where_none_along_one_leads_out() -> None:
    # Above, below and to the right others are in the way, and beyond the window as well. Under 'lower'
    # it would hang at 30 in, and 2 in to the right it is far enough from the window there.
    pieces = [
        hung("A", box(77, 50, 16, 10)),
        hung("upper", box(70, 62, 26, 30)),
        hung("lower", box(77, 40, 17, 8)),
        hung("side", box(94, 40, 106, 56)),
        hung("chart", box(60, 0, 18.5, 30)),
        hung("far", box(0, 0, 37, 96)),
    ]
    found = findings_of(wall(pieces, obstacles=[WINDOW]), CODE)[0]
    assert told(found)[0::3] == ("A", "move right by 2 in (51 mm) and lower by 20 in (508 mm)")


def test_where_there_is_no_room_it_says_so() -> None:
    found = findings_of(
        wall([hung("A", box(77, 50, 16, 10))], obstacles=[WINDOW], width=94, height=82), CODE
    )[0]
    assert found.mend == "lower by 33 in (838 mm)"
    pieces = [hung("A", box(77, 32, 16, 46)), hung("B", box(0, 0, 30, 82))]
    closed = wall(pieces, obstacles=[WINDOW], width=94, height=82)
    assert (
        findings_of(closed, CODE)[0].mend
        == "no free place found near: make room for it, or hang it elsewhere"
    )
