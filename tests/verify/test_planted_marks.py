"""Marks on a page that are missing, out of place or too many."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

import pikepdf
import pytest

from tests.kits import MadeKit
from tests.verify.faults import faults, page_of, the_fault
from tests.verify.planting import DRAWS_NOTHING, POINTS_PER_MM, Copy, is_level, list_half_diamonds


def _without(is_meant: Callable[[list[float], list[float]], bool]) -> Callable[..., Any]:
    """Leave out the straight lines that are meant, by their ends in points."""
    start: list[float] = []
    end: list[float] = []

    def act(operands: list[Any], operator: str) -> tuple[list[Any], str]:
        if operator == "m":
            start[:] = map(float, operands)
            end.clear()
        elif operator == "l":
            end[:] = map(float, operands)
        elif operator == "S" and len(end) == 2 and is_meant(start, end):
            return [], "n"
        return operands, operator

    return act


def test_a_ring_without_its_cross(copy: Copy) -> None:
    entry = copy.sheets(hole=True)[0]
    copy.rewrite(entry["page"], _without(lambda start, end: is_level(start, end, 20)))
    messages = faults(copy)
    assert all(
        re.fullmatch(re.escape(page_of(entry)) + r"hole \d has a ring and no cross", message)
        for message in messages
    )


def test_a_cross_without_its_ring(copy: Copy) -> None:
    entry = copy.sheets(hole=True)[0]
    with copy.opened_page(entry["page"]) as (_, drawn):
        names = [str(each.operator) for each in drawn]
        for at in range(len(drawn)):
            if names[at : at + 2] == ["c", "S"]:
                drawn[at + 1] = DRAWS_NOTHING
    assert all("has a cross and no ring" in message for message in faults(copy))


def test_a_hole_too_many(copy: Copy) -> None:
    entry = copy.sheets(hole=True)[0]
    (x, y), (x0, y0, _, _) = entry["origin_mm"], entry["clip_mm"]
    at = [(x + x0 + 30) * POINTS_PER_MM, (y + y0 + 40) * POINTS_PER_MM]
    arm = 10 * POINTS_PER_MM
    lines = (
        f"q 0.7 w {at[0] - arm} {at[1]} m {at[0] + arm} {at[1]} l S"
        f" {at[0]} {at[1] - arm} m {at[0]} {at[1] + arm} l S Q"
    )
    with copy.opened_pdf() as document:
        document.pages[entry["page"] - 1].contents_add(document.make_stream(lines.encode()))
    assert "a hole is marked where the plan has none" in the_fault(copy)


def test_a_line_of_the_outline_missing(copy: Copy) -> None:
    slug = copy.sheets(hole=True)[0]["piece"]
    _, y0, _, y1 = next(p["rect_mm"] for p in copy.manifest["pieces"] if p["slug"] == slug)
    entry = copy.sheets(hole=True)[0]
    upper = (entry["origin_mm"][1] + y1 - y0) * POINTS_PER_MM
    act = _without(lambda start, end: abs(start[1] - upper) + abs(end[1] - upper) < 0.01)
    copy.rewrite(entry["page"], act)
    assert re.match(
        re.escape(page_of(entry)) + r"the outline's upper edge is not drawn from \d+\.\d mm on",
        the_fault(copy),
    )


def _seam_sheet(copy: Copy) -> dict[str, Any]:
    """A sheet that joins others."""
    names = [entry["piece"] for entry in copy.manifest["pages"]]
    return next(entry for entry in copy.sheets(hole=False) if names.count(entry["piece"]) > 1)


def test_the_line_of_a_seam_missing(copy: Copy) -> None:
    entry = _seam_sheet(copy)
    x, y = (place * POINTS_PER_MM for place in entry["origin_mm"])
    sides = [side * POINTS_PER_MM for side in entry["clip_mm"]]

    def is_seam(start: list[float], end: list[float]) -> bool:
        across = abs(start[0] - end[0]) < 0.001 and abs(start[0] - x - sides[0]) < 0.01
        up = abs(start[1] - end[1]) < 0.001 and abs(start[1] - y - sides[3]) < 0.01
        return across or up

    copy.rewrite(entry["page"], _without(is_seam))
    told = the_fault(copy)
    assert re.fullmatch(
        re.escape(page_of(entry)) + r"the line of its seam with [A-Z]\d is not drawn", told
    ), told


def test_half_a_join_mark_out_of_place(copy: Copy) -> None:
    entry = _seam_sheet(copy)
    with copy.opened_page(entry["page"]) as (_, drawn):
        for at in list_half_diamonds(drawn):
            for corner in range(at, at + 3):
                moved = [float(each) + 0.1 * POINTS_PER_MM for each in drawn[corner].operands]
                drawn[corner] = pikepdf.ContentStreamInstruction(moved, drawn[corner].operator)
    # Half a diamond that has left its line is no join mark any more.
    pattern = (
        rf"kit\.pdf: {entry['piece']}: the join marks of [A-Z]\d and [A-Z]\d"
        r" differ in number: (\d and 0|0 and \d)"
    )
    messages = faults(copy)
    assert all(re.fullmatch(pattern, message) for message in messages), messages


def test_the_datum_out_of_place(copy: Copy) -> None:
    entry = copy.sheets(hole=True)[0]
    dashes: list[int] = [0]

    def act(operands: list[Any], operator: str) -> tuple[list[Any], str]:
        if operator == "d":
            dashes[0] = len(operands[0])
        elif operator in ("q", "Q"):
            dashes[0] = 0
        if operator in ("m", "l") and dashes[0] == 6:
            return [operands[0], float(operands[1]) + 0.1 * POINTS_PER_MM], operator
        return operands, operator

    copy.rewrite(entry["page"], act)
    assert the_fault(copy) == f"{page_of(entry)}the datum is 0.100 mm off"


def test_the_rulers_of_the_print_test_too_short(copy: Copy, hall: MadeKit) -> None:
    (page,) = (
        number for number, ink in enumerate(hall.pages, 1) if "Print test" in [r.text for r in ink.runs]
    )
    copy.transform(page, 0.999, 0, 0, 0.999, 0, 0)
    for message in faults(copy):
        # 180 mm and 240 mm x 0.999, which stand on the page of a Letter kit.
        assert re.search(r"the long ruler (across|up) measures (179\.820|239\.760) mm", message)


@pytest.mark.parametrize("drawn", ["/Im1 Do", "0 0 m 9 9 9 9 9 9 c S", "(never ended"])
def test_what_cannot_be_followed_is_not_let_through(copy: Copy, drawn: str) -> None:
    entry = copy.sheets(hole=True)[0]
    with copy.opened_pdf() as document:
        document.pages[entry["page"] - 1].contents_add(document.make_stream(drawn.encode()))
    assert the_fault(copy).startswith(f"{page_of(entry)}it holds what cannot be followed")
