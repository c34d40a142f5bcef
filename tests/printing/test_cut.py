"""Covers: what a band and a card show, and what must hold of any of them."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations
from typing import TypeAlias

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from templater.geometry import Box, Point, Size
from templater.layout.model import Margins
from templater.paper import parse_paper
from templater.printing.cut import count_sheets, cut_template
from templater.printing.model import Coverage, Printer, PrintSetup, Shape, Tiling
from templater.printing.tile import NoRoomOnSheetError, TooManySheetsError

INCH = 25.4
CLEAR = 12.0
TINY = 1e-5
CROSS = 10.0


def setup_for(
    paper: str, cover: Coverage, margins: Margins | None = None, lap: float = 10.0
) -> PrintSetup:
    return PrintSetup(parse_paper(paper), margins or Margins(), lap, cover=cover)


def shape_of(size: Size, holes: list[tuple[float, float]], rise: float = 0.0) -> Shape:
    outline = Box(0.0, 0.0, *size)
    points = [Point(*hole) for hole in holes]
    crosses = [Box(*hole, *hole).grown(CROSS) for hole in points]
    extent = Box.around([outline, *crosses])
    return Shape(outline, extent, tuple(points), tuple(point.moved(0, -rise) for point in points))


def inches(*holes: tuple[float, float]) -> list[tuple[float, float]]:
    return [(x * INCH, y * INCH) for x, y in holes]


MIRROR = shape_of(Size(40 * INCH, 60 * INCH), inches((20, 57.75)))


def test_a_mirror_takes_few_sheets_as_a_band_and_one_as_a_card() -> None:
    # Letter landscape shows 254 mm across, 10 of it lap: 40 in = 1016 mm take (1016 - 10) / 244 = 4.1,
    # so 5 sheets; portrait 203.2 would take 6. With the corner 6. The hole fits one sheet.
    letter = setup_for("letter", Coverage.FULL)
    counts = count_sheets(MIRROR, letter)
    assert (counts[Coverage.BAND], counts[Coverage.CARD]) == (6, 1)
    assert counts[Coverage.FULL] == len(cut_template(MIRROR, letter).tiles)


def test_a_band_shows_the_corner_on_a_sheet_of_its_own() -> None:
    tiling = cut_template(MIRROR, setup_for("letter", Coverage.BAND))
    *band, corner = tiling.tiles
    assert tiling.cover is Coverage.BAND
    assert [tile.name for tile in tiling.tiles] == ["A1", "A2", "A3", "A4", "A5", "B1"]
    assert corner.clip.has(Point(0.0, 0.0))
    assert all(corner.name not in (seam.under, seam.over) for seam in tiling.seams)
    assert len(tiling.seams) == 4
    # The band hangs from the top edge as deep as the sheets reach, with 3 mm above.
    assert {round(tile.clip.y1 - 60 * INCH, 3) for tile in band} == {3.0}


def test_two_far_holes_make_a_card_of_two_sheets_that_do_not_join() -> None:
    # 30 in apart: no Letter sheet shows both. 50 + 12 mm at the least lie between the two.
    wide = shape_of(Size(40 * INCH, 60 * INCH), inches((5, 55), (35, 55)))
    tiling = cut_template(wide, setup_for("letter", Coverage.CARD))
    assert [tile.name for tile in tiling.tiles] == ["A1", "A2"]
    assert tiling.seams == ()
    for tile, hole in zip(tiling.tiles, wide.holes, strict=True):
        assert tile.clip.y1 > 60 * INCH  # both show the top edge
        assert tile.clip.has(hole)


def test_the_hole_of_a_lock_far_below_has_a_card_of_its_own() -> None:
    # 40 x 44 in; two holes 20 in (508 mm) apart near the top, a third near the bottom: no two of them
    # find room on one A4 sheet.
    holes = [(254.0, 1067.0), (762.0, 1067.0), (508.0, 51.0)]
    tiling = cut_template(shape_of(Size(1016.0, 1117.6), holes), setup_for("a4", Coverage.CARD))
    assert [tile.name for tile in tiling.tiles] == ["A1", "A2", "A3"]
    assert not tiling.seams
    for hole in holes:
        shown = Box(*hole, *hole).grown(12.0)
        assert sum(tile.keep.holds(shown) for tile in tiling.tiles) == 1
        assert sum(tile.clip.meets(shown) for tile in tiling.tiles) == 1


def test_holes_in_two_rows_on_a_small_piece_share_a_card() -> None:
    holes = [(150.0, 580.0), (200.0, 580.0), (175.0, 420.0)]
    tiling = cut_template(shape_of(Size(350.0, 600.0), holes), setup_for("a4", Coverage.CARD))
    assert (tiling.cover, len(tiling.tiles)) == (Coverage.CARD, 1)


def test_two_near_holes_share_a_card_with_the_centre_line_and_the_top_edge() -> None:
    near = shape_of(Size(40 * INCH, 60 * INCH), inches((17, 56), (23, 56)))
    (tile,) = cut_template(near, setup_for("letter", Coverage.CARD)).tiles
    assert tile.clip.x0 < 20 * INCH < tile.clip.x1
    assert tile.clip.y0 < 60 * INCH < tile.clip.y1


def test_a_card_without_holes_shows_the_middle_of_the_top_edge() -> None:
    bare = shape_of(Size(40 * INCH, 60 * INCH), [])
    (tile,) = cut_template(bare, setup_for("a4", Coverage.CARD)).tiles
    assert tile.clip.grown(-2.0).has(Point(20 * INCH, 60 * INCH))


def test_many_far_screws_make_a_card_of_joined_sheets() -> None:
    screws = [(x * INCH, 28 * INCH) for x in range(2, 60, 2)]
    tiling = cut_template(
        shape_of(Size(60 * INCH, 30 * INCH), screws), setup_for("letter", Coverage.CARD)
    )
    assert tiling.cover is Coverage.CARD
    assert len(tiling.seams) == len(tiling.tiles) - 1


@pytest.mark.parametrize("cover", [Coverage.BAND, Coverage.CARD])
def test_what_takes_no_fewer_sheets_is_printed_whole(cover: Coverage) -> None:
    small = shape_of(Size(150.0, 200.0), [(75.0, 180.0)])
    tiling = cut_template(small, setup_for("a4", cover))
    assert (tiling.cover, len(tiling.tiles)) == (Coverage.FULL, 1)


def test_the_most_sheets_hold_for_what_is_printed() -> None:
    # 630 A4 sheets: worked in the tests of the tiles. Its card has no holes and is one sheet.
    wall = shape_of(Size(6000.0, 5000.0), [])
    full = PrintSetup(parse_paper("a4"), Margins(10, 10, 10, 10), 10)
    with pytest.raises(TooManySheetsError) as caught:
        cut_template(wall, full)
    assert caught.value.count == 630
    assert len(cut_template(wall, full, most=630).tiles) == 630
    assert len(cut_template(wall, replace(full, cover=Coverage.CARD)).tiles) == 1
    assert count_sheets(wall, full)[Coverage.FULL] == 630


@pytest.mark.parametrize("cover", Coverage)
def test_no_room_is_told_whatever_the_cover(cover: Coverage) -> None:
    setup = setup_for("a5", cover, Margins(50, 50, 50, 50), 50)
    with pytest.raises(NoRoomOnSheetError):
        cut_template(MIRROR, setup)


@pytest.mark.parametrize(
    ("paper", "margin", "lap", "left"),
    [
        # A5 is 148 x 210 mm: 125 x 187 mm with 6.5 mm margins and a lap of 10.
        ("a5", 6.5, 10.0, None),
        ("a5", 6.6, 10.0, "124 x 186"),
        ("a5", 15.0, 0.0, "118 x 180"),
        ("letter", 35.0, 10.0, None),
        ("letter", 40.5, 10.0, "124 x 188"),
    ],
)
def test_paper_that_leaves_too_little_is_refused(
    paper: str, margin: float, lap: float, left: str | None
) -> None:
    setup = setup_for(paper, Coverage.FULL, Margins(margin, margin, margin, margin), lap)
    if left is None:
        assert cut_template(MIRROR, setup, most=1000).tiles
        return
    with pytest.raises(NoRoomOnSheetError) as refused:
        cut_template(MIRROR, setup)
    assert str(refused.value) == (
        f"margins and laps leave {left} mm of a sheet; what it must say needs 125 x 165 mm"
    )


@pytest.mark.parametrize(
    ("factor", "told"),
    [
        # A5 is 148 mm wide: less 12.7 of margins, divided by the factor, less 10 of lap.
        (1.0, ""),
        (1.0059, ""),  # 135.3 / 1.0059 - 10 = 124.5
        (1.02, ""),  # 135.3 / 1.02 - 10 = 122.6; 0.98 x 125 = 122.5
        # 135.3 / 1.03 - 10 = 121.3; (210 - 12.7) / 1.03 - 10 = 181.5, less 6.35 / 1.03: 175.3
        (1.03, "121 x 175"),
        (0.97, ""),
    ],
)
def test_the_default_margins_leave_room_on_a5_for_any_fair_printer(factor: float, told: str) -> None:
    printer = Printer("study", factor, factor, Margins(), Size(120.0, 160.0))
    setup = replace(setup_for("a5", Coverage.FULL), printer=printer)
    if not told:
        assert cut_template(MIRROR, setup, most=1000).tiles
        return
    with pytest.raises(NoRoomOnSheetError) as refused:
        cut_template(MIRROR, setup)
    assert str(refused.value) == (
        f"margins and laps leave {told} mm of a sheet, corrected for the printer 'study'; what it must"
        " say needs 123 x 162 mm"
    )


Cut: TypeAlias = tuple[Shape, PrintSetup, Tiling]


@st.composite
def cuts(draw: st.DrawFn) -> Cut:
    """Any piece on any paper, as a band or a card."""
    size = Size(draw(st.floats(60, 2000)), draw(st.floats(60, 2000)))
    count = draw(st.integers(0, 4))
    xs = draw(st.lists(st.floats(0.02, 0.98), min_size=count, max_size=count))
    drop = draw(st.floats(0, 1) | st.floats(0, 0.2))
    levels = [drop, draw(st.floats(0, 1))]
    holes = [(x * size.width, (1 - draw(st.sampled_from(levels))) * size.height) for x in xs]
    rise = draw(st.sampled_from((0.0, 12.7, -12.0)))
    margins = draw(st.sampled_from((Margins(), Margins(3, 3, 3, 3), Margins(5, 10, 15, 20))))
    paper = draw(st.sampled_from(("a5", "a4", "letter", "a3", "roll 24 in")))
    cover = draw(st.sampled_from((Coverage.BAND, Coverage.CARD)))
    setup = setup_for(paper, cover, margins, draw(st.sampled_from((0.0, 10.0, 20.0))))
    shape = shape_of(size, sorted(holes), rise)
    try:
        return shape, setup, cut_template(shape, setup, most=60)
    except (TooManySheetsError, NoRoomOnSheetError):
        assume(False)
        raise


MANY = settings(max_examples=150, deadline=None)


@MANY
@given(cuts())
def test_every_hole_is_on_just_one_sheet(cut: Cut) -> None:
    shape, _, tiling = cut
    for number, hole in enumerate(shape.holes, 1):
        if number not in tiling.near_seam:
            assert sum(tile.keep.has(hole) for tile in tiling.tiles) == 1
            showing = [tile.clip for tile in tiling.tiles if tile.clip.has(hole)]
            assert len(showing) == 1
            inner = shape.extent.grown(-TINY)
            assert all(_distance_inside(clip, hole, inner) >= CLEAR - TINY for clip in showing)


def _distance_inside(clip: Box, hole: Point, inner: Box) -> float:
    """How far a hole is from the edges of a sheet that lie within the template."""
    edges = [hole.x - clip.x0] if clip.x0 > inner.x0 else []
    edges += [clip.x1 - hole.x] if clip.x1 < inner.x1 else []
    edges += [hole.y - clip.y0] if clip.y0 > inner.y0 else []
    edges += [clip.y1 - hole.y] if clip.y1 < inner.y1 else []
    return min(edges, default=CLEAR)


@MANY
@given(cuts(), st.floats(0, 1))
def test_a_band_shows_every_point_of_the_top_edge_and_a_bottom_corner(cut: Cut, share: float) -> None:
    shape, _, tiling = cut
    if tiling.cover is not Coverage.BAND:
        return
    width, top = shape.outline.width, shape.outline.y1
    lowest = min((point.y for point in (*shape.holes, *shape.hang_points)), default=top)
    for x in (0.0, width, share * width):
        for y in (top, lowest, (top + lowest) / 2):
            assert any(tile.clip.grown(TINY).has(Point(x, y)) for tile in tiling.tiles), (x, y)
    assert tiling.tiles[-1].clip.has(Point(0.0, 0.0))


@MANY
@given(cuts())
def test_a_part_takes_fewer_sheets_than_the_whole_or_is_the_whole(cut: Cut) -> None:
    shape, setup, tiling = cut
    whole = cut_template(shape, replace(setup, cover=Coverage.FULL), most=10_000)
    if tiling.cover is Coverage.FULL:
        assert tiling == whole
    elif len(whole.near_seam) <= len(tiling.near_seam):
        assert len(tiling.tiles) < len(whole.tiles)
    assert count_sheets(shape, setup)[setup.cover] == len(tiling.tiles)


@MANY
@given(cuts())
def test_each_sheet_has_its_own_name_and_prints_within_the_margins(cut: Cut) -> None:
    _, setup, tiling = cut
    assert len({tile.name for tile in tiling.tiles}) == len(tiling.tiles)
    for tile in tiling.tiles:
        assert setup.printable(tile.page).holds(tile.clip.moved(*tile.origin), slack=TINY)
        assert tile.clip.holds(tile.keep, slack=TINY)
        assert max(tile.page) <= max(setup.paper.size) + TINY


@MANY
@given(cuts())
def test_what_is_kept_of_two_sheets_does_not_overlap_where_a_hole_is(cut: Cut) -> None:
    shape, _, tiling = cut
    for one, other in combinations(tiling.tiles, 2):
        both = one.keep.common(other.keep)
        if both.width > TINY and both.height > TINY:
            assert not any(both.grown(-TINY).has(hole) for hole in shape.holes)


def test_an_inner_sheet_has_room_for_its_block_though_a_seam_more_lies_between() -> None:
    # 1231 mm on A4 with 15 mm margins and 5 mm laps: seven inner sheets keep 175 mm at most. The fewest
    # seams between the holes and the middle would leave one sheet 42 mm, too little for its block.
    shape = shape_of(Size(1231.0, 171.0), [(211.578125, 171.0), (1019.421875, 171.0)])
    tiling = cut_template(shape, setup_for("a4", Coverage.FULL, Margins(15, 15, 15, 15), 5.0))
    assert len(tiling.tiles) == 8
    assert min(tile.keep.width for tile in tiling.tiles) >= 60.0 - TINY
