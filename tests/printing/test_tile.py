"""Whole templates cut into sheets: worked cases, and what must hold of any tiling."""

from __future__ import annotations

from itertools import combinations, permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templater.geometry import Box, Point, Size
from templater.layout.model import Margins
from templater.paper import PAPERS, Paper, parse_paper
from templater.printing.model import PrintSetup, Seam, Tile, Tiling
from templater.printing.tile import NoRoomOnSheetError, TooManySheetsError, tile_template

TINY = 1e-5


def with_margins(paper: str, margin: float, lap: float = 10.0) -> PrintSetup:
    return PrintSetup(parse_paper(paper), Margins(margin, margin, margin, margin), lap)


def tile_bare(width: float, height: float, setup: PrintSetup) -> Tiling:
    return tile_template(Box(0, 0, width, height), [], [], setup)


# Sheets of a course, and courses, counted as in the tests of the seams; every other mix of courses takes
# at least as many.
@pytest.mark.parametrize(
    ("setup", "width", "height", "count"),
    [
        # 3 rows of 13 portrait, 2 of 9 landscape: 3 x 277 + 2 x 190 = 1211
        (with_margins("a4", 10, 0), 2400, 1200, 57),
        (with_margins("a4", 10, 10), 2400, 1200, 63),  # landscape 9 x 7
        (with_margins("letter", 6.35, 0), 2400, 1200, 54),  # landscape 9 x 6
        # 4 rows of 13 portrait, 1 of 10 landscape: 4 x 256.7 + 193.2 = 1220 > 1190
        (with_margins("letter", 6.35, 10), 2400, 1200, 62),
        # 2 columns of 5 portrait, 7 of 6 landscape: 2 x 201.54 + 7 x 288.54 = 2422.9
        (with_margins("a4", 4.23, 0), 2400, 1200, 52),
        (with_margins("a4", 10, 10), 600, 400, 7),  # a row of 4 portrait, one of 3 landscape
        (with_margins("roll 914.4 mm", 5, 0), 2400, 1200, 2),  # two strips along, not three across
        # 3 strips across, 6 m in two; along 7 strips
        (with_margins("roll 914.4 mm", 5, 0), 2400, 6000, 6),
        (with_margins("a4", 10, 10), 60, 60, 1),
    ],
)
def test_worked_counts(setup: PrintSetup, width: float, height: float, count: int) -> None:
    assert len(tile_bare(width, height, setup).tiles) == count


def test_five_sheets_in_columns_of_two_kinds_worked_by_hand() -> None:
    """457 x 490 mm on A4, margin 10: a landscape column of 3 and a portrait one of 2.

    Across, 457 = 267 + 190 leaves no spare; down, cuts every (490 - 10) / 3 = 160 and at 480 / 2 = 240.
    """
    tiling = tile_bare(457, 490, with_margins("a4", 10))
    wide, tall = Size(297, 210), Size(210, 297)
    expected = (
        # From the top the landscape column shows from 170 - 190 = -20 to 320 + 190 = 510.
        Tile("A1", Box(0, 320, 277, 510), Box(0, 330, 267, 510), wide, Point(10, -310)),
        Tile("A2", Box(0, 160, 277, 330), Box(0, 170, 267, 330), wide, Point(10, -130)),
        Tile("A3", Box(0, -20, 277, 170), Box(0, -20, 267, 170), wide, Point(10, 30)),
        # The portrait one from 250 - 277 = -27 to 240 + 277 = 517.
        Tile("B1", Box(267, 240, 457, 517), Box(267, 250, 457, 517), tall, Point(-257, -230)),
        Tile("B2", Box(267, -27, 457, 250), Box(267, -27, 457, 250), tall, Point(-257, 37)),
    )
    for tile, by_hand in zip(tiling.tiles, expected, strict=True):
        assert (tile.name, tile.page) == (by_hand.name, by_hand.page)
        assert tile.clip == pytest.approx(by_hand.clip, abs=TINY)
        assert tile.keep == pytest.approx(by_hand.keep, abs=TINY)
        assert tile.origin == pytest.approx(by_hand.origin, abs=TINY)
    assert [(seam.under, seam.over) for seam in tiling.seams] == [
        *(("A1", "A2"), ("A2", "A3"), ("B1", "B2")),
        *(("A1", "B1"), ("A2", "B1"), ("A2", "B2"), ("A3", "B2")),
    ]
    assert [(*seam.start, *seam.end) for seam in tiling.seams] == [
        pytest.approx(line, abs=TINY)
        for line in (
            *((0, 330, 267, 330), (0, 170, 267, 170), (267, 250, 457, 250)),
            *((267, 330, 267, 510), (267, 250, 267, 330), (267, 170, 267, 250), (267, -20, 267, 170)),
        )
    ]


def test_four_sheets_worked_by_hand() -> None:
    """300 x 400 mm on portrait A4, margin 10: cuts at (300 - 10) / 2 across, (400 - 10) / 2 down."""
    tiling = tile_bare(300, 400, with_margins("a4", 10))
    a4 = Size(210, 297)
    assert tiling.tiles == (
        # B1's clip: across, 145 + 10 of lap and 190 in all; up, from 277 below the seam to the seam.
        Tile("A1", Box(-35, 195, 155, 472), Box(-35, 205, 145, 472), a4, Point(45, -185)),
        Tile("A2", Box(145, 195, 335, 472), Box(145, 205, 335, 472), a4, Point(-135, -185)),
        Tile("B1", Box(-35, -72, 155, 205), Box(-35, -72, 145, 205), a4, Point(45, 82)),
        Tile("B2", Box(145, -72, 335, 205), Box(145, -72, 335, 205), a4, Point(-135, 82)),
    )
    assert tiling.seams == (
        Seam("A1", "A2", Point(145, 205), Point(145, 472)),
        Seam("B1", "B2", Point(145, -72), Point(145, 205)),
        Seam("A1", "B1", Point(-35, 205), Point(145, 205)),
        Seam("A2", "B2", Point(145, 205), Point(335, 205)),
    )


def test_an_inner_sheet_stands_at_the_top_left_of_what_the_printer_reaches() -> None:
    """547 x 700 mm, three by three on A4: a cut each 179 across and 230 down, so B2 shows 189 x 240."""
    middle = tile_bare(547, 700, with_margins("a4", 10)).tiles[4]
    assert middle.name == "B2"
    assert middle.clip == pytest.approx((179, 230, 368, 470))
    assert middle.keep == pytest.approx((179, 240, 358, 470))
    assert middle.origin == pytest.approx((10 - 179, 287 - 470))


def test_landscape_pages_keep_the_larger_margins_that_they_may_get() -> None:
    """Bottom 12.7 may be left or right: 297 - 2 x 12.7 = 271.6 across, 210 - 2 x 6.35 = 197.3 up."""
    tiling = tile_bare(250, 190, PrintSetup(PAPERS["a4"], Margins(), 10))
    (tile,) = tiling.tiles
    assert tile.page == Size(297, 210)
    assert tile.clip.size == pytest.approx((271.6, 197.3))
    assert tile.origin == pytest.approx((12.7 + 10.8, 6.35 + 3.65))


def test_a_roll_is_cut_where_the_template_ends() -> None:
    """590 mm fit across a roll of 609.6 less 12.7 mm; along it, 400 mm and margins of 6.35 and 12.7."""
    setup = PrintSetup(parse_paper("roll 24 in"), Margins(), 10)
    (tile,) = tile_bare(590, 400, setup).tiles
    assert tile.page == pytest.approx((609.6, 400 + 19.05))
    assert tile.clip == pytest.approx((-3.45, 0, 593.45, 400))  # 609.6 - 12.7 = 596.9
    assert tile.origin == pytest.approx((6.35 + 3.45, 12.7))
    (turned,) = tile_bare(900, 500, setup).tiles
    assert turned.page == pytest.approx((900 + 12.7, 609.6))


def test_a_roll_takes_the_shorter_length_of_paper() -> None:
    """300 x 500 mm fits on a 914.4 roll either way: 300 + 10 mm of paper do, not 500 + 10."""
    (tile,) = tile_bare(300, 500, with_margins("roll 914.4 mm", 5)).tiles
    assert tile.page == pytest.approx((310, 914.4))


def test_of_equal_counts_the_holes_share_a_sheet() -> None:
    """Six sheets either way; across a landscape page two holes 150 mm apart stand on one sheet."""
    setup = with_margins("a4", 10)
    extent = Box(0, 0, 500, 500)
    level = tile_template(extent, [Point(60, 420), Point(230, 420)], [], setup)
    upright = tile_template(extent, [Point(80, 440), Point(80, 270)], [], setup)
    assert (len(level.tiles), len(upright.tiles)) == (6, 6)
    assert level.tiles[0].page == Size(297, 210)
    assert upright.tiles[0].page == Size(210, 297)


def test_of_equal_counts_no_hole_near_a_seam_counts_first() -> None:
    """260 x 250 mm: portrait's one seam is shorter, but it must cross a row of screws every 20 mm."""
    holes = [*(Point(20.0 * number, 200) for number in range(1, 13)), Point(130, 40)]
    tiling = tile_template(Box(0, 0, 260, 250), holes, [], with_margins("a4", 10))
    assert [tile.page for tile in tiling.tiles] == [Size(297, 210)] * 2
    assert tiling.near_seam == ()


def test_of_equal_counts_the_shorter_seams_are_taken() -> None:
    """Two sheets either way: side by side their seam is as long as the piece is high, else as wide."""
    upright, level = (tile_bare(*size, with_margins("a4", 10)) for size in ((260, 240), (240, 260)))
    assert [tile.page for tile in upright.tiles] == [Size(210, 297)] * 2
    assert [tile.page for tile in level.tiles] == [Size(297, 210)] * 2


def test_courses_of_one_kind_stand_together() -> None:
    """Seven rows of 28 portrait sheets and one of 19 landscape ones: the odd one first or last."""
    courses = [tile.page.width for tile in tile_bare(5000, 2000, with_margins("a4", 10)).tiles]
    assert courses == [297] * 19 + [210] * 7 * 28


def test_rows_without_holes_keep_their_seams_in_line_with_those_that_have_some() -> None:
    """300 x 400 mm: a hole on the middle seam moves it, and the seam below it, too."""
    tiling = tile_template(Box(0, 0, 300, 400), [Point(150, 340)], [], with_margins("a4", 10))
    assert len(tiling.tiles) == 4
    upright = [seam.start.x for seam in tiling.seams if seam.start.x == seam.end.x]
    assert upright == pytest.approx([128, 128])  # not in (128, 162), even is 145; 162 is as far


def test_of_equals_portrait_is_taken() -> None:
    tiling = tile_bare(250, 250, with_margins("a4", 10))
    assert len(tiling.tiles) == 2
    assert tiling.tiles[0].page == Size(210, 297)


def test_a_hole_outside_the_outline_is_on_paper() -> None:
    """The extent reaches 15 mm above a frame of 150 x 200, where a hook's nail stands."""
    tiling = tile_template(Box(0, 0, 150, 215), [Point(75, 215)], [], with_margins("a4", 10))
    (tile,) = tiling.tiles
    assert tile.clip.has(Point(75, 215))


def test_holes_that_must_be_near_a_seam_are_named() -> None:
    """390 x 150 mm on custom paper that shows 200 x 160: see the same holes among the seams' tests."""
    holes = [Point(20.0 * number, 75) for number in range(1, 20)]
    tiling = tile_template(Box(0, 0, 390, 150), holes, [], with_margins("170 x 210 mm", 5))
    assert [seam.start.x for seam in tiling.seams] == pytest.approx([190])
    assert tiling.near_seam == (9, 10)  # at 180 and 200, the lap being 190 to 200


def test_holes_near_a_level_seam_are_named_too() -> None:
    """The same upright, 150 x 390 mm: from the top the lap lies from 190 to 200 again."""
    holes = [Point(75, 390 - 20.0 * number) for number in range(1, 20)]
    tiling = tile_template(Box(0, 0, 150, 390), holes, [], with_margins("170 x 210 mm", 5))
    assert [seam.start.y for seam in tiling.seams] == pytest.approx([200])
    assert tiling.near_seam == (9, 10)


def test_a_template_of_five_metres_is_cut_and_six_hundred_sheets_are_refused() -> None:
    """Steps of 180 and 267 mm. First 7 rows of 28 portrait sheets, one of 19 landscape: 2049 >= 1990.

    Then columns: 13 of 28 landscape sheets, 14 of 19 portrait: 3471 + 2520 >= 5990.
    """
    a4 = with_margins("a4", 10)
    huge = tile_bare(5000, 2000, a4)
    assert len(huge.tiles) == 7 * 28 + 19
    assert huge.tiles[-1].name == "H28"
    with pytest.raises(TooManySheetsError, match="630 sheets, at most 500") as refused:
        tile_bare(6000, 5000, a4)
    assert refused.value.count == 630
    assert len(tile_template(Box(0, 0, 6000, 5000), [], [], a4, most=700).tiles) == 630


def test_a_column_added_for_a_hole_counts_towards_the_limit() -> None:
    """500 squares butted in a row; a hole on the first seam needs one more."""
    square = PrintSetup(Paper("square", Size(100, 100)), Margins(0, 0, 0, 0), 0)
    strip = Box(0, 0, 50000, 90)
    assert len(tile_template(strip, [Point(150, 45)], [], square).tiles) == 500
    with pytest.raises(TooManySheetsError) as refused:
        tile_template(strip, [Point(100, 45)], [], square)
    assert refused.value.count == 501


def test_paper_without_room_for_two_laps_is_refused() -> None:
    with pytest.raises(NoRoomOnSheetError, match="margins and laps"):
        tile_bare(300, 300, with_margins("125 x 165 mm", 10, lap=50))


@st.composite
def setups(draw: st.DrawFn) -> PrintSetup:
    """Named papers, odd papers and rolls, with uneven margins."""
    paper = draw(
        st.one_of(
            st.sampled_from([PAPERS[name] for name in ("a5", "a4", "a3", "letter", "legal", "arch d")]),
            st.builds(
                lambda short, more: Paper("odd", Size(short, short + more)), _side, st.floats(0, 300)
            ),
            st.builds(
                lambda width: Paper("roll", Size(width, 5080), is_roll=True), st.floats(200, 1200)
            ),
        )
    )
    margin = st.floats(0, 15)
    margins = Margins(draw(margin), draw(margin), draw(margin), draw(margin))
    return PrintSetup(paper, margins, draw(st.floats(0, 15)))


_side = st.floats(120, 300)
_share = st.tuples(st.floats(0, 1), st.floats(0, 1))


@st.composite
def jobs(draw: st.DrawFn) -> tuple[Box, list[Point], list[Point], PrintSetup]:
    """What tile_template takes: an extent that may start left of and below the frame, and its marks."""
    corner = Point(draw(st.floats(-40, 0)), draw(st.floats(-40, 0)))
    extent = Box.of(corner, Size(draw(st.floats(60, 1100)), draw(st.floats(60, 1100))))

    def points(most: int) -> list[Point]:
        shares = draw(st.lists(_share, max_size=most))
        return [Point(extent.x0 + x * extent.width, extent.y0 + y * extent.height) for x, y in shares]

    screws = [
        Point(extent.x0 + 7 + step, extent.centre.y) for step in range(0, int(extent.width) - 7, 23)
    ]
    holes = draw(st.one_of(st.builds(points, st.just(5)), st.just(screws)))
    return extent, holes, points(2), draw(setups())


@settings(max_examples=120, deadline=None)
@given(jobs())
def test_any_tiling_can_be_printed_taped_and_drilled(
    job: tuple[Box, list[Point], list[Point], PrintSetup],
) -> None:
    extent, holes, hang_points, setup = job
    tiling = tile_template(extent, holes, hang_points, setup)
    assert tiling == tile_template(extent, holes, hang_points, setup)
    _check_printable(tiling, setup)
    _check_partition(tiling, extent)
    _check_laps(tiling, setup.lap_mm)
    assert tiling.near_seam == _near_by_distance(tiling, holes, setup.lap_mm)


def _check_printable(tiling: Tiling, setup: PrintSetup) -> None:
    """All that a sheet shows lies where the printer reaches, and all pages are of the paper."""
    assert len({tile.name for tile in tiling.tiles}) == len(tiling.tiles)
    assert (
        len({tile.page.width > tile.page.height for tile in tiling.tiles}) == 1
        or not setup.paper.is_roll
    )
    for tile in tiling.tiles:
        assert setup.printable(tile.page).holds(tile.clip.moved(*tile.origin), slack=TINY)
        assert tile.clip.holds(tile.keep, slack=TINY)
        short, long = sorted(tile.page)
        if setup.paper.is_roll:
            assert setup.paper.size.width in (short, long)
            assert long <= 5080 + TINY
        else:
            assert (short, long) == setup.paper.size


def _check_partition(tiling: Tiling, extent: Box) -> None:
    """What is seen of the sheets leaves no gap in the extent and shows nothing twice."""
    keeps = [tile.keep for tile in tiling.tiles]
    area = sum(inside.width * inside.height for inside in (keep.common(extent) for keep in keeps))
    assert area == pytest.approx(extent.width * extent.height)
    for one, other in combinations(keeps, 2):
        assert min(one.overlap(other)) <= TINY


def _strip(seam: Seam, lap: float) -> Box:
    """The under sheet's lap: to the right of a seam that runs up, below one that runs across."""
    if seam.start.x == seam.end.x:
        return Box(seam.start.x, seam.start.y, seam.end.x + lap, seam.end.y)
    return Box(seam.start.x, seam.start.y - lap, seam.end.x, seam.end.y)


def _check_laps(tiling: Tiling, lap: float) -> None:
    """Neighbours share their lap in full width, and the upper one starts at the seam itself."""
    tiles = {tile.name: tile for tile in tiling.tiles}
    for seam in tiling.seams:
        under, over = tiles[seam.under], tiles[seam.over]
        assert under.clip.holds(_strip(seam, lap), slack=TINY)
        assert over.clip.holds(_strip(seam, lap), slack=TINY)
        if seam.start.x == seam.end.x:
            assert over.clip.x0 == over.keep.x0 == under.keep.x1 == seam.start.x
        else:
            assert over.clip.y1 == over.keep.y1 == under.keep.y0 == seam.start.y
    joined = {(seam.under, seam.over) for seam in tiling.seams if _length(seam) > 2 * TINY}
    assert joined == {
        (one.name, other.name)
        for one, other in permutations(tiling.tiles, 2)
        if _side_by_side(one.keep, other.keep) or _one_below(one.keep, other.keep)
    }
    assert len({(seam.under, seam.over) for seam in tiling.seams}) == len(tiling.seams)


def _length(seam: Seam) -> float:
    return seam.end.x - seam.start.x + seam.end.y - seam.start.y


def _side_by_side(left: Box, right: Box) -> bool:
    """Whether the second box touches the first one's right side."""
    return abs(left.x1 - right.x0) <= TINY and left.overlap(right).height > 2 * TINY


def _one_below(upper: Box, lower: Box) -> bool:
    """Whether the second box touches the first one's lower side."""
    return abs(upper.y0 - lower.y1) <= TINY and upper.overlap(lower).width > 2 * TINY


def _near_by_distance(tiling: Tiling, holes: list[Point], lap: float) -> tuple[int, ...]:
    """The holes in a lap or nearer than 12 mm to one, measured on the sheets."""
    bands = [_strip(seam, lap).grown(12 - TINY / 2) for seam in tiling.seams]
    return tuple(
        number for number, hole in enumerate(holes, start=1) if any(band.has(hole) for band in bands)
    )
