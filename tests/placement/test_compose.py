from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.geometry import Box, Point, Size
from templater.layout.model import Align, Arrangement, Group, Hanger, Layout, Ledge, OpenChoice, Piece
from templater.mounting.notes import NO_HANGER, ON_LEDGE
from templater.placement.compose import compose_groups
from templater.placement.things import find_things
from tests.builders import (
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
from tests.placement.surroundings import in_inches, with_inner

INCH = 25.4


def two_beside_one() -> Layout:
    """A piece of 30 x 40 in with a column of two small ones, 16 x 20 and 12 x 12 in, beside it."""
    wall = layout(
        [
            piece("Chart", inches(30), inches(40)),
            piece("Gull", inches(16), inches(20)),
            piece("Knot", inches(12), inches(12)),
        ],
        groups=[
            group("trio", ["Chart", "pair"], place=position(left=inches(10), bottom=inches(40))),
            group("pair", ["Gull", "Knot"], arrange=Arrangement.COLUMN, gap=inches(2), align=Align.LEFT),
        ],
    )
    return with_inner(wall, "pair")


def test_a_group_in_a_group_counts_as_one_piece() -> None:
    # The pair is 16 in wide and 20 + 2 + 12 = 34 in high. Row: the chart from 10 to 40 in, the pair
    # from 43 to 59 in, 40 + (40 - 34) / 2 = 43 in up; the knot's bottom is there, the gull's at 57.
    plan = plan_of(two_beside_one())
    boxes = {each.name: in_inches(each.box) for each in plan.pieces}
    assert boxes["Chart"] == pytest.approx((10, 40, 40, 80))
    assert boxes["Gull"] == pytest.approx((43, 57, 59, 77))
    assert boxes["Knot"] == pytest.approx((43, 43, 55, 55))


def test_the_plan_tells_which_group_is_within_which() -> None:
    plan = plan_of(two_beside_one())
    trio, pair = plan.groups
    assert (trio.name, trio.within, trio.pieces) == ("trio", None, ("Chart", "Gull", "Knot"))
    assert (pair.name, pair.within, pair.pieces) == ("pair", "trio", ("Gull", "Knot"))
    assert (trio.gap_mm, pair.gap_mm) == (inches(3), inches(2))
    boxes = {each.name: each.box for each in plan.pieces}
    assert trio.parts == (("Chart", boxes["Chart"]), ("pair", pair.box))
    assert pair.parts == (("Gull", boxes["Gull"]), ("Knot", boxes["Knot"]))
    assert {each.name: each.group for each in plan.pieces} == {
        "Chart": "trio",
        "Gull": "pair",
        "Knot": "pair",
    }


def test_only_the_outermost_group_hangs_over_furniture() -> None:
    wall = two_beside_one()
    outer = replace(wall.groups[0], position=position(above="bench"))
    wall = replace(wall, groups=(outer, wall.groups[1]), furniture=(furniture("bench", inches(60)),))
    plan = plan_of(wall)
    bench = plan.furniture[0]
    assert [each.over for each in plan.groups] == [bench, None]
    assert [each.over for each in plan.pieces] == [bench] * 3


SIDES = st.integers(40, 900).map(float)
SIZES = st.lists(st.builds(Size, SIDES, SIDES), min_size=2, max_size=4)


def on_large_wall(pieces: list[Piece], *groups: Group) -> Layout:
    return layout(pieces, groups=groups, width=50_000.0, height=20_000.0, eye_line=9000.0)


@given(SIZES, SIZES, st.floats(1, 200), st.sampled_from((Arrangement.ROW, Arrangement.COLUMN)))
def test_a_group_in_a_group_hangs_as_a_piece_of_its_size_would(
    inner: list[Size], outer: list[Size], gap: float, arrange: Arrangement
) -> None:
    small = [piece(f"s{number}", *size) for number, size in enumerate(inner)]
    large = [piece(f"l{number}", *size) for number, size in enumerate(outer)]
    names = [each.name for each in large]
    column = group("inner", [each.name for each in small], arrange=Arrangement.COLUMN, gap=gap)
    whole = group("outer", [*names, "inner"], arrange=arrange, gap=gap)
    nested = plan_of(with_inner(on_large_wall([*small, *large], whole, column), "inner"))
    box = nested.groups[1].box
    assert box.width == pytest.approx(max(size.width for size in inner))
    assert box.height == pytest.approx(sum(size.height for size in inner) + gap * (len(inner) - 1))
    flat = plan_of(on_large_wall([*large, piece("inner", *box.size)], whole))
    parts = zip(flat.groups[0].parts, nested.groups[0].parts, strict=True)
    for (name, expected), (same, found) in parts:
        assert name == same
        assert list(found) == pytest.approx(list(expected), abs=1e-6)
    within = Box.around(each.box for each in nested.pieces if each.group == "inner")
    assert list(within) == pytest.approx(list(box), abs=1e-6)


def shelf(*, ledge_width: float = 48, row: tuple[str, ...] = ("A", "B"), gap: float = 3) -> Layout:
    """Two pieces, 16 x 20 and 10 x 12 in, on a ledge 1 1/2 in thick, its top 55 in up."""
    hang = hanging(Hanger.CLEAT, inches(0.75), width=inches(32), every=inches(16))
    ledge = piece("shelf ledge", inches(ledge_width), inches(1.5), hang=hang, weight_kg=2.0)
    on_it = group("shelf", row, arrange=Arrangement.LEDGE, gap=inches(gap))
    on_it = replace(on_it, ledge=Ledge("shelf ledge", inches(55)))
    pieces = [piece("A", hang=hanging()), piece("B", inches(10), inches(12))]
    wall = layout([*pieces, ledge], groups=[on_it])
    return replace(wall, pieces=tuple(replace(each, position=None) for each in wall.pieces))


def test_pieces_stand_on_a_ledge_and_only_it_has_holes() -> None:
    # Row: 16 + 3 + 10 = 29 in, in the middle of a wall of 200 in: from 85 1/2 in. The ledge: 76 to
    # 124 in, its top at 55 in, its three screws 3/4 in below, 16 in apart.
    plan = plan_of(shelf())
    a, b, ledge = plan.pieces
    assert in_inches(a.box) == pytest.approx((85.5, 55, 101.5, 75))
    assert in_inches(b.box) == pytest.approx((104.5, 55, 114.5, 67))
    assert in_inches(ledge.box) == pytest.approx((76, 53.5, 124, 55))
    holes = [(mark.hole.x / INCH, mark.hole.y / INCH) for mark in ledge.marks]
    assert holes == [pytest.approx((x, 54.25)) for x in (84, 100, 116)]
    assert (a.marks, b.marks) == ((), ())
    assert (a.hang, b.hang) == (None, None)
    assert a.notes == b.notes == (ON_LEDGE,)
    assert ON_LEDGE not in ledge.notes
    assert NO_HANGER not in ledge.notes


def test_the_ledge_belongs_to_its_group_but_is_no_part_of_the_row() -> None:
    plan = plan_of(shelf())
    (shelf_group,) = plan.groups
    assert in_inches(shelf_group.box) == pytest.approx((76, 53.5, 124, 75))
    assert [name for name, _ in shelf_group.parts] == ["A", "B"]
    assert shelf_group.pieces == ("A", "B", "shelf ledge")
    assert [each.group for each in plan.pieces] == ["shelf"] * 3


def test_what_hangs_into_the_ledge_is_an_overlap() -> None:
    wall = shelf()
    low = piece("Low", inches(4), inches(4), place=position(left=inches(78), bottom=inches(50)))
    (fault,) = place_layout(replace(wall, pieces=(*wall.pieces, low))).faults
    over = "hangs over 'shelf ledge' by 4 in (102 mm) across and 1/2 in (13 mm) up"
    assert fault.message == f"piece 'Low' {over}"


def test_a_cluster_above_furniture_aims_at_two_thirds_of_it() -> None:
    wall = layout(
        [piece(name) for name in "ABCD"],
        groups=[group("salon", "ABCD", arrange=Arrangement.CLUSTER, place=position(above="bench"))],
        furniture=[furniture("bench", inches(30), inches(90))],
    )
    (composed,) = compose_groups(wall, find_things(wall)).values()
    target = composed.group.target
    assert target is not None
    # 60 in wide; four pieces of (16 + 3) x (20 + 3) = 1748 sq in; / (60 + 3) - 3 = 24.746 in high.
    assert target.width / INCH == pytest.approx(60)
    assert target.height / INCH == pytest.approx(4 * 19 * 23 / 63 - 3)


def test_what_is_left_open_is_not_on_the_wall() -> None:
    wall = layout(
        [piece(name) for name in "ABCD"],
        groups=[
            group("outer", ["A", "inner"]),
            replace(group("inner", ["B", "C"]), open_choice=OpenChoice(True, False, None, None)),
        ],
    )
    placement = place_layout(with_inner(wall, "inner"))
    assert [each.name for each in placement.plan.pieces] == ["D"]
    assert placement.plan.groups == ()
    (fault,) = placement.faults
    assert fault.message == "'inner' leaves its arrangement open"


def test_a_piece_of_a_pool_that_is_not_chosen_is_not_on_the_wall() -> None:
    wall = layout([piece("A"), piece("B", place=position(left=0.0))])
    pooled = replace(wall.pieces[0], position=None)
    placement = place_layout(replace(wall, pieces=(pooled, wall.pieces[1])))
    assert placement.faults == ()
    assert [each.name for each in placement.plan.pieces] == ["B"]


def test_a_placed_group_keeps_its_corners() -> None:
    corners = (Point(0, 0), Point(inches(20), inches(3)))
    placed = group("pair", "AB", arrange=Arrangement.PLACED, place=position(left=0.0, bottom=0.0))
    wall = layout([piece("A"), piece("B")], groups=[replace(placed, corners=corners)])
    assert [each.box.corner for each in plan_of(wall).pieces] == [*corners]
