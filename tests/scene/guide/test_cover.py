from collections.abc import Mapping
from dataclasses import replace

import pytest

from templater.drawing import Words
from templater.geometry import Box, Point, Size
from templater.lengths import Unit
from templater.paper import parse_paper
from templater.pipeline import plan_wall
from templater.placement.model import Plan
from templater.printing.model import Coverage, SheetCounts, Tile, Tiling
from templater.scene.guide.cautions import ADVICE, CABLES, CODES, HEAVY, LADDER
from templater.scene.guide.cover import count_grid, describe_paper, draw_cover
from templater.scene.model import PageDrawing
from tests.scene.pages import (
    PAPERS,
    assert_inside,
    assert_words_apart,
    assert_words_clear_of_lines,
    blank_form,
    grid_tiling,
    make_plan,
    over_stairs,
    placed_piece,
    plan_with,
    print_setup,
    text_of,
    words_of,
)


def _cover(plan: Plan, paper: str) -> tuple[PageDrawing, ...]:
    tilings = {piece.slug: grid_tiling(2, 3) for piece in plan.pieces}
    return _draw(plan, tilings, paper)


def _draw(
    plan: Plan,
    tilings: Mapping[str, Tiling],
    paper: str,
    *,
    shared: Mapping[str, str] | None = None,
    lie_both_ways: bool = False,
) -> tuple[PageDrawing, ...]:
    """The cover; with a band a piece takes two sheets, with a card one."""
    own = {slug: len(tiling.tiles) for slug, tiling in tilings.items()}
    by_cover = {
        Coverage.FULL: own,
        Coverage.BAND: dict.fromkeys(own, 2),
        Coverage.CARD: dict.fromkeys(own, 1),
    }
    counts = SheetCounts(by_cover, shared or {}, lie_both_ways)
    form = blank_form(paper)
    return draw_cover(plan, tilings, counts, print_setup(paper), form, revision="QK7M2P")


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("count", [1, 9, 60])
def test_pages_are_clean(paper: str, count: int) -> None:
    for page in _cover(plan_with(count), paper):
        assert_inside(page.items, blank_form(paper).inner)
        assert_words_apart(page)
        assert_words_clear_of_lines(page)


def test_the_first_page_says_what_how_and_with_what() -> None:
    text = text_of(_cover(plan_with(9), "letter"))
    # 9 pieces of 2 x 3 sheets; holes go 1, 2, 0 in turn
    for words in (
        "Keeper's cottage, stair hall",
        "For: the guest house",
        "From: Ines Harbour",
        "Contact: ines@cottage.example",
        "Revision QK7M2P",
        "for hanging 9 pieces on one wall",
        "drill 9 holes",
        "54 sheets of templates",
        "2 across, 3 down",
        "All 9 54",
        "“Actual size” or “100 %”",
        "One side of the paper only",
    ):
        assert words in text


def test_the_sheets_are_counted_for_every_cover() -> None:
    # 9 x 6, 9 x 2, 9 x 1
    text = text_of(_cover(plan_with(9), "letter"))
    assert "Sheets of templates by cover: full 54, band 18, card 9." in text
    assert "This kit is made with full." in text


def test_pieces_that_share_a_sheet_count_once() -> None:
    plan = plan_with(3)
    slugs = [piece.slug for piece in plan.pieces]
    tilings = {slug: grid_tiling(1, 1) for slug in slugs}
    text = text_of(_draw(plan, tilings, "letter", shared=dict.fromkeys(slugs[:2], "S1")))
    assert text.count("S1 cut out of a shared sheet") == 2
    assert "2 sheets of templates" in text


def test_a_band_or_a_card_is_not_called_a_grid() -> None:
    whole = grid_tiling(2, 1)
    for cover, words in ((Coverage.BAND, "band only"), (Coverage.CARD, "card only")):
        assert count_grid(replace(whole, cover=cover)) == words


@pytest.mark.parametrize("caution", [ADVICE, CABLES, CODES, HEAVY, LADDER])
def test_general_cautions_stand_on_the_first_page(caution: tuple[str, str]) -> None:
    first = _cover(plan_with(60), "a4")[:1]
    assert f"{caution[0]} {caution[1]}" in text_of(first)


def test_every_piece_is_listed_however_many() -> None:
    plan = plan_with(60)
    text = text_of(_cover(plan, "a4"))
    assert text.count("2 across, 3 down") == 60


def test_a_wall_without_holes_says_so() -> None:
    text = text_of(_cover(make_plan([placed_piece("Fog bell", [])]), "a4"))
    assert "hanging 1 piece on" in text
    assert "No hole is marked yet" in text
    assert "none yet" in text


HALL = """\
title: Keeper's cottage, ledge and rail
units: mm
wall: {width: 6000, height: 2600}
pieces:
  - {name: Gull, size: 100 x 150}
  - {name: Tern, size: 100 x 150}
  - {name: Chart, size: 300 x 200, hang: {by: rail, height: 2400, drop: 20}, place: {left: 300}}
  - {name: Card, size: 100 x 150, hang: {by: strips, rating: 1 kg}, place: {left: 900}}
  - {name: Bell, size: 100 x 150, place: {left: 1300}}
groups:
  - name: shelf
    pieces: [Gull, Tern]
    arrange: ledge
    ledge: {height: 1200, width: 600, thick: 30, drop: 15, every: 200}
    left: 3000
"""


def test_a_ledge_is_no_piece_and_what_needs_no_hole_says_why() -> None:
    text = text_of(_cover(plan_wall(HALL.encode(), "hall.yaml").plan, "a4"))
    assert "for hanging 5 pieces and a ledge on one wall" in text
    assert text.count("none: stands on the ledge") == 2
    assert text.count("none: hangs from the rail") == 1
    assert text.count("none: adhesive strips") == 1
    assert text.count("none yet") == 1  # the bell


def test_a_wall_that_needs_no_hole_says_so() -> None:
    cards = HALL[: HALL.index("  - {name: Bell")].replace("by: rail, height: 2400, drop: 20", "{strips}")
    source = cards.replace("{strips}", "by: strips, rating: 1 kg").replace(
        "size: 100 x 150}", "size: 100 x 150, hang: {by: strips, rating: 1 kg}, place: {left: 2000}}", 1
    )
    source = source.replace("  - {name: Tern, size: 100 x 150}\n", "")
    text = text_of(_cover(plan_wall(source.encode(), "hall.yaml").plan, "a4"))
    assert "hanging 3 pieces on one wall" in text
    assert "No hole is needed." in text
    assert "none yet" not in text


@pytest.mark.parametrize("paper", ["a4", "letter", "a5"])
@pytest.mark.parametrize("count", range(3, 18, 2))
def test_the_sheets_are_listed_on_one_page(paper: str, count: int) -> None:
    # So no page holds a row or two, or the words under the table, and nothing else.
    pages = [words_of(page) for page in _cover(plan_with(count), paper)]
    heads = [sum(words.text == "Laid out" for words in page) for page in pages]
    assert sum(heads) == 1
    (sheets,) = [page for page, listed in zip(pages, heads, strict=True) if listed]
    assert any(words.text.startswith("Sheets of templates by cover") for words in sheets)
    assert any(words.text == "The sheets" for words in sheets)


@pytest.mark.parametrize("paper", PAPERS)
def test_the_tools_stand_together(paper: str) -> None:
    pages = [text_of([page]) for page in _cover(replace(plan_with(4), title="Long wall " * 8), paper)]
    assert any("You need • Removable tape" in page and "A step ladder" in page for page in pages)


def test_a_long_title_is_cut_not_run_over_the_page() -> None:
    plan = replace(plan_with(1), title="The long title of a long wall " * 20)
    (page, *_) = _cover(plan, "a4")
    title = [item for item in page.items if isinstance(item, Words) and item.height_mm == 7.0]
    assert len(title) == 3
    assert title[-1].text.endswith("…")


def test_sheets_of_both_directions_ask_for_automatic_paper() -> None:
    plan = plan_with(2)
    tilings = {
        plan.pieces[0].slug: grid_tiling(1, 1),
        plan.pieces[1].slug: grid_tiling(1, 1, Size(297.0, 210.0)),
    }
    pages = _draw(plan, tilings, "a4", lie_both_ways=True)
    assert "leave the paper's direction on “Auto”" in text_of(pages)
    assert "“Auto”" not in text_of(_cover(plan, "a4"))


@pytest.mark.parametrize(
    ("paper", "units", "words"),
    [
        # Letter is 8 1/2 x 11 in (ASME Y14.1); 215.9 and 279.4 mm
        ("letter", Unit.INCH, "Letter, 8 1/2 in × 11 in (216 mm × 279 mm)"),
        ("a4", Unit.CENTIMETRE, "A4, 210 mm × 297 mm (8 1/4 in × 11 11/16 in)"),
        ("ansi c", Unit.INCH, "ANSI C, 17 in × 22 in (432 mm × 559 mm)"),
        ("13 x 19 in", Unit.INCH, "13 in × 19 in (330 mm × 483 mm)"),
        ("roll 24 in", Unit.INCH, "a roll 24 in wide (610 mm)"),
    ],
)
def test_paper_is_named_with_its_size(paper: str, units: Unit, words: str) -> None:
    assert describe_paper(parse_paper(paper), plan_with(1, units)) == words


def test_sheets_that_form_no_grid_are_told_course_by_course() -> None:
    whole = grid_tiling(2, 3)
    assert count_grid(whole) == "2 across, 3 down"
    assert count_grid(replace(whole, tiles=whole.tiles[:5])) == "3 rows: 2 + 2 + 1 sheets"


def test_courses_that_run_down_are_columns() -> None:
    # A1 to A3 one under the other, B1 and B2 to the right of them.
    tiles = tuple(
        Tile(name, box, box, Size(210.0, 297.0), Point(0.0, 0.0))
        for name, x, y in (("A1", 0, 2), ("A2", 0, 1), ("A3", 0, 0), ("B1", 1, 1.5), ("B2", 1, 0.5))
        for box in [Box.of(Point(180.0 * x, 260.0 * y), Size(190.0, 270.0))]
    )
    assert count_grid(Tiling(tiles, (), ())) == "2 columns: 3 + 2 sheets"


@pytest.mark.parametrize("paper", PAPERS)
def test_over_stairs_no_step_ladder_is_asked_for_on_them(paper: str) -> None:
    pages = _cover(over_stairs(plan_with(4)), paper)
    for page in pages:
        assert_inside(page.items, blank_form(paper).inner)
        assert_words_apart(page)
        assert_words_clear_of_lines(page)
    text = text_of(pages)
    for words in (
        "A step ladder that stands firmly, for level floor only",
        "Over the stairs a platform or a ladder made for stairs, or a scaffold, and a second person",
        "Over the stairs set no common ladder on the steps",
    ):
        assert words in text
    plain = text_of(_cover(plan_with(4), paper))
    assert "stairs" not in plain
    assert "A step ladder that stands firmly" in plain
