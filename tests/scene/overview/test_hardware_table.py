from __future__ import annotations

from dataclasses import replace

import pytest

from templater.layout.model import Hanger, Surface
from templater.scene.model import PageDrawing
from templater.scene.overview.chapters import ChapterRun
from templater.scene.overview.hardware_table import list_hardware, list_things_to_buy
from templater.scene.overview.hole_table import list_notes
from templater.scene.tables import table_width
from tests.builders import inches
from tests.rules.fasteners.walls import POUND, by, hook, hung_at, wall_of
from tests.scene.pages import (
    PAPERS,
    assert_inside,
    assert_words_apart,
    assert_words_clear_of_lines,
    blank_form,
)

WIDE, SMALL = 250.0, 80.0
RAIL = replace(by(Hanger.RAIL), rail_mm=inches(90))
PLAN = wall_of(
    hung_at(inches(40), by(Hanger.NAIL, hook=hook(30 * POUND)), 10 * POUND, name="Fog bell"),
    hung_at(inches(80), by(Hanger.NAIL), None, name="Tide chart"),
    hung_at(inches(120), RAIL, 9 * POUND, name="Kelp print"),
    studs=(inches(40),),
    surface=Surface.DRYWALL,
)


def test_every_hole_and_rail_hook_has_a_row() -> None:
    (chapter,) = list_hardware(PLAN, WIDE)
    # Top edge 70 in, drop 2: 68 in = 1727 mm. 10 lb = 44.5 N; twice that 20 lb.
    assert chapter.rows == (
        (
            "1",
            "Fog bell",
            "1",
            "40 in (1016 mm)",
            "68 in (1727 mm)",
            "stud",
            "10.0 lb (44.5 N)",
            "brass hook, rated 30 lb: enough",
            "20.0 lb (2 × load)",
        ),
        (
            "2",
            "Tide chart",
            "1",
            "80 in (2032 mm)",
            "68 in (1727 mm)",
            "hollow",
            "weight not given: not checked",
            "not checked",
            "",
        ),
        (
            "3",
            "Kelp print",
            "rail",
            "120 in (3048 mm)",
            "90 in (2286 mm)",
            "",
            "9.0 lb (40.1 N)",
            "hook for the picture rail; cord of 22 in (559 mm)",
            "20 lb",
        ),
    )


def test_strips_have_a_row_and_columns_with_nothing_in_them_are_left_out() -> None:
    strips = replace(by(Hanger.STRIPS), drop_mm=None, strip_rating_kg=4 * POUND)
    plan = wall_of(hung_at(inches(40), strips, 2 * POUND, name="Tide table"))
    (chapter,) = list_hardware(plan, WIDE)
    # Twice 2 lb are held by one pair of 4 lb.
    told = "1 pair of adhesive strips, each rated 4 lb by its maker"
    assert chapter.rows == (("1", "Tide table", "strips", told),)
    headings = [column.heading for column in chapter.columns]
    assert headings == ["No.", "Piece", "Hole", "Hook or fastener"]
    assert list_notes(plan, WIDE) == []


def test_a_list_of_named_hooks_has_no_column_for_their_ratings() -> None:
    named = by(Hanger.NAIL, hook=hook(30 * POUND))
    (chapter,) = list_things_to_buy(wall_of(hung_at(inches(40), named, 10 * POUND)), WIDE)
    assert [column.heading for column in chapter.columns] == ["How many", "What", "For"]
    assert chapter.rows == (("1", "brass hook, rated 30 lb", "Fog bell"),)


def test_the_shopping_list_counts_what_is_needed() -> None:
    (chapter,) = list_things_to_buy(PLAN, WIDE)
    assert chapter.rows == (
        ("1", "brass hook, rated 30 lb", "", "Fog bell"),
        ("1", "nail or screw", "weight not given: not checked", "Tide chart"),
        ("1", "hook for the picture rail", "20 lb", "Kelp print"),
        ("1", "cord of 22 in (559 mm), and more for its knots", "20 lb", "Kelp print"),
    )


@pytest.mark.parametrize("width", [WIDE, SMALL])
def test_no_table_is_wider_than_its_paper(width: float) -> None:
    for chapter in (*list_hardware(PLAN, width), *list_things_to_buy(PLAN, width)):
        assert table_width(chapter.columns) <= width + 1e-6


def test_on_narrow_paper_each_figure_stands_after_its_name() -> None:
    (chapter,) = list_hardware(PLAN, SMALL)
    assert "above the floor at the datum's place: 68 in (1727 mm)" in chapter.rows[0][-1]
    assert "least rating: 20.0 lb (2 × load)" in chapter.rows[0][-1]


def test_a_wall_without_hardware_has_no_tables() -> None:
    bare = wall_of(hung_at(inches(40), None, 4.0))
    assert list_hardware(bare, WIDE) == []
    assert list_things_to_buy(bare, WIDE) == []


@pytest.mark.parametrize("paper", PAPERS)
def test_the_tables_are_clean_on_any_paper(paper: str) -> None:
    form = blank_form(paper)
    run = ChapterRun(form)
    width = form.inner.width
    for chapter in (*list_hardware(PLAN, width), *list_things_to_buy(PLAN, width)):
        run.add_chapter(chapter)
    for items in run.pages:
        assert_inside(tuple(items), form.inner)
        assert_words_apart(PageDrawing("Overview", form.size, tuple(items)))
        assert_words_clear_of_lines(PageDrawing("Overview", form.size, tuple(items)))
