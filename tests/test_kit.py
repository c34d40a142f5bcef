"""Whole kits of the shipped layouts, read back from their files and held against sums worked by hand."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from hashlib import sha256
from itertools import pairwise
from math import dist, hypot
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import numpy as np
import pikepdf
import pypdfium2
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from PIL import Image

from templater.errors import LayoutError
from templater.geometry import Box, Point, Size
from templater.layout.model import Layout
from templater.to_files.png import CairoMissingError
from tests.conftest import KitMaker
from tests.kits import LAYOUTS, MadeKit, make_kit
from tests.reading import Ink, Outline, Ring, Run, Stroke, box_of, visible
from tests.strategies import layouts, write_layout

NEAR = 0.01
"""How far ink may be from where it belongs, mm."""
INCH = 25.4
RING_MM = 5.0
ORDER = ("cover", "overview", "template", "spacer", "checklist")


def _inches(*places: tuple[float, float]) -> list[tuple[float, float]]:
    return [(x * INCH, y * INCH) for x, y in places]


# Every hole, worked from the layout by hand: hole height = top edge - drop + rise.
HOLES: dict[str, dict[str, list[tuple[float, float]]]] = {
    "stair-hall": {
        # Bench trio: 16 x 3 + 3 x 2 = 54 in wide over a bench from 30 to 110, middle 70: left edges
        # 43, 62 and 81, middles 51, 70 and 89. Bottoms 34 + 7 = 41, tops 61.
        "tide-chart": _inches((51, 61 - 2.25 + 0.5)),
        "kelp-print": _inches((70 - 6, 61 - 3), (70 + 6, 61 - 3)),
        "gull-study": _inches((89, 61 - 0.625)),
        # Centre on the eye line, 60: top 60 + 4.5.
        "fog-bell": _inches((150, 64.5 - 0.5)),
    },
    "gallery-landing": {
        # Four seasons: 12 x 4 + 2.5 x 3 = 55.5 in over a chest from 40 to 124, middle 82: left edges
        # 54.25, 68.75, 83.25 and 97.75. Bottoms 36 + 7 = 43, tops 59.
        "harbour-in-winter": _inches((60.25, 59 - 2 + 0.375)),
        "harbour-in-spring": _inches((74.75, 59 - 2.125 + 0.375)),
        "harbour-in-summer": _inches((89.25, 59 - 1.875 + 0.375)),
        "harbour-in-autumn": _inches((103.75, 59 - 2 + 0.375)),
        # Signal flags: 16 x 3 + 3 x 2 = 54 in about 82: middles 63, 82 and 101; tops 62 + 12.
        "signal-flags-a-to-h": _inches((63 - 5.5, 74 - 2.5), (63 + 5.5, 74 - 2.5)),
        "signal-flags-i-to-r": _inches((82 - 5.5, 74 - 2.5), (82 + 5.5, 74 - 2.5)),
        "signal-flags-s-to-z": _inches((101 - 5.5, 74 - 2.5), (101 + 5.5, 74 - 2.5)),
        # The log: 8 x 3 + 3 x 2 = 30 in about the eye line: tops 75, 64 and 53.
        "keeper-s-log-page-1": _inches((150, 75 - 0.5)),
        "keeper-s-log-page-2": _inches((150, 64 - 0.5)),
        "keeper-s-log-page-3": _inches((150 + 0.125, 53 - 0.375)),
        "the-great-lens": _inches((190 - 13, 80 - 8 + 0.25), (190 + 13, 80 - 8 + 0.25)),
        "foghorn-section": _inches((221 - 7, 72 - 0.625), (221 + 7, 72 - 0.625)),
        "boat-bell": [],
    },
    "lamp-room-corridor": {
        # Over a cabinet from 400 to 1600 mm: bottom 850 + 180, top 1630; 600 / 150 + 1 = 5 screws.
        "brass-mirror": [(x, 1630 - 45 - 12) for x in (700, 850, 1000, 1150, 1300)],
        "shelf-print": [(2300 - 100, 1700 - 12), (2300 + 100, 1700 - 12)],
        "chart-of-the-sound": [(3700 - 550, 1850 - 90 + 8), (3700 + 550, 1850 - 90 + 8)],
        # A column of 200 + 60 + 200 = 460 mm about 1500: tops 1730 and 1470; middle 4800 + 125.
        "morning-watch": [(4925, 1730 - 14)],
        "night-watch": [(4925 - 5, 1470 - 14)],
        # Right edge 6200 - 400 = 5800, middle 5550.
        "storm-flag": [(5550, 1850 - 60 + 10)],
    },
}


# --- the manifest and the tables ------------------------------------------------------------------


def test_the_manifest_lists_the_pages_of_the_pdf_in_order(kit: MadeKit) -> None:
    facts = [entry.facts for entry in kit.entries]
    assert list(dict.fromkeys(page["page"] for page in facts)) == list(range(1, len(kit.pages) + 1))
    for entry in kit.entries:
        assert entry.page_ink.size == pytest.approx(entry.facts["paper_mm"], abs=0.001)
    kinds = [ORDER.index(page["kind"]) for page in facts]
    assert kinds == sorted(kinds)
    assert set(kinds) - {3} == {0, 1, 2, 4}  # there are spacers only where a group has a gap
    for page in facts:
        is_sheet = page["kind"] == "template"
        assert all(
            (page[key] is not None) == is_sheet for key in ("piece", "sheet", "clip_mm", "origin_mm")
        )
        assert page["scale"] == ([1, 1] if is_sheet else None)


def test_the_pieces_sheets_come_in_the_order_of_the_layout(kit: MadeKit) -> None:
    slugs = list(dict.fromkeys(entry.facts["piece"] for entry in kit.sheets))
    # Pages that pieces share come last.
    shared = {entry.facts["piece"] for entry in kit.sheets if entry.is_shared}
    assert [slug for slug in slugs if slug not in shared] == [s for s in kit.pieces if s not in shared]
    assert set(slugs[len(slugs) - len(shared) :]) == shared
    assert set(slugs) == set(kit.pieces)


def test_the_manifest_hashes_every_other_file(kit: MadeKit) -> None:
    files = {
        path.relative_to(kit.folder).as_posix(): sha256(path.read_bytes()).hexdigest()
        for path in kit.folder.rglob("*")
        if path.is_file() and path.name != "manifest.json"
    }
    assert kit.manifest["files"] == files
    slugs = [piece["slug"] for piece in kit.manifest["pieces"]]
    assert set(files) == {
        "kit.pdf",
        "overview.svg",
        "overview.pdf",
        "overview.png",
        "hooks.csv",
        "layout.yaml",
        *(f"templates/{slug}.svg" for slug in slugs),
    }
    assert (kit.folder / "layout.yaml").read_bytes() == (
        LAYOUTS / f"{kit.folder.name}.yaml"
    ).read_bytes()


@pytest.mark.parametrize("paper", ["a4", "letter", "roll 24 in"])
@pytest.mark.parametrize("stem", HOLES)
def test_every_hole_is_where_the_sums_put_it(shipped_kit: KitMaker, stem: str, paper: str) -> None:
    kit, expected = shipped_kit(stem, paper), HOLES[stem]
    told = {piece["slug"]: piece["holes"] for piece in kit.manifest["pieces"]}
    assert list(told) == list(expected)
    for slug, holes in expected.items():
        assert told[slug] == [pytest.approx(hole, abs=0.001) for hole in holes], slug


def test_the_table_of_hooks_says_what_the_manifest_says(kit: MadeKit) -> None:
    with (kit.folder / "hooks.csv").open(encoding="utf-8", newline="") as stream:
        rows = list(csv.reader(stream))
    assert rows[0] == ["piece", "hole", "x_mm", "y_mm", "hang_x_mm", "hang_y_mm", "drop_mm", "load_n"]
    expected = []
    for piece in kit.manifest["pieces"]:
        top = piece["rect_mm"][3]
        for number, (hole, hang) in enumerate(zip(piece["holes"], piece["hang_points"], strict=True), 1):
            lengths = (f"{length:.3f}" for length in (*hole, *hang, top - hang[1]))
            expected.append([piece["slug"], str(number), *lengths])
    assert [row[:7] for row in rows[1:]] == expected
    assert all(re.fullmatch(r"|\d+\.\d{3}", row[7]) for row in rows[1:])


# Weight x 9.80665 / holes, worked by hand; 1 lb is 0.45359237 kg (international, exact).
@pytest.mark.parametrize(
    ("stem", "slug", "load"),
    [
        ("stair-hall", "tide-chart", "26.689"),  # 6 lb = 2.72155422 kg
        ("stair-hall", "kelp-print", ""),
        ("gallery-landing", "the-great-lens", "62.275"),  # 28 lb = 12.70058636 kg, two holes
        ("lamp-room-corridor", "brass-mirror", "18.633"),  # 9.5 kg, five screws
        ("lamp-room-corridor", "storm-flag", "31.381"),  # 3.2 kg
    ],
)
def test_a_hole_bears_its_share_of_the_weight(
    shipped_kit: KitMaker, stem: str, slug: str, load: str
) -> None:
    lines = (shipped_kit(stem, "a4").folder / "hooks.csv").read_text("utf-8").splitlines()
    rows = [line.split(",") for line in lines if line.startswith(f"{slug},")]
    assert {row[7] for row in rows} == {load}


def test_the_revision_differs_with_paper_and_layout(shipped_kit: KitMaker) -> None:
    names = [
        shipped_kit(stem, paper).manifest["revision"] for stem in HOLES for paper in ("a4", "letter")
    ]
    assert len(set(names)) == len(names)
    # Letters and digits that nobody misreads: no I, O, S, Z, 0 and 1.
    assert all(re.fullmatch("[A-HJ-NP-RT-Y2-9]{6}", name) for name in names)


# --- the ink of the PDF ---------------------------------------------------------------------------


def test_every_hole_is_marked_on_paper_and_nothing_else_is(kit: MadeKit) -> None:
    marked = {(slug, number): 0 for slug in kit.pieces for number in range(len(kit.holes(slug)))}
    for sheet in kit.sheets:
        slug = sheet.facts["piece"]
        holes = kit.holes(slug)
        for ring in sheet.ink.rings:
            centre = ring.centre.moved(-sheet.origin.x, -sheet.origin.y)
            (number,) = (at for at, hole in enumerate(holes) if dist(hole, centre) < NEAR)
            assert ring.radius_mm == pytest.approx(RING_MM, abs=0.001)
            assert not ring.filled
            if sheet.clip.has(centre):
                _check_cross(sheet.ink, ring)
                marked[slug, number] += 1
    assert all(marked.values()), marked


def _check_cross(ink: Ink, ring: Ring) -> None:
    """Two continuous lines cross unbroken at the hole, with arms of 8 mm or more."""
    x, y = ring.centre
    for level in (True, False):
        arms = [stroke for stroke in ink.strokes if _runs_through(stroke, ring.centre, level)]
        (arm,) = arms
        along, start, end = (x, arm.box.x0, arm.box.x1) if level else (y, arm.box.y0, arm.box.y1)
        assert along - start >= 8 - NEAR
        assert end - along >= 8 - NEAR
        assert not arm.dash
        assert 0.13 - 1e-6 <= arm.width_mm <= 0.35


def _runs_through(stroke: Stroke, point: Point, level: bool) -> bool:
    box = stroke.box
    flat = box.height if level else box.width
    return flat < NEAR and box.grown(NEAR).has(point)


def test_a_ring_holds_nothing_but_its_cross(kit: MadeKit) -> None:
    for sheet in kit.sheets:
        for ring in sheet.ink.rings:
            inside = [mark for mark in _marks(sheet.ink) if _enters(mark, ring)]
            assert len(inside) == len([mark for mark in inside if _is_arm(mark, ring)]) <= 2, inside


def _marks(ink: Ink) -> Iterator[Stroke | Outline | Run | Ring]:
    yield from ink.strokes
    yield from ink.outlines
    yield from ink.runs
    yield from ink.rings


def _is_arm(mark: object, ring: Ring) -> bool:
    return isinstance(mark, Stroke) and any(
        _runs_through(mark, ring.centre, level) for level in (True, False)
    )


def _enters(mark: Stroke | Outline | Run | Ring, ring: Ring) -> bool:
    """Whether a mark's visible ink comes within the ring."""
    if mark is ring:
        return False
    reach = ring.radius_mm - ring.width_mm
    if isinstance(mark, Outline):
        ends = [*mark.points, mark.points[0]] if mark.closed or mark.filled else [*mark.points]
        sides = pairwise(ends)
        return any(_distance(ring.centre, *side) < reach + mark.width_mm / 2 for side in sides)
    if isinstance(mark, Stroke):
        seen = visible(mark)
        if seen is None:
            return False
        return _distance(ring.centre, Point(seen.x0, seen.y0), Point(seen.x1, seen.y1)) < reach
    (x, y), box = ring.centre, mark.box
    return hypot(max(box.x0 - x, 0, x - box.x1), max(box.y0 - y, 0, y - box.y1)) < reach


def _distance(point: Point, start: Point, end: Point) -> float:
    """From a point to a straight line between two others."""
    dx, dy = end.x - start.x, end.y - start.y
    square = dx * dx + dy * dy
    part = ((point.x - start.x) * dx + (point.y - start.y) * dy) / square if square else 0.0
    part = min(1.0, max(0.0, part))
    return dist(point, (start.x + part * dx, start.y + part * dy))


def test_each_hole_is_drilled_through_one_sheet_well_away_from_its_seams(kit: MadeKit) -> None:
    for slug in kit.pieces:
        clips = [sheet.clip for sheet in kit.sheets if sheet.facts["piece"] == slug]
        seams = [edge for clip in clips for edge in _inner_edges(clip, clips)]
        for hole in kit.holes(slug):
            assert len([clip for clip in clips if clip.has(hole)]) == 1, (slug, hole)
            away = min((_distance(hole, *seam) for seam in seams), default=12.0)
            assert away >= 12 - 1e-6, (slug, hole)


def _inner_edges(clip: Box, clips: Sequence[Box]) -> Iterator[tuple[Point, Point]]:
    """The edges of a sheet that lie within the piece's paper: a trim line, or the end of a lap."""
    whole = Box.around(clips).grown(-NEAR)
    low, high = clip.corner, Point(clip.x1, clip.y1)
    upper, lower = Point(clip.x0, clip.y1), Point(clip.x1, clip.y0)
    if clip.x0 > whole.x0:
        yield low, upper
    if clip.x1 < whole.x1:
        yield lower, high
    if clip.y0 > whole.y0:
        yield low, lower
    if clip.y1 < whole.y1:
        yield upper, high


def test_the_sheets_of_a_piece_lie_in_courses_that_overlap_by_the_lap(kit: MadeKit) -> None:
    lap = kit.manifest["options"]["lap_mm"]
    for slug in kit.pieces:
        sheets = [sheet for sheet in kit.sheets if sheet.facts["piece"] == slug]
        courses: dict[str, list[Box]] = {}
        for sheet in sheets:
            courses.setdefault(sheet.facts["sheet"].rstrip("0123456789"), []).append(sheet.clip)
        joined = [Box.around(course) for course in courses.values()]
        for course in (*courses.values(), joined):
            _check_laps(course, lap)


def _check_laps(boxes: Sequence[Box], lap: float) -> None:
    """Each box lies right of the one before it or below it, and overlaps it by the lap."""
    for one, next_ in pairwise(boxes):
        rightward = next_.x0 > one.x0 + NEAR and abs(one.x1 - next_.x0 - lap) < NEAR
        downward = next_.y1 < one.y1 - NEAR and abs(next_.y1 - one.y0 - lap) < NEAR
        assert rightward != downward, (one, next_)


def test_the_sheets_of_a_piece_show_all_of_it(kit: MadeKit) -> None:
    for slug, piece in kit.pieces.items():
        x0, y0, x1, y1 = piece["rect_mm"]
        clips = [sheet.clip.grown(1e-6) for sheet in kit.sheets if sheet.facts["piece"] == slug]
        # The sheets' edges part the piece into a mesh; a cell is seen whole or not at all.
        columns = sorted({0.0, x1 - x0, *(x for clip in clips for x in (clip.x0, clip.x1))})
        rows = sorted({0.0, y1 - y0, *(y for clip in clips for y in (clip.y0, clip.y1))})
        for left, right in pairwise(x for x in columns if 0 <= x <= x1 - x0):
            for low, high in pairwise(y for y in rows if 0 <= y <= y1 - y0):
                middle = Point((left + right) / 2, (low + high) / 2)
                assert any(clip.has(middle) for clip in clips), (slug, middle)


def test_a_sheets_clip_lies_within_what_the_printer_reaches(kit: MadeKit) -> None:
    margins = kit.manifest["options"]["margin_mm"]
    for sheet in kit.sheets:
        width, height = sheet.facts["paper_mm"]
        on_page = sheet.clip.moved(*sheet.origin)
        assert on_page.x0 >= margins["left"] - 1e-3
        assert on_page.y0 >= min(margins["bottom"], margins["left"]) - 1e-3
        assert on_page.x1 <= width - margins["right"] + 1e-3
        assert on_page.y1 <= height - margins["top"] + 1e-3


def test_the_outlines_corners_are_at_their_places(kit: MadeKit) -> None:
    found = set()
    for sheet in kit.sheets:
        slug = sheet.facts["piece"]
        x0, y0, x1, y1 = kit.pieces[slug]["rect_mm"]
        for corner in ((0, 0), (x1 - x0, 0), (0, y1 - y0), (x1 - x0, y1 - y0)):
            at = Point(*corner).moved(*sheet.origin)
            meeting = [
                stroke
                for stroke in sheet.ink.strokes
                if min(dist(stroke.start, at), dist(stroke.end, at)) < NEAR
            ]
            level = [stroke for stroke in meeting if stroke.box.height < NEAR]
            upright = [stroke for stroke in meeting if stroke.box.width < NEAR]
            if level and upright and sheet.clip.grown(NEAR).has(Point(*corner)):
                found.add((slug, corner))
    assert len(found) == 4 * len(kit.pieces)


def test_every_sheet_has_rulers_of_100_mm_and_4_in_both_ways(kit: MadeKit) -> None:
    for sheet in kit.sheets:
        for level in (True, False):
            rulers = [
                ticks
                for line in sheet.page_ink.strokes
                if (ticks := _ruler_ticks(sheet.page_ink, line, level))
            ]
            # 100 mm by tens on one side of the line; 4 in = 101.6 mm by halves on the other.
            tens = [pytest.approx(10 * at, abs=0.001) for at in range(11)]
            halves = [pytest.approx(12.7 * at, abs=0.001) for at in range(9)]
            assert all(ruler in ([tens, halves], [halves, tens]) for ruler in rulers), sheet.facts
            # On a page of a roll that is cut apart the strips of a template have rulers of their own.
            assert len(rulers) == 1 or (rulers and sheet.is_shared), (sheet.facts, level)
        assert {"100 mm", "4 in"} <= {run.text for run in sheet.page_ink.runs}


def _ruler_ticks(ink: Ink, line: Stroke, level: bool) -> list[list[float]]:
    """How far along a line of 4 in ticks stand, on either side of it; nothing for another line."""
    box = line.box if level else _swapped(line.box)
    if abs(line.length_mm - 101.6) > 0.001 or box.height > 0.001 or line.clip is not None:
        return []
    sides: list[list[float]] = [[], []]
    for stroke in ink.strokes:
        tick = stroke.box if level else _swapped(stroke.box)
        if tick.width < 0.001 and 0 < tick.height < 5 and box.x0 - 1 < tick.x0 < box.x1 + 1:
            if abs(tick.y0 - box.y0) < 0.001:
                sides[0].append(tick.x0 - box.x0)
            if abs(tick.y1 - box.y0) < 0.001:
                sides[1].append(tick.x0 - box.x0)
    return [sorted(side) for side in sides] if all(sides) else []


def _swapped(box: Box) -> Box:
    return Box(box.y0, box.x0, box.y1, box.x1)


# --- words ----------------------------------------------------------------------------------------


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
    for at, run in enumerate(ink.runs):
        room = run.box.grown(-0.1)
        for other in ink.runs[at + 1 :]:
            if room.meets(other.box.grown(-0.1)):
                yield run, other.text
        for start, end in _lines(ink):
            line = box_of((start, end)).grown(1e-6)
            if room.meets(line) and (min(line.size) < 0.001 or room.holds(line)):
                yield run, f"line {start} {end}"


def _lines(ink: Ink) -> Iterator[tuple[Point, Point]]:
    """The visible stretch of every straight line."""
    for stroke in ink.strokes:
        seen = visible(stroke)
        if seen is not None:
            yield Point(seen.x0, seen.y0), Point(seen.x1, seen.y1)
    for outline in ink.outlines:
        ends = [*outline.points, outline.points[0]] if outline.closed else [*outline.points]
        yield from pairwise(ends)


# --- the SVG templates ----------------------------------------------------------------------------


def test_the_svg_templates_say_what_the_manifest_says(kit: MadeKit) -> None:
    for slug, piece in kit.pieces.items():
        reading = kit.template(slug)
        assert (reading.width_mm, reading.height_mm) == pytest.approx(reading.view.size, abs=0.001)
        centres = sorted(ring.centre for ring in reading.ink.rings)
        assert centres == [pytest.approx(hole, abs=NEAR) for hole in sorted(kit.holes(slug))]
        for ring in reading.ink.rings:
            assert ring.radius_mm == pytest.approx(RING_MM, abs=0.001)
            _check_cross(reading.ink, ring)
        words = reading.ink.text
        assert f"rev {kit.manifest['revision']}" in words
        assert piece["name"].split()[0] in words
        x0, y0, x1, y1 = piece["rect_mm"]
        assert reading.view.holds(Box(0, 0, x1 - x0, y1 - y0))
        ends = {end for stroke in reading.ink.strokes for end in (stroke.start, stroke.end)}
        for corner in ((0, 0), (x1 - x0, 0), (0, y1 - y0), (x1 - x0, y1 - y0)):
            assert any(dist(corner, end) < NEAR for end in ends)


# --- what a PDF reader may jump to ----------------------------------------------------------------


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


# --- ink as two engines see it --------------------------------------------------------------------

DOTS_PER_MM = 200 / INCH


@pytest.mark.parametrize(
    ("stem", "paper"),
    [
        ("stair-hall", "a4"),
        ("stair-hall", "letter"),
        ("gallery-landing", "letter"),
        ("lamp-room-corridor", "a4"),
    ],
)
def test_two_engines_put_the_ink_of_every_hole_where_the_plan_has_it(
    shipped_kit: KitMaker, stem: str, paper: str
) -> None:
    kit = shipped_kit(stem, paper)
    document = pypdfium2.PdfDocument(kit.folder / "kit.pdf")
    for sheet in kit.sheets:
        slug = sheet.facts["piece"]
        for hole in kit.holes(slug):
            if not sheet.clip.has(hole):
                continue
            by_pdf = _ink_of_page(document[sheet.facts["page"] - 1], hole.moved(*sheet.origin))
            by_svg = _ink_of_template(kit, slug, hole)
            # Half a pixel at 200 dots an inch, each against the plan and against the other.
            assert max(map(abs, by_pdf)) < 0.5, (slug, by_pdf)
            assert max(map(abs, by_svg)) < 0.5, (slug, by_svg)
            assert dist(by_pdf, by_svg) < 0.5
    document.close()


WINDOW_MM = 16.0


def _ink_of_page(page: Any, at: Point) -> tuple[float, float]:
    """How far the cross on a PDF page is from where it belongs, pixels right and down."""
    width, height = (side * INCH / 72 for side in page.get_size())
    picture = page.render(scale=200 / 72, grayscale=True)
    darkness = 255.0 - np.asarray(picture.to_pil(), dtype=float)
    # The engine makes whole pixels of the page's size, so the scale is taken from its picture.
    across, down = darkness.shape[1] / width, darkness.shape[0] / height
    assert (across, down) == pytest.approx((DOTS_PER_MM, DOTS_PER_MM), rel=1e-3)
    return _off_centre(darkness, at.x * across, (height - at.y) * down)


def _ink_of_template(kit: MadeKit, slug: str, hole: Point) -> tuple[float, float]:
    """The same for the SVG template: a window round the hole, without the words, which take time."""
    import cairosvg

    text = (kit.folder / "templates" / f"{slug}.svg").read_text("utf-8")
    text = re.sub(r"<g aria-label.*?</g>", "", text)
    _, y0, _, y1 = kit.pieces[slug]["rect_mm"]
    left, upper = hole.x - WINDOW_MM, (y1 - y0 - hole.y) - WINDOW_MM
    side = 2 * WINDOW_MM
    text = re.sub(r'viewBox="[^"]*"', f'viewBox="{left} {upper} {side} {side}"', text, count=1)
    text = re.sub(r'(\s(?:width|height))="[\d.]+mm"', rf'\1="{side}mm"', text, count=2)
    png = cairosvg.svg2png(bytestring=text.encode(), dpi=96, scale=200 / 96, background_color="white")
    darkness = 255.0 - np.asarray(Image.open(io.BytesIO(png)).convert("L"), dtype=float)
    middle = WINDOW_MM * DOTS_PER_MM
    assert darkness.shape == (pytest.approx(2 * middle, abs=1), pytest.approx(2 * middle, abs=1))
    return _off_centre(darkness, middle, middle)


def _off_centre(darkness: Any, x: float, y: float) -> tuple[float, float]:
    """How far a cross's arms lie from the pixel (x, y), by the weight of their ink inside the ring."""
    near, far = 1.0 * DOTS_PER_MM, 4.0 * DOTS_PER_MM
    columns = np.arange(round(x - near), round(x + near) + 1)
    rows = np.arange(round(y - near), round(y + near) + 1)
    above = darkness[round(y - far) : round(y - near), columns[0] : columns[-1] + 1].sum(axis=0)
    left = darkness[rows[0] : rows[-1] + 1, round(x - far) : round(x - near)].sum(axis=1)
    assert above.sum() > 0
    assert left.sum() > 0
    centre_x = float((above * (columns + 0.5)).sum() / above.sum())
    centre_y = float((left * (rows + 0.5)).sum() / left.sum())
    return centre_x - x, centre_y - y


# --- any layout -----------------------------------------------------------------------------------


@pytest.fixture(scope="module")
def no_picture() -> Iterator[None]:
    """Kits as on a machine without cairo: the picture would take most of the time."""

    def fail(_svg: str) -> bytes:
        raise CairoMissingError("no PNG")

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("templater.to_files.kit.png_bytes", fail)
        yield


@given(
    layout=layouts(most_blocks=2, largest_mm=400),
    paper=st.sampled_from(["a4", "letter"]),
    wall=st.sampled_from([1.0, 1.0, 1.0, 0.8]),
)
@settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_any_layout_gives_a_clear_error_or_a_kit_that_agrees_with_itself(
    no_picture: None, layout: Layout, paper: str, wall: float
) -> None:
    size = Size(layout.wall.size.width * wall, layout.wall.size.height)
    layout = replace(layout, wall=replace(layout.wall, size=size))
    with TemporaryDirectory() as place:
        path = Path(place) / "hall.yaml"
        path.write_text(write_layout(layout), encoding="utf-8")
        try:
            kit = make_kit(path, Path(place) / "kit", paper)
        except LayoutError as error:
            unclear = [fault for fault in error.faults if not (fault.place and fault.hint)]
            assert (error.exit_code, unclear) == (3, [])  # noqa: PT017  # an error is one of two ways
            return
        with (kit.folder / "hooks.csv").open(encoding="utf-8", newline="") as stream:
            rows = list(csv.DictReader(stream))
        for slug, piece in kit.pieces.items():
            holes = kit.holes(slug)
            x0, y0, *_ = piece["rect_mm"]
            by_csv = [
                Point(float(row["x_mm"]) - x0, float(row["y_mm"]) - y0)
                for row in rows
                if row["piece"] == slug
            ]
            on_sheets = [
                ring.centre.moved(-sheet.origin.x, -sheet.origin.y)
                for sheet in kit.sheets
                if sheet.facts["piece"] == slug
                for ring in sheet.ink.rings
                if abs(ring.radius_mm - RING_MM) < NEAR
            ]
            in_svg = [ring.centre for ring in kit.template(slug).ink.rings]
            assert len(by_csv) == len(in_svg) == len(holes)
            for others in (by_csv, on_sheets, in_svg):
                assert all(any(dist(hole, other) < NEAR for other in others) for hole in holes)
                assert all(any(dist(hole, other) < NEAR for hole in holes) for other in others)
