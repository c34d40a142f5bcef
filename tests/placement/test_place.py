from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

import pytest
from hypothesis import given, settings

from templater.geometry import Box, Point, Size
from templater.layout.model import (
    Acceptance,
    Align,
    Arrangement,
    Furniture,
    Group,
    Hanger,
    Layout,
    Position,
    RuleSetting,
    Wall,
)
from templater.mounting.model import Mark
from templater.placement.model import Plan
from tests.builders import (
    HERE,
    furniture,
    group,
    hanging,
    inches,
    layout,
    piece,
    place_layout,
    plan_of,
    position,
)
from tests.placement.surroundings import SLOPE, obstacle, with_ceiling
from tests.strategies import layouts


def box_in_inches(box: Box) -> tuple[float, ...]:
    return tuple(side / 25.4 for side in box)


def boxes_of(plan: Plan) -> list[tuple[float, ...]]:
    return [box_in_inches(each.box) for each in plan.pieces]


def test_even_gaps() -> None:
    # Even spacing, gap = (wall - sum of widths) / (n + 1): (100 - 60) / 4 = 10 in, so the left edges
    # are at 10, 10 + 20 + 10 = 40 and 70, the centres at 20, 50 and 80 (the usual gallery rule).
    wall = layout(
        [piece(name, inches(20), inches(20)) for name in "ABC"],
        groups=[group("trio", "ABC", gap=inches(10))],
        width=inches(100),
    )
    plan = plan_of(wall)
    assert [box[0] for box in boxes_of(plan)] == pytest.approx([10, 40, 70])
    assert [each.box.centre.x / 25.4 for each in plan.pieces] == pytest.approx([20, 50, 80])


@pytest.mark.parametrize(
    ("place", "corner"),
    [
        # A piece of 16 x 20 in on a wall of 200 x 96 in, eye line 60 in.
        (position(), (92, 50)),  # (200 - 16) / 2, 60 - 10
        (position(left=inches(30)), (30, 50)),
        (position(centre=inches(150)), (142, 50)),  # 150 - 8
        (position(right=inches(30)), (154, 50)),  # 200 - 30 - 16
        (position(eye_line=inches(57)), (92, 47)),
        (position(bottom=inches(40)), (92, 40)),
        (position(top=inches(90)), (92, 70)),
        (position(right=0.0, top=inches(96)), (184, 76)),
        # Over a bench from 30 to 110 in, 34 in high: its middle 70 - 8, 34 + clearance.
        (position(above="boot bench"), (62, 41)),
        (position(above="boot bench", clearance=inches(8)), (62, 42)),
    ],
)
def test_positions(place: Position, corner: tuple[float, float]) -> None:
    wall = layout([piece("Tide chart", place=place)], furniture=[furniture("boot bench", inches(30))])
    (box,) = boxes_of(plan_of(wall))
    assert box == pytest.approx((*corner, corner[0] + 16, corner[1] + 20))


TRIO = [
    piece("A", inches(10), inches(20)),
    piece("B", inches(20), inches(10)),
    piece("C", inches(30), inches(16)),
]


@pytest.mark.parametrize(
    ("arrange", "align", "boxes"),
    [
        # Row: 10 + 3 + 20 + 3 + 30 = 66 in wide, 20 in high, from (67, 50).
        (
            Arrangement.ROW,
            Align.CENTRE,
            [(67, 50, 77, 70), (80, 55, 100, 65), (103, 52, 133, 68)],
        ),
        (Arrangement.ROW, Align.TOP, [(67, 50, 77, 70), (80, 60, 100, 70), (103, 54, 133, 70)]),
        (Arrangement.ROW, Align.BOTTOM, [(67, 50, 77, 70), (80, 50, 100, 60), (103, 50, 133, 66)]),
        # Column: 20 + 3 + 10 + 3 + 16 = 52 in high, 30 in wide, from (85, 34) up to 86.
        (Arrangement.COLUMN, Align.CENTRE, [(95, 66, 105, 86), (90, 53, 110, 63), (85, 34, 115, 50)]),
        (Arrangement.COLUMN, Align.LEFT, [(85, 66, 95, 86), (85, 53, 105, 63), (85, 34, 115, 50)]),
        (Arrangement.COLUMN, Align.RIGHT, [(105, 66, 115, 86), (95, 53, 115, 63), (85, 34, 115, 50)]),
    ],
)
def test_arrangements(
    arrange: Arrangement, align: Align, boxes: list[tuple[float, float, float, float]]
) -> None:
    wall = layout(TRIO, groups=[group("trio", "ABC", arrange=arrange, align=align)])
    plan = plan_of(wall)
    for found, expected in zip(boxes_of(plan), boxes, strict=True):
        assert found == pytest.approx(expected)
    assert plan.groups[0].box == Box.around(each.box for each in plan.pieces)


def test_a_group_keeps_its_own_order_whatever_the_order_of_the_pieces() -> None:
    plan = plan_of(layout(reversed(TRIO), groups=[group("trio", "ABC")]))
    assert [each.name for each in plan.pieces] == ["C", "B", "A"]
    assert [box[0] for box in boxes_of(plan)] == pytest.approx([103, 80, 67])


def test_what_hangs_over_furniture_knows_it_and_its_group() -> None:
    wall = layout(
        [*TRIO, piece("Fog bell", inches(12), inches(9), place=position(left=inches(150)))],
        groups=[group("trio", "ABC", place=position(above="boot bench"))],
        furniture=[furniture("boot bench", inches(30))],
    )
    plan = plan_of(wall)
    bench = plan.furniture[0]
    assert [each.over for each in plan.pieces] == [bench, bench, bench, None]
    assert [each.group for each in plan.pieces] == ["trio", "trio", "trio", None]
    assert plan.groups[0].over == bench
    assert bench.box == Box(inches(30), 0, inches(110), inches(34))
    assert plan.groups[0].box.centre.x == pytest.approx(bench.box.centre.x)


def test_marks_move_with_their_piece() -> None:
    hang = hanging(Hanger.D_RINGS, inches(3), apart=inches(12), rise=inches(0.5))
    (placed,) = plan_of(layout([piece("Kelp print", hang=hang)])).pieces
    # Corner (92, 50) in: hang points at 92 + 2 and 92 + 14, 50 + 17; holes half an inch higher.
    assert [(mark.hole.x / 25.4, mark.hole.y / 25.4) for mark in placed.marks] == [
        pytest.approx((94, 67.5)),
        pytest.approx((106, 67.5)),
    ]
    assert placed.hang is hang


def test_the_plan_carries_what_is_printed() -> None:
    wall = replace(
        layout([piece("A")]), for_whom="the guest house", from_whom="the keeper", contact="x", issue="2"
    )
    plan = plan_of(wall)
    assert (plan.for_whom, plan.from_whom, plan.contact, plan.issue) == (
        "the guest house",
        "the keeper",
        "x",
        "2",
    )
    assert (plan.title, plan.units, plan.wall) == (wall.title, wall.units, wall.wall.size)
    assert (plan.eye_line_mm, plan.datum) == (wall.eye_line_mm, wall.datum)


def test_the_plan_carries_what_the_rules_and_the_overview_need() -> None:
    clock, window = obstacle("clock", 10, 60, 20, 70), obstacle("sash window", 60, 30, 96, 80)
    setting = RuleSetting("gap", True, 50.0, None, HERE)
    acceptance = Acceptance("eye-line", "A", "the stairs put the eye higher", HERE)
    wall = replace(
        with_ceiling(layout([piece("A", place=position(left=0.0, bottom=0.0))]), SLOPE),
        openings=(window,),
        fixtures=(clock,),
        rules=(setting,),
        accepted=(acceptance,),
    )
    plan = plan_of(wall)
    assert plan.ceiling == tuple(Point(inches(x), inches(y)) for x, y in SLOPE)
    assert plan.obstacles == (window, clock)
    assert (plan.rules, plan.accepted) == ((setting,), (acceptance,))


@settings(max_examples=60, deadline=None)
@given(layouts())
def test_sound_layouts_have_no_faults_and_no_overlaps(wall: Layout) -> None:
    placement = place_layout(wall)
    assert placement.faults == ()
    boxes = [each.box for each in placement.plan.pieces]
    for index, a in enumerate(boxes):
        assert -1e-6 <= a.x0 < a.x1 <= wall.wall.size.width + 1e-6
        assert -1e-6 <= a.y0 < a.y1 <= wall.wall.size.height + 1e-6
        for b in boxes[:index]:
            apart = a.x0 - b.x1, b.x0 - a.x1, a.y0 - b.y1, b.y0 - a.y1
            assert max(apart) >= -1e-6


def moved(wall: Layout, by: float) -> Layout:
    """The same things on a wall that is longer by so much at its left end."""

    def move(place: Position) -> Position:
        left = None if place.left_mm is None else place.left_mm + by
        centre = None if place.centre_mm is None else place.centre_mm + by
        return replace(place, left_mm=left, centre_mm=centre)

    return change_places(wall, move, lambda item: item.left_mm + by, by)


def mirrored(wall: Layout) -> Layout:
    """The same wall seen in a mirror."""
    width = wall.wall.size.width

    def mirror(place: Position) -> Position:
        centre = None if place.centre_mm is None else width - place.centre_mm
        return replace(place, left_mm=place.right_mm, right_mm=place.left_mm, centre_mm=centre)

    other = change_places(wall, mirror, lambda item: width - item.left_mm - item.size.width, 0.0)
    pieces = [
        replace(each, hang=each.hang and replace(each.hang, offset_mm=-each.hang.offset_mm))
        for each in other.pieces
    ]
    return replace(
        other, pieces=tuple(pieces), groups=tuple(mirror_inside(each) for each in other.groups)
    )


def mirror_inside(each: Group) -> Group:
    if each.arrange is Arrangement.ROW:
        return replace(each, members=each.members[::-1])
    swapped = {Align.LEFT: Align.RIGHT, Align.RIGHT: Align.LEFT}
    return replace(each, align=swapped.get(each.align, each.align))


def change_places(
    wall: Layout,
    move: Callable[[Position], Position],
    left_of: Callable[[Furniture], float],
    longer: float,
) -> Layout:
    """The same things at other places along a wall that may be longer."""
    size = wall.wall.size
    return replace(
        wall,
        wall=Wall(Size(size.width + longer, size.height), wall.wall.at),
        pieces=tuple(
            replace(each, position=each.position and move(each.position)) for each in wall.pieces
        ),
        groups=tuple(
            replace(each, position=each.position and move(each.position)) for each in wall.groups
        ),
        furniture=tuple(replace(item, left_mm=left_of(item)) for item in wall.furniture),
    )


def numbers(box: Box, marks: Sequence[Mark]) -> list[float]:
    return [*box, *(value for mark in marks for value in (*mark.hang, *mark.hole))]


@settings(max_examples=40, deadline=None)
@given(layouts(is_plain=True))
def test_a_wall_longer_at_its_left_end_moves_all_alike(wall: Layout) -> None:
    before, after = plan_of(wall), plan_of(moved(wall, 1234.5))
    for old, new in zip(before.pieces, after.pieces, strict=True):
        shifted = [mark.moved(1234.5, 0) for mark in old.marks]
        assert numbers(new.box, new.marks) == pytest.approx(
            numbers(old.box.moved(1234.5, 0), shifted), abs=1e-6
        )
        assert [(near.name, near.side) for near in new.neighbours] == [
            (near.name, near.side) for near in old.neighbours
        ]


@settings(max_examples=40, deadline=None)
@given(layouts(is_plain=True))
def test_a_mirrored_layout_gives_a_mirrored_plan(wall: Layout) -> None:
    width = wall.wall.size.width
    for old, new in zip(plan_of(wall).pieces, plan_of(mirrored(wall)).pieces, strict=True):
        x0, y0, x1, y1 = old.box
        assert list(new.box) == pytest.approx([width - x1, y0, width - x0, y1], abs=1e-6)
        holes = sorted((width - mark.hole.x, mark.hole.y) for mark in old.marks)
        for found, expected in zip([mark.hole for mark in new.marks], holes, strict=True):
            assert list(found) == pytest.approx(list(expected), abs=1e-6)


@settings(max_examples=40, deadline=None)
@given(layouts(is_plain=True))
def test_a_group_moved_as_one_keeps_its_insides(wall: Layout) -> None:
    for each in wall.groups:
        members = [member for member in wall.pieces if member.name in each.members]
        far = position(left=50_000.0, bottom=20_000.0)
        elsewhere = plan_of(
            replace(
                layout(members, groups=[replace(each, position=far)], width=200_000.0, height=100_000.0),
                units=wall.units,
            )
        )
        here = plan_of(wall)
        (old,) = [placed.box for placed in here.groups if placed.name == each.name]
        new = elsewhere.groups[0].box
        assert new.corner == pytest.approx((50_000.0, 20_000.0))
        before = {placed.name: placed.box for placed in here.pieces}
        for placed in elsewhere.pieces:
            back = placed.box.moved(old.x0 - new.x0, old.y0 - new.y0)
            assert list(back) == pytest.approx(list(before[placed.name]), abs=1e-6)
