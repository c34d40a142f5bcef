import pytest

from tests.layout.files import SMALL, change, check_faults, read_sound

UP = "keep one of eye_line, bottom and top"
ACROSS = "keep one of left, centre and right"
ONE_OF_TWO = "keep one of the two"
HANG = "{by: nail, drop: 1/2}"


@pytest.mark.parametrize(
    ("old", "new", "faults"),
    [
        (
            HANG,
            "¦{by: d-rings, drop: 1}",
            ["'hang' by d-rings needs 'apart' => add for example 'apart: 12 in'"],
        ),
        (
            HANG,
            "¦{by: keyholes, drop: 1}",
            ["'hang' by keyholes needs 'apart' => add for example 'apart: 12 in'"],
        ),
        (
            HANG,
            "¦¦{by: cleat, ¦apart: 3, drop: 1}",
            [
                "'hang' by cleat needs 'every' => add for example 'every: 7 in'",
                "'hang' by cleat needs 'width' => add for example 'width: 18 in'",
                "'apart' does not apply to 'hang' by cleat"
                " => remove it: it belongs to d-rings, keyholes and rail",
            ],
        ),
        (
            HANG,
            "{by: wire, ¦width: 3, ¦every: 1, drop: 1}",
            [
                "'width' does not apply to 'hang' by wire => remove it: it belongs to cleat",
                "'every' does not apply to 'hang' by wire => remove it: it belongs to cleat",
            ],
        ),
        (
            "left: 100",
            "left: 100, ¦right: 3, ¦centre: 5",
            [
                f"'right' does not apply beside 'left', which decides the same direction => {ACROSS}",
                f"'centre' does not apply beside 'left', which decides the same direction => {ACROSS}",
            ],
        ),
        (
            "left: 100",
            "top: 90, ¦eye_line: 60",
            [f"'eye_line' does not apply beside 'top', which decides the same direction => {UP}"],
        ),
        (
            "left: 100",
            "left: 100, ¦clearance: 7",
            ["'clearance' does not apply without 'above' or 'beside' => add one of them, or remove it"],
        ),
        (
            "above: window seat",
            "¦left: 3, above: window seat, ¦top: 80",
            [
                f"'left' does not apply beside 'above', which decides both directions => {ONE_OF_TWO}",
                f"'top' does not apply beside 'above', which decides both directions => {ONE_OF_TWO}",
            ],
        ),
        (
            "arrange: row",
            "arrange: row, align: ¦left",
            ["'align' is 'left', which does not suit a row => use top, centre or bottom"],
        ),
        (
            "arrange: row",
            "arrange: column, align: ¦top",
            ["'align' is 'top', which does not suit a column => use left, centre or right"],
        ),
        (
            "pieces: [Cliff path, Harbour]",
            "pieces: ¦[]",
            ["'pieces' needs at least one piece, but is an empty list => add a piece"],
        ),
    ],
)
def test_keys_that_do_not_go_together(old: str, new: str, faults: list[str]) -> None:
    check_faults(change(old, new), *faults)


def test_a_wall_without_pieces_is_faulty() -> None:
    check_faults(
        "title: Hall\nwall: {width: 3 m, height: 2 m}\npieces: ¦[]\n",
        "'pieces' needs at least one piece, but is an empty list => add a piece",
    )


@pytest.mark.parametrize(
    "place",
    [
        "{}",
        "{left: 1, top: 90}",
        "{centre: 100, bottom: 3}",
        "{right: 0, eye_line: 50}",
        "{above: window seat, clearance: 8}",
    ],
)
def test_keys_that_go_together(place: str) -> None:
    assert read_sound(SMALL.replace("{left: 100}", place))


def test_they_are_found_beside_faulty_values() -> None:
    check_faults(
        change(HANG, "¦{by: cleat, drop: ¦-1, width: 3}"),
        "'hang' by cleat needs 'every' => add for example 'every: 7 in'",
        "'drop' must not be negative, but is '-1' => check the number and its unit",
    )
