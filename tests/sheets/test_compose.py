from __future__ import annotations

import re
from collections.abc import Iterable

import pytest

from templater.drawing import Words
from templater.geometry import Size
from templater.layout.model import Margins
from templater.lengths import Unit
from templater.paper import parse_paper
from templater.pipeline import PrintChoices, plan_kit, plan_wall
from templater.printing.model import Coverage, PrintSetup
from templater.sheets.compose import overview_form, text_form
from templater.sheets.model import Page

INCH = 25.4
LETTER = Size(8.5 * INCH, 11 * INCH)


LAYOUT = """\
title: Keeper's cottage, watch room
units: in
wall: {width: 20 ft, height: 9 ft}
pieces:
  - {name: Fog signal, size: 20 x 30, hang: {by: wire, drop: 3}}
  - {name: Storm cone, size: 20 x 30, hang: {by: d-rings, drop: 3, apart: 16}}
  - {name: Knot card, size: 4 x 6, hang: {by: sawtooth, drop: 1/2}}
  - {name: Wick card, size: 4 x 6, hang: {by: sawtooth, drop: 1/2}}
groups:
  - {name: pair, pieces: [Fog signal, Storm cone], arrange: row, gap: 2, centre: 100}
  - {name: cards, pieces: [Knot card, Wick card], arrange: row, gap: 3, centre: 40}
"""


@pytest.mark.parametrize(
    ("cover", "gaps"),
    [
        (Coverage.FULL, ["2 in (51 mm)", "3 in (76 mm)"]),
        (Coverage.BAND, ["2 in (51 mm)", "3 in (76 mm)"]),
        # The small ones are printed whole, whatever the cover: their sides are on paper.
        (Coverage.CARD, ["3 in (76 mm)"]),
    ],
)
def test_spacers_are_for_sides_that_are_on_paper(cover: Coverage, gaps: list[str]) -> None:
    planned = plan_wall(LAYOUT.encode(), "watch.yaml")
    kit, _ = plan_kit(planned, PrintChoices(cover=cover))
    texts = " ".join(_list_texts(kit.spacers))
    assert list(dict.fromkeys(re.findall(r"gap (.*?): hold", texts))) == gaps


def test_a_kit_of_cards_says_nothing_of_spacers() -> None:
    pair = LAYOUT[: LAYOUT.index("  - {name: cards")]
    source = "".join(line for line in pair.splitlines(keepends=True) if " card," not in line)
    kit, _ = plan_kit(plan_wall(source.encode(), "watch.yaml"), PrintChoices(cover=Coverage.CARD))
    assert kit.spacers == ()
    assert "spacer" not in " ".join(_list_texts(kit.cover))
    assert "card by measure" in " ".join(_list_texts(kit.cover))


def _list_texts(pages: Iterable[Page]) -> list[str]:
    layers = [layer for page in pages for layer in page.layers]
    return [item.text for layer in layers for item in layer.items if isinstance(item, Words)]


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
        ("300 x 300 mm", Size(300, 300)),  # it lies one way only
        # A roll's overview is as wide as the roll, in A's proportion of 1 to the square root of 2.
        ("roll 24 in", Size(24 * INCH * 1.41421356, 24 * INCH)),
    ],
)
def test_the_overview_is_landscape(paper: str, size: Size) -> None:
    assert overview_form(_setup(paper)).size == pytest.approx(size)


def test_a_turned_page_keeps_the_larger_margin_on_every_side() -> None:
    # One cannot know which way a printer turns it: 15 mm may be left or right, 6 mm up or down.
    assert overview_form(_setup("a4")).printable == pytest.approx((15, 6, 297 - 15, 210 - 6))
