"""Groups within groups: what may be a member, and how deep they may stand."""

import pytest

from tests.layout.files import check_wide, list_faults, read_sound

CORNERS = "corners: {B: {left: 11, bottom: 3}, a: {left: 0, bottom: 0}}"
SIX = '{name: six, pieces: [D, E], arrange: grid, rows: 2, cells: "true", right: 20}'


@pytest.mark.parametrize(
    ("old", "new", "faults"),
    [
        (
            "pieces: [pair, C]",
            "pieces: [pair, C, ¦BIG]",
            [
                "'pieces' names 'BIG', which is this group itself, or has it within"
                " => take one of the two out of the other"
            ],
        ),
        (
            SIX,
            SIX.replace("D, E", "D, E, ¦pair"),
            ["'pieces' names 'pair', which is in the group 'big' already => name it once"],
        ),
        (
            "pieces: [G]",
            "pieces: [G, ¦heap]",
            [
                "'pieces' names 'heap', which is a group, but a ledge holds pieces alone"
                " => name the pieces themselves"
            ],
        ),
        (
            CORNERS,
            f"{CORNERS}\n    ¦left: 3\n    ¦top: 4",
            [
                f"'{key}' does not apply to a group within a group, here 'big'"
                " => remove it, or take the group out of that one"
                for key in ("left", "top")
            ],
        ),
    ],
)
def test_groups_in_groups(old: str, new: str, faults: list[str]) -> None:
    check_wide(old, new, *faults)


def nested(count: int, *, outer_first: bool) -> str:
    """So many groups within one another, and a piece in the innermost."""
    names = range(1, count + 1)
    groups = [
        f"  - {{name: group {number}, arrange: row, pieces: [group {number + 1}]}}\n" for number in names
    ]
    groups[-1] = groups[-1].replace(f"group {count + 1}", "Gull")
    ordered = groups if outer_first else groups[::-1]
    head = "title: Hall\nwall: {width: 3 m, height: 2 m}\npieces: [{name: Gull, size: 2 x 3 cm}]\n"
    return head + "groups:\n" + "".join(ordered)


@pytest.mark.parametrize("outer_first", [True, False])
def test_groups_stand_within_one_another_up_to_a_limit(outer_first: bool) -> None:
    assert len(read_sound(nested(8, outer_first=outer_first)).groups) == 8
    (fault,) = list_faults(nested(9, outer_first=outer_first))
    assert "makes more than 8 groups stand within one another\n  name the pieces themselves" in fault


@pytest.mark.parametrize("outer_first", [True, False])
def test_very_many_groups_within_one_another_harm_nothing(outer_first: bool) -> None:
    assert list_faults(nested(3000, outer_first=outer_first))
