"""Names that run to the left move no figure beside them, wherever a terminal shows them."""

from __future__ import annotations

import codecs
import json
from io import BytesIO, TextIOWrapper
from pathlib import Path

import pytest
from bidi import get_display

from templater.commands.telling import name_lacking_signs, set_apart
from templater.reading_order import WITHOUT_ISOLATES
from tests.running import Run

HALL = """\
title: Keeper's cottage, stair hall
units: in
wall: {width: 200, height: 96}
furniture:
  - {name: boot bench, left: 30, width: 80, height: 34}
pieces:
  - {name: שלום, size: 16 x 20, hang: {by: nail, drop: 1}}
  - {name: ים 7, size: 16 x 20, hang: {by: nail, drop: 1}}
  - {name: FOLDED, size: 12 x 10, hang: {by: nail, drop: 1}, place: {left: 161}}
groups:
  - {name: צמד, pieces: [שלום, ים 7], arrange: row, gap: GAP, above: boot bench, clearance: 9}
"""
LONG = " ".join(["מגדלור"] * 9)
"""A name too long for a table's cell."""


def _display(line: str) -> str:
    """The line as a terminal puts it in order that heeds Annex 9."""
    return str(get_display(line, base_dir="L")).translate(WITHOUT_ISOLATES)


def _plain(text: str) -> str:
    return text.translate(WITHOUT_ISOLATES)


@pytest.fixture
def run(run: Run) -> Run:
    text = HALL.replace("FOLDED", LONG)
    Path("hall.yaml").write_text(text.replace("GAP", "6"), "utf-8")
    Path("open.yaml").write_text(text.replace("GAP", "any"), "utf-8")
    return run


def _judge(shown: str, told: str) -> None:
    """Every letter from the left to the right stands in the column in which it was written."""
    for line in (*shown.splitlines(), *told.splitlines()):
        for written, seen in zip(_plain(line), _display(line), strict=True):
            assert written == seen or not written.isascii() or written in " 7"


def test_a_terminal_swaps_figures_beside_a_name_that_is_not_set_apart() -> None:
    # Annex 9, N1: spaces between a word to the left and a number run to the left, too.
    assert _display("שלום  5  3  1") == "1  3  5  םולש"
    assert _display(set_apart("שלום  5  3  1")) == "םולש  5  3  1"


def test_check_shows_each_figure_in_its_column(run: Run) -> None:
    ended = run("check", "hall.yaml")
    assert ended.code == 4
    lines = [_display(line) for line in ended.out.splitlines()]
    heading = next(line for line in lines if "from the left end" in line)
    # The bench's middle is at 70 in; 16 + 6 + 16 = 38 in; 70 - 19 + 16 / 2 = 59 in.
    line = next(line for line in lines if "59 in (1499 mm)" in line)
    assert line.index("59 in (1499 mm)") == heading.index("from the left end")
    assert line.split()[:2] == ["םולש", "1"]
    assert "  7 םי " in next(line for line in lines if "81 in (2057 mm)" in line)
    _judge(ended.out, ended.err)


@pytest.mark.parametrize(
    "words", [("arrange", "open.yaml"), ("check", "none/שלום 7"), ("check", "hall.yaml", "--all")]
)
def test_every_command_shows_figures_where_they_stand(run: Run, words: tuple[str, ...]) -> None:
    ended = run(*words)
    assert "\u2069" in ended.out + ended.err
    _judge(ended.out, ended.err)


@pytest.mark.usefixtures("no_picture")
def test_a_broken_rule_names_two_pieces_in_their_order(run: Run) -> None:
    ended = run("kit", "hall.yaml", "--paper", "a1")
    _judge(ended.out, ended.err)
    told = [_display(line) for line in ended.err.splitlines()]
    assert any(
        line.startswith("rule broken: gap: םולש / 7 םי: 6 in, asked for 2–4 in;") for line in told
    )


def test_names_in_quotes_are_names_where_no_layout_holds(run: Run) -> None:
    Path("bad.yaml").write_text(HALL.replace("GAP", "3").replace("FOLDED", "ים 7"), "utf-8")
    told = _display(run("check", "bad.yaml").err.splitlines()[0])
    assert told == "bad.yaml:9:12: 'name' is '7 םי', but another piece is called '7 םי' already"


def test_what_other_programs_read_stays_plain(run: Run) -> None:
    for words in (("check", "hall.yaml"), ("arrange", "open.yaml")):
        shown = run(*words, "--format", "json").out
        assert "שלום" in str(json.loads(shown))
        assert shown.isascii()
        assert _plain(str(json.loads(shown))) == str(json.loads(shown))


def test_names_to_the_right_stay_as_they_are() -> None:
    assert set_apart("Größe ‘Ébène’ 5 − 3, 高さ 7") == "Größe ‘Ébène’ 5 − 3, 高さ 7"


def test_a_stream_without_isolates_does_without_and_names_other_signs() -> None:
    codecs.register_error("named", name_lacking_signs)
    written = BytesIO()
    with TextIOWrapper(written, "cp1255", errors="named") as stream:  # Hebrew, on Windows
        stream.write(set_apart("שלום: −3 in"))
        stream.flush()
        assert written.getvalue().decode("cp1255") == r"שלום: \N{MINUS SIGN}3 in"
