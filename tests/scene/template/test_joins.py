from __future__ import annotations

import pytest
from hypothesis import given, settings

from templater.drawing import Item, Line, Polyline, Words
from templater.geometry import Box, Point, Size
from templater.lettering import words_box
from templater.printing.model import Seam
from tests.scene.templates import Drawn, draw, placed, templates

BIG = placed(Size(400, 500), [(200.0, 450.0)])


def is_on(seam: Seam, point: Point) -> bool:
    xs, ys = sorted((seam.start.x, seam.end.x)), sorted((seam.start.y, seam.end.y))
    return xs[0] <= point.x <= xs[1] and ys[0] <= point.y <= ys[1]


def marks_on(seam: Seam, items: list[Item]) -> set[tuple[float, float]]:
    """Where half diamonds stand on a seam, rounded to a millionth of a millimetre."""
    found = set()
    for item in items:
        if isinstance(item, Polyline) and len(item.points) == 3 and not item.closed:
            first, _, last = item.points
            middle = Point((first.x + last.x) / 2, (first.y + last.y) / 2)
            # Each half stands with its open side on the seam.
            if is_on(seam, middle) and is_on(seam, first) and is_on(seam, last):
                found.add((round(middle.x, 6), round(middle.y, 6)))
    return found


def halves(drawn: Drawn, seam: Seam) -> tuple[set[tuple[float, float]], set[tuple[float, float]]]:
    names = [tile.name for tile in drawn.sheets]
    under, over = names.index(seam.under), names.index(seam.over)
    return marks_on(seam, drawn.own(under)), marks_on(seam, drawn.own(over))


def seams_on(drawn: Drawn) -> list[Seam]:
    """The seams, as far as they lie on the piece."""
    outline = Box(0, 0, *drawn.piece.size)
    return [
        Seam(seam.under, seam.over, *(_pull_in(point, outline) for point in (seam.start, seam.end)))
        for seam in drawn.tiling.seams
    ]


def length_of(seam: Seam) -> float:
    return abs(seam.end.x - seam.start.x) + abs(seam.end.y - seam.start.y)


def _pull_in(point: Point, box: Box) -> Point:
    return Point(min(max(point.x, box.x0), box.x1), min(max(point.y, box.y0), box.y1))


@settings(max_examples=40, deadline=None)
@given(templates())
def test_marks_meet_across_every_seam(drawn: Drawn) -> None:
    for seam in drawn.tiling.seams:
        under, over = halves(drawn, seam)
        assert under == over


@pytest.mark.parametrize("paper", ["a5", "a4", "letter"])
def test_a_long_seam_has_two_marks_wide_apart(paper: str) -> None:
    drawn = draw(BIG, paper)
    for seam in seams_on(drawn):
        length = length_of(seam)
        if length > 100:
            (x0, y0), (x1, y1) = sorted(halves(drawn, seam)[0])
            assert abs(x1 - x0) + abs(y1 - y0) > length * 0.35


def test_each_mark_names_the_sheet_on_the_other_side() -> None:
    drawn = draw(BIG, "letter")
    for seam in drawn.tiling.seams:
        names = [tile.name for tile in drawn.sheets]
        for here, there in ((seam.under, seam.over), (seam.over, seam.under)):
            texts = [words.text for words in drawn.words(names.index(here))]
            assert texts.count(f"to {there}") == len(halves(drawn, seam)[0])


def test_the_sheet_on_top_has_an_unbroken_line_to_cut_on_and_the_other_a_dashed_one() -> None:
    drawn = draw(BIG, "letter")
    names = [tile.name for tile in drawn.sheets]
    for seam in seams_on(drawn):
        for sheet, dashed in ((seam.under, True), (seam.over, False)):
            ends = [
                bool(item.dash)
                for item in drawn.own(names.index(sheet))
                if isinstance(item, Line) and (item.start, item.end) == (seam.start, seam.end)
            ]
            assert ends == [dashed]


def test_the_lap_of_a_long_seam_says_what_lies_on_it_and_the_trim_line_what_to_do() -> None:
    drawn = draw(BIG, "a4")
    names = [tile.name for tile in drawn.sheets]
    long = [seam for seam in seams_on(drawn) if length_of(seam) > 100]
    assert long
    for seam in long:
        under = drawn.boxed_words(names.index(seam.under))
        over = [text for text, _ in drawn.boxed_words(names.index(seam.over))]
        on_lap = [box for text, box in under if text == f"lap: {seam.over} lies on this"]
        tile = drawn.sheets[names.index(seam.under)]
        assert on_lap
        assert all(not box.meets(tile.keep) and tile.clip.holds(box) for box in on_lap)
        assert f"trim on this line, lay over {seam.under}" in over


def test_no_lap_is_spoken_of_where_there_is_none() -> None:
    drawn = draw(BIG, "a4", lap=0.0)
    texts = [words.text for index in range(len(drawn.sheets)) for words in drawn.words(index)]
    assert not [text for text in texts if text.startswith("lap:")]


def test_a_mark_on_a_centre_line_interrupts_it() -> None:
    # 400 wide: the upright centre line runs at x = 200, a few mm beside a seam of Letter.
    drawn = draw(BIG, "letter")
    centre = [line.box for line in drawn.lines if line.start.x == line.end.x == 200.0]
    for index in range(len(drawn.sheets)):
        names = [
            words_box(item)
            for item in drawn.drawing.furniture[index]
            if isinstance(item, Words) and item.text.startswith("to ")
        ]
        assert not [1 for box in names for line in centre if box.meets(line.grown(0.1))]


@pytest.mark.parametrize("off", [-6.5, -3.0, 0.0, 0.4, 3.0, 6.5])
def test_a_level_seam_along_the_datum_has_its_marks_and_leaves_the_datum_whole(off: float) -> None:
    seams = [seam for seam in draw(BIG, "a4").tiling.seams if seam.start.y == seam.end.y]
    corner_y = BIG.box.y0
    datum = seams[0].start.y + off
    drawn = draw(BIG, "a4", datum_mm=corner_y + datum)
    assert drawn.tiling.seams == draw(BIG, "a4").tiling.seams
    assert seams
    for seam in seams:
        under, over = halves(drawn, seam)
        assert len(under) == 2
        assert under == over
    # 400 wide: the datum is one line, broken by nothing.
    lines = [line for line in drawn.lines if len(line.dash) == 6]  # two dots: the datum alone
    assert [(line.start.x, line.end.x) for line in lines] == [(0.0, 400.0)]
    assert lines[0].start.y == lines[0].end.y == pytest.approx(datum)


def test_no_name_of_a_mark_stands_on_a_datum_along_its_seam() -> None:
    # The seam of Letter at its own height: the datum runs 4 mm above it, where names begin 3.4 mm off.
    level = next(seam for seam in draw(BIG, "letter").tiling.seams if seam.start.y == seam.end.y)
    datum = level.start.y + 4.0
    drawn = draw(BIG, "letter", datum_mm=BIG.box.y0 + datum)
    line = Box(0.0, datum, 400.0, datum).grown(0.1)
    names = [
        box
        for index in range(len(drawn.sheets))
        for text, box in drawn.boxed_words(index)
        if text.startswith("to ")
    ]
    assert names
    assert not any(box.meets(line) for box in names)
