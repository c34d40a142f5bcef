"""Bands and cards as they are drawn: what they say they leave out, and that they stay readable."""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import combinations

import pytest

from templater.drawing import Words
from templater.geometry import Point, Size
from templater.layout.model import Margins
from templater.lengths import Unit
from templater.lettering import words_box
from templater.paper import parse_paper
from templater.placement.model import Neighbour, PlacedPiece, Plan, Side
from templater.printing.cut import cut_template
from templater.printing.model import Coverage, PrintSetup
from templater.scene.template.draw import draw_template, template_shape
from templater.scene.template.sheet_block import SheetNames
from tests.scene.templates import BENCH, INCH, NEIGHBOURS, REVISION, TITLE, Drawn, placed, plan_for


def _mirror(*holes: tuple[float, float]) -> PlacedPiece:
    """40 x 60 in, its left edge 50 in from the wall's left end, its bottom 27 in up; holes in inches."""
    return placed(
        Size(40 * INCH, 60 * INCH),
        [(x * INCH, y * INCH) for x, y in holes],
        name="Great mirror",
        corner=Point(50 * INCH, 27 * INCH),
        over=BENCH,
        neighbours=(Neighbour("Kelp print", Side.RIGHT, 3 * INCH),),
    )


def _draw(piece: PlacedPiece, cover: Coverage, paper: str = "letter", plan: Plan | None = None) -> Drawn:
    setup = PrintSetup(parse_paper(paper), Margins(), 10.0, cover=cover)
    tiling = cut_template(template_shape(piece), setup)
    names = SheetNames(TITLE, piece.name, REVISION, 3, 99)
    return Drawn(piece, setup, tiling, draw_template(piece, plan or plan_for(piece), tiling, names))


def _text(drawn: Drawn, index: int) -> str:
    return " ".join(words.text for words in drawn.words(index))


PIECES = {
    "one hole": _mirror((20, 57.75)),
    "two far holes": _mirror((5, 52), (35, 52)),
    "no hole": _mirror(),
    "low hole": _mirror((20, 30)),
    "many neighbours": placed(Size(900, 1200), [(450.0, 1150.0)], neighbours=NEIGHBOURS),
}
PARTS = [
    (name, cover, paper)
    for name in PIECES
    for cover in (Coverage.BAND, Coverage.CARD)
    for paper in ("letter", "a4", "a5")
]


@pytest.mark.parametrize(("name", "cover", "paper"), PARTS)
def test_every_sheet_says_that_something_is_left_out(name: str, cover: Coverage, paper: str) -> None:
    drawn = _draw(PIECES[name], cover, paper)
    assert drawn.tiling.cover is cover
    for index in range(len(drawn.sheets)):
        assert f"{cover.value.capitalize()}: the rest is left out." in _text(drawn, index)


@pytest.mark.parametrize(("name", "cover", "paper"), PARTS)
def test_words_stay_clear_of_words_and_lines(name: str, cover: Coverage, paper: str) -> None:
    drawn = _draw(PIECES[name], cover, paper)
    for index, tile in enumerate(drawn.sheets):
        boxed = drawn.boxed_words(index)
        assert [(a, b) for (a, p), (b, q) in combinations(boxed, 2) if p.meets(q)] == []
        for text, box in boxed:
            assert tile.clip.holds(box, slack=0.01), text
            assert not any(box.meets(line.box.grown(0.1)) for line in drawn.lines), text


@pytest.mark.parametrize(("name", "cover", "paper"), PARTS)
def test_a_line_is_explained_only_where_it_is_printed(name: str, cover: Coverage, paper: str) -> None:
    drawn = _draw(PIECES[name], cover, paper)
    text = drawn.label_text()
    size = drawn.piece.size
    for words, x in (("CENTRE LINE", size.width / 2),):
        seen = any(tile.keep.x0 < x < tile.keep.x1 for tile in drawn.sheets)
        assert (words in text) == seen


def test_a_band_tells_what_can_be_checked_and_no_diagonals() -> None:
    drawn = _draw(PIECES["one hole"], Coverage.BAND)
    text = drawn.label_text()
    assert "BAND: the top edge, both top corners and every hole." in text
    assert "top edge, corner to corner: 40 in (1016 mm)" in text
    # The level line runs 60 - 57 3/4 = 2 1/4 in below the top.
    assert "down to the level line, at both ends: 2 1/4 in (57 mm)" in text
    assert "whole piece: 40 × 60 in (1016 × 1524 mm)" in text
    assert "diagonals" not in text


def test_the_corner_of_a_band_is_set_by_measure() -> None:
    drawn = _draw(PIECES["one hole"], Coverage.BAND)
    text = _text(drawn, len(drawn.sheets) - 1)
    assert "BOTTOM LEFT CORNER" in text
    assert "joins no other" in text
    assert "straight below the top left corner: 60 in (1524 mm)" in text
    # The root of 40 squared and 60 squared is 72.11 in, nearest sixteenth 72 1/8; 1831.6 mm.
    assert "from the top right corner: 72 1/8 in (1832 mm)" in text


def test_a_card_measures_to_the_neighbours_holes() -> None:
    mirror = PIECES["one hole"]
    other = placed(
        Size(16 * INCH, 20 * INCH),
        [(8 * INCH, 18 * INCH)],
        name="Kelp print",
        corner=Point(93 * INCH, 41 * INCH),
    )
    plan = replace(plan_for(mirror), pieces=(mirror, other))
    text = _draw(mirror, Coverage.CARD, plan=plan).label_text()
    # Holes at 50 + 20 = 70 and 93 + 8 = 101 in across; 27 + 57 3/4 = 84 3/4 and 41 + 18 = 59 in up.
    assert "from hole 1 to its hole 1: 31 in (787 mm) right," in text
    assert "25 3/4 in (654 mm) below" in text


def test_a_card_of_two_sheets_tells_how_far_its_holes_are_apart_and_from_the_centre() -> None:
    text = _draw(PIECES["two far holes"], Coverage.CARD).label_text()
    assert "hole 1 to hole 2: 30 in (762 mm)" in text
    assert "hole 1 is 15 in (381 mm) left of the piece's centre line" in text
    assert "hole 2 is 15 in (381 mm) right of the piece's centre line" in text


@pytest.mark.parametrize("cover", [Coverage.CARD, Coverage.BAND])
def test_what_is_told_of_the_holes_holds_beside_the_hole_of_a_lock(cover: Coverage) -> None:
    # Holes 1 and 2 10 in apart, 2 in below the top; hole 3 16 in below hole 2 and 5 in left of it:
    # √(16² + 5²) = 16.763 in, nearest sixteenth 16 3/4.
    holes = [(7 * INCH, 34 * INCH), (17 * INCH, 34 * INCH), (12 * INCH, 18 * INCH)]
    text = _draw(placed(Size(24 * INCH, 36 * INCH), holes), cover).label_text()
    if cover is Coverage.CARD:
        assert "hole 1 to hole 2: 10 in (254 mm)" in text
        assert "hole 2 to hole 3: 16 3/4 in (426 mm)" in text
    else:
        assert "top edge down to the level line of hole 1, at both ends: 2 in (51 mm)" in text


def test_a_card_tells_how_high_its_top_edge_is() -> None:
    # Top 27 + 60 = 87 in; the datum is at 60 in.
    text = _draw(PIECES["no hole"], Coverage.CARD).label_text()
    assert "top edge, from the datum: +27 in (+686 mm)" in text
    assert "No hole is marked." in text


def test_metric_layouts_read_millimetres_first() -> None:
    piece = PIECES["one hole"]
    plan = plan_for(piece, Unit.MILLIMETRE)
    text = _draw(piece, Coverage.BAND, "a4", plan).label_text()
    assert "top edge, corner to corner: 1016 mm (40 in)" in text


def test_a_whole_template_says_nothing_of_a_rest() -> None:
    drawn = _draw(placed(Size(150, 180), [(75.0, 160.0)]), Coverage.CARD, "a4")
    assert drawn.tiling.cover is Coverage.FULL
    texts = [item.text for item in drawn.own(0) if isinstance(item, Words)]
    assert not re.search("left out|CARD|Card", " ".join(texts))
    assert all(drawn.sheets[0].clip.holds(words_box(item), 0.01) for item in drawn.words(0))
