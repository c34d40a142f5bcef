"""Page sizes, margins and factors of a printer that was measured."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.geometry import Size
from templater.layout.model import Margins
from templater.paper import PAPERS, Paper, parse_paper
from templater.printing.model import Printer, PrintSetup

MARGINS = Margins(left=4.0, right=5.0, top=3.0, bottom=13.0)
SHORT = Printer("study inkjet", 1.02, 1.05, MARGINS, Size(180.0, 240.0))
"""It makes 100 mm of 102 mm across, and of 105 mm along."""


def _setup(paper: Paper, printer: Printer | None = SHORT) -> PrintSetup:
    return PrintSetup(paper, MARGINS, 10.0, printer)


def test_without_a_printer_pages_are_as_large_as_the_paper() -> None:
    setup = _setup(PAPERS["a4"], None)
    assert setup.page_sizes() == (Size(210.0, 297.0), Size(297.0, 210.0))
    assert [setup.scale_of(size) for size in setup.page_sizes()] == [(1.0, 1.0)] * 2


def test_the_factors_belong_to_the_paper_and_change_places_on_a_wide_page() -> None:
    setup = _setup(PAPERS["a4"])
    portrait, landscape = setup.page_sizes()
    # 210 / 1.02 = 205.882..., 297 / 1.05 = 282.857...
    assert portrait == pytest.approx((205.88235, 282.85714))
    assert landscape == pytest.approx((282.85714, 205.88235))
    assert setup.scale_of(portrait) == (1.02, 1.05)
    assert setup.scale_of(landscape) == (1.05, 1.02)


def test_margins_are_what_the_printer_leaves_blank_on_the_paper() -> None:
    setup = _setup(PAPERS["a4"])
    portrait, landscape = setup.page_sizes()
    # In the file 4, 13, 205 and 294 mm; printed a 1.02th of that across, a 1.05th along.
    assert setup.printable(portrait) == pytest.approx((4 / 1.02, 13 / 1.05, 205 / 1.02, 294 / 1.05))
    # Turned either way: 13 mm at left and right, 5 mm below and above.
    assert setup.printable(landscape) == pytest.approx((13 / 1.05, 5 / 1.02, 284 / 1.05, 205 / 1.02))


def test_square_paper_lies_one_way() -> None:
    setup = _setup(Paper("square", Size(200.0, 200.0)))
    (page,) = setup.page_sizes()
    assert page == pytest.approx((200 / 1.02, 200 / 1.05))
    assert setup.scale_of(page) == (1.02, 1.05)
    # A wide page to look at, which is none in the file: margins stay where they are.
    assert setup.printable(page).x0 == pytest.approx(4 / 1.02)


def test_a_page_of_a_roll_is_told_by_the_side_that_is_as_wide_as_the_roll() -> None:
    setup = _setup(parse_paper("roll 24 in"))
    width = 609.6 / 1.02
    assert setup.scale_of(Size(width, 300.0)) == (1.02, 1.05)
    assert setup.scale_of(Size(width, 900.0)) == (1.02, 1.05)
    assert setup.scale_of(Size(300.0, width)) == (1.05, 1.02)
    assert setup.scale_of(Size(900.0, width)) == (1.05, 1.02)


@given(
    st.floats(100, 300),
    st.floats(1.001, 1.6),
    st.floats(0.95, 1.05),
    st.floats(0.95, 1.05),
)
def test_every_page_is_as_large_as_the_paper_in_the_file(
    width: float, ratio: float, across: float, along: float
) -> None:
    # Also paper so nearly square that a corrected portrait page is wider than tall.
    paper = Paper("odd", Size(width, width * ratio))
    setup = _setup(paper, Printer("x", across, along, MARGINS, Size(180.0, 240.0)))
    pages = [
        Size(page.width * scale[0], page.height * scale[1])
        for page in setup.page_sizes()
        for scale in [setup.scale_of(page)]
    ]
    assert pages[0] == pytest.approx(paper.size)
    assert pages[1:] in (
        [],  # square once corrected: it lies one way
        [pytest.approx((paper.size.height, paper.size.width))],
    )


def test_a_page_that_is_square_once_it_is_corrected_lies_as_the_paper_is_fed() -> None:
    # 165 mm drawn as 160 and 160 as 160: 165 / 1.03125 = 160.
    setup = _setup(
        Paper("odd", Size(160.0, 165.0)), Printer("x", 1.0, 1.03125, MARGINS, Size(120.0, 120.0))
    )
    assert setup.page_sizes() == (Size(160.0, 160.0),)
    assert setup.scale_of(Size(160.0, 160.0)) == (1.0, 1.03125)
