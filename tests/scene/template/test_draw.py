from __future__ import annotations

import re
from dataclasses import replace
from itertools import combinations

import pytest
from hypothesis import given, settings

from templater.drawing import Circle, Line, Words
from templater.geometry import Box, Point, Size
from templater.layout.model import Hanger
from templater.lengths import Unit
from templater.lettering import words_box
from templater.placement.model import PlacedPiece
from templater.scene.template.draw import template_extent
from tests.scene.templates import (
    NEIGHBOURS,
    REVISION,
    TITLE,
    Drawn,
    draw,
    each_sheet,
    hung_by,
    placed,
    templates,
    tide_chart,
)

MANY = settings(max_examples=60, deadline=None)


@MANY
@given(templates())
def test_no_words_touch_other_words(drawn: Drawn) -> None:
    for index, tile in each_sheet(drawn):
        boxed = drawn.boxed_words(index)
        touching = [(a, b, tile.name) for (a, p), (b, q) in combinations(boxed, 2) if p.meets(q)]
        assert touching == []


@MANY
@given(templates())
def test_no_line_runs_through_words(drawn: Drawn) -> None:
    for index, tile in each_sheet(drawn):
        crossed = [
            (text, line, tile.name)
            for text, box in drawn.boxed_words(index)
            for line in drawn.lines
            if box.meets(line.box.grown(0.1))
        ]
        assert crossed == []


@MANY
@given(templates())
def test_a_line_is_named_on_sheets_that_show_it_and_nearest_to_it(drawn: Drawn) -> None:
    width, height = drawn.piece.size
    datum = 60 * 25.4 - drawn.piece.box.y0
    level = {f"LEVEL LINE {mark.hang.y}": mark.hang.y for mark in drawn.piece.template_marks()}
    level["half height"] = height / 2
    if 0 <= datum <= height:
        level["DATUM"] = datum
    for index, tile in each_sheet(drawn):
        for text, box in drawn.boxed_words(index):
            name = next(
                (key for key in ("LEVEL LINE", "DATUM", "half height") if text.startswith(key)), ""
            )
            own = [y for key, y in level.items() if key.startswith(name)] if name else []
            if name:
                assert any(tile.keep.y0 <= y <= tile.keep.y1 for y in own), (text, tile.name)
            if text in {"LEVEL LINE", "DATUM", "half height", "DATUM and half height"}:
                near = min(level.values(), key=lambda y: abs(box.centre.y - y))
                assert min(abs(near - y) for y in own) < 0.5, (text, tile.name)
            if text.startswith("CENTRE LINE"):
                assert tile.keep.x0 <= width / 2 <= tile.keep.x1, (text, tile.name)


@MANY
@given(templates())
def test_a_ring_holds_nothing_but_its_cross(drawn: Drawn) -> None:
    for index, _ in each_sheet(drawn):
        for number, hole in enumerate(drawn.holes, 1):
            if number in drawn.tiling.near_seam:
                continue  # a seam may have to run through it; the sheet says so
            ring = Box(*hole, *hole).grown(5.0)
            items = [
                item
                for item in drawn.own(index)
                if (words_box(item) if isinstance(item, Words) else item.box).grown(0.01).meets(ring)
            ]
            assert items == []


@MANY
@given(templates())
def test_everything_a_sheet_owns_can_be_printed(drawn: Drawn) -> None:
    for index, tile in each_sheet(drawn):
        for item in drawn.own(index):
            box = words_box(item) if isinstance(item, Words) else item.box
            assert tile.clip.holds(box, slack=0.01)


@MANY
@given(templates())
def test_a_label_stands_on_one_sheet_and_survives_the_joining(drawn: Drawn) -> None:
    for index, tile in each_sheet(drawn):
        boxes = [words_box(item) for item in drawn.drawing.labels[index] if isinstance(item, Words)]
        assert all(tile.keep.holds(box) for box in boxes)


@MANY
@given(templates())
def test_every_sheet_can_be_told_when_it_lies_alone(drawn: Drawn) -> None:
    for index, tile in each_sheet(drawn):
        words = drawn.words(index)
        texts = [item.text for item in words]
        assert tile.name in texts
        assert f"page {3 + index} of 99" in texts
        assert "UP" in texts
        assert any(item.text == f"rev {REVISION}" and item.height_mm >= 5 for item in words)
        assert any(item.text.startswith("Tide chart") for item in words)
        assert any(item.text.startswith(TITLE[:16]) for item in words)


@MANY
@given(templates())
def test_every_sheet_has_a_ruler_each_way(drawn: Drawn) -> None:
    for index, _ in each_sheet(drawn):
        figures = [item for item in drawn.words(index) if re.fullmatch(r"(100|50) mm", item.text)]
        assert sorted(item.turned for item in figures) == [False, True]


@MANY
@given(templates())
def test_every_hole_has_its_number_beside_it(drawn: Drawn) -> None:
    for number, hole in enumerate(drawn.holes, 1):
        near = Box(*hole, *hole).grown(20.0)
        found = [
            item
            for items in drawn.drawing.labels
            for item in items
            if isinstance(item, Words) and item.text == str(number) and near.holds(words_box(item))
        ]
        assert len(found) == 1 or says_more(drawn)


@MANY
@given(templates())
def test_every_hole_is_measured_somewhere_or_the_sheets_own_up(drawn: Drawn) -> None:
    text = drawn.label_text()
    count = len(drawn.holes)
    for number in range(1, count + 1):
        own = f"HOLE {number} of {count} " in text
        in_key = re.search(rf"(^| ){number}:  ", text) is not None
        assert own or in_key or says_more(drawn)


@MANY
@given(templates())
def test_the_holes_are_drawn_where_the_piece_has_them(drawn: Drawn) -> None:
    rings = [item.centre for item in drawn.drawing.lines if isinstance(item, Circle)]
    assert rings == drawn.holes


def says_more(drawn: Drawn) -> bool:
    """Whether every sheet says that something is only on the overview."""
    return all(
        "see the overview" in " ".join(item.text for item in drawn.words(index))
        for index, _ in each_sheet(drawn)
    )


PLENTY = [
    ("a5", tide_chart()),
    ("letter", tide_chart()),
    ("a4", placed(Size(900, 600), [(200.0, 520.0), (700.0, 520.0)], neighbours=NEIGHBOURS)),
    ("a5", placed(Size(120, 600), [(30.0, 570.0), (90.0, 570.0)])),
    ("a4", hung_by(Hanger.CLEAT, Size(800, 300), drop=40.0, rise=-12.0, span=720.0, every=60.0)),
    ("a3", hung_by(Hanger.CLEAT, Size(1500, 900), drop=40.0, rise=0.0, span=1400.0, every=200.0)),
    ("letter", hung_by(Hanger.NAIL, Size(152.4, 101.6), drop=12.7, rise=0.0, span=50.0, every=50.0)),
    ("a4", placed(Size(60, 60))),
    ("roll 24 in", placed(Size(1500, 550), [(750.0, 500.0)])),
]


@pytest.mark.parametrize(("paper", "piece"), PLENTY)
def test_ordinary_templates_find_room_for_every_word(paper: str, piece: PlacedPiece) -> None:
    drawn = draw(piece, paper)
    assert not says_more(drawn)
    text = drawn.label_text()
    count = len(drawn.holes)
    for number in range(1, count + 1):
        assert f"HOLE {number} of {count} " in text
    for words in ("TAPED UP", "CENTRE LINE", "both diagonals", "datum" if count else "The datum"):
        assert words.lower() in text.lower()


def test_ordinary_sheets_have_their_rulers_in_full() -> None:
    for paper in ("a4", "letter", "a3"):
        drawn = draw(tide_chart(), paper)
        for index, _ in each_sheet(drawn):
            texts = [item.text for item in drawn.words(index)]
            assert (texts.count("100 mm"), texts.count("4 in")) == (2, 2)


def test_a_small_piece_says_fold_and_a_large_one_does_not() -> None:
    for piece, folds in ((placed(Size(60, 60)), True), (tide_chart(), False)):
        drawn = draw(piece, "letter")
        texts = [item.text for index, _ in each_sheet(drawn) for item in drawn.words(index)]
        assert any(text.startswith("Outside") for text in texts) == folds


def test_each_line_is_named_on_every_sheet_it_crosses() -> None:
    # Datum 19 in and level line 17 3/4 in above the bottom.
    drawn = draw(tide_chart(), "letter")
    for name, height in (("DATUM", 19 * 25.4), ("LEVEL LINE", 17.75 * 25.4)):
        crossed = [tile.name for tile in drawn.sheets if tile.keep.y0 < height < tile.keep.y1]
        assert len(crossed) > 1
        assert drawn.sheets_with(name) == crossed


def test_of_two_level_lines_near_each_other_both_are_named_and_then_the_paper_is_told_of() -> None:
    # The hole is 1 in above the frame, the datum 1/2 in below half its height (1300 + 94 - 12.7 mm).
    told = ("The hole is 1 in (25 mm) above the frame's top edge: the fastener will show.",)
    piece = placed(Size(157.2, 188.0), [(78.6, 213.4)], rise=31.75, neighbours=NEIGHBOURS)
    drawn = draw(replace(piece, notes=told), "letter", datum_mm=1381.3)
    assert drawn.sheets_with("half height") == drawn.sheets_with("DATUM") == ["A1"]
    assert "both diagonals" in drawn.label_text()
    assert "leave the paper round crosses" in drawn.label_text()


@pytest.mark.parametrize("off", [-39.0, -30.0, 27.0, 39.0])
def test_an_upright_line_has_its_name_nearest_to_it(off: float) -> None:
    # The centre line at 90 mm, a stud beside it: free places for a name lie nearer to other lines.
    piece = placed(Size(180.0, 240.0), [(60.0, 220.0), (120.0, 220.0)])
    drawn = draw(piece, "a4", studs=(piece.box.x0 + 90.0 + off,))
    places = [90.0, *(90.0 + off + half for half in (-19.05, 0.0, 19.05))]  # a stud is 1 1/2 in wide
    named = [(words.text, words_box(words).centre.x) for words in drawn.words(0) if words.turned]
    nearest = {text: min(places, key=lambda place: abs(place - x)) for text, x in named}
    assert nearest["CENTRE LINE, plumb"] == 90.0
    assert nearest["stud centre"] == pytest.approx(90.0 + off)


def test_a_neighbour_is_named_on_its_own_side() -> None:
    drawn = draw(placed(Size(60, 60), neighbours=NEIGHBOURS), "a4")
    boxes = dict(drawn.boxed_words(0))
    assert boxes["→ Kelp print"].x0 > 30
    assert boxes["↑ Fog bell"].y0 > 30
    assert boxes["↓ Gull study"].y1 < 30
    assert next(box for text, box in boxes.items() if text.startswith("←")).x1 < 30


def test_a_ruler_that_crosses_a_line_is_drawn_in_full() -> None:
    # On A5 the only room for 100 mm across is over the upright centre line.
    drawn = draw(placed(Size(441.1, 60.0)), "a5", lap=0.0)
    for index, _ in each_sheet(drawn):
        assert [item.text for item in drawn.words(index)].count("100 mm") == 2


def test_the_extent_holds_the_frame_and_every_cross() -> None:
    # The hole is 3 mm above the frame's top; its cross reaches 10 mm further.
    piece = placed(Size(300, 200), [(150.0, 203.0)], rise=10.0)
    assert template_extent(piece) == Box(0, 0, 300, 213)


def test_the_whole_drawing_has_the_lines_and_no_seams() -> None:
    drawn = draw(tide_chart(), "letter")
    seams = {(seam.start, seam.end) for seam in drawn.tiling.seams}
    whole = [item for item in drawn.drawing.whole if isinstance(item, Line)]
    assert not [line for line in whole if (line.start, line.end) in seams]
    assert drawn.drawing.size == Size(406.4, 508.0)
    assert drawn.drawing.area.holds(Box(0, 0, 406.4, 508.0))


def test_metric_templates_are_drawn_alike() -> None:
    inch, metric = (draw(tide_chart(), "a4", units=units) for units in (Unit.INCH, Unit.MILLIMETRE))
    rings = [
        [item for item in drawn.drawing.lines if isinstance(item, Circle)] for drawn in (inch, metric)
    ]
    assert rings[0] == rings[1]
    assert rings[0][0].centre == pytest.approx(Point(8 * 25.4, 18.25 * 25.4))


@pytest.mark.parametrize(("width", "holes"), [(200.0, (50.0, 150.0)), (230.0, (40.0, 190.0))])
def test_what_a_hole_is_told_stands_nearer_to_it_than_to_the_other(
    width: float, holes: tuple[float, float]
) -> None:
    # Halfway between the holes is the middle of the piece; wider words would fit on the left alone.
    drawn = draw(placed(Size(width, 300.0), [(x, 270.0) for x in holes]), "a4")
    heads = {words.text: words_box(words) for words in drawn.words(0)}
    assert heads["HOLE 1 of 2"].x1 < width / 2 < heads["HOLE 2 of 2"].x0
