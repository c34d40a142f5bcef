"""The tables of a report are those that rich would print of the same cells, to the byte."""

from __future__ import annotations

import io

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from rich import box
from rich.console import Console
from rich.table import Table
from rich.text import Text

from templater.commands.tables import TextTable, open_console

HEADINGS = ("piece", "how many holes", "what to do")
CELLS = st.one_of(
    st.sampled_from(
        ("", "1", "[b]gull[/b]", "a\\", "灯台の海図", "חוף 12", ":bell:", "tide chart " * 9)
    ),
    st.text(st.characters(exclude_categories=("Cc", "Cs", "Zl", "Zp")), max_size=30),
)
ROWS = st.lists(st.tuples(st.tuples(CELLS, CELLS, CELLS), st.booleans()), max_size=6)


def print_with(encoding: str, width: int, table: TextTable | Table) -> str:
    """What a terminal in colour is sent; the narrowest here has room for a letter in each column."""
    file = io.TextIOWrapper(io.BytesIO(), encoding=encoding, errors="replace", newline="")
    console = Console(file=file, width=width, force_terminal=True, highlight=False, color_system="256")
    console.print(table)
    file.seek(0)
    return file.read()


@settings(max_examples=150, deadline=None)
@given(ROWS, st.integers(24, 130), st.sampled_from(("utf-8", "ascii")))
def test_a_table_is_what_rich_makes_of_it(
    rows: list[tuple[tuple[str, str, str], bool]], width: int, encoding: str
) -> None:
    ours, expected = TextTable(*HEADINGS, to_right=[1], unbroken=[2]), Table(box=box.SIMPLE_HEAD)
    for number, heading in enumerate(HEADINGS):
        expected.add_column(heading, overflow="fold", no_wrap=number == 2)
    expected.columns[1].justify = "right"
    for cells, is_bold in rows:
        ours.add_row(*cells, is_bold=is_bold)
        expected.add_row(*map(Text, cells), style="bold" if is_bold else None)
    assert print_with(encoding, width, ours) == print_with(encoding, width, expected)


def test_names_are_shown_as_they_are_given(capsys: pytest.CaptureFixture[str]) -> None:
    names = ("tide :bell: chart", "a\\", "[red]gull[/red]", "c\\[d]")
    table = TextTable("piece")
    for name in names:
        table.add_row(name)
    open_console(names).print(table)
    assert [line.strip() for line in capsys.readouterr().out.splitlines()][3:-1] == list(names)
