from __future__ import annotations

from dataclasses import replace
from itertools import combinations

import pytest

from templater.drawing import Line, Words
from templater.errors import Place
from templater.geometry import Box, Point, Size
from templater.layout.model import LeftRight, Obstacle
from templater.lettering import words_box
from templater.placement.model import PlacedFurniture, Plan
from templater.scene.lines import FINE, THICK, THIN
from templater.scene.overview.elevation import Elevation, fit_elevation
from templater.scene.overview.piece_labels import Crowd
from templater.scene.overview.sightlines import find_share
from templater.scene.overview.surroundings import draw_opening, find_low_spans, write_by
from templater.scene.overview.title_block import draw_key
from templater.scene.overview.wall_tables import list_obstacles
from tests.scene.walls import bench_wall, hung, ink_box, make_wall

ROOM = Box(12.7, 60.0, 266.7, 209.55)
HERE = Place("hall.yaml", 1, 1)


def thing(name: str, x0: float, y0: float, x1: float, y1: float) -> Obstacle:
    return Obstacle(name, name, Box(x0, y0, x1, y1), None, HERE)


WINDOW = thing("sash window", 300, 800, 1300, 2000)
HATCH = thing("eaves hatch with the long name of a captain", 3000, 0, 3400, 900)
SWITCH = thing("switch", 2000, 1100, 2080, 1180)
PIECE = hung("Tide chart", Box(1500, 1200, 1900, 1700), [(1700, 1650)])
ATTIC = (Point(0, 1500), Point(1000, 2600), Point(2500, 2600), Point(4000, 1000))


def attic() -> Plan:
    """A wall of 4 x 2.6 m with a window, a hatch, a switch, a chest and a sloping ceiling."""
    chest = PlacedFurniture("chest", Box(200, 0, 900, 1000))
    plan = make_wall([PIECE], Size(4000, 2600), furniture=(chest,))
    return replace(plan, obstacles=(WINDOW, HATCH, SWITCH), ceiling=ATTIC)


def draw(plan: Plan, part: Box | None = None) -> Elevation:
    return fit_elevation(plan, [ROOM.size], part).draw(plan, Point(ROOM.x0, ROOM.y1))


def lines_of(drawn: Elevation, width: float) -> list[Line]:
    return [item for item in drawn.items if isinstance(item, Line) and item.width_mm == width]


def words_of(drawn: Elevation) -> list[Words]:
    return [item for item in drawn.items if isinstance(item, Words)]


def on_wall(drawn: Elevation, line: Line) -> tuple[float, ...]:
    start, end = drawn.view.on_wall(line.start), drawn.view.on_wall(line.end)
    return (*start, *end)


def test_an_opening_is_outlined_thin_and_crossed_fine() -> None:
    plan = replace(make_wall([], Size(4000, 2600)), obstacles=(WINDOW,))
    drawn = draw(plan)
    sides = [on_wall(drawn, line) for line in lines_of(drawn, THIN)]
    for side in (
        (300, 800, 1300, 800),
        (1300, 800, 1300, 2000),
        (300, 2000, 1300, 2000),
        (300, 800, 300, 2000),
    ):
        assert any(found == pytest.approx(side, abs=1e-6) for found in sides)
    # Each diagonal in two parts, with room for the words between them; slope 1200 / 1000.
    parts = [on_wall(drawn, line) for line in lines_of(drawn, FINE)]
    slanted = [part for part in parts if part[0] != part[2] and part[1] != part[3] and part[1] > 0]
    assert len(slanted) == 4
    for x0, y0, x1, y1 in slanted:
        assert abs((y1 - y0) / (x1 - x0)) == pytest.approx(1.2)
    outer = {(round(x), round(y)) for part in slanted for x, y in (part[:2], part[2:])}
    assert {(300, 800), (1300, 800), (300, 2000), (1300, 2000)} <= outer
    assert "sash window" in " ".join(words.text for words in words_of(drawn))


@pytest.mark.parametrize(
    ("hinges", "strokes"),
    [
        # From the corners of the free side to the middle of the hinges' side, (800 + 2000) / 2.
        (LeftRight.LEFT, {(1300, 800, 300, 1400), (1300, 2000, 300, 1400)}),
        (LeftRight.RIGHT, {(300, 800, 1300, 1400), (300, 2000, 1300, 1400)}),
    ],
)
def test_dashes_meet_at_the_hinges_of_a_leaf(hinges: LeftRight, strokes: set[tuple[float, ...]]) -> None:
    lines = draw_opening(WINDOW.box, Box(0, 0, 4000, 2600), hinges=hinges)
    assert {(*line.start, *line.end) for line in lines if line.dash} == strokes
    # The outline is as ever, and no diagonal is left.
    assert len([line for line in lines if not line.dash]) == 4


def test_a_leaf_is_drawn_in_place_of_a_cross_and_the_key_tells_it() -> None:
    plan = replace(attic(), obstacles=(WINDOW, replace(HATCH, swing=LeftRight.RIGHT)))
    drawn = draw(plan)
    dashed = [on_wall(drawn, line) for line in lines_of(drawn, FINE) if line.dash]
    assert dashed
    for x0, _, x1, _ in dashed:
        assert 3000 - 1e-6 <= min(x0, x1) <= max(x0, x1) <= 3400 + 1e-6
    told = " ".join(item.text for item in draw_key(plan, 150.0).items if isinstance(item, Words))
    assert "crossed box: an opening" in told
    assert "they meet at the hinges of its leaf, which folds back to that side" in told
    told = " ".join(item.text for item in draw_key(attic(), 150.0).items if isinstance(item, Words))
    assert "hinges" not in told


def test_no_line_crosses_the_words_in_or_by_a_crossed_box() -> None:
    drawn = draw(attic())
    boxes = [(words.text, ink_box(words)) for words in words_of(drawn)]
    lines = [item for item in drawn.items if isinstance(item, Line)]
    crossed = [
        (text, line)
        for text, box in boxes
        for line in lines
        if find_share(line.start, line.end, box.grown(0.05)) is not None
    ]
    assert crossed == []
    assert [(a, b) for (a, p), (b, q) in combinations(boxes, 2) if p.meets(q)] == []


def test_where_the_name_does_not_fit_a_key_leads_to_the_table() -> None:
    drawn = draw(attic())
    texts = {words.text for words in words_of(drawn)}
    assert {"X2", "X3"} <= texts
    assert HATCH.name not in texts
    (chapter,) = list_obstacles(attic(), 250.0)
    assert [row[:2] for row in chapter.rows] == [
        ("X1", "sash window"),
        ("X2", HATCH.name),
        ("X3", "switch"),
    ]
    # 300 mm = 11 13/16 in, 800 mm = 31 1/2 in.
    assert chapter.rows[0][3:] == ("300 mm (11 13/16 in)", "800 mm (31 1/2 in)")


def test_furniture_stands_in_front_of_an_opening() -> None:
    drawn = draw(attic())
    chest = drawn.view.box_on_page(Box(200, 0, 900, 1000)).grown(-0.01)
    for line in (*lines_of(drawn, THIN), *lines_of(drawn, FINE)):
        assert find_share(line.start, line.end, chest) is None


def test_the_figures_along_the_floor_name_what_they_are_of() -> None:
    texts = {words.text for words in words_of(draw(attic()))}
    assert "furniture, openings, fixtures, wall: mm from the left end" in texts
    assert {"300", "1300", "3000", "3400"} <= texts
    assert not any("openings" in words.text for words in words_of(draw(bench_wall())))


def test_a_sloping_ceiling_is_drawn_thick_to_the_ends_of_the_wall() -> None:
    drawn = draw(attic())
    thick = [on_wall(drawn, line) for line in lines_of(drawn, THICK)]
    expected = [
        (0, 0, 0, 1500),
        (4000, 0, 4000, 1000),
        (0, 1500, 1000, 2600),
        (1000, 2600, 2500, 2600),
        (2500, 2600, 4000, 1000),
    ]
    assert len(thick) == len(expected)
    for line in expected:
        assert any(found == pytest.approx(line, abs=1e-6) for found in thick)


def test_heights_of_the_ceiling_stand_by_its_points() -> None:
    slope = (Point(0, 1500), Point(1700, 2600), Point(4000, 1000))
    drawn = draw(replace(make_wall([], Size(4000, 2600)), ceiling=slope))
    ceilings = [words for words in words_of(drawn) if words.text.startswith("ceiling")]
    assert [words.text for words in ceilings] == ["ceiling 1500", "ceiling 2600", "ceiling 1000"]
    frame = drawn.view.box_on_page(drawn.view.window)
    for words, point in zip(ceilings, slope, strict=True):
        assert frame.holds(words_box(words))
        assert words_box(words).grown(9.0).has(drawn.view.on_page(point))


def test_where_there_is_no_room_by_a_point_its_height_is_left_to_the_table() -> None:
    crowd = Crowd()
    crowd.add(Box(0, 0, 100, 100))
    assert write_by(Point(50, 50), "ceiling 2600", Box(0, 0, 100, 100), crowd) == []


def test_level_lines_end_at_a_sloping_ceiling() -> None:
    plan = replace(attic(), eye_line_mm=1900.0)
    drawn = draw(plan)
    y = drawn.view.on_page(Point(0, 1900)).y
    level = [item for item in drawn.items if isinstance(item, Line) and item.start.y == item.end.y == y]
    xs = [drawn.view.on_wall(end).x for line in level for end in (line.start, line.end)]
    # 1900 is reached at 400 / 1.1 = 363.6 and at 2500 + 700 x 15 / 16 = 3156.25 mm.
    inside = [x for x in xs if x <= 4000]
    assert min(inside) >= 363.6
    assert max(inside) <= 3156.25 + 1e-6


def test_a_part_of_the_wall_cuts_the_slope_and_the_boxes() -> None:
    part = Box(800, 1500, 1600, 2400)
    drawn = draw(attic(), part)
    frame = drawn.view.box_on_page(part)
    slanted = [
        line
        for line in (*lines_of(drawn, THICK), *lines_of(drawn, THIN), *lines_of(drawn, FINE))
        if line.start.x != line.end.x and line.start.y != line.end.y
    ]
    assert slanted
    for line in slanted:
        assert frame.holds(line.box, slack=1e-6)
    assert not [line for line in lines_of(drawn, THICK) if line.start.x == line.end.x]


@pytest.mark.parametrize(
    ("y", "spans"),
    [
        (900, []),
        (1200, [(3812.5, 4000)]),  # 2500 + 1400 x 15 / 16
        (2050, [(0, 500), (3015.625, 4000)]),  # 550 / 1.1; 2500 + 550 x 15 / 16
        (2700, [(0, 1000), (1000, 2500), (2500, 4000)]),
    ],
)
def test_where_the_ceiling_is_lower(y: float, spans: list[tuple[float, float]]) -> None:
    assert find_low_spans(ATTIC, y) == [pytest.approx(span) for span in spans]


def test_the_key_explains_the_crossed_box_where_there_is_one() -> None:
    def texts(plan: Plan) -> str:
        return " ".join(item.text for item in draw_key(plan, 90.0).items if isinstance(item, Words))

    assert "crossed box: an opening or a fixture, which nothing may cover" in texts(attic())
    assert "crossed" not in texts(bench_wall())


def test_a_fixture_behind_furniture_is_dashed_with_its_key() -> None:
    # A wall of 4 m at a desk of 2 m with a socket of 75 x 100 mm and a heater behind it.
    desk = PlacedFurniture("desk", Box(600, 0, 2600, 760))
    plan = make_wall([PIECE], Size(4000, 2600), furniture=(desk,))
    socket, heater = thing("socket", 1500, 300, 1575, 400), thing("heater", 1900, 50, 2500, 600)
    drawn = draw(replace(plan, obstacles=(socket, heater, SWITCH)))
    dashed = [line for line in lines_of(drawn, THIN) if line.dash and line.box.y1 < drawn.box.y1 - 30]
    places = {tuple(round(each) for each in on_wall(drawn, line)) for line in dashed}
    for x0, y0, x1, y1 in (socket.box, heater.box):
        assert {(x0, y0, x1, y0), (x1, y0, x1, y1), (x0, y1, x1, y1), (x0, y0, x0, y1)} <= places
    texts = {words.text: ink_box(words) for words in words_of(drawn)}
    front = drawn.view.box_on_page(desk.box)
    for text in ("X1", "heater", "desk"):
        assert front.holds(texts[text])
    for hidden in (socket, heater):
        assert not texts["desk"].meets(drawn.view.box_on_page(hidden.box))
    assert drawn.view.box_on_page(heater.box).holds(texts["heater"])
    inks = [ink_box(words) for words in words_of(drawn)]
    assert not [pair for pair in combinations(inks, 2) if pair[0].meets(pair[1])]


def test_the_key_tells_dashed_boxes_where_there_are_some() -> None:
    desk = PlacedFurniture("watch desk", Box(1000, 0, 2600, 760))
    socket, half = thing("socket", 1500, 300, 1575, 400), thing("hatch", 2500, 300, 2700, 400)

    def key(*obstacles: Obstacle) -> str:
        plan = make_wall([PIECE], Size(4000, 2600), furniture=(desk,))
        items = draw_key(replace(plan, obstacles=obstacles), 100.0).items
        return " ".join(item.text for item in items if isinstance(item, Words))

    assert "dashed box: an opening or a fixture behind furniture" in key(socket, half)
    assert "crossed box" in key(socket, half)
    assert "crossed box" not in key(socket)
    assert "dashed box" not in key(half)
