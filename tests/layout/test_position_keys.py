"""Faults in where a piece or a group is to hang: keys that clash, names that lead nowhere."""

import pytest

from tests.layout.files import WIDE, change, check_wide, read_sound


@pytest.mark.parametrize(
    ("old", "new", "faults"),
    [
        (
            "{beside: sash window, side: right, clearance: 4, top: 70}",
            "¦{beside: sash window}",
            ["'beside' needs 'side' => add 'side: left' or 'side: right'"],
        ),
        (
            "{beside: sash window, side: right, clearance: 4, top: 70}",
            "{left: 3, ¦side: right, ¦clearance: 4}",
            [
                "'side' does not apply without 'beside' => add 'beside', or remove it",
                "'clearance' does not apply without 'above' or 'beside'"
                " => add one of them, or remove it",
            ],
        ),
        (
            "clearance: 4, top: 70",
            "clearance: 4, top: 70, ¦left: 4, ¦bottom: 3",
            [
                "'left' does not apply beside 'beside', which decides the same direction"
                " => keep one of beside, left, centre and right",
                "'bottom' does not apply beside 'top', which decides the same direction"
                " => keep one of eye_line, bottom and top",
            ],
        ),
        (
            "above: settle",
            "above: settle, ¦between: [settle, thermostat]",
            [
                "'between' does not apply beside 'above', which decides both directions"
                " => keep one of the two"
            ],
        ),
        (
            "{beside: sash window, side: right, clearance: 4, top: 70}",
            "{¦around: sash window}",
            [
                "'around' does not apply to a piece: it has no pieces to hang on both sides"
                " => use 'beside'"
            ],
        ),
        (
            "beside: sash window",
            "beside: ¦sash windo",
            [
                "'beside' names 'sash windo', which is not in this layout (did you mean 'sash window'?)"
                " => mend the name, or add it under 'furniture', 'openings' or 'fixtures'"
            ],
        ),
        (
            "beside: sash window",
            "beside: ¦big",
            [
                "'beside' names 'big', which is a group, not an opening, a fixture or furniture"
                " => name what it hangs beside"
            ],
        ),
        (
            "above: settle",
            "above: ¦thermostat",
            [
                "'above' names 'thermostat', which is a fixture, not furniture"
                " => name what it hangs above"
            ],
        ),
        (
            "[Landing Door, Right End]",
            "[¦left ende, Right End]",
            [
                "'between' names 'left ende', which is not in this layout (did you mean 'left end'?)"
                " => mend the name, or add it under 'furniture', 'openings' or 'fixtures'"
            ],
        ),
        (
            "[Landing Door, Right End]",
            "¦[right end, Right End]",
            ["'between' names 'right end' twice => name two different things"],
        ),
        (
            "[Landing Door, Right End]",
            "¦[Landing Door]",
            [
                "'between' needs two names, but is a list of 1"
                " => write for example [sash window, right end]"
            ],
        ),
        (
            "[Landing Door, Right End]",
            "¦settle",
            ["'between' needs two names, but is 'settle' => write for example [sash window, right end]"],
        ),
    ],
)
def test_positions(old: str, new: str, faults: list[str]) -> None:
    check_wide(old, new, *faults)


def test_a_column_hangs_around_a_thing_up_and_down() -> None:
    row = "{name: six, pieces: [D, E], arrange: %s, around: thermostat, %s: 20}"
    old = '{name: six, pieces: [D, E], arrange: grid, rows: 2, cells: "true", right: 20}'
    assert read_sound(change(old, row % ("column", "right"), WIDE))
    assert read_sound(change(old, row % ("row", "top"), WIDE))
    check_wide(
        old,
        row % ("column", "¦top"),
        "'top' does not apply beside 'around', which decides the same direction"
        " => keep one of around, eye_line, bottom and top",
    )
    check_wide(
        old,
        row % ("row", "¦right"),
        "'right' does not apply beside 'around', which decides the same direction"
        " => keep one of around, left, centre and right",
    )
