"""What is cut out of shared pages: how much paper round each template, and which templates."""

from __future__ import annotations

from dataclasses import replace

import pytest

from templater.geometry import Box, Point, Size
from templater.layout.model import Hanger, Margins
from templater.paper import parse_paper
from templater.placement.model import Plan
from templater.printing.cut import cut_template
from templater.printing.model import Coverage, PrintSetup, Tile, Tiling
from templater.scene.template.draw import template_shape
from templater.sheets.cuttings import Bundle, list_bundles
from templater.sheets.share import name_sheets
from tests.builders import hanging, layout, piece, plan_of, position

ROLL = PrintSetup(parse_paper("roll 24 in"), Margins(5.0, 6.0, 7.0, 8.0), 10.0)
# 24 in are 609.6 mm, of which 5 and 6 mm are left blank: 598.6 are shown.


def _plan(*sizes: tuple[float, float], by: Hanger = Hanger.NAIL, drop: float = 20.0) -> Plan:
    left, pieces = 100.0, []
    for number, (width, height) in enumerate(sizes, 1):
        place = position(left=left, bottom=1000.0)
        pieces.append(piece(f"Flag {number}", width, height, hang=hanging(by, drop), place=place))
        left += width + 300.0
    return plan_of(layout(pieces, width=left))


def _bundles(plan: Plan, setup: PrintSetup, **tilings: Tiling) -> list[Bundle]:
    cut = {one.slug: cut_template(template_shape(one), setup) for one in plan.pieces}
    named = {slug.replace("_", "-"): tiling for slug, tiling in tilings.items()}
    return list_bundles(plan, {**cut, **named}, setup, name_sheets(plan, setup, "QK7M2P"))


def _strips(*clips: Box, page: Size) -> Tiling:
    tiles = (
        Tile(f"A{number}", clip, clip, page, Point(9.0, 9.0)) for number, clip in enumerate(clips, 1)
    )
    return Tiling(tuple(tiles), (), ())


@pytest.mark.parametrize(
    ("width", "border"),
    [(500.0, 3.0), (592.5, 3.0), (594.6, 2.0), (597.6, 0.5), (598.6, 0.0), (599.0, 0.0)],
)
def test_a_strip_has_a_border_as_far_as_the_roll_is_wide(width: float, border: float) -> None:
    plan = _plan((width, 900.0))
    first, second = Box(0.0, 440.0, width, 900.0), Box(0.0, 0.0, width, 450.0)
    tiling = _strips(first, second, page=Size(609.6, 480.0))
    ((one, other),) = _bundles(plan, ROLL, flag_1=tiling)
    assert one.paper == pytest.approx(Box(-border, 437.0, width + border, 903.0))
    assert other.paper == pytest.approx(Box(-border, -3.0, width + border, 453.0))
    # They are the sheets of the cut, in its order, drawn once.
    assert (one.tile, other.tile) == tiling.tiles
    assert (one.place, other.place) == (0, 1)
    assert one.drawing is other.drawing


def test_a_strip_of_a_page_that_lies_across_the_roll() -> None:
    # Up such a page 609.6 - 7 - 8 = 594.6 mm are shown, 2 mm more than the strip is tall.
    plan = _plan((900.0, 592.6))
    tiling = _strips(Box(0, 0, 450, 592.6), Box(440, 0, 900, 592.6), page=Size(480.0, 609.6))
    ((one, _),) = _bundles(plan, ROLL, flag_1=tiling)
    assert one.paper == pytest.approx(Box(-3.0, -1.0, 453.0, 593.6))


def test_which_templates_share_pages() -> None:
    plan = _plan((300.0, 250.0), (700.0, 900.0), (310.0, 250.0))
    a3 = replace(ROLL, paper=parse_paper("a3"))
    assert [[cutting.piece.name for cutting in one] for one in _bundles(plan, a3)] == [
        ["Flag 1"],
        ["Flag 3"],
    ]
    assert [[cutting.piece.name for cutting in one] for one in _bundles(plan, ROLL)] == [
        ["Flag 1"], ["Flag 2", "Flag 2"], ["Flag 3"],
    ]  # fmt: skip
    whole = cut_template(template_shape(plan.pieces[0]), a3)
    card = replace(whole, cover=Coverage.CARD)
    assert [one[0].piece.name for one in _bundles(plan, a3, flag_1=card)] == ["Flag 3"]
    names = name_sheets(plan, a3, "QK7M2P")
    assert [one[0].piece.name for one in list_bundles(plan, {"flag-3": whole}, a3, names)] == ["Flag 3"]


def test_a_template_with_room_for_its_words_has_a_border_of_3_mm_and_no_more() -> None:
    ((cutting,),) = _bundles(_plan((300.0, 250.0)), replace(ROLL, paper=parse_paper("a3")))
    assert cutting.paper == cutting.tile.clip == cutting.tile.keep == Box(-3.0, -3.0, 303.0, 253.0)
    assert (cutting.tile.name, cutting.tile.page, cutting.tile.origin) == (
        "A1",
        Size(306, 256),
        Point(3, 3),
    )
    assert cutting.size == Size(306, 256)


def test_the_cross_of_a_hole_above_the_outline_stands_on_the_paper() -> None:
    ((cutting,),) = _bundles(_plan((300.0, 250.0), drop=4.0), replace(ROLL, paper=parse_paper("a3")))
    assert cutting.paper == Box(-3.0, -3.0, 303.0, 259.0)  # 250 - 4 + 10 + 3


def test_paper_is_added_on_the_right_and_below_for_the_words_of_small_templates() -> None:
    for size in ((100.0, 150.0), (60.0, 60.0), (250.0, 50.0)):
        ((cutting,),) = _bundles(_plan(size), ROLL)
        width, height = size
        x0, y0, x1, y1 = cutting.paper
        assert (x0, y1) == (-3.0, height + 3.0)
        assert x1 - width - 3.0 in (0.0, 62.0, 92.0, 122.0)
        assert -y0 - 3.0 in (0.0, 32.0, 62.0, 92.0, 122.0)
        assert cutting.drawing.is_complete
        assert cutting.tile.origin == Point(3.0, -y0)


def test_a_template_that_leaves_no_room_for_its_words_shares_none() -> None:
    # A4 shows 199 x 282 mm; 196 x 270 mm and a border are too wide.
    a4 = replace(ROLL, paper=parse_paper("a4"))
    assert _bundles(_plan((196.0, 270.0)), a4) == []
    ((cutting,),) = _bundles(_plan((90.0, 60.0)), a4)
    assert cutting.paper.width <= 282
    assert cutting.paper.height <= 282
    # 276 x 46 mm is too long for more on its right: more is added below.
    ((wide,),) = _bundles(_plan((270.0, 40.0)), a4)
    assert (wide.paper.x0, wide.paper.x1, wide.paper.y1) == (-3.0, 273.0, 43.0)
