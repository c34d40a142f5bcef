from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templater.drawing import Anchor, Line, Polyline, Words
from templater.geometry import Box
from templater.lettering import text_width
from templater.scene.tables import (
    Column,
    Fit,
    TablePart,
    draw_table,
    fit_columns,
    leave_out_empty,
    table_width,
)
from tests.scene.pages import box_of

COLUMNS = (
    Column("No.", anchor=Anchor.MIDDLE),
    Column("Piece", Fit.NAMED),
    Column("Note", Fit.WRAPPED),
    Column("done", to_tick=True),
)
texts = st.text(st.sampled_from("abc defghi ØЖ½"), max_size=60)


def rows_of(count: int) -> list[tuple[str, str, str, str]]:
    return [(str(i), f"Piece {i}", "measure the hook before you drill", "") for i in range(count)]


def drawn_words(part: TablePart) -> list[str]:
    return [item.text for item in part.items if isinstance(item, Words)]


def test_a_long_table_goes_on_under_the_same_heading() -> None:
    rows = rows_of(30)
    columns = fit_columns(COLUMNS, rows, 200.0)
    seen: list[str] = []
    start = 0
    while start < len(rows):
        part = draw_table(columns, rows, Box(0, 0, 200, 60), start=start)
        assert part.rows_drawn > 0
        words = drawn_words(part)
        assert words[:4] == ["No.", "Piece", "Note", "done"]
        seen += [text for text in words if text.startswith("Piece ")]
        start = part.next_row
    assert seen == [f"Piece {i}" for i in range(30)]


def test_nothing_is_drawn_where_not_even_one_row_fits() -> None:
    rows = rows_of(2)
    part = draw_table(fit_columns(COLUMNS, rows, 200.0), rows, Box(0, 0, 200, 7))
    assert part == TablePart((), 0, 0, 7)


def test_rows_are_no_lower_than_asked() -> None:
    rows = rows_of(2)
    columns = fit_columns(COLUMNS, rows, 200.0)
    part = draw_table(columns, rows, Box(0, 0, 200, 100), row_mm=10.0)
    baselines = [i.at.y for i in part.items if isinstance(i, Words) and i.text.startswith("Piece ")]
    assert baselines[0] - baselines[1] == 10.0


def test_a_square_to_tick_stands_in_every_row_but_the_heading() -> None:
    rows = rows_of(5)
    part = draw_table(fit_columns(COLUMNS, rows, 200.0), rows, Box(0, 0, 200, 100))
    squares = [item for item in part.items if isinstance(item, Polyline)]
    assert len(squares) == 5
    assert all(square.box.width == square.box.height for square in squares)


def test_a_cell_too_long_goes_on_in_the_next_line() -> None:
    rows = [("1", "a very long name of a picture " * 4, "word " * 20, "")]
    part = draw_table(fit_columns(COLUMNS, rows, 90.0), rows, Box(0, 0, 90, 100))
    words = drawn_words(part)
    assert not [text for text in words if text.endswith("…")]
    assert sum(text.count("word") for text in words) == 20
    assert sum(text.count("very") for text in words) == 4


def test_a_name_goes_over_three_lines_and_is_never_cut() -> None:
    # Two names that begin alike: cut to one line both would read "Portrait of the k…".
    names = ("Portrait of the keeper at the lamp", "Portrait of the keeper in his boat")
    rows = [(name, "9" * 40) for name in names]
    columns = fit_columns((Column("Piece", Fit.NAMED), Column("Number")), rows, 120.0)
    words = drawn_words(draw_table(columns, rows, Box(0, 0, 120, 100)))
    assert "lamp" in " ".join(words)
    assert "boat" in " ".join(words)
    assert not any("…" in text for text in words)
    assert len(words) <= 2 + 2 * (3 + 1)


def test_no_word_of_a_wrapped_column_is_broken_but_at_its_hyphens() -> None:
    # Six columns that wrap, as the rules have: an equal share would be 24 mm, "furniture" too wide.
    cells = ("kept", "width-over-furniture", "ledge row, reading bench", "67 % of 1500 mm", "60 to 75 %")
    rows = [(*cells, "lower by 507 mm (19 15/16 in) or move the bench " * 2)]
    columns = fit_columns([Column(f"Heading {n}", Fit.WRAPPED) for n in range(6)], rows, 118.0)
    assert table_width(columns) <= 118.0 + 1e-6
    words = " ".join(drawn_words(draw_table(columns, rows, Box(0, 0, 118, 200)))).split()
    unbroken = " ".join(rows[0]).replace("-", "- ").split()
    assert set(unbroken) <= set(words)


def test_what_a_long_word_takes_is_taken_from_all_other_columns() -> None:
    # 150 mm: the long word takes what it needs, the three others share the rest evenly. Once the
    # last of them had what was left, 14 mm, and stood one word a line.
    word = "Donaudampfschifffahrtsgesellschaft"
    cells = ("let the hook bear at the cross, " * 2, "over the sofa with the high legs " * 2)
    rows = [(word, *cells, "take a light piece behind acrylic " * 4)]
    columns = fit_columns([Column(f"Heading {n}", Fit.WRAPPED) for n in range(4)], rows, 150.0)
    long, *others = (column.width_mm for column in columns)
    assert table_width(columns) == pytest.approx(150.0)
    assert text_width(word, 2.5) < long < text_width(word, 2.5) + 3
    assert others == pytest.approx([(150.0 - long) / 3] * 3)


def test_a_column_that_needs_less_leaves_it_to_the_others() -> None:
    rows = [("5 mm", "take a light piece behind acrylic " * 4, "over the sofa with the high legs " * 4)]
    columns = fit_columns([Column(f"No {n}", Fit.WRAPPED) for n in range(3)], rows, 100.0)
    short, *others = (column.width_mm for column in columns)
    assert text_width("5 mm", 2.5) < short < text_width("5 mm", 2.5) + 3
    assert others == pytest.approx([(100.0 - short) / 2] * 2)


def test_a_sign_in_a_heading_stays_with_its_word() -> None:
    heading = "Hole, from the datum (−\N{NO-BREAK SPACE}down)"
    (column,) = fit_columns([Column(heading)], [("1",)], 20.0)
    assert "(− down)" in " ".join(drawn_words(draw_table((column,), [("1",)], Box(0, 0, 50, 50))))
    assert not any(
        text.endswith("−") for text in drawn_words(draw_table((column,), [("1",)], Box(0, 0, 50, 50)))
    )


def test_a_column_without_anything_is_left_out_but_boxes_to_tick_stay() -> None:
    columns = (Column("a"), Column("b"), Column("c", to_tick=True))
    kept, rows = leave_out_empty(columns, [("1", "", ""), ("2", "", "")])
    assert [column.heading for column in kept] == ["a", "c"]
    assert rows == (("1", ""), ("2", ""))


def test_a_heading_takes_what_the_table_has_to_spare() -> None:
    heading = "Hole, above the floor at the datum's place"
    (narrow,) = fit_columns([Column(heading)], [("1",)], 15.0)
    (wide,) = fit_columns([Column(heading)], [("1",)], 100.0)
    box = Box(0, 0, 100, 100)
    assert len(drawn_words(draw_table((narrow,), [("1",)], box))) > 4
    assert len(drawn_words(draw_table((wide,), [("1",)], box))) == 4  # three lines and the cell


def test_line_breaks_in_cells_are_kept() -> None:
    columns = fit_columns((Column("Length"),), [("6 in\n(152 mm)",)], 100.0)
    part = draw_table(columns, [("6 in\n(152 mm)",)], Box(0, 0, 100, 50))
    assert drawn_words(part) == ["Length", "6 in", "(152 mm)"]
    # Words of 2.5 mm with 1.2 mm of padding on both sides.
    assert 0 < columns[0].width_mm - text_width("(152 mm)", 2.5) - 2.4 < 0.2


@settings(max_examples=40)
@given(st.lists(st.tuples(texts, texts, texts), min_size=1, max_size=8), st.floats(80.0, 250.0))
def test_every_word_stays_in_its_cell(rows: list[tuple[str, str, str]], width: float) -> None:
    columns = fit_columns(
        [Column("No", Fit.WRAPPED), Column("Piece", Fit.NAMED), Column("Note", Fit.WRAPPED)],
        rows,
        width,
    )
    assert table_width(columns) <= width + 1e-6
    part = draw_table(columns, rows, Box(0, -2000, width, 0))
    assert part.rows_drawn == len(rows)
    lines = [item for item in part.items if isinstance(item, Line)]
    for words in (item for item in part.items if isinstance(item, Words)):
        ink = box_of(words).grown(-0.01)
        assert not any(ink.meets(line.box.grown(1e-6)) for line in lines), words.text


def test_the_table_ends_where_it_says() -> None:
    rows = rows_of(4)
    part = draw_table(fit_columns(COLUMNS, rows, 200.0), rows, Box(0, 0, 200, 100))
    assert part.bottom_y == min(box_of(item).y0 for item in part.items)
