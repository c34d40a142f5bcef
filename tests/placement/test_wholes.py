"""What holds of every arrangement, however groups stand within groups; overlaps judged by shapely."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from itertools import combinations

import pytest
import shapely
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from templater.geometry import Box, Point, Size
from templater.layout.model import (
    Align,
    Arrangement,
    Cells,
    Group,
    Layout,
    Ledge,
    LeftRight,
    Obstacle,
    Piece,
    Position,
    Stair,
)
from templater.placement.model import Plan
from tests.builders import HERE, group, layout, piece, plan_of, position

WIDTH, HEIGHT = 400_000.0, 200_000.0
"""A wall, mm, on which 64 of the largest pieces can hang in one line on each side of the clock."""
SIDES = st.integers(40, 900).map(float)
GAPS = st.integers(1, 150).map(float)
ALIGNMENTS = {
    Arrangement.ROW: (Align.TOP, Align.CENTRE, Align.BOTTOM),
    Arrangement.COLUMN: (Align.LEFT, Align.CENTRE, Align.RIGHT),
    Arrangement.GRID: (Align.CENTRE,),
}
SIDEWAYS = {Align.LEFT: Align.RIGHT, Align.RIGHT: Align.LEFT}
OTHER_SIDE = {LeftRight.LEFT: LeftRight.RIGHT, LeftRight.RIGHT: LeftRight.LEFT}
CLOCK = Obstacle(
    "clock", "clock", Box(WIDTH / 2 - 150, HEIGHT / 2, WIDTH / 2 + 150, HEIGHT / 2 + 300), None, HERE
)


@st.composite
def members(draw: st.DrawFn, depth: int, pieces: list[Piece], groups: list[Group]) -> tuple[str, ...]:
    """Names of two to four pieces, some of which are groups instead; each is put into its list."""
    names = []
    for _ in range(draw(st.integers(2, 4))):
        if depth and draw(st.integers(0, 3)) == 0:
            inner = replace(draw(plain_groups(depth - 1, pieces, groups)), position=None)
            groups.append(inner)
            names.append(inner.name)
        else:
            pieces.append(piece(f"piece {len(pieces)}", draw(SIDES), draw(SIDES)))
            names.append(pieces[-1].name)
    return tuple(names)


@st.composite
def plain_groups(draw: st.DrawFn, depth: int, pieces: list[Piece], groups: list[Group]) -> Group:
    """A row, a column or a grid."""
    names = draw(members(depth, pieces, groups))
    arrange = draw(st.sampled_from(sorted(ALIGNMENTS, key=lambda each: each.value)))
    whole = group(
        f"group {len(groups)} of {len(pieces)}",
        names,
        arrange=arrange,
        gap=draw(GAPS),
        align=draw(st.sampled_from(ALIGNMENTS[arrange])),
    )
    columns = draw(st.integers(1, 4)) if arrange is Arrangement.GRID else None
    return replace(whole, columns=columns, cells=draw(st.sampled_from(Cells)))


@st.composite
def walls(draw: st.DrawFn) -> Layout:
    """A large wall with one group of any kind, other groups within it, and a clock in the middle."""
    pieces: list[Piece] = []
    groups: list[Group] = []
    whole = draw(plain_groups(2, pieces, groups))
    where = position(left=1500.0, bottom=500.0)
    stair = Stair(180.0, 260.0, Point(1500.0, 180.0), draw(st.sampled_from(LeftRight)))
    kind = draw(st.sampled_from(("plain", "stair", "ledge", "around", "spread", "beside")))
    match kind:
        case "stair":
            whole = replace(whole, arrange=Arrangement.STAIR, stair=stair)
            where = position(left=1500.0, eye_line=HEIGHT / 2)
        case "ledge":
            pieces.append(replace(piece("ledge", WIDTH / 4, 40.0), position=None))
            whole = replace(whole, arrange=Arrangement.LEDGE, ledge=Ledge("ledge", 1500.0))
            where = position(left=1500.0)
        case "around" if whole.arrange is not Arrangement.GRID:
            where = replace(position(), around="clock")
        case "spread" if whole.arrange is not Arrangement.GRID:
            whole = replace(whole, spread_mm=WIDTH / 4)
        case "beside":
            where = replace(position(), beside="clock", side=draw(st.sampled_from(LeftRight)))
    wall = layout(pieces, groups=[replace(whole, position=where), *groups], width=WIDTH, height=HEIGHT)
    return replace(wall, eye_line_mm=HEIGHT / 2, fixtures=(CLOCK,))


def shape_of(box: Box) -> shapely.Polygon:
    return shapely.box(*box)


def overlap_of(a: shapely.Polygon, b: shapely.Polygon) -> float:
    return float(shapely.area(shapely.intersection(a, b)))


@settings(max_examples=60, deadline=None)
@given(walls())
def test_nothing_overlaps(wall: Layout) -> None:
    plan = plan_of(wall)
    shapes = [shape_of(each.box) for each in plan.pieces] + [shape_of(CLOCK.box)]
    assert len(plan.pieces) == len(wall.pieces)
    for a, b in combinations(shapes, 2):
        assert overlap_of(a, b) < 0.01  # a hair's breadth of floats along 10 m


@settings(max_examples=60, deadline=None)
@given(walls())
def test_groups_hold_what_is_theirs_and_nothing_larger(wall: Layout) -> None:
    plan = plan_of(wall)
    boxes = {**boxes_of(plan), **{each.name: each.box for each in plan.groups}}
    for each in plan.groups:
        inside = [boxes[name] for name in each.pieces]
        whole = shapely.union_all([shape_of(box) for box in inside])
        assert whole.bounds == pytest.approx(tuple(each.box), abs=1e-6)
        assert [name for name, _ in each.parts] == list(
            next(one.members for one in wall.groups if one.name == each.name)
        )
        assert all(list(box) == pytest.approx(list(boxes[name])) for name, box in each.parts)


def boxes_of(plan: Plan) -> dict[str, Box]:
    return {each.name: each.box for each in plan.pieces}


def assert_same(found: Plan, expected: Plan, change: Callable[[Box], Box]) -> None:
    old, new = boxes_of(expected), boxes_of(found)
    assert list(new) == list(old)
    for name, box in old.items():
        assert list(new[name]) == pytest.approx(list(change(box)), abs=1e-6)


@settings(max_examples=60, deadline=None)
@given(walls())
def test_a_wall_longer_at_its_left_end_moves_all_alike(wall: Layout) -> None:
    by = 1234.5
    groups = []
    for each in wall.groups:
        where = each.position
        if where is not None and where.left_mm is not None:
            where = replace(where, left_mm=where.left_mm + by)
        stair = each.stair and replace(each.stair, start=each.stair.start.moved(by, 0))
        groups.append(replace(each, position=where, stair=stair))
    longer = replace(
        wall,
        wall=replace(wall.wall, size=Size(WIDTH + by, wall.wall.size.height)),
        groups=tuple(groups),
        fixtures=(replace(CLOCK, box=CLOCK.box.moved(by, 0)),),
    )
    assert_same(plan_of(longer), plan_of(wall), lambda box: box.moved(by, 0))


@settings(max_examples=60, deadline=None)
@given(walls())
def test_a_group_moved_as_one_keeps_its_insides(wall: Layout) -> None:
    plan = plan_of(wall)
    # By its corners, since stairs, a ledge or a thing would hold it where it is.
    start = plan.groups[0].box.corner
    corners = tuple(box.corner.moved(-start.x, -start.y) for _, box in plan.groups[0].parts)
    whole = replace(
        wall.groups[0],
        arrange=Arrangement.PLACED,
        corners=corners,
        ledge=None,
        stair=None,
        spread_mm=None,
        position=position(left=900.0, bottom=300.0),
    )
    pieces = tuple(each for each in wall.pieces if each.name != "ledge")
    moved = plan_of(replace(wall, groups=(whole, *wall.groups[1:]), pieces=pieces, fixtures=()))
    first = pieces[0].name
    dx = boxes_of(moved)[first].x0 - boxes_of(plan)[first].x0
    dy = boxes_of(moved)[first].y0 - boxes_of(plan)[first].y0
    old = boxes_of(plan)
    for name, box in boxes_of(moved).items():
        assert list(box) == pytest.approx(list(old[name].moved(dx, dy)), abs=1e-6)


def mirror_group(each: Group) -> Group | None:
    """The group in a mirror; None for what has no mirror image by itself (a short last row)."""
    where = each.position and mirror_position(each.position)
    names = each.members
    if each.arrange is Arrangement.GRID:
        columns = each.columns or len(names)
        rows = [names[start : start + columns] for start in range(0, len(names), columns)]
        if len(rows[-1]) < len(rows[0]):
            return None
        return replace(each, position=where, members=tuple(name for row in rows for name in row[::-1]))
    if each.arrange is Arrangement.COLUMN:
        return replace(each, position=where, align=SIDEWAYS.get(each.align, each.align))
    stair = each.stair
    if stair is not None:
        start = Point(WIDTH - stair.start.x, stair.start.y)
        stair = replace(stair, up=OTHER_SIDE[stair.up], start=start)
    return replace(each, position=where, members=names[::-1], stair=stair)


def mirror_position(where: Position) -> Position:
    side = where.side and OTHER_SIDE[where.side]
    return replace(where, left_mm=where.right_mm, right_mm=where.left_mm, side=side)


def has_no_mirror(whole: Group) -> bool:
    """Stairs keep the gap to the frames on the left; an odd row around a thing has two halves."""
    around = whole.position is not None and whole.position.around is not None
    return whole.stair is not None or (around and len(whole.members) % 2 == 1)


@settings(max_examples=60, deadline=None)
@given(walls())
def test_a_mirrored_layout_gives_a_mirrored_plan(wall: Layout) -> None:
    plan = plan_of(wall)
    groups = [mirror_group(each) for each in wall.groups]
    assume(not has_no_mirror(wall.groups[0]) and None not in groups)
    mirrored = replace(wall, groups=tuple(each for each in groups if each is not None))
    assert_same(plan_of(mirrored), plan, lambda box: Box(WIDTH - box.x1, box.y0, WIDTH - box.x0, box.y1))


def test_a_grid_that_is_symmetric_in_itself_is_its_own_mirror() -> None:
    works = [piece(f"{number}", 300.0, 400.0) for number in range(9)]
    names = [each.name for each in works]
    nine = replace(group("nine", names, arrange=Arrangement.GRID, gap=60.0), columns=3)
    plan = plan_of(layout(works, groups=[nine], width=4000.0))
    shapes = {tuple(round(side, 6) for side in each.box) for each in plan.pieces}
    mirrored = {(4000 - x1, y0, 4000 - x0, y1) for x0, y0, x1, y1 in shapes}
    assert {tuple(round(side, 6) for side in box) for box in mirrored} == shapes
