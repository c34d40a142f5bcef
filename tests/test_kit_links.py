"""Where a PDF reader can jump to in whole kits: bookmarks, names, page labels, links."""

from __future__ import annotations

import re
from collections.abc import Iterable
from math import dist
from typing import Any

import pikepdf
import pytest

from templater.geometry import Box, Point
from tests.kits import MadeKit

NEAR = 0.01
"""How far a target may be from where it belongs, mm."""
INCH = 25.4


def test_the_pdf_leads_to_pieces_sheets_and_holes(kit: MadeKit) -> None:
    with pikepdf.open(kit.folder / "kit.pdf") as pdf:
        numbers = {page.objgen: number for number, page in enumerate(pdf.pages, 1)}
        _check_outline(pdf, kit, numbers)
        names = _named(pdf.Root.Names.Dests.Names)
        for slug in kit.pieces:
            for number, hole in enumerate(kit.holes(slug), 1):
                page, fit, left, top, *_ = names.pop(f"hole:{slug}:{number}")
                assert str(fit) == "/XYZ"
                told = (numbers[page.objgen], slug)
                (entry,) = (
                    sheet
                    for sheet in kit.sheets
                    if (sheet.facts["page"], sheet.facts["piece"]) == told and sheet.clip.has(hole)
                )
                at = Point(float(left), float(top))
                expected = hole.moved(*entry.origin)
                assert dist((at.x * INCH / 72, at.y * INCH / 72), expected) < NEAR
                assert entry.clip.has(hole)
        assert not [name for name in names if name.startswith("hole:")]


def _named(flat: Iterable[Any]) -> dict[str, Any]:
    parts = list(flat)
    names = [str(name) for name in parts[::2]]
    assert names == sorted(names)  # ISO 32000-1, 7.9.6: the names of a tree are sorted
    return dict(zip(names, parts[1::2], strict=True))


def _check_outline(pdf: pikepdf.Pdf, kit: MadeKit, numbers: dict[Any, int]) -> None:
    """A bookmark a piece, and under it one a sheet."""
    with pdf.open_outline() as outline:
        told = {
            item.title: (_page_number(item, numbers), [child.title for child in item.children])
            for item in outline.root
            if item.children
        }
    expected: dict[str, tuple[int, list[str]]] = {}
    for sheet in kit.sheets:
        name = kit.pieces[sheet.facts["piece"]]["name"]
        expected.setdefault(name, (sheet.facts["page"], []))[1].append(f"{name} {sheet.facts['sheet']}")
    assert told == expected


def _page_number(item: pikepdf.OutlineItem, numbers: dict[Any, int]) -> int:
    destination: Any = item.destination
    return numbers[destination[0].objgen]


def test_pages_are_labelled_by_what_they_are(kit: MadeKit) -> None:
    with pikepdf.open(kit.folder / "kit.pdf") as pdf:
        labels = [page.label for page in pdf.pages]
    for entry in kit.entries:
        facts, label = entry.facts, labels[entry.facts["page"] - 1]
        if entry.is_shared:
            assert re.fullmatch(r"shared S\d+", label)
        elif facts["kind"] == "template":
            assert label == f"{facts['piece']} {facts['sheet']}"
        else:
            assert re.fullmatch(rf"{facts['kind']} \d+", label)


def test_each_piece_in_the_overview_links_to_its_first_sheet(kit: MadeKit) -> None:
    with pikepdf.open(kit.folder / "kit.pdf") as pdf:
        numbers = {page.objgen: number for number, page in enumerate(pdf.pages, 1)}
        overview = next(
            entry.facts["page"] for entry in kit.entries if entry.facts["kind"] == "overview"
        )
        links = [
            (_end_of(link, numbers), [float(side) * INCH / 72 for side in link.Rect])
            for link in pdf.pages[overview - 1].obj.Annots
        ]
    starts = {slug: _start_of(kit, slug) for slug in kit.pieces}
    boxes = {
        slug: Box(*box)
        for slug, (page, start) in starts.items()
        for (number, at), box in links
        if number == page and dist(at, start) < NEAR
    }
    assert len(links) == len(boxes) == len(kit.pieces)
    # All stand at one scale and one place: the drawing of the wall.
    slugs = list(kit.pieces)
    rects = {slug: Box(*kit.pieces[slug]["rect_mm"]) for slug in slugs}
    scale = boxes[slugs[0]].width / rects[slugs[0]].width
    corner = boxes[slugs[0]].corner
    zero = Point(corner.x - scale * rects[slugs[0]].x0, corner.y - scale * rects[slugs[0]].y0)
    for slug in slugs:
        expected = [side * scale for side in rects[slug]]
        assert boxes[slug] == pytest.approx(Box(*expected).moved(*zero), abs=0.05)


def _end_of(link: Any, numbers: dict[Any, int]) -> tuple[int, Point]:
    """Where a link leads to: the page, and the point on it, mm."""
    page, _, left, top, *_ = link.Dest
    return numbers[page.objgen], Point(float(left) * INCH / 72, float(top) * INCH / 72)


def _start_of(kit: MadeKit, slug: str) -> tuple[int, Point]:
    """Where a piece's sheets begin: the top of its first page, or of its part of a page."""
    first = next(entry for entry in kit.sheets if entry.facts["piece"] == slug)
    part = first.clip.moved(*first.origin)
    at = Point(part.x0, part.y1) if first.is_shared else Point(0.0, first.facts["paper_mm"][1])
    return first.facts["page"], at
