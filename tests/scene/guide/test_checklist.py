import re
from dataclasses import replace

import pytest

from templater.drawing import Polyline
from templater.layout.model import Hanger
from templater.lengths import Unit
from templater.scene.guide.checklist import draw_checklist
from templater.scene.model import PageDrawing
from tests.rules.fasteners.walls import by, hung_at, wall_of
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


@pytest.mark.parametrize(
    ("count", "whose"),
    [(0, None), (4, "P1; P2; P3; P4"), (21, "21 pieces, as their templates tell")],
)
def test_a_rise_that_nobody_measured_is_told_where_the_holes_are(count: int, whose: str | None) -> None:
    measured = replace(by(Hanger.WIRE), rise_mm=12.7)
    pieces = [hung_at(450.0 * at, by(Hanger.WIRE), 3.0, name=f"P{at}") for at in range(1, count + 1)]
    plan = wall_of(*pieces, hung_at(9900.0, measured, 3.0, name="Fog bell"))
    text = text_of(draw_checklist(plan, blank_form("a4"), revision="QK7M2P"))
    assert ("rise not given" in text) is (whose is not None)
    told = f"{whose}: rise not given: let the hook bear at the cross, its nail or screw above."
    assert whose is None or told in text
    assert "'rise'" not in text  # that is for whoever writes the layout


def test_a_hole_below_the_datum_is_negative() -> None:
    # 1524 - 76.2 = 1447.8; 76.2 mm = 3 in
    plan = make_plan([placed_piece("Fog bell", [(610.0, 1447.8)])])
    text = text_of(draw_checklist(plan, blank_form("a4"), revision="QK7M2P"))
    assert "Fog bell 1 −76 mm (−3 in) 610 mm (24 in)" in text


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("count", [1, 9, 60])
def test_every_hole_has_a_row_and_every_row_its_boxes(paper: str, count: int) -> None:
    plan = plan_with(count)
    pages = draw_checklist(plan, blank_form(paper), revision="QK7M2P")
    holes = sum(len(piece.marks) for piece in plan.pieces)
    bare = sum(1 for piece in plan.pieces if not piece.marks)
    assert len(_ticks(pages)) == 3 * holes + bare
    assert text_of(pages).count("none yet") == bare


@pytest.mark.parametrize("paper", ["a4", "a5", "a3"])
@pytest.mark.parametrize("count", range(2, 32, 3))
def test_the_holes_of_a_piece_stand_on_one_page(paper: str, count: int) -> None:
    pairs = [placed_piece(f"Pair {n}", [(90.0, 9.0), (290.0, 9.0)]) for n in range(count)]
    plan = make_plan([placed_piece("Fog bell", [(90.0, 9.0)]), *pairs])
    pages = draw_checklist(plan, blank_form(paper), revision="QK7M2P")
    for pair in pairs:
        rows = [words for page in pages for words in words_of(page) if words.text == pair.name]
        (page,) = [page for page in pages if pair.name in {words.text for words in words_of(page)}]
        assert len(rows) == len([words for words in words_of(page) if words.text == pair.name]) == 2
        assert rows[0].at.x == rows[1].at.x


def test_a_piece_with_more_holes_than_a_page_has_rows_goes_on_overleaf() -> None:
    cleat = placed_piece("Great cleat", [(90.0 + 50.0 * n, 9.0) for n in range(60)])
    pages = draw_checklist(make_plan([cleat]), blank_form("a5"), revision="QK7M2P")
    assert len(_ticks(pages)) == 3 * 60
    assert all("Great cleat" in text_of([page]) for page in pages)


def test_the_way_from_hole_to_hole_stands_beside_the_second() -> None:
    # 304.8 mm = 12 in level; 3-4-5: 152.4 and 203.2 mm off, 254 mm = 10 in straight.
    holes = [(1000.0, 1700.0), (1304.8, 1700.0), (1152.4, 1496.8)]
    plan = make_plan([placed_piece("Kelp print", holes), placed_piece("Fog bell", [(90.0, 9.0)])])
    text = text_of(draw_checklist(plan, blank_form("a4"), revision="QK7M2P"))
    assert re.findall(r"\d–\d: \d+ mm \([^)]*\)", text) == [
        "1–2: 305 mm (12 in)",
        "2–3: 254 mm (10 in)",
    ]
    assert "Hole to hole: measure straight from the middle of one cross" in text


def test_pieces_with_one_hole_each_have_no_such_column() -> None:
    plan = make_plan([placed_piece("Fog bell", [(90.0, 9.0)])])
    assert "Hole to hole" not in text_of(draw_checklist(plan, blank_form("a4"), revision="QK7M2P"))


def test_the_datum_is_not_called_a_level_line() -> None:
    text = text_of(draw_checklist(plan_with(3), blank_form("a4"), revision="QK7M2P"))
    assert "The datum is the one line that you draw across the wall" in text
    assert "level line" not in text


@pytest.mark.parametrize("paper", ["a4", "a5"])
@pytest.mark.parametrize("count", range(20, 50, 3))
def test_no_page_has_a_row_or_two_alone(paper: str, count: int) -> None:
    plan = make_plan([placed_piece(f"Print {number}", [(90.0, 9.0)]) for number in range(count)])
    pages = draw_checklist(plan, blank_form(paper), revision="QK7M2P")
    assert len(_ticks(pages[-1:])) > 3 * 2


@pytest.mark.parametrize("paper", PAPERS)
def test_every_page_repeats_the_heading_and_keeps_within_the_paper(paper: str) -> None:
    form = blank_form(paper)
    pages = draw_checklist(plan_with(60), form, revision="QK7M2P")
    for page in pages:
        assert "Piece" in {words.text for words in words_of(page)}
        assert_inside(page.items, form.inner)
        assert_words_apart(page)
        assert_words_clear_of_lines(page)
