"""Faults in the keys of a group's arrangement: what it lacks, what belongs to another."""

import pytest

from tests.layout.files import check_wide

ONE = "keep one of the two"
LEDGE = "ledge: {height: 55, width: 48, thick: 1 1/2, drop: 3/4, every: 16}"
CORNERS = "corners: {B: {left: 11, bottom: 3}, a: {left: 0, bottom: 0}}"
SIX = '{name: six, pieces: [D, E], arrange: grid, rows: 2, cells: "true", right: 20}'
HEAP = "{name: heap, pieces: [I], arrange: cluster, width: 40, height: 30, gap: any, above: settle}"
STAIR = "stair: {rise: 7 1/2, run: 10, up: left, start: {left: 300, bottom: 15}}"
REST = f"name: rest\n    pieces: [G]\n    arrange: ledge\n    {LEDGE}"
PAIR = f"name: pair\n    pieces: [A, B]\n    arrange: placed\n    {CORNERS}"


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
                " width: 48 in, thick: 1 1/2 in, drop: 3/4 in, every: 14 in}'"
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
    check_wide(old, new, *faults)
