"""Spacers: strips as wide as the gaps, and pages that stay clean."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from templater.drawing import Polyline
from templater.layout.model import Align, Arrangement
from templater.placement.model import Plan
from templater.scene.guide.spacers import draw_spacers
from templater.scene.model import PageDrawing
from tests.builders import group, inches, layout, piece, plan_of, position
from tests.scene.pages import (
    assert_inside,
    assert_words_apart,
    assert_words_clear_of_lines,
    blank_form,
    text_of,
)

REVISION = "QK7M2P"


def _plan(*gaps: float, arrange: Arrangement = Arrangement.ROW) -> Plan:
    """A group of two small pieces for each gap, one above the other."""
    groups, pieces = [], []
    for number, gap in enumerate(gaps, 1):
        names = [f"Kelp print {number}", f"Gull study {number}"]
        pieces += [piece(name, 60.0, 60.0) for name in names]
        place = position(left=50.0, bottom=150.0 * number)
        groups.append(
            group(f"pair {number}", names, arrange=arrange, gap=gap, align=Align.TOP, place=place)
        )
    return plan_of(layout(pieces, groups=groups))


def _strips(pages: Sequence[PageDrawing]) -> list[tuple[float, float]]:
    """Length and width of every strip, in order."""
    outlines = [
        item for page in pages for item in page.items if isinstance(item, Polyline) and item.closed
    ]
    return [(round(strip.box.width, 6), round(strip.box.height, 6)) for strip in outlines]


@pytest.mark.parametrize("paper", ["a4", "letter", "a5", "a3", "125 x 165 mm"])
def test_pages_are_clean(paper: str) -> None:
    pages = draw_spacers(_plan(5, 20, 50.8, 76.2, 120), blank_form(paper), revision=REVISION)
    for page in pages:
        assert_inside(page.items, blank_form(paper).inner)
        assert_words_apart(page)
        assert_words_clear_of_lines(page)


def test_every_gap_has_two_strips_as_wide_as_it_the_narrowest_first() -> None:
    pages = draw_spacers(_plan(inches(3), inches(2), inches(3)), blank_form("letter"), revision=REVISION)
    # Letter is 215.9 wide: less 2 x 6.35 for the margins and 2 x 5 of air.
    assert _strips(pages) == [(193.2, 50.8)] * 2 + [(193.2, 76.2)] * 2
    text = text_of(pages)
    assert text.count("gap 3 in (76 mm): hold between the taped templates") == 2
    assert f"rev {REVISION} · for pair 1; pair 3" in text


def test_a_column_has_spacers_too() -> None:
    pages = draw_spacers(_plan(25.0, arrange=Arrangement.COLUMN), blank_form("a3"), revision=REVISION)
    assert _strips(pages) == [(200.0, 25.0)] * 2


def test_what_is_wider_than_the_page_is_told() -> None:
    pages = draw_spacers(_plan(400.0), blank_form("a4"), revision=REVISION)
    assert _strips(pages) == []
    assert "gap 15 3/4 in (400 mm): too wide for a strip of this paper, measure it" in text_of(pages)


def test_beside_a_card_there_is_no_spacer() -> None:
    # The sides of a card are not on paper: a strip between two papers would set them wrong.
    plan, form = _plan(50.0, 30.0), blank_form("a4")

    def widths(*cards: str) -> list[float]:
        return [width for _, width in _strips(draw_spacers(plan, form, revision=REVISION, cards=cards))]

    assert widths() == [30.0, 30.0, 50.0, 50.0]
    assert widths("Gull study 1") == [30.0, 30.0]
    assert widths("Kelp print 2") == [50.0, 50.0]
    assert widths("Gull study 1", "Kelp print 2") == []


@pytest.mark.parametrize("plan", [_plan(0.0), _plan()])
def test_without_gaps_there_is_no_page(plan: Plan) -> None:
    assert draw_spacers(plan, blank_form("a4"), revision=REVISION) == ()
