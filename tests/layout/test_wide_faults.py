"""Faults in the keys of arrangements, things in the way and rules: whole message, hint and place."""

import pytest

from tests.layout.files import WIDE, change, check_faults, list_faults, read_sound

CHECK = "check the number and its unit"
ONE = "keep one of the two"
POINTS = "[[0, 9 ft], [16 ft, 6 ft]]"
CEILING = "ceiling: [[0, 9 ft], [40 ft, 9 ft], [50 ft, 6 ft]]"
THERMOSTAT = "{name: thermostat, centre: 100, middle: 60, width: 4, height: 5}"
WINDOW = "{name: sash window, kind: window, left: 40, bottom: 30, width: 36, height: 50}"
BIG = "{name: big, pieces: [pair, C], arrange: row, spread: 50, between: [Landing Door, Right End]}"
LEDGE = "ledge: {height: 55, width: 48, thick: 1 1/2, drop: 3/4, every: 16}"
CORNERS = "corners: {B: {left: 11, bottom: 3}, a: {left: 0, bottom: 0}}"
SIX = '{name: six, pieces: [D, E], arrange: grid, rows: 2, cells: "true", right: 20}'
HEAP = "{name: heap, pieces: [I], arrange: cluster, width: 40, height: 30, gap: any, above: settle}"
STAIR = "stair: {rise: 7 1/2, run: 10, up: left, start: {left: 300, bottom: 15}}"
REST = f"name: rest\n    pieces: [G]\n    arrange: ledge\n    {LEDGE}"
PAIR = f"name: pair\n    pieces: [A, B]\n    arrange: placed\n    {CORNERS}"
ACCEPT = "- {rule: eye-line, for: PICK, because: the stairs put the eye higher here}"
PICK = "choose: {from: [J, K, L], count: 2}, arrange: any, left: 500"
RULE_CODES = (
    "width-over-furniture, past-the-ends, clearance, gap, eye-line, group-as-one, uneven-gaps,"
    " near-miss, balance, near-ceiling, near-corner, near-opening, door-swing or size-against-wall"
)


def check(old: str, new: str, *faults: str) -> None:
    check_faults(change(old, new, WIDE), *faults)


@pytest.mark.parametrize(
    ("points", "fault"),
    [
        (
            "¦[[0, 9 ft]]",
            f"'ceiling' needs at least two points, but has 1 => write for example {POINTS}",
        ),
        (
            "¦[[0, 9 ft], [10, 8 ft], [10, 7 ft], [50 ft, 9 ft]]",
            "'ceiling' has a point 3 that is not right of point 2"
            " => list the points from the wall's left end to its right end",
        ),
        (
            "¦[[1, 9 ft], [50 ft, 8 ft]]",
            "'ceiling' does not start at the wall's left end => give the first point the distance 0",
        ),
        (
            "¦[[0, 9 ft], [49 ft, 8 ft]]",
            "'ceiling' does not end at the wall's right end"
            " => give the last point the wall's 'width' as its distance",
        ),
        (
            "[[0, 9 ft], ¦[50 ft]]",
            "'ceiling' needs points of a distance and a height each, but is a list of 1"
            f" => write for example {POINTS}",
        ),
        (
            "[[0, 9 ft], ¦50 ft]",
            "'ceiling' needs points of a distance and a height each, but is '50 ft'"
            f" => write for example {POINTS}",
        ),
        ("[[0, 9 ft], ¦[50 ft, 0]]", f"'ceiling' must be more than 0, but is '0' => {CHECK}"),
        ("¦9 ft", f"'ceiling' needs a list, but is '9 ft' => write for example 'ceiling: {POINTS}'"),
    ],
)
def test_ceilings(points: str, fault: str) -> None:
    check(CEILING, f"ceiling: {points}", fault)


def test_a_height_beside_a_ceiling_must_be_its_highest_point() -> None:
    assert read_sound(change(CEILING, f"{CEILING}, height: 108", WIDE)).wall.size.height == 108 * 25.4
    check(
        CEILING,
        f"{CEILING}, height: ¦9 ft 1 in",
        "'height' is '9 ft 1 in', but the ceiling's highest point is not"
        " => remove 'height', or mend the ceiling",
    )


def test_a_wall_without_ceiling_needs_a_height() -> None:
    check_faults(
        change("{width: 12 ft, height: 8 ft}", "¦{width: 12 ft}"),
        "'wall' needs 'height' => add for example 'height: 34 in'",
    )
    check_faults(
        change("height: 8 ft", "¦heigth: 8 ft"),
        "'heigth' is not a key of 'wall' (did you mean 'height'?) => use width, ceiling, height,"
        " surface, board, studs, walkway, earthquake or outside",
    )


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
    check(old, new, *faults)


def test_two_things_with_one_name() -> None:
    check_faults(
        change("openings:", "openings:\n  - {name: hatch, left: 1, width: 2, height: 3}", WIDE)
        .replace("name: sash window,", "name: ¦Hatch,")
        .replace("beside: sash window", "beside: hatch"),
        "'name' is 'Hatch', but another opening is called 'hatch' already"
        " => give each a name of its own",
    )


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
    check(old, new, *faults)


def test_a_column_hangs_around_a_thing_up_and_down() -> None:
    row = "{name: six, pieces: [D, E], arrange: %s, around: thermostat, %s: 20}"
    old = '{name: six, pieces: [D, E], arrange: grid, rows: 2, cells: "true", right: 20}'
    assert read_sound(change(old, row % ("column", "right"), WIDE))
    assert read_sound(change(old, row % ("row", "top"), WIDE))
    check(
        old,
        (row % ("column", "¦top")),
        "'top' does not apply beside 'around', which decides the same direction"
        " => keep one of around, eye_line, bottom and top",
    )
    check(
        old,
        (row % ("row", "¦right")),
        "'right' does not apply beside 'around', which decides the same direction"
        " => keep one of around, left, centre and right",
    )


@pytest.mark.parametrize(
    ("old", "new", "faults"),
    [
        ("spread: 50", "gap: 3, ¦spread: 50", [f"'spread' does not apply beside 'gap' => {ONE}"]),
        (
            "rows: 2, ",
            "rows: 2, ¦spread: 30, ¦corners: {}, ",
            [
                "'spread' does not apply to 'arrange: grid' => remove it: it belongs to row and column",
                "'corners' does not apply to 'arrange: grid' => remove it: it belongs to placed",
            ],
        ),
        (
            "rows: 2, ",
            "¦rows: 2, columns: 3, ",
            [f"'rows' does not apply beside 'columns' => {ONE}"],
        ),
        (
            SIX,
            "¦" + SIX.replace("rows: 2, ", ""),
            [
                "group 'six' needs 'columns' or 'rows' for 'arrange: grid'"
                " => add for example 'columns: 3'"
            ],
        ),
        (
            "rows: 2, ",
            "rows: ¦2.5, ",
            ["'rows' needs a whole number from 1 to 1000, but is '2.5' => write for example 3"],
        ),
        (
            "rows: 2, ",
            "rows: ¦3, ",
            ["'rows' is 3, but 2 pieces in reading order fill 2 => write 2, or use 'columns'"],
        ),
        (
            'cells: "true"',
            "cells: ¦equl",
            [
                "'cells' is 'equl', which is not a way to measure cells (did you mean 'equal'?)"
                " => use equal or true"
            ],
        ),
        (
            HEAP,
            "¦" + HEAP.replace("height: 30, ", ""),
            [
                "group 'heap' needs 'height' beside 'width'"
                " => add for example 'height: 40 in', or remove 'width'"
            ],
        ),
        (
            f"name: up\n    pieces: [H]\n    arrange: stair\n    {STAIR}\n",
            "¦name: up\n    pieces: [H]\n    arrange: stair\n",
            [
                "group 'up' needs 'stair' for 'arrange: stair'"
                " => add for example 'stair: {rise: 7 1/2 in,"
                " run: 10 in, up: right, start: {left: 20 in, bottom: 7 1/2 in}}'"
            ],
        ),
        (
            "up: left, start: {left: 300, bottom: 15}",
            "up: ¦up, start: ¦{left: 300}",
            [
                "'up' is 'up', which is not a side => use left or right",
                "'start' needs 'bottom' => add for example 'bottom: 7 1/2 in'",
            ],
        ),
        (
            REST,
            "¦" + REST.replace(f"\n    {LEDGE}", ""),
            [
                "group 'rest' needs 'ledge' for 'arrange: ledge'"
                " => add for example 'ledge: {height: 55 in,"
                " width: 48 in, thick: 1 1/2 in, drop: 3/4 in, every: 16 in}'"
            ],
        ),
        (
            LEDGE,
            f"{LEDGE}\n    above: settle\n    ¦clearance: 3",
            ["'clearance' does not apply to 'arrange: ledge', which gives the height => remove it"],
        ),
        (
            "name: G, size: 10 x 10",
            "name: G, size: 10 x 10, ¦hang: {by: wire, drop: 1}",
            [
                "'hang' does not apply to a piece that stands on the ledge, here 'rest'"
                " => remove it: the ledge alone has screws"
            ],
        ),
        (
            PAIR,
            "¦" + PAIR.replace(CORNERS, "¦gap: 3"),
            [
                "group 'pair' needs 'corners' for 'arrange: placed'"
                " => add for example 'corners: {Tide chart: {left: 0 in, bottom: 3 in}}'",
                "'gap' does not apply to 'arrange: placed'"
                " => remove it: it belongs to row, column, grid, cluster, stair, ledge and any",
            ],
        ),
        (
            CORNERS,
            "corners: ¦{B: {left: 11, bottom: 3}, ¦C: {left: 0, bottom: 0}}",
            [
                "'corners' has none for 'A' => add 'A' with its 'left' and 'bottom'",
                "'corners' names 'C', which is not one of the group's 'pieces'"
                " => mend the name, or remove it",
            ],
        ),
        (
            CORNERS,
            "corners: {B: ¦{left: 11}, A: ¦3, ¦a: {left: 0, bottom: 0}}",
            [
                "'B' needs 'bottom' => add for example 'bottom: 7 1/2 in'",
                "'A' needs keys and values, but is '3'"
                " => write for example 'Tide chart: {left: 0 in, bottom: 3 in}'",
                f"'corners' names 'a' twice => {ONE}",
            ],
        ),
        (
            CORNERS,
            "corners: {B: {left: 11, bottom: 3}, A: {left: 0, bottom: 0, ¦top: 4}}",
            ["'top' is not a key of 'A' => use left or bottom"],
        ),
    ],
)
def test_arrangements(old: str, new: str, faults: list[str]) -> None:
    check(old, new, *faults)


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
    check(old, new, *faults)


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
    check(old, new, *faults)


@pytest.mark.parametrize(
    ("old", "new", "faults"),
    [
        (
            "  gap: {",
            "  ¦gaps: {",
            [f"'gaps' is not a key of 'rules' (did you mean 'gap'?) => use {RULE_CODES}"],
        ),
        (
            "eye-line: off",
            "eye-line: ¦maybe",
            [
                "'eye-line' needs to be on or off, but is 'maybe'"
                " => write on, off or a band, {from: 2 in, to: 5 in}"
            ],
        ),
        (
            "near-miss: on",
            "door-swing: ¦{to: 3}",
            ["'door-swing' needs to be on or off, but is a mapping => write on or off"],
        ),
        (
            "near-miss: on",
            "near-miss:¦",
            ["'near-miss' has no value => write one after the colon, or remove the key"],
        ),
        (
            "{to: 12.5 %}",
            "{from: ¦5 %}",
            [
                "'from' does not apply to a rule that asks for equality: "
                "its band always starts at nothing => write 'to' alone, for example {to: 15 %}"
            ],
        ),
        (
            "near-miss: on",
            "uneven-gaps: {from: ¦1/8, to: 1/2}",
            [
                "'from' does not apply to a rule that asks for equality: "
                "its band always starts at nothing => write 'to' alone, for example {to: 1/2 in}"
            ],
        ),
        (
            "near-miss: on",
            "uneven-gaps: ¦maybe",
            [
                "'uneven-gaps' needs to be on or off, but is 'maybe'"
                " => write on, off or a band, {to: 1/2 in}"
            ],
        ),
        (
            "{to: 12.5 %}",
            "{to: ¦12.5}",
            ["'to' needs a percentage of at most 1000 %, but is '12.5' => write for example 60 %"],
        ),
        (
            "{from: 2, to: 5}",
            "¦{from: 6, to: 5}",
            ["'gap' has a 'from' that is more than its 'to' => exchange the two"],
        ),
        (
            "{from: 2, to: 5}",
            "¦{}",
            ["'gap' needs 'from' or 'to' => add one of them, or write on or off"],
        ),
        (
            "{from: 2, to: 5}",
            "{from: ¦10 %, ¦least: 5}",
            [
                "'from' needs a length, but '10 %' is not a length"
                " => write for example 23 5/8 in, 5' 7 1/2\", 60 cm or 304 mm",
                "'least' is not a key of 'gap' => use from or to",
            ],
        ),
        (
            ACCEPT,
            ACCEPT.replace("eye-line", "¦eyeline").replace("PICK", "¦picks"),
            [
                "'rule' is 'eyeline', which is not a rule (did you mean 'eye-line'?)"
                f" => use {RULE_CODES}",
                "'for' names 'picks', which is not a piece or group of this layout"
                " (did you mean 'pick'?)"
                " => name the piece or group that the finding is about",
            ],
        ),
        (
            ACCEPT,
            "- ¦{rule: eye-line, for: pick}",
            [
                "acceptance 1 needs 'because'"
                " => add for example 'because: the stairs put the eye higher here'"
            ],
        ),
        (
            ACCEPT,
            f"{ACCEPT}\n  - ¦{{rule: eye-line, for: pick, because: the same}}",
            ["'eye-line' is accepted for 'pick' already => keep one of the two"],
        ),
    ],
)
def test_rules_and_acceptances(old: str, new: str, faults: list[str]) -> None:
    check(old, new, *faults)


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
