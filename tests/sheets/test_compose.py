from __future__ import annotations

import pytest

from templater.geometry import Size
from templater.layout.model import Margins
from templater.lengths import Unit
from templater.paper import parse_paper
from templater.printing.model import PrintSetup
from templater.sheets.compose import overview_form, text_form

INCH = 25.4
LETTER = Size(8.5 * INCH, 11 * INCH)


def _setup(paper: str) -> PrintSetup:
    return PrintSetup(parse_paper(paper), Margins(left=5.0, right=6.0, top=7.0, bottom=15.0), 10.0)


@pytest.mark.parametrize(
    ("paper", "units", "size"),
    [
        ("a4", Unit.INCH, Size(210, 297)),
        ("letter", Unit.MILLIMETRE, LETTER),
        ("a3", Unit.INCH, Size(297, 420)),
        # What is read is not printed on a poster or a roll.
        ("a0", Unit.INCH, LETTER),
        ("a1", Unit.CENTIMETRE, Size(210, 297)),
        ("roll 24 in", Unit.FOOT, LETTER),
    ],
)
def test_what_is_read_comes_on_paper_that_can_be_held(paper: str, units: Unit, size: Size) -> None:
    form = text_form(_setup(paper), units)
    assert form.size == pytest.approx(size)
    width, height = size
    assert form.printable == pytest.approx((5, 15, width - 6, height - 7))


@pytest.mark.parametrize(
    ("paper", "size"),
    [
        ("a4", Size(297, 210)),
        ("letter", Size(11 * INCH, 8.5 * INCH)),
        ("a0", Size(1189, 841)),
        # A roll's overview is as wide as the roll, in A's proportion of 1 to the square root of 2.
        ("roll 24 in", Size(24 * INCH * 1.41421356, 24 * INCH)),
    ],
)
def test_the_overview_is_landscape(paper: str, size: Size) -> None:
    assert overview_form(_setup(paper)).size == pytest.approx(size)


def test_a_turned_page_keeps_the_larger_margin_on_every_side() -> None:
    # One cannot know which way a printer turns it: 15 mm may be left or right, 6 mm up or down.
    assert overview_form(_setup("a4")).printable == pytest.approx((15, 6, 297 - 15, 210 - 6))
