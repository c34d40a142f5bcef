from __future__ import annotations

from dataclasses import replace
from itertools import combinations

import pytest

from templater.drawing import Item, Words
from templater.scene.overview.chapters import Chapter, ChapterRun, fit_chapter
from templater.scene.passages import draw_paragraph
from templater.scene.tables import Column, Fit
from tests.scene.pages import assert_inside, box_of
from tests.scene.walls import landscape_form

COLUMNS = (Column("No."), Column("Note", Fit.WRAPPED))


def _chapter(name: str, count: int, note: str = "short", width: float = 200.0) -> Chapter:
    rows = [(f"{name} {number}", f"{note} {number}") for number in range(count)]
    return fit_chapter(name, COLUMNS, rows, width)


def _texts(page: list[Item]) -> list[str]:
    return [item.text for item in page if isinstance(item, Words)]


def _page_of(run: ChapterRun, text: str) -> list[int]:
    return [number for number, page in enumerate(run.pages, 1) if text in _texts(page)]


@pytest.mark.parametrize("paper", ["a4", "a5", "letter"])
@pytest.mark.parametrize("lines", range(1, 20))
def test_no_heading_stands_without_a_row(paper: str, lines: int) -> None:
    form = landscape_form(paper)
    run = ChapterRun(form)
    run.add_passage(draw_paragraph("word " * 30 * lines, 100.0))
    run.add_chapter(_chapter("Tall", 3, "many words of a long note " * 12, 70.0))
    headings = [text for page in run.pages for text in _texts(page) if text.startswith("Tall")]
    assert headings.count("Tall") == 1
    for page in run.pages:
        texts = _texts(page)
        at = next((at for at, text in enumerate(texts) if text in ("Tall", "Tall, continued")), None)
        if at is not None:
            assert texts[at + 1 : at + 3] == ["No.", "Note"]
            assert any(text.startswith("Tall ") for text in texts[at + 3 :])


def test_notes_without_a_table_stand_under_their_heading() -> None:
    form = landscape_form("a5")
    note = "Not checked: heavy-piece (3). " * 3
    for lines in range(1, 30):
        run = ChapterRun(form)
        run.add_passage(draw_paragraph("word " * 30 * lines, 100.0))
        run.add_chapter(Chapter("Cautions", (), (), (note,)))
        (page,) = _page_of(run, "Cautions")
        assert any(text.startswith("Not checked") for text in _texts(run.pages[page - 1]))


def test_what_is_said_below_a_table_is_never_without_its_heading() -> None:
    for count in range(1, 40):
        run = ChapterRun(landscape_form("a5"))
        run.add_chapter(replace(_chapter("Rules", count), notes=("Does not apply: gap (3).",)))
        (page,) = _page_of(run, "Does not apply: gap (3).")
        texts = _texts(run.pages[page - 1])
        assert texts[0] == ("Rules" if page == 1 else "Rules, continued")


def test_a_small_table_stands_beside_others_before_it_takes_a_page() -> None:
    form = landscape_form("a4")
    run = ChapterRun(form)
    run.add_chapter(_chapter("Rules", 28))
    run.add_chapter(_chapter("Furniture", 1))
    run.add_chapter(_chapter("Notes", 3))
    assert len(run.pages) == 1
    (page,) = run.pages
    place = {item.text: item.at for item in page if isinstance(item, Words)}
    assert place["Notes"].x > place["Furniture"].x
    assert_inside(page, form.inner.grown(0.4))
    boxes = [box_of(item) for item in page if isinstance(item, Words)]
    assert not [pair for pair in combinations(boxes, 2) if pair[0].meets(pair[1])]


def test_a_table_that_has_no_room_beside_others_goes_overleaf() -> None:
    run = ChapterRun(landscape_form("a4"))
    run.add_chapter(_chapter("Rules", 28))
    run.add_chapter(_chapter("Notes", 40))
    run.add_chapter(_chapter("Wide", 2, "many words of a long note " * 60, 270.0))
    assert _page_of(run, "Wide") == [len(run.pages)]
    assert len(run.pages) > 1
