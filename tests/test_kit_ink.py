"""The ink of whole kits, read back: every hole, outline, seam and ruler of the PDF and the SVGs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import dist, hypot

import pytest

from templater.geometry import Box, Point
from tests.kits import MadeKit
from tests.reading import Ink, Outline, Ring, Run, Stroke, visible

NEAR = 0.01
"""How far ink may be from where it belongs, mm."""
RING_MM = 5.0


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
