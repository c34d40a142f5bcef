"""The words of whole kits: what every page says, how large, and clear of all else."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

import pytest

from templater.geometry import Box, Point
from tests.conftest import OWN, KitMaker
from tests.kits import MadeKit
from tests.reading import Ink, Run, box_of, visible


def test_every_page_bears_the_revision_and_its_number(kit: MadeKit) -> None:
    revision, count = kit.manifest["revision"], len(kit.pages)
    for number, ink in enumerate(kit.pages, 1):
        heights = [run.capital_mm for run in ink.runs if run.text == f"rev {revision}"]
        assert heights, number
        assert max(heights) >= 5 - 0.001
        numbers = [run.text for run in ink.runs if re.fullmatch(r"page \d+ of \d+", run.text)]
        assert numbers == [f"page {number} of {count}"]


def test_every_sheet_says_what_it_is(kit: MadeKit) -> None:
    for sheet in kit.sheets:
        words = [run.text for run in sheet.ink.runs]
        assert sheet.facts["sheet"] in words
        assert "UP" in words
        assert "Print at 100 %, actual size." in [run.text for run in sheet.page_ink.runs]
        title = [run for run in sheet.ink.runs if run.text == sheet.facts["sheet"]]
        assert max(run.capital_mm for run in title) >= 5


@pytest.mark.parametrize("slug", ["survey-of-the-sound", "tide-table"])
def test_that_a_piece_has_no_hole_is_said_once_on_its_template(shipped_kit: KitMaker, slug: str) -> None:
    kit = shipped_kit("hardware-sampler", OWN)
    said = [
        run.text
        for sheet in kit.sheets
        if sheet.facts["piece"] == slug
        for run in sheet.ink.runs
        if "no hole" in run.text.lower()
    ]
    assert said == ["NO HOLE"]


def test_no_words_ask_for_what_only_the_writer_of_the_layout_can_do(kit: MadeKit) -> None:
    for number, ink in enumerate(kit.pages, 1):
        asking = [run.text for run in ink.runs if re.search(r"templater|layout|add '", run.text)]
        assert not asking, number


def test_no_words_are_smaller_than_they_may_be(kit: MadeKit) -> None:
    # ISO 3098 has the heights 2.5, 3.5, 5, 7, 10 mm among others; nothing here is smaller than 2.5.
    for ink in kit.pages:
        assert min(run.capital_mm for run in ink.runs) >= 2.5 - 0.001


def test_no_words_stand_where_a_printer_cannot_print(kit: MadeKit) -> None:
    print_test = next(ink for ink in kit.pages if "Print test" in [run.text for run in ink.runs])
    for number, ink in enumerate(kit.pages, 1):
        page = Box(0, 0, *ink.size).grown(-6.35)
        outside = [run.text for run in ink.runs if not page.holds(_seen(run), slack=0.01)]
        if ink is print_test:  # its edge rulers are there to show what the printer clips
            outside = [text for text in outside if not re.fullmatch(r"\d{1,2}", text)]
        assert not outside, (number, outside)


def _seen(run: Run) -> Box:
    return run.box if run.clip is None else run.box.common(run.clip)


def test_no_words_stand_on_others_or_on_a_line(kit: MadeKit) -> None:
    clashes = [
        (number, run.text, other)
        for number, ink in enumerate(kit.pages, 1)
        for run, other in _clashes(ink)
    ]
    assert not clashes


def _clashes(ink: Ink) -> Iterator[tuple[Run, str]]:
    """Every line of words whose capitals meet other words, or are crossed by a line."""
    rooms = [run.box.grown(-0.1) for run in ink.runs]
    lines = [box_of(ends).grown(1e-6) for ends in _lines(ink)]
    for at, (run, room) in enumerate(zip(ink.runs, rooms, strict=True)):
        for other, taken in zip(ink.runs[at + 1 :], rooms[at + 1 :], strict=True):
            if room.meets(taken):
                yield run, other.text
        for line in lines:
            if room.meets(line) and (min(line.size) < 0.001 or room.holds(line)):
                yield run, f"line {line}"


def _lines(ink: Ink) -> Iterator[tuple[Point, Point]]:
    """The visible stretch of every straight line."""
    for stroke in ink.strokes:
        seen = visible(stroke)
        if seen is not None:
            yield Point(seen.x0, seen.y0), Point(seen.x1, seen.y1)
    for outline in ink.outlines:
        ends = [*outline.points, outline.points[0]] if outline.closed else [*outline.points]
        yield from pairwise(ends)
