"""Whole templates cut into sheets: worked cases, and what must hold of any tiling."""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templater.geometry import Box, Point, Size
from templater.layout.model import Margins
from templater.paper import PAPERS, Paper, parse_paper
from templater.printing.model import PrintSetup, Seam, Tile, Tiling
from templater.printing.tile import NoRoomOnSheetError, TooManySheetsError, tile_template

TINY = 1e-5

# Common frames, inches; one hole on the centre line, 2 1/4 in below the top.
FRAMES = (
    *((8, 10), (11, 14), (12, 16), (16, 20), (18, 24), (20, 24), (20, 30), (24, 30)),
    *((24, 36), (27, 40), (30, 40), (36, 48), (40, 60)),
)


def with_margins(paper: str, margin: float, lap: float = 10.0) -> PrintSetup:
    return PrintSetup(parse_paper(paper), Margins(margin, margin, margin, margin), lap)


def tile_bare(width: float, height: float, setup: PrintSetup) -> Tiling:
    return tile_template(Box(0, 0, width, height), [], [], setup)


# Counts per axis as in the tests of the seams; here the better orientation.
@pytest.mark.parametrize(
    ("setup", "width", "height", "count"),
    [
        (with_margins("a4", 10, 0), 2400, 1200, 63),  # landscape 9 x 7, portrait 13 x 5 = 65
        (with_margins("a4", 10, 10), 2400, 1200, 63),  # landscape 9 x 7, portrait 14 x 5 = 70
        (with_margins("letter", 6.35, 0), 2400, 1200, 54),  # landscape 9 x 6, portrait 12 x 5 = 60
        (with_margins("letter", 6.35, 10), 2400, 1200, 65),  # portrait 13 x 5, landscape 10 x 7 = 70
        (with_margins("a4", 4.23, 0), 2400, 1200, 54),  # landscape 9 x 6, portrait 12 x 5 = 60
        (with_margins("a4", 10, 10), 600, 400, 8),  # portrait 4 x 2, landscape 3 x 3 = 9
        (with_margins("roll 914.4 mm", 5, 0), 2400, 1200, 2),  # two strips along, not three across
        (
            with_margins("roll 914.4 mm", 5, 0),
            2400,
            6000,
            6,
        ),  # 3 strips across, 6 m in two; along 7 strips
        (with_margins("a4", 10, 10), 60, 60, 1),
    ],
)
def test_worked_counts(setup: PrintSetup, width: float, height: float, count: int) -> None:
    assert len(tile_bare(width, height, setup).tiles) == count


def test_common_frames_take_the_sheets_that_a_plain_grid_needs() -> None:
    """324 sheets: counted for these frames on Letter and A4 with a separate plain model."""
    total = sum(
        len(tile_template(extent, [hole], [], with_margins(paper, 6.35)).tiles)
        for paper in ("letter", "a4")
        for width, height in FRAMES
        for extent in [Box(0, 0, width * 25.4, height * 25.4)]
        for hole in [Point(width * 12.7, height * 25.4 - 57.15)]
    )
    assert total == 324


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
    """400 x 450 mm: portrait 3 x 2, 2 x 450 + 400 of seams; landscape 2 x 3, 450 + 2 x 400."""
    tiling = tile_bare(400, 450, with_margins("a4", 10))
    assert [tile.page for tile in tiling.tiles] == [Size(297, 210)] * 6


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
    a4 = with_margins("a4", 10)
    huge = tile_bare(
        5000, 2000, a4
    )  # landscape: 4990 / 267 -> 19, 1990 / 180 -> 12; portrait 28 x 8 = 224
    assert len(huge.tiles) == 224
    assert huge.tiles[-1].name == "H28"
    # Landscape 5990 / 267 -> 23, 4990 / 180 -> 28: 644. Portrait 5990 / 180 -> 34, 4990 / 267 -> 19.
    with pytest.raises(TooManySheetsError, match="644 sheets, at most 500") as refused:
        tile_bare(6000, 5000, a4)
    assert refused.value.count == 644


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
        tile_bare(300, 300, with_margins("100 x 150 mm", 10, lap=40))


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
    assert len({tile.page.width > tile.page.height for tile in tiling.tiles}) == 1 or setup.paper.is_roll
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
    whole = Box.around(keeps)
    assert whole.holds(extent, slack=TINY)
    area = sum(keep.width * keep.height for keep in keeps)
    assert area == pytest.approx(whole.width * whole.height)
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
    columns = len({tile.keep.x0 for tile in tiling.tiles})
    rows = len(tiling.tiles) // columns
    assert len(tiling.seams) == (columns - 1) * rows + columns * (rows - 1)
    for seam in tiling.seams:
        under, over = tiles[seam.under], tiles[seam.over]
        assert under.clip.holds(_strip(seam, lap), slack=TINY)
        assert over.clip.holds(_strip(seam, lap), slack=TINY)
        if seam.start.x == seam.end.x:
            assert over.clip.x0 == over.keep.x0 == under.keep.x1 == seam.start.x
        else:
            assert over.clip.y1 == over.keep.y1 == under.keep.y0 == seam.start.y


def _near_by_distance(tiling: Tiling, holes: list[Point], lap: float) -> tuple[int, ...]:
    """The holes in a lap or nearer than 12 mm to one, measured on the sheets."""
    bands = [_strip(seam, lap).grown(12 - TINY / 2) for seam in tiling.seams]
    return tuple(
        number for number, hole in enumerate(holes, start=1) if any(band.has(hole) for band in bands)
    )
