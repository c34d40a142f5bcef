from __future__ import annotations

from collections.abc import Sequence

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from templater.geometry import Box, Point, Size
from templater.scene.template.board import ALL, LINES, Board, Cover, Part, plain_shape

SHEET = Box(0, 0, 100, 60)


def board_with(*boxes: Box, cover: Cover = Cover.TAKEN, area: Box = SHEET) -> Board:
    board = Board(area)
    for box in boxes:
        board.mark(box, cover)
    return board


def test_a_block_goes_where_it_is_wanted_when_nothing_is_in_the_way() -> None:
    box = Board(SHEET).take(plain_shape(Size(20, 10)), [SHEET], Point(50, 30))
    assert box == Box(40, 25, 60, 35)


def test_a_block_goes_to_the_nearest_place_that_is_free() -> None:
    # Blocked from x = 30 to 70 at every height; the block is 20 wide and wants the middle at 55,
    # so its nearest place starts at 70 (15 off), not at 10 (35 off).
    board = board_with(Box(30, 0, 70, 60))
    assert board.take(plain_shape(Size(20, 10)), [SHEET], Point(55, 30)) == Box(70, 25, 90, 35)


def test_a_board_that_does_not_start_at_zero_gives_places_of_its_own() -> None:
    area = Box(-37.3, 812.6, 62.7, 872.6)
    box = Board(area).take(plain_shape(Size(20, 10)), [area], area.corner)
    assert box is not None
    assert box == pytest.approx(Box(-37.3, 812.6, -17.3, 822.6))


def test_none_where_nothing_is_wide_enough() -> None:
    # Free are x 0 to 40 and 55 to 100: 40 and 45 wide.
    board = board_with(Box(40, 0, 55, 60))
    assert board.take(plain_shape(Size(46, 10)), [SHEET], Point(0, 0)) is None
    assert board.take(plain_shape(Size(45, 10)), [SHEET], Point(0, 0)) == Box(55, 0, 100, 10)


def test_a_run_of_free_cells_does_not_go_on_in_the_next_row() -> None:
    # 10 free cells at the right of each row and 10 at the left of the next are no 20 in a row.
    board = board_with(Box(10, 0, 90, 60))
    assert board.take(plain_shape(Size(11, 1)), [SHEET], Point(50, 30)) is None


def test_the_nearest_place_of_all_regions_is_used() -> None:
    regions = [Box(0, 0, 30, 60), Box(60, 0, 100, 60)]
    # Wanted from 55 to 75: the second region's first place, at 60, is 5 off; the first's last 45.
    assert Board(SHEET).take(plain_shape(Size(20, 10)), regions, Point(65, 5)) == Box(60, 0, 80, 10)


def test_only_the_regions_are_used() -> None:
    board = board_with(Box(0, 0, 50, 60))
    assert board.take(plain_shape(Size(20, 10)), [Box(0, 0, 60, 60)], Point(0, 0)) is None


def test_what_is_taken_is_not_taken_again() -> None:
    board = Board(SHEET)
    # Two blocks of 51 x 60 do not fit in 100 x 60.
    assert board.take(plain_shape(Size(51, 60)), [SHEET], Point(0, 0)) is not None
    assert board.take(plain_shape(Size(51, 60)), [SHEET], Point(0, 0)) is None


@pytest.mark.parametrize("cover", list(LINES))
def test_a_block_may_lie_across_the_lines_it_is_allowed_to(cover: Cover) -> None:
    board = board_with(Box(0, 29, 100, 31), Box(49, 0, 51, 60), cover=cover)
    big = Size(80, 50)
    assert board.take(plain_shape(big), [SHEET], Point(50, 30)) is None
    assert board.take(plain_shape(big, cover), [SHEET], Point(50, 30)) == Box(10, 5, 90, 55)


def test_a_part_keeps_clear_of_what_the_whole_may_cross() -> None:
    # A level line at y 30; the upper 10 of a shape 10 x 40 must be clear of it, the rest may cross.
    board = board_with(Box(0, 29.5, 100, 30.5), cover=Cover.LEVEL)
    shape = (Part(Box(0, 0, 10, 40), ALL & ~Cover.LEVEL), Part(Box(0, 30, 10, 40), ALL))
    box = board.take(shape, [SHEET], Point(5, 30))
    assert box is not None
    assert not Box(box.x0, box.y0 + 30, box.x1, box.y1).meets(Box(0, 29.5, 100, 30.5))


def test_a_box_is_clear_only_on_the_sheet_and_off_what_is_asked_for() -> None:
    board = board_with(Box(40, 20, 60, 40), cover=Cover.UPRIGHT)
    assert board.is_clear(Box(0, 0, 40, 60))
    assert not board.is_clear(Box(0, 0, 41, 60))
    assert board.is_clear(Box(0, 0, 41, 60), ALL & ~Cover.UPRIGHT)
    assert not board.is_clear(Box(-1, 0, 10, 10))


def test_what_was_marked_since_can_be_forgotten() -> None:
    board = Board(SHEET)
    before = board.remember()
    board.mark(SHEET)
    board.restore(before)
    assert board.is_clear(SHEET)


cells = st.integers(0, 11)


@st.composite
def small_boxes(draw: st.DrawFn) -> Box:
    x0, y0 = draw(cells), draw(cells)
    return Box(x0, y0, x0 + draw(st.integers(1, 5)), y0 + draw(st.integers(1, 5)))


@given(st.lists(small_boxes(), max_size=6), st.integers(1, 6), st.integers(1, 6), cells, cells)
@example([Box(0, 0, 12, 11)], 3, 2, 4, 5)  # no room at all
def test_the_place_is_the_nearest_of_all_that_a_search_one_by_one_finds(
    taken: Sequence[Box], wide: int, high: int, x: int, y: int
) -> None:
    area = Box(0, 0, 12, 12)
    found = board_with(*taken, area=area).take(
        plain_shape(Size(wide, high)), [area], Point(x + wide / 2, y + high / 2)
    )
    free = [
        (column - x) ** 2 + (row - y) ** 2
        for column in range(13 - wide)
        for row in range(13 - high)
        if not any(box.meets(Box(column, row, column + wide, row + high)) for box in taken)
    ]
    if found is None:
        assert free == []
    else:
        assert not any(box.meets(found) for box in taken)
        assert (found.x0 - x) ** 2 + (found.y0 - y) ** 2 == min(free)
