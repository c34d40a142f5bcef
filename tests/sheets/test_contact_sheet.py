from __future__ import annotations

from templater.drawing import Words
from templater.layout.model import Margins
from templater.paper import parse_paper
from templater.printing.model import PrintSetup
from templater.sheets.compose import overview_form
from templater.sheets.contact_sheet import compose_contact_sheet
from tests.search.walls import settle, wall_text


def test_ways_are_numbered_as_they_are_chosen() -> None:
    # Choices are counted from 1, the best way first.
    text = wall_text(["16 x 20"] * 3, "name: bench set, pieces: [A, B, C], arrange: row, gap: any")
    (settlement,) = settlements = settle(text)
    form = overview_form(PrintSetup(parse_paper("letter"), Margins(), 0.0))
    (page,) = compose_contact_sheet(settlements, form)
    words = {item.text for layer in page.layers for item in layer.items if isinstance(item, Words)}
    assert len(settlement.proposals) == 3
    heads = {text for text in words if text.endswith("row of 3")}
    assert heads == {"1 row of 3", "2 row of 3", "3 row of 3"}
    assert page.label == "1"
