from __future__ import annotations

from dataclasses import replace
from itertools import combinations

import pytest

from templater.drawing import Item, Line, Polyline, Words
from templater.geometry import Box, Point, Size
from templater.lettering import words_box
from templater.printing.model import Tile, Tiling
from templater.scene.marks import draw_scale_bar
from templater.scene.template.board import Board, Cover
from templater.scene.template.room import Regions
from templater.scene.template.sheet_block import (
    SheetBlock,
    SheetNames,
    _name_lines,
    draw_sheet_block,
    place_sheet_block,
)

SHEET = Box(0, 0, 190, 270)
_BIG = SHEET.grown(50)
NAMES = SheetNames("Keeper's cottage, stair hall", "Tide chart", "K7M2Q4", 14, 31)
LONG = SheetNames(
    "Keeper's cottage, stair hall and landing, third printing for the guest house",
    "Great-grandmother's oilskin coat, framed behind acrylic with its brass buttons",
    "WWMMW2",
    1488,
    1490,
)
ONLY = replace(NAMES, printer="study inkjet")
LONG_ONLY = replace(LONG, printer="Wide-format printer, workshop.")  # 30 letters, as many as allowed


def tile(area: Box = SHEET, name: str = "A1") -> Tile:
    return Tile(name, area, area, Size(210, 297), Point(0, 0))


def place(area: Box = SHEET, outline: Box = _BIG, taken: tuple[Box, ...] = ()) -> SheetBlock:
    board = Board(area)
    for box in taken:
        board.mark(box)
    return place_sheet_block(tile(area), board, Regions.of(area, outline))


def draw(
    block: SheetBlock, names: SheetNames = NAMES, *, fold: bool = False, more: bool = False
) -> tuple[Item, ...]:
    tiles = (tile(), tile(SHEET.moved(190, 0), "A2"))
    return draw_sheet_block(block, names, Tiling(tiles, (), ()), 0, fold=fold, more=more)


def texts(items: tuple[Item, ...]) -> list[str]:
    return [item.text for item in items if isinstance(item, Words)]


def test_a_sheet_tells_what_it_is() -> None:
    said = texts(draw(place()))
    for text in ("Tide chart", NAMES.title, "rev K7M2Q4", "A1", "UP", "page 14 of 31"):
        assert text in said
    assert "Print at 100 %, actual size." in said


@pytest.mark.parametrize("size", [(190.0, 270.0), (118.0, 150.0), (104.0, 180.0)])
@pytest.mark.parametrize("remarks", [(False, False), (True, True)])
def test_a_corrected_sheet_names_its_printer(
    size: tuple[float, float], remarks: tuple[bool, bool]
) -> None:
    block = place(Box(0, 0, *size))
    said = " ".join(texts(draw(block, ONLY, fold=remarks[0], more=remarks[1])))
    words = "Corrected for “study inkjet”: use no other printer. Print at 100 %."
    assert words in said or "“study inkjet” only, 100 %" in said
    said = " ".join(texts(draw(block, LONG_ONLY, fold=remarks[0], more=remarks[1])))
    assert "“Wide-format print" in said


def test_the_whole_template_is_not_corrected() -> None:
    items = draw_sheet_block(place(), ONLY, Tiling((tile(),), (), ()), None, fold=False, more=False)
    said = " ".join(texts(items))
    assert "Print at 100 %, actual size." in said
    assert "inkjet" not in said


def test_the_revision_is_at_least_5_mm_high_and_nothing_under_2_5() -> None:
    words = [item for item in draw(place()) if isinstance(item, Words)]
    assert [item.height_mm >= 5 for item in words if item.text == "rev K7M2Q4"] == [True]
    assert min(item.height_mm for item in words) >= 2.5


@pytest.mark.parametrize(("width", "height"), [(190.0, 270.0), (118.0, 150.0), (104.0, 180.0)])
@pytest.mark.parametrize("names", [NAMES, LONG, ONLY, LONG_ONLY])
@pytest.mark.parametrize("remarks", [(False, False), (True, False), (False, True), (True, True)])
def test_words_stay_in_the_block_and_apart(
    width: float, height: float, names: SheetNames, remarks: tuple[bool, bool]
) -> None:
    block = place(Box(0, 0, width, height))
    items = draw(block, names, fold=remarks[0], more=remarks[1])
    rulers = set(block.rulers)
    boxes = [words_box(item) for item in items if isinstance(item, Words) and item not in rulers]
    assert all(block.box.holds(box) for box in boxes)
    assert not [1 for a, b in combinations(boxes, 2) if a.meets(b)]


def test_a_square_on_the_map_tells_this_sheet() -> None:
    items = draw(place())
    filled = [item for item in items if isinstance(item, Polyline) and item.filled]
    (spot,) = [item for item in filled if len(item.points) == 4]
    outlines = [
        item
        for item in items
        if isinstance(item, Polyline) and len(item.points) == 4 and not item.filled
    ]
    # The frame of the block, and two sheets side by side: the square is in the first one, the left.
    left = min(outlines[1:], key=lambda item: item.box.x0)
    assert left.box.holds(spot.box)


def test_the_map_of_very_many_sheets_is_an_outline_with_a_square_and_no_black_patch() -> None:
    # 40 columns of 30 sheets: on the map, which is less than 20 mm wide, no sheet is 0.5 mm wide.
    tiles = tuple(tile(SHEET.moved(190 * (n % 40), -270 * (n // 40)), f"A{n}") for n in range(1200))
    tiling = Tiling(tiles, (), ())
    for index, is_left, is_top in ((0, True, True), (39, False, True), (1160, True, False)):
        items = draw_sheet_block(place(), NAMES, tiling, index, fold=False, more=False)
        shapes = [item for item in items if isinstance(item, Polyline) and len(item.points) == 4]
        (spot,) = [item for item in shapes if item.filled]
        _, outline = [item for item in shapes if not item.filled]
        assert min(spot.box.size) >= 1.0
        assert (spot.box.centre.x < outline.box.centre.x) == is_left
        assert (spot.box.centre.y > outline.box.centre.y) == is_top


def test_rulers_are_true_in_both_directions() -> None:
    for upward in (False, True):
        items = draw_scale_bar(Point(7, 9), upward=upward)
        axis = max(
            (item for item in items if isinstance(item, Line)), key=lambda line: max(line.box.size)
        )
        # 4 in = 101.6 mm; ticks at 0, 10 … 100 mm on one side and at 0, 12.7 … 101.6 on the other.
        assert max(axis.box.size) == pytest.approx(101.6)
        ticks = [item.box for item in items if isinstance(item, Line) and item is not axis]
        along = sorted(box.y0 - 9 if upward else box.x0 - 7 for box in ticks)
        wanted = sorted([10.0 * n for n in range(11)] + [12.7 * n for n in range(9)])
        assert along == pytest.approx(wanted)
        assert {"100 mm", "4 in"} <= set(texts(items))


def test_both_rulers_and_the_block_stand_inside_where_there_is_room() -> None:
    block = place()
    assert not block.is_outside
    assert not block.crowding
    assert [item.text for item in block.rulers if isinstance(item, Words)].count("100 mm") == 2


def test_a_small_piece_has_them_outside() -> None:
    block = place(outline=Box(60, 100, 110, 150))
    assert block.is_outside
    assert not block.box.meets(Box(60, 100, 110, 150))


def test_what_is_outside_is_folded_not_cut() -> None:
    said = " ".join(texts(draw(place(), fold=True)))
    assert "Outside the outline: fold back, do not cut." in said


def test_lost_words_are_said_to_be_in_the_checklist() -> None:
    assert "see the overview." in " ".join(texts(draw(place(), more=True)))


def test_a_full_sheet_goes_across_the_level_line_and_owns_up_to_it() -> None:
    board = Board(SHEET)
    for y in range(0, 270, 20):
        board.mark(Box(0, y, 190, y + 1), Cover.LEVEL)
    block = place_sheet_block(tile(), board, Regions.of(SHEET, SHEET.grown(50)))
    assert block.crowding > 0
    assert block.box in block.interruptions


def test_the_whole_template_has_no_page() -> None:
    items = draw_sheet_block(place(), NAMES, Tiling((tile(),), (), ()), None, fold=False, more=False)
    assert "full size" in texts(items)
    assert not [text for text in texts(items) if text.startswith("page")]


def test_names_that_must_be_cut_short_are_told_apart_by_their_number() -> None:
    told = []
    for number, state in ((3, "first"), (4, "second")):
        name = f"Portrait of the keeper of the outer light in the year of the great storm, {state} state"
        names = SheetNames("Kit", name, "K7M2Q4", 14, 31, number=number)
        told.append([text for text, _, _ in _name_lines(names, 42.0, 5.0)])
    assert told[0] != told[1]
    assert told[0][0].startswith("3 Portrait")
    assert all(len(lines) == 2 for lines in told)
