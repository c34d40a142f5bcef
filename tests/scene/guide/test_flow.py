from itertools import pairwise

import pytest

from templater.drawing import Words
from templater.scene.guide.flow import Listing, draw_page_heads, flow, text_area, text_columns
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


def test_no_line_of_reading_is_wider_than_the_eye_follows() -> None:
    passage = draw_paragraph("words and more words " * 40, 400.0)
    assert all(isinstance(item, Words) for item in passage.items)
    assert len(passage.items) > 400.0 / WIDEST
