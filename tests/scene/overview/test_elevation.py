from __future__ import annotations

from itertools import combinations, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templater.drawing import Circle, Line, Polyline, Words
from templater.geometry import Box, Point, Size
from templater.lengths import Unit
from templater.placement.model import Plan
from templater.scene.overview.dimensions import Side, Tick, arrange_ordinates, draw_ordinates, spread
from templater.scene.overview.elevation import Elevation, fit_elevation
from tests.scene.pages import assert_inside, box_of
from tests.scene.walls import bench_wall, crossings, grid_wall, hung, ink_box, make_wall

LETTER = Box(12.7, 60.0, 266.7, 209.55)
A4 = Box(12.7, 55.0, 284.3, 203.65)

WALLS = {
    "bench": bench_wall(),
    "forty": grid_wall(10, 4, 250, 330),
    "stacked": grid_wall(3, 3, 300, 380),
    "long": grid_wall(24, 1, 600, 1200),
    "tiny": grid_wall(2, 1, 40, 3000),
}


def draw(plan: Plan, room: Box = LETTER, part: Box | None = None) -> Elevation:
    return fit_elevation(plan, [room.size], part).draw(plan, Point(room.x0, room.y1))


@pytest.mark.parametrize("room", [LETTER, A4, Box(10, 10, 60, 50)])
@pytest.mark.parametrize("name", WALLS)
def test_every_hole_is_a_cross_at_its_place(name: str, room: Box) -> None:
    plan = WALLS[name]
    drawn = draw(plan, room)
    ratio = drawn.view.scale.ratio
    floor = max((i for i in drawn.items if isinstance(i, Line)), key=lambda line: line.width_mm)
    ends = sorted((floor.start, floor.end))
    # The floor line is as long as the wall at the scale; its left end is the wall's origin.
    assert abs((ends[1].x - ends[0].x) * ratio - plan.wall.width) < 0.01
    found = [((x - ends[0].x) * ratio, (y - ends[0].y) * ratio) for x, y in crossings(drawn.items)]
    holes = sorted(tuple(mark.hole) for piece in plan.pieces for mark in piece.marks)
    assert len(found) == len(holes)
    for (x, y), (hole_x, hole_y) in zip(sorted(found), holes, strict=True):
        # 0.01 mm of the wall; the crosses' places are read to 1e-7 mm of paper.
        assert abs(x - hole_x) < 0.01
        assert abs(y - hole_y) < 0.01


@settings(max_examples=30, deadline=None)
@given(
    st.lists(
        st.tuples(st.floats(0, 5500), st.floats(0, 2300)),
        min_size=1,
        max_size=12,
        unique_by=(lambda hole: round(hole[0]), lambda hole: round(hole[1])),
    ),
    st.sampled_from((Unit.INCH, Unit.MILLIMETRE)),
)
def test_the_view_maps_crosses_back_to_the_wall(holes: list[tuple[float, float]], units: Unit) -> None:
    pieces = [
        hung(f"P {index}", Box(x - 20, y - 60, x + 20, y + 10), [(x, y)])
        for index, (x, y) in enumerate(holes)
    ]
    drawn = draw(make_wall(pieces, Size(5600, 2400), units=units))
    found = [drawn.view.on_wall(point) for point in crossings(drawn.items)]
    # Other lines may cross by chance; every hole must be among the crossings.
    for x, y in holes:
        assert any(abs(x - point.x) < 0.01 and abs(y - point.y) < 0.01 for point in found)


@pytest.mark.parametrize("room", [LETTER, A4])
@pytest.mark.parametrize("name", WALLS)
def test_no_words_touch_each_other_or_a_line(name: str, room: Box) -> None:
    drawn = draw(WALLS[name], room)
    words = [(item.text, ink_box(item)) for item in drawn.items if isinstance(item, Words)]
    assert [(a, b) for (a, p), (b, q) in combinations(words, 2) if p.meets(q)] == []
    sides = [side.grown(0.01) for item in drawn.items for side in _straight_sides(item)]
    assert [(text, side) for text, box in words for side in sides if box.meets(side)] == []


def _straight_sides(item: object) -> list[Box]:
    if isinstance(item, Line) and (item.start.x == item.end.x or item.start.y == item.end.y):
        return [item.box]
    if isinstance(item, Polyline):
        corners = [*item.points, item.points[0]]
        return [Line(a, b, 0.1).box for a, b in pairwise(corners)]
    return []


@pytest.mark.parametrize("name", WALLS)
def test_everything_stays_in_the_block_it_claims_and_in_its_room(name: str) -> None:
    drawn = draw(WALLS[name])
    assert LETTER.holds(drawn.box, slack=1e-6)
    assert_inside(drawn.items, drawn.box.grown(8.0))  # a figure at a corner may stand half outside
    assert_inside(drawn.items, LETTER.grown(6.0))


def test_the_bench_wall_is_drawn_at_half_an_inch_to_the_foot() -> None:
    # 196 in / 24 = 207.4 mm and 96 in / 24 = 101.6 mm; with 3/4 in (1:16) the wall alone would be
    # 311 mm, wider than the 254 mm that letter paper has between the margins.
    assert draw(bench_wall()).view.scale.text == "SCALE 1/2 in = 1 ft (1:24)"


def test_distances_run_from_the_left_end_and_from_the_datum() -> None:
    drawn = draw(bench_wall())
    texts = {item.text for item in drawn.items if isinstance(item, Words)}
    # Hole x: 51, 64, 76, 89, 150 in; bench 30 to 110 in, wall 196 in; holes 58, 59 1/4 and
    # 60 3/8 in above the floor, so − 2, − 3/4 and + 3/8 in from the datum at 60 in.
    assert {"0", "51", "64", "76", "89", "150", "30", "110", "196"} <= texts
    assert {"−2", "−3/4", "+3/8"} <= texts
    assert not {"58", "59 1/4", "60 3/8"} & texts
    assert "holes: inches from the left end" in texts
    assert "holes: inches from the datum, + up" in texts
    assert "floor to datum 60" in texts
    assert {"datum 60", "ceiling 96"} <= texts


def test_each_figure_across_stands_at_the_end_of_its_holes_line() -> None:
    drawn = draw(bench_wall())
    figures = {i.text: i for i in drawn.items if isinstance(i, Words) and not i.turned}
    for text, x_mm in (("51", 51 * 25.4), ("150", 150 * 25.4), ("196", 196 * 25.4)):
        assert abs(figures[text].at.x - drawn.view.on_page(Point(x_mm, 0)).x) < 0.01


def test_the_heights_begin_at_the_datum_and_the_datum_at_the_floor() -> None:
    drawn = draw(bench_wall())
    frame = drawn.view.box_on_page(drawn.view.window)
    datum = drawn.view.on_page(Point(0.0, 60 * 25.4)).y
    circles = [item.centre for item in drawn.items if isinstance(item, Circle)]
    assert [p.y for p in circles if p.x < frame.x0] == [pytest.approx(datum)]
    (span,) = [
        line
        for line in drawn.items
        if isinstance(line, Line) and line.start.x == line.end.x > frame.x1 + 1.0
    ]
    assert sorted((span.start.y, span.end.y)) == pytest.approx([frame.y0, datum])


def test_a_part_above_the_floor_has_no_height_of_the_datum() -> None:
    part = Box(900.0, 1300.0, 3000.0, 1800.0)
    texts = {item.text for item in draw(bench_wall(), part=part).items if isinstance(item, Words)}
    assert not any(text.startswith("floor to") for text in texts)
    assert {"−2", "−3/4", "0", "+3/8"} <= texts


def test_the_first_dimension_line_is_10_mm_from_the_wall() -> None:
    # ASME Y14.5: the first dimension line at least 10 mm from the outline.
    drawn = draw(bench_wall())
    frame = drawn.view.box_on_page(drawn.view.window)
    circles = [item.centre for item in drawn.items if isinstance(item, Circle)]
    assert [(round(p.x - frame.x0, 6), round(p.y - frame.y1, 6)) for p in circles if p.y > frame.y1] == [
        (0.0, 10.0)
    ]


def test_the_datum_is_named_apart_from_the_eye_line_where_they_differ() -> None:
    plan = make_wall([], Size(4000, 2400), datum=1400, eye_line=1500)
    texts = {item.text for item in draw(plan).items if isinstance(item, Words)}
    assert {"datum 1400", "eye line 1500", "ceiling 2400"} <= texts


def test_a_crowded_wall_says_that_the_table_has_the_other_distances() -> None:
    drawn = draw(grid_wall(90, 3, 200, 230))
    texts = [item.text for item in drawn.items if isinstance(item, Words)]
    assert "holes: mm from the left end (others in the table)" in texts
    assert drawn.left_out > 0


def test_a_piece_is_named_where_its_name_fits_and_numbered_where_not() -> None:
    wide = hung("Lantern room", Box(100, 300, 1100, 1000), [(600, 950)])
    small = hung("Lantern room at night", Box(1300, 300, 1420, 420), [(1360, 410)])
    drawn = draw(make_wall([wide, small], Size(1600, 1300), datum=1100, eye_line=1100))
    texts = [item.text for item in drawn.items if isinstance(item, Words)]
    assert {"1", "Lantern room", "1000 × 700 mm", "2"} <= set(texts)
    assert "Lantern room at night" not in texts


def test_a_part_shows_only_what_is_in_it_and_leaves_cut_pieces_open() -> None:
    plan = grid_wall(4, 1, 300, 400)
    part = Box(50, 100, 1000, 600)  # cuts the third piece, which runs from 900 to 1200 mm
    drawn = draw(plan, part=part)
    assert [slug for slug, _ in drawn.pieces] == ["print-1", "print-2", "print-3"]
    whole = [item for item in drawn.items if isinstance(item, Polyline) and item.closed]
    assert len(whole) == 2
    assert len(crossings(drawn.items)) == 2


@given(
    st.lists(st.floats(0, 200), min_size=1, max_size=40).map(sorted),
    st.floats(1.0, 6.0),
)
def test_spread_places_keep_their_order_and_their_pitch(wanted: list[float], pitch: float) -> None:
    places = spread(wanted, pitch, 0.0, 200.0)
    assert all(b - a >= pitch - 1e-6 for a, b in pairwise(places))
    if (len(wanted) - 1) * pitch <= 200.0:
        assert places[0] >= -1e-6
        assert places[-1] <= 200.0 + 1e-6
    if all(b - a >= pitch for a, b in pairwise(wanted)):
        assert places == pytest.approx(wanted)


def test_two_places_too_close_are_spread_about_their_middle() -> None:
    # 50 and 51 with a pitch of 4: their middle is 50.5, so 48.5 and 52.5.
    assert spread([50.0, 51.0], 4.0, 0.0, 100.0) == [48.5, 52.5]


def test_figures_turn_where_they_would_not_stand_side_by_side() -> None:
    near = [Tick(10.0 + 5 * index, "119 13/16") for index in range(5)]
    assert arrange_ordinates(Side.ABOVE, near, 0.0, 60.0).turned
    apart = [Tick(30.0 * index, "119 13/16") for index in range(5)]
    assert not arrange_ordinates(Side.ABOVE, apart, 0.0, 120.0).turned


@pytest.mark.parametrize("side", Side)
def test_the_figures_reach_as_far_as_the_plan_says(side: Side) -> None:
    ticks = [Tick(10.0, "7 1/2"), Tick(12.0, "8 3/4"), Tick(60.0, "44")]
    plan = arrange_ordinates(side, ticks, 0.0, 80.0)
    whole = Box.around(box_of(item) for item in draw_ordinates(plan, 100.0, origin=0.0))
    reach = {
        Side.ABOVE: whole.y1 - 100,
        Side.BELOW: 100 - whole.y0,
        Side.LEFT: 100 - whole.x0,
        Side.RIGHT: whole.x1 - 100,
    }[side]
    assert plan.depth - 1.5 < reach <= plan.depth + 1.1  # 1.1: an empty descender below a figure
