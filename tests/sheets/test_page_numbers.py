"""Every page of a kit tells its number, and they run without a gap in the order of printing."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest

from templater.drawing import Words
from templater.paper import parse_paper
from templater.pipeline import PrintChoices, plan_kit, plan_wall
from templater.sheets.compose import Kit
from templater.sheets.model import Page, PageKind

LAYOUT = """
title: Stair head
wall: {width: 5 m, height: 2.4 m}
units: mm
pieces:
  - {name: Knot card, size: 100 x 150, hang: {by: nail, drop: 10}}
  - {name: Great lens, size: 500 x 700, hang: {by: nail, drop: 20}}
  - {name: Wick card, size: 100 x 150, hang: {by: nail, drop: 10}}
  - {name: Fog bell, size: 300 x 400, hang: {by: nail, drop: 20}}
groups:
  - name: the row
    arrange: row
    pieces: [Knot card, Great lens, Wick card, Fog bell]
    gap: 60
"""


@pytest.fixture(scope="module")
def kit() -> Kit:
    wall = plan_wall(LAYOUT.encode(), "stair-head.yaml")
    return plan_kit(wall, PrintChoices(paper=parse_paper("a4")))[0]


def _print(kit: Kit) -> Iterator[Page]:
    """The pages as they come out: what is read, templates, shared pages, spacers, checklist."""
    yield from (*kit.cover, *kit.overview)
    for template in kit.templates():
        if not template.is_shared:
            yield from template.pages
    yield from (*kit.shared_pages(), *kit.spacers, *kit.checklist)


def _find_numbers(page: Page) -> set[tuple[int, int]]:
    texts = [item.text for layer in page.layers for item in layer.items if isinstance(item, Words)]
    found = (re.fullmatch(r"page (\d+) of (\d+)", text) for text in texts)
    return {(int(match[1]), int(match[2])) for match in found if match}


def test_the_numbers_run_through_the_kit(kit: Kit) -> None:
    pages = list(_print(kit))
    kinds = [page.kind for page in pages]
    assert list(dict.fromkeys(kinds)) == [
        PageKind.COVER,
        PageKind.OVERVIEW,
        PageKind.TEMPLATE,
        PageKind.SPACER,
        PageKind.CHECKLIST,
    ]
    assert sum(len(page.parts) > 1 for page in pages) == 1  # the two cards
    assert [_find_numbers(page) for page in pages] == [
        {(number, len(pages))} for number in range(1, len(pages) + 1)
    ]


def test_who_prints_a_shared_template_alone_finds_the_shared_pages_number(kit: Kit) -> None:
    numbers = [number for number, page in enumerate(_print(kit), 1) if len(page.parts) > 1]
    alone = [template for template in kit.templates() if template.is_shared]
    assert [template.piece.name for template in alone] == ["Knot card", "Wick card"]
    for template in alone:
        (page,) = template.pages
        assert [number for number, _ in _find_numbers(page)] == numbers


LONG = "The lamp room is long and bright and holds brass rails with caps on them and cups on those caps"


def test_a_name_that_is_cut_short_stands_after_its_number_on_the_overview() -> None:
    pieces = "".join(
        f"  - {{name: {LONG} wide and low {number}, size: 100 x 120, hang: {{by: nail, drop: 20}},"
        f" place: {{left: {500 * number}}}}}\n"
        for number in (1, 2)
    )
    source = f"title: Lamp room\nwall: {{width: 3 m, height: 2.4 m}}\nunits: mm\npieces:\n{pieces}"
    kit = plan_kit(plan_wall(source.encode(), "lamp.yaml"), PrintChoices(parse_paper("a5")))[0]
    for number, template in enumerate(kit.templates(), 1):
        texts = [
            item.text
            for page in template.pages
            for layer in page.layers
            for item in layer.items
            if isinstance(item, Words)
        ]
        assert [text.split(" lamp")[0] for text in texts if " lamp room" in text] == [f"{number} The"]
