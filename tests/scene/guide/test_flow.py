from itertools import pairwise

import pytest

from templater.drawing import Words
from templater.scene.guide.flow import (
    Listing,
    Part,
    draw_page_heads,
    flow,
    hold_together,
    text_area,
    text_columns,
)
from templater.scene.passages import WIDEST, draw_paragraph
from templater.scene.tables import Column
from tests.scene.pages import PAPERS, assert_inside, assert_words_apart, blank_form, words_of


@pytest.mark.parametrize(
    ("paper", "count"), [("a4", 1), ("letter", 1), ("a5", 1), ("legal", 1), ("tabloid", 2), ("a3", 2)]
)
def test_large_paper_has_two_columns(paper: str, count: int) -> None:
    columns = text_columns(blank_form(paper))
    assert len(columns) == count
    for left, right in pairwise(columns):
        assert right.x0 - left.x1 == pytest.approx(10.0)


@pytest.mark.parametrize("paper", PAPERS)
def test_long_matter_goes_on_down_columns_and_over_pages_in_order(paper: str) -> None:
    form = blank_form(paper)
    parts = [draw_paragraph(f"Number {number}", 80.0) for number in range(300)]
    first, later = draw_page_heads("Long", form)
    pages = flow(parts, form, title="Long", first_head=first, later_head=later)
    texts = [words.text for page in pages for words in words_of(page) if words.text.startswith("Number")]
    assert texts == [f"Number {number}" for number in range(300)]
    for number, page in enumerate(pages):
        assert_inside(page.items, text_area(form))
        assert_words_apart(page)
        heads = [words.text for words in words_of(page) if words.bold]
        assert heads == ["Long, continued" if number else "Long"]


def test_a_table_goes_on_under_its_heading() -> None:
    form = blank_form("a5")
    rows = tuple((f"row {number}",) for number in range(100))
    first, later = draw_page_heads("Long", form)
    listing = Listing((Column("Heading", width_mm=60.0),), rows)
    pages = flow([listing], form, title="Long", first_head=first, later_head=later)
    assert len(pages) > 1
    assert all("Heading" in {words.text for words in words_of(page)} for page in pages)
    texts = [words.text for page in pages for words in words_of(page) if words.text.startswith("row")]
    assert texts == [f"row {number}" for number in range(100)]


def _count_lines(rows: int) -> list[int]:
    """How many lines stand on each page, the head aside."""
    form = blank_form("a4")
    parts = [draw_paragraph(f"Number {number}", 80.0) for number in range(rows)]
    first, later = draw_page_heads("Long", form)
    pages = flow(parts, form, title="Long", first_head=first, later_head=later)
    return [len(words_of(page)) - 1 for page in pages]


def test_a_page_with_little_on_it_gets_more_from_those_before_it() -> None:
    (most,) = _count_lines(next(rows for rows in range(200) if len(_count_lines(rows + 1)) == 2))
    assert _count_lines(most) == [most]
    for more, pages in ((most + 1, 2), (most + 3, 2), (2 * most + 2, 3)):
        counts = _count_lines(more)
        assert (sum(counts), len(counts)) == (more, pages)
        assert min(counts) >= most // 3
    # A last page that is well filled takes nothing from the others.
    assert _count_lines(most + most // 2) == [most, most // 2]


def test_what_stands_over_a_table_goes_with_it_to_the_next_page() -> None:
    form = blank_form("a4")
    first, later = draw_page_heads("Long", form)
    above = draw_paragraph("Above the table", 80.0)
    for count, pages in ((10, [1]), (40, [2]), (90, [1, 2, 3])):
        # 40 rows fit a page, but not beside 40 lines of words; 90 fit none.
        listing = Listing(
            (Column("Heading", width_mm=60.0),), tuple((f"row {number}",) for number in range(count))
        )
        words = [draw_paragraph(f"Number {number}", 80.0) for number in range(20)]
        parts: list[Part] = [*words, hold_together(above, listing, form, later), listing]
        drawn = flow(parts, form, title="Long", first_head=first, later_head=later, is_spread=False)
        texts = [[words.text for words in words_of(page)] for page in drawn]
        assert [number for number, page in enumerate(texts, 1) if "Heading" in page] == pages
        assert "Above the table" in texts[pages[0] - 1]


def test_no_line_of_reading_is_wider_than_the_eye_follows() -> None:
    passage = draw_paragraph("words and more words " * 40, 400.0)
    assert all(isinstance(item, Words) for item in passage.items)
    assert len(passage.items) > 400.0 / WIDEST
