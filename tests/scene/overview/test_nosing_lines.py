"""The line through the edges of a flight of steps, on the elevation."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templater.drawing import Line, Words
from templater.geometry import Box, Point, Size
from templater.layout.model import Arrangement, LeftRight, Stair
from templater.placement.model import PlacedFurniture, PlacedGroup, Plan
from templater.scene.lines import THIN, short_dash
from templater.scene.overview.elevation import Elevation, fit_elevation
from templater.scene.overview.nosing_lines import NAMES
from templater.scene.overview.sightlines import find_share
from templater.scene.overview.title_block import draw_key
from tests.scene.walls import crossings, hung, ink_box, make_wall

ROOM = Size(254.0, 150.0)
UP_RIGHT = Stair(190, 250, Point(500, 190), LeftRight.RIGHT)
UP_LEFT = Stair(190, 250, Point(3500, 190), LeftRight.LEFT)


def stairs(stair: Stair, *lefts: float, height: float = 4000) -> Plan:
    """Pieces of 300 x 400 mm, each with its middle 1500 mm over the nosing line, in one group."""
    pieces = []
    for left in lefts:
        way = 1 if stair.up is LeftRight.RIGHT else -1
        middle = stair.start.y + way * (left + 150 - stair.start.x) * stair.rise_mm / stair.run_mm + 1500
        box = Box(left, middle - 200, left + 300, middle + 200)
        pieces.append(hung(f"Keeper {left:g}", box, [(left + 150, middle + 180)]))
    whole = Box.around(piece.box for piece in pieces)
    names = tuple(piece.name for piece in pieces)
    group = PlacedGroup("keepers", whole, names, Arrangement.STAIR, None, stair=stair)
    return replace(make_wall(pieces, Size(4000, height)), groups=(group,))


def draw(plan: Plan, part: Box | None = None, room: Size = ROOM) -> Elevation:
    return fit_elevation(plan, [room], part).draw(plan, Point(0, room.height))


def nosings(drawn: Elevation) -> list[tuple[float, ...]]:
    """The ends of each slanted dashed line, wall mm."""
    return [
        (*drawn.view.on_wall(item.start), *drawn.view.on_wall(item.end))
        for item in drawn.items
        if isinstance(item, Line)
        and (item.width_mm, item.dash) == (THIN, short_dash(THIN))
        and item.start.x != item.end.x
        and item.start.y != item.end.y
    ]


def names(drawn: Elevation) -> list[Words]:
    return [item for item in drawn.items if isinstance(item, Words) and item.text in NAMES]


@pytest.mark.parametrize(
    ("stair", "lefts", "line"),
    [
        # From the step at 500 to the right edge of the last frame, 1600 + 300 = 1900: up by
        # 1400 x 190 / 250 = 1064, so to 190 + 1064 = 1254 mm.
        (UP_RIGHT, (800, 1200, 1600), (500, 190, 1900, 1254)),
        # From the left edge of the first frame, at 1000, down to the step at 3500: 2500 x 0.76 = 1900.
        (UP_LEFT, (1000, 1500), (1000, 2090, 3500, 190)),
        # A step in the middle of the frames: from 1000 to 2800 + 300; 190 + 1100 x 0.76 = 1026 at
        # 3100, 190 - 1000 x 0.76 < 0 at 1000: it is seen from the floor up, at 2000 - 250 = 1750.
        (replace(UP_RIGHT, start=Point(2000, 190)), (1000, 2800), (1750, 0, 3100, 1026)),
    ],
)
def test_the_line_runs_through_the_steps_edges_past_all_that_hangs_along_them(
    stair: Stair, lefts: tuple[float, ...], line: tuple[float, ...]
) -> None:
    drawn = draw(stairs(stair, *lefts))
    assert nosings(drawn) == [pytest.approx(line, abs=1e-6)]
    (name,) = names(drawn)
    assert name.height_mm == 2.5


def test_where_there_is_room_it_is_said_what_a_nosing_is() -> None:
    (name,) = names(draw(stairs(UP_RIGHT, 800, 1600)))
    assert name.text == "nosing line: edges of the steps"


def test_without_stairs_there_is_no_such_line() -> None:
    plan = stairs(UP_RIGHT, 800, 1200)
    plain = draw(replace(plan, groups=(replace(plan.groups[0], stair=None),)))
    assert (nosings(plain), names(plain)) == ([], [])


def test_two_groups_along_one_flight_share_its_line() -> None:
    plan = stairs(UP_RIGHT, 800, 1600)
    first, last = (
        replace(plan.groups[0], name=piece.name, box=piece.box, pieces=(piece.name,))
        for piece in plan.pieces
    )
    drawn = draw(replace(plan, groups=(first, last)))
    assert nosings(drawn) == [pytest.approx((500, 190, 1900, 1254), abs=1e-6)]
    assert len(names(drawn)) == 1


def test_furniture_stands_in_front_of_the_line() -> None:
    chest = PlacedFurniture("chest", Box(1000, 0, 1500, 900))
    drawn = draw(replace(stairs(UP_RIGHT, 800, 1600), furniture=(chest,)))
    # At 1000 it is 190 + 500 x 0.76 = 570 mm high, at 1500 950 mm: it passes the chest's top, 900,
    # at 500 + 710 / 0.76 = 1434.21.
    low, high = nosings(drawn)
    assert low == pytest.approx((500, 190, 1000, 570), abs=1e-6)
    assert high == pytest.approx((500 + 710 / 0.76, 900, 1900, 1254), abs=1e-6)


def test_a_part_of_the_wall_shows_its_part_of_the_line() -> None:
    drawn = draw(stairs(UP_RIGHT, 800, 1600), part=Box(1000, 500, 3000, 3500))
    assert nosings(drawn) == [pytest.approx((1000, 570, 1900, 1254), abs=1e-6)]


def test_on_a_small_drawing_the_key_alone_names_it() -> None:
    plan = stairs(UP_RIGHT, 800, 1600)
    drawn = draw(plan, room=Size(24, 24))
    assert len(nosings(drawn)) == 1
    assert names(drawn) == []
    told = [item.text for item in draw_key(plan, 150.0).items if isinstance(item, Words)]
    assert "nosing line, up the stairs: through the edges of the steps" in told
    plain = replace(plan, groups=())
    told = [item.text for item in draw_key(plain, 150.0).items if isinstance(item, Words)]
    assert not [text for text in told if "nosing" in text]


flights = st.builds(
    Stair,
    st.floats(120, 220),
    st.floats(200, 350),
    st.builds(Point, st.floats(0, 4000), st.floats(0, 400)),
    st.sampled_from(LeftRight),
)


@settings(max_examples=60, deadline=None)
@given(
    stair=flights,
    lefts=st.lists(st.floats(0, 3600), min_size=1, max_size=4),
    width=st.sampled_from((60.0, 120.0, 254.0)),
)
def test_no_words_touch_a_nosing_line_or_each_other_and_every_hole_is_still_a_cross(
    stair: Stair, lefts: list[float], width: float
) -> None:
    plan = stairs(stair, *lefts, height=9000)
    drawn = draw(plan, room=Size(width, 200.0))
    boxes = [(item.text, ink_box(item)) for item in drawn.items if isinstance(item, Words)]
    for start_x, start_y, end_x, end_y in nosings(drawn):
        ends = drawn.view.on_page(Point(start_x, start_y)), drawn.view.on_page(Point(end_x, end_y))
        assert [text for text, box in boxes if find_share(*ends, box)] == []
    named = [(item.text, ink_box(item)) for item in names(drawn)]
    others = [(text, box) for text, box in boxes if text not in NAMES]
    assert [(a, b) for a, p in named for b, q in others if p.meets(q)] == []
    frame = drawn.view.frame
    assert all(frame.holds(box) for _, box in named)
    marks = [drawn.view.on_page(mark.hole) for piece in plan.pieces for mark in piece.marks]
    found = crossings(drawn.items)
    for mark in marks:
        if frame.has(mark):
            assert any(abs(mark.x - at.x) < 1e-6 and abs(mark.y - at.y) < 1e-6 for at in found)


@settings(max_examples=30, deadline=None)
@given(st.tuples(flights, flights), st.lists(st.floats(0, 3600), min_size=1, max_size=4))
def test_the_names_of_two_flights_stand_apart(both: tuple[Stair, Stair], lefts: list[float]) -> None:
    one, other = (stairs(stair, *lefts, height=9000) for stair in both)
    drawn = draw(replace(one, groups=(*one.groups, replace(other.groups[0], name="seconds"))))
    boxes = [ink_box(item) for item in names(drawn)]
    assert not any(box.meets(above) for box, above in combinations(boxes, 2))
