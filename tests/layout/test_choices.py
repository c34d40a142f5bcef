"""Faults in what a group leaves open: its pool, its count, the keys beside them."""

import pytest

from tests.layout.files import check_wide

ONE = "keep one of the two"
PICK = "choose: {from: [J, K, L], count: 2}, arrange: any, left: 500"


@pytest.mark.parametrize(
    ("old", "new", "faults"),
    [
        (
            PICK,
            "pieces: [J], ¦" + PICK.replace("J", "¦J"),
            [
                f"'choose' does not apply beside 'pieces' => {ONE}",
                "'from' names 'J', which is in the group 'pick' already"
                " => take it out of one of the two",
            ],
        ),
        (
            "count: 2",
            "count: ¦4",
            ["'count' is 4, more than the 3 in 'from' => lower it, or add pieces to choose from"],
        ),
        (
            "count: 2",
            "count: ¦none",
            ["'count' needs a whole number from 1 to 1000, but is 'none' => write for example 3"],
        ),
        (
            "from: [J, K, L]",
            "from: ¦[]",
            ["'from' needs at least one piece, but is an empty list => add the pieces to choose from"],
        ),
        (
            "from: [J, K, L]",
            "from: [J, ¦Q, ¦big, ¦A, ¦j]",
            [
                "'from' names 'Q', which is not in this layout => mend the name, or add the piece",
                "'from' names 'big', which is a group, not a piece => name the pieces to choose from",
                "'from' names 'A', which is in the group 'pair' already"
                " => take it out of one of the two",
                "'from' names 'j', which is in it already => name it once",
            ],
        ),
        (
            "{from: [J, K, L], count: 2}",
            "¦{count: 2}",
            ["'choose' needs 'from' => add for example 'from: [Tide chart, Kelp print, Gull study]'"],
        ),
        (
            "name: K, size: 10 x 10",
            "name: K, size: 10 x 10, ¦place: {left: 3}",
            [
                "'place' does not apply to a piece that 'pick' may choose"
                " => remove it, or take the piece out of 'from'"
            ],
        ),
        (
            "arrange: any, left: 500",
            "arrange: any, left: 500, ¦columns: 2, ¦corners: {}, ¦align: top",
            [
                "'columns' does not apply to 'arrange: any' => remove it: it belongs to grid",
                "'corners' does not apply to 'arrange: any' => remove it: it belongs to placed",
                "'align' does not apply to 'arrange: any' => remove it: it belongs to row and column",
            ],
        ),
        (
            ", arrange: column, gap: any, left: 550",
            ", arrange: grid, ¦rows: 2, gap: any, left: 550",
            ["'rows' does not apply where the number of pieces is left open => use 'columns'"],
        ),
    ],
)
def test_what_is_left_open(old: str, new: str, faults: list[str]) -> None:
    check_wide(old, new, *faults)
