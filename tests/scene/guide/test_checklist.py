import pytest

from templater.drawing import Polyline
from templater.lengths import Unit, format_signed_both
from templater.scene.guide.checklist import draw_checklist
from templater.scene.model import PageDrawing
from tests.scene.pages import (
    PAPERS,
    assert_inside,
    assert_words_apart,
    assert_words_clear_of_lines,
    blank_form,
    make_plan,
    placed_piece,
    plan_with,
    text_of,
    words_of,
)

TICK_SIDE = 4.0


def _ticks(pages: tuple[PageDrawing, ...]) -> list[Polyline]:
    return [
        item
        for page in pages
        for item in page.items
        if isinstance(item, Polyline) and item.box.width == pytest.approx(TICK_SIDE)
    ]


def test_a_hole_has_its_two_distances_in_both_units() -> None:
    plan = make_plan([placed_piece("Tide chart", [(609.6, 1676.4)])], Unit.INCH)
    text = text_of(draw_checklist(plan, blank_form("a4"), revision="QK7M2P"))
    # 1676.4 - 1524 = 152.4 mm = 6 in; 609.6 mm = 24 in
    assert "Tide chart 1 +6 in (+152 mm) 24 in (610 mm)" in text
    assert "60 in (1524 mm) above the floor at: left of the stair post" in text
    assert "QK7M2P" in text


def test_a_hole_below_the_datum_is_negative() -> None:
    assert format_signed_both(-76.2, Unit.MILLIMETRE) == "−76 mm (−3 in)"


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("count", [1, 9, 60])
def test_every_hole_has_a_row_and_every_row_its_boxes(paper: str, count: int) -> None:
    plan = plan_with(count)
    pages = draw_checklist(plan, blank_form(paper), revision="QK7M2P")
    holes = sum(len(piece.marks) for piece in plan.pieces)
    bare = sum(1 for piece in plan.pieces if not piece.marks)
    assert len(_ticks(pages)) == 3 * holes + bare
    assert text_of(pages).count("no hole") == bare


@pytest.mark.parametrize("paper", PAPERS)
def test_every_page_repeats_the_heading_and_keeps_within_the_paper(paper: str) -> None:
    form = blank_form(paper)
    pages = draw_checklist(plan_with(60), form, revision="QK7M2P")
    for page in pages:
        assert "Piece" in {words.text for words in words_of(page)}
        assert_inside(page.items, form.inner)
        assert_words_apart(page)
        assert_words_clear_of_lines(page)
