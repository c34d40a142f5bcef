"""Faults in openings and fixtures: where they are, what they are called."""

import pytest

from tests.layout.files import WIDE, change, check_faults, check_wide

THERMOSTAT = "{name: thermostat, centre: 100, middle: 60, width: 4, height: 5}"
WINDOW = "{name: sash window, kind: window, left: 40, bottom: 30, width: 36, height: 50}"


@pytest.mark.parametrize(
    ("old", "new", "faults"),
    [
        (
            THERMOSTAT,
            "¦¦{name: thermostat, width: 4, height: 5}",
            [
                "fixture 'thermostat' needs 'bottom', 'middle' or 'top'"
                " => add for example 'bottom: 40 in'",
                "fixture 'thermostat' needs 'left', 'centre' or 'right'"
                " => add for example 'left: 40 in'",
            ],
        ),
        (
            THERMOSTAT,
            "{name: thermostat, centre: 100, ¦left: 3, middle: 60, ¦top: 4, width: 4, height: 5}",
            [
                "'left' does not apply beside 'centre', which says the same"
                " => keep one of left, centre and right",
                "'top' does not apply beside 'middle', which says the same"
                " => keep one of bottom, middle and top",
            ],
        ),
        (
            WINDOW,
            "¦" + WINDOW.replace("bottom: 30, ", ""),
            [
                "opening 'sash window' needs 'bottom', 'middle' or 'top'"
                " => add for example 'bottom: 40 in'"
            ],
        ),
        (
            THERMOSTAT,
            "{name: thermostat, centre: 100, middle: 60, width: 4, height: 5, ¦swing: left}",
            [
                "'swing' is not a key of fixture 'thermostat'"
                " => use name, kind, left, centre, right, bottom, middle, top, width or height"
            ],
        ),
        (
            "swing: right",
            "swing: ¦rigth",
            ["'swing' is 'rigth', which is not a side (did you mean 'right'?) => use left or right"],
        ),
        (
            "name: thermostat, ",
            "name: ¦Settle, ",
            [
                "'name' is 'Settle', but furniture is called 'settle' already"
                " => give each a name of its own"
            ],
        ),
        (
            "name: thermostat, ",
            "name: ¦landing door, ",
            [
                "'name' is 'landing door', but an opening is called 'landing door' already"
                " => give each a name of its own"
            ],
        ),
        (
            "name: thermostat, ",
            "name: ¦Left End, ",
            [
                "'name' is 'Left End', which means an end of the wall"
                " => give it another name than left end or right end"
            ],
        ),
    ],
)
def test_openings_and_fixtures(old: str, new: str, faults: list[str]) -> None:
    check_wide(old, new, *faults)


def test_two_things_with_one_name() -> None:
    check_faults(
        change("openings:", "openings:\n  - {name: hatch, left: 1, width: 2, height: 3}", WIDE)
        .replace("name: sash window,", "name: ¦Hatch,")
        .replace("beside: sash window", "beside: hatch"),
        "'name' is 'Hatch', but another opening is called 'hatch' already"
        " => give each a name of its own",
    )
