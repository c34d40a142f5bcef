"""What ``templater check`` shows, as a table, as JSON, and of a rule's page."""

from __future__ import annotations

import json
from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import Any

import pytest

from templater.rules.cautions.check import CAUTIONS
from templater.rules.check import RULES
from tests.running import Run

HALL = """\
title: Keeper's cottage, stair hall
units: in
wall: {width: 200, height: 96}
furniture:
  - {name: boot bench, left: 30, width: 80, height: 34}
pieces:
  - {name: Ebb, size: 16 x 20}
  - {name: Flow, size: 16 x 20}
  - {name: Fog bell, size: 12 x 10, place: {left: 161}}
groups:
  - {name: tides, pieces: [Ebb, Flow], arrange: row, gap: 6, above: boot bench, clearance: 9}
rules:
  width-over-furniture: off
  group-as-one: off
accept:
  - {rule: gap, for: tides, because: the keeper wants them so}
  - {rule: near-corner, for: Fog bell, because: it is rung from the door}
"""
IDLE = (
    "hall.yaml:17:5: 'accept' no longer applies: near-corner is not broken for 'Fog bell'\n"
    "  remove it from 'accept'\n"
)

Check = Callable[..., tuple[int, str, str]]


@pytest.fixture
def check(run: Run) -> Check:
    """Run ``templater check`` beside a layout in which one rule is broken and one accepted."""
    Path("hall.yaml").write_text(HALL, encoding="utf-8")
    return partial(run, "check")


def rows(shown: str) -> list[list[str]]:
    """The rows of the table of rules, each as its cells; a cell that goes on below is cut."""
    lines = shown[shown.index("for / with") :].splitlines()
    cells = [[cell.strip() for cell in line.split("  ") if cell.strip()] for line in lines]
    return [row for row in cells if len(row) > 2 and row[0].replace("-", "").isalpha()]


def test_the_table_tells_the_broken_first_then_the_accepted(check: Check) -> None:
    code, shown, told = check("hall.yaml")
    assert (code, told) == (4, IDLE)
    assert rows(shown)[:3] == [
        ["clearance", "tides / boot bench", "broken", "9 in", "6–8 in", "lower by 1 in (25"],
        ["gap", "Ebb / Flow", "accepted", "6 in", "2–4 in", "because: the keeper"],
        ["eye-line", "Fog bell", "kept", "60 in", "59–61 in"],
    ]


def test_a_rule_that_does_not_apply_is_told_once(check: Check) -> None:
    _, shown, _ = check("hall.yaml")
    short = [row for row in rows(shown) if row[2] == "n/a"]
    assert ["near-opening", "2 pieces and groups", "n/a"] in short
    assert ["clearance", "Fog bell", "n/a"] in short
    assert ["width-over-furniture", "2 pieces and groups", "n/a", "turned off in the"] in short
    _, every, _ = check("hall.yaml", "--all")
    long = [row for row in rows(every) if row[2] == "n/a"]
    assert ["near-opening", "Fog bell", "n/a"] in long
    assert ["near-opening", "tides", "n/a"] in long


def test_the_last_line_counts(check: Check) -> None:
    _, shown, _ = check("hall.yaml")
    counted = {
        word: sum(row[2] == word for row in rows(check("hall.yaml", "--all")[1])) for word in WORDS
    }
    assert shown.splitlines()[-1] == (
        f"1 broken, 1 accepted, {counted['kept']} kept, {counted['n/a']} n/a."
        " 'templater check --explain RULE' tells more of a rule."
    )


WORDS = ("broken", "accepted", "kept", "n/a")


def test_places_are_told_in_both_systems(check: Check) -> None:
    _, shown, _ = check("hall.yaml")
    line = next(line for line in shown.splitlines() if "Fog bell" in line)
    assert "167 in (4242 mm)" in line  # 161 + 12 / 2
    assert "60 in (1524 mm)" in line


def test_json_is_all_of_stdout(check: Check) -> None:
    code, shown, told = check("hall.yaml", "--format", "json")
    assert (code, told) == (4, IDLE)
    found: list[dict[str, Any]] = json.loads(shown)
    assert {tuple(each) for each in found} == {
        ("rule", "for", "with", "verdict", "figure", "band", "mend", "because")
    }
    assert {each["verdict"] for each in found} == {*WORDS, "caution", "not checked"}
    assert [each for each in found if each["verdict"] in ("broken", "accepted")] == [
        {
            "rule": "clearance",
            "for": "tides",
            "with": "boot bench",
            "verdict": "broken",
            "figure": "9 in",
            "band": "6–8 in",
            "mend": "lower by 1 in (25 mm)",
            "because": None,
        },
        {
            "rule": "gap",
            "for": "Ebb",
            "with": "Flow",
            "verdict": "accepted",
            "figure": "6 in",
            "band": "2–4 in",
            "mend": "close the gap by 2 in (51 mm), to 4 in",
            "because": "the keeper wants them so",
        },
    ]


def test_json_has_null_for_what_does_not_apply(check: Check) -> None:
    found = json.loads(check("hall.yaml", "--format", "json")[1])
    assert json.loads(check("hall.yaml", "--format", "json", "--all")[1]) == found
    assert {
        "rule": "door-swing",
        "for": "tides",
        "with": None,
        "verdict": "n/a",
        "figure": None,
        "band": None,
        "mend": None,
        "because": None,
    } in found


def test_what_is_accepted_does_not_end_4(check: Check) -> None:
    text = HALL.replace("clearance: 9", "clearance: 7")
    Path("hall.yaml").write_text(text, encoding="utf-8")
    assert check("hall.yaml", "--format", "json")[0] == 0
    Path("hall.yaml").write_text(text.split("accept:")[0], encoding="utf-8")
    assert check("hall.yaml", "--format", "json")[0] == 4


def test_a_page_is_shown_without_a_layout(check: Check) -> None:
    code, shown, told = check("--explain", "near-miss")
    assert (code, told) == (0, "")
    assert shown.startswith(
        "near-miss: Edges or centres that almost line up do line up.\n\nWhat it checks:\n"
    )
    code, shown, told = check("--explain", "all")
    assert (code, told, len(shown.splitlines())) == (0, "", len(RULES) + len(CAUTIONS))


def test_a_page_that_there_is_not(check: Check) -> None:
    assert check("--explain", "near-mis") == (
        2,
        "",
        "--explain: 'near-mis' is not the code of a rule (did you mean 'near-miss'?)\n"
        "  'templater check --explain all' lists them\n",
    )


@pytest.mark.parametrize(
    "words",
    [
        (),
        ("hall.yaml", "--explain", "gap"),
        ("--explain", "gap", "--all"),
        ("--explain", "gap", "--format", "json"),
    ],
)
def test_options_that_do_not_go_together(check: Check, words: tuple[str, ...]) -> None:
    assert check(*words) == (
        2,
        "",
        "give a LAYOUT, with --all and --format json if you like, or --explain RULE alone\n"
        "  for example: templater check hall.yaml --format json\n",
    )


def test_cautions_are_told_first_and_change_no_exit_code(check: Check) -> None:
    text = HALL.replace("clearance: 9", "clearance: 7")
    Path("hall.yaml").write_text(text, encoding="utf-8")
    code, shown, _ = check("hall.yaml")
    assert code == 0
    assert shown.index("over-people") < shown.index("for / with")
    # Two pieces hang over the boot bench, on which people sit.
    assert "\n2 cautions, " in shown
    assert "not checked. They are likelihoods, not a survey: use a detector;" in shown
    code, every, _ = check("hall.yaml", "--format", "json")
    heeded = [each for each in json.loads(every) if each["verdict"] == "caution"]
    assert (code, [(each["rule"], each["for"], each["with"]) for each in heeded]) == (
        0,
        [("over-people", "Ebb", "boot bench"), ("over-people", "Flow", "boot bench")],
    )
