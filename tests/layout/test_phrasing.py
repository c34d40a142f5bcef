import pytest

from tests.layout.files import change, check_faults

ROOT_KEYS = (
    "use title, units, paper, margin, lap, eye_line, datum, for, from, contact, issue, region, font,"
    " wall, furniture, openings, fixtures, hardware, pieces, groups, rules or accept"
)
PIECE_KEYS = "use name, size, picture, mat, moulding, rabbet, weight, made_of, stands_out, hang or place"
PIECE_LIST = "write for example 'pieces: [{name: Tide chart, size: 16 x 20 in}]'"
NO_ENTRY = "write one in its place, or remove its dash or comma"
NO_VALUE = "write one after the colon, or remove the key"


@pytest.mark.parametrize(
    ("old", "new", "faults"),
    [
        (
            "title: Front room\n",
            "¦",
            ["the layout needs 'title' => add for example 'title: Lamp room corridor'"],
        ),
        (
            "title: Front room",
            "¦titel: Front room",
            [f"'titel' is not a key of the layout (did you mean 'title'?) => {ROOT_KEYS}"],
        ),
        (
            "units: in",
            "units: in\n¦anchor: 5",
            [f"'anchor' is not a key of the layout => {ROOT_KEYS}"],
        ),
        (
            "units: in",
            "units: in\n¦<<: {lap: 5}",
            [f"'<<' is not a key of the layout => {ROOT_KEYS}"],
        ),
        (
            "{width: 12 ft, height: 8 ft}",
            "¦12 ft",
            [
                "'wall' needs keys and values, but is '12 ft'"
                " => write for example 'wall: {width: 16 ft 4 in, height: 8 ft}'"
            ],
        ),
        (
            "{width: 12 ft, height: 8 ft}",
            "¦{width: 12 ft}",
            ["'wall' needs 'height' => add for example 'height: 34 in'"],
        ),
        (
            "size: 20 x 16",
            "¦sise: 20 x 16, ¦colour: red",
            [
                f"'sise' is not a key of piece 'Harbour' (did you mean 'size'?) => {PIECE_KEYS}",
                f"'colour' is not a key of piece 'Harbour' => {PIECE_KEYS}",
            ],
        ),
        (
            "- {name: Harbour, size: 20 x 16}",
            "- {name: Harbour, size: 20 x 16}\n  - ¦Lamp",
            [f"piece 4 needs keys and values, but is 'Lamp' => {PIECE_LIST}"],
        ),
        (
            "drop: 1/2",
            "drop: 2,¦25 in",
            ["'25 in' is not a key of 'hang' => if it is the rest of a number, write a point: 2.25 in"],
        ),
        (
            "{width: 12 ft, height: 8 ft}",
            "{width: 3,¦600 mm, height: 8 ft}",
            [
                "'600 mm' is not a key of 'wall' => if it is the rest of a number,"
                " write a point: 3.600 mm; or if thousands are meant: 3600 mm"
            ],
        ),
        (
            "drop: 1/2",
            "drop: 1/2 in,¦25 in",
            [
                "'25 in' is not a key of 'hang'"
                " => if it is the rest of a number, write a point instead of the comma"
            ],
        ),
        (
            "- {name: Harbour, size: 20 x 16}",
            "- {name: Harbour, size: 20 x 16}\n  -¦",
            [f"piece 4 has no value => {NO_ENTRY}"],
        ),
        (
            "pieces: [Cliff path, Harbour]",
            "pieces: [Cliff path, ¦'', Harbour]",
            [f"'pieces' has no value => {NO_ENTRY}"],
        ),
        (
            "{by: nail, drop: 1/2}",
            "¦{by: nail}",
            ["'hang' by nail needs 'drop' => add for example 'drop: 2 1/4 in'"],
        ),
        (
            "{left: 100}",
            "{¦center: 100}",
            [
                "'center' is not a key of 'place' (did you mean 'centre'?)"
                " => use above, beside, side, around, between, clearance, left, centre, right, eye_line,"
                " bottom or top"
            ],
        ),
        ("{left: 100}", "¦", [f"'place' has no value => {NO_VALUE}"]),
        (
            "height: 20}",
            "height: 20}\n  - ¦{left: 24, width: 60, height: 20}",
            ["furniture 2 needs 'name' => add for example 'name: Tide chart'"],
        ),
        (
            "{name: seat pair, pieces: [Cliff path, Harbour], arrange: row, above: window seat}",
            "¦{name: seat pair, pieces: [Cliff path, Harbour], above: window seat}",
            ["group 'seat pair' needs 'arrange' => add for example 'arrange: row'"],
        ),
        (
            "pieces: [Cliff path, Harbour]",
            "pieces: ¦Harbour",
            [
                "'pieces' needs a list, but is 'Harbour'"
                " => write for example 'pieces: [Tide chart, Kelp print]'"
            ],
        ),
        (
            "pieces: [Cliff path, Harbour]",
            "pieces: [Cliff path, ¦{name: Harbour}]",
            ["'pieces' needs a text, but is a mapping => write one value in its place"],
        ),
    ],
)
def test_keys_and_shapes_that_are_faulty(old: str, new: str, faults: list[str]) -> None:
    check_faults(change(old, new), *faults)


def test_a_section_that_is_no_list() -> None:
    check_faults(
        "title: Hall\nwall: {width: 3 m, height: 2 m}\npieces: ¦{name: Gull}\ngroups:¦\n",
        f"'pieces' needs a list, but is a mapping => {PIECE_LIST}",
        f"'groups' has no value => {NO_VALUE}",
    )


def test_a_fault_that_an_alias_repeats_is_shown_once() -> None:
    marked = change("hang: {by: nail, drop: 1/2}", "hang: &nail {by: nail, drop: ¦-1}")
    check_faults(
        marked.replace("size: 20 x 16", "size: 20 x 16, hang: *nail"),
        "'drop' must not be negative, but is '-1' => check the number and its unit",
    )
