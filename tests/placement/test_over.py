from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templater.geometry import Point
from templater.layout.model import Arrangement, Layout, LeftRight, Position, Stair
from templater.placement.model import PlacedGroup, PlacedPiece
from templater.rules.check import check_rules
from tests.builders import furniture, group, inches, layout, piece, plan_of, position


def wall(place: Position, width: float = 54) -> Layout:
    """A piece 20 in high near a bench of 80 x 34 in from 40 in on, and a stool of 20 x 18 in."""
    return layout(
        [piece("Tide chart", inches(width), inches(20), place=place)],
        furniture=[
            furniture("boot bench", inches(40)),
            furniture("stool", inches(140), inches(20), inches(18)),
        ],
    )


def over(wall: Layout) -> tuple[str | None, bool]:
    (placed,) = plan_of(wall).pieces
    return placed.over.name if placed.over else None, placed.is_over_unasked


@pytest.mark.parametrize(
    ("place", "width", "expected"),
    [
        # At most 12 in above it, over at least half of the narrower; common practice, no source.
        (position(above="boot bench"), 54, ("boot bench", False)),
        (position(above="boot bench", clearance=inches(30)), 54, ("boot bench", False)),
        (position(centre=inches(80), bottom=inches(41)), 54, ("boot bench", True)),
        (position(centre=inches(80), bottom=inches(34)), 54, ("boot bench", True)),
        (position(centre=inches(80), bottom=inches(46)), 54, ("boot bench", True)),
        (position(centre=inches(80), bottom=inches(46.1)), 54, (None, False)),
        (position(left=inches(13), bottom=inches(41)), 54, ("boot bench", True)),  # 27 of 54 in
        (position(left=inches(12), bottom=inches(41)), 54, (None, False)),  # 26 in
        (position(left=inches(30), bottom=inches(41)), 120, ("boot bench", True)),  # all 80 in of it
        (position(left=inches(150), bottom=inches(25)), 30, ("stool", True)),  # 10 of its 20 in
        (position(left=inches(151), bottom=inches(25)), 30, (None, False)),  # 9 in
    ],
)
def test_what_hangs_over_furniture(
    place: Position, width: float, expected: tuple[str | None, bool]
) -> None:
    assert over(wall(place, width)) == expected


def test_of_two_the_nearest_below_counts() -> None:
    place = position(left=inches(40), bottom=inches(40))
    chest = furniture("chest", inches(40), inches(30), inches(30))
    found = replace(wall(place, 60), furniture=(chest, furniture("boot bench", inches(40))))
    assert over(found) == ("boot bench", True)


def test_a_group_and_all_in_it_hang_over_it_as_one() -> None:
    found = plan_of(
        layout(
            [piece(name, inches(16), inches(20)) for name in "ABC"],
            groups=[group("trio", "ABC", place=position(centre=inches(80), bottom=inches(41)))],
            furniture=[furniture("boot bench", inches(40))],
        )
    )
    (trio,) = found.groups
    hung: list[PlacedGroup | PlacedPiece] = [trio, *found.pieces]
    for each in hung:
        assert each.over is not None
        assert (each.over.name, each.is_over_unasked) == ("boot bench", True)


def test_what_hangs_on_both_sides_of_furniture_is_not_over_it() -> None:
    # The chest, 80 to 120 in, 65 in high; A to 79 in and B from 121 in, their lower edges at 50 in.
    row = group("pair", "AB", gap=inches(42), place=position(centre=inches(100), bottom=inches(50)))
    chest = furniture("chest", inches(80), inches(40), inches(65))
    found = plan_of(layout([piece(name) for name in "AB"], groups=[row], furniture=[chest]))
    left, right = found.pieces
    assert (left.box.x1, right.box.x0) == pytest.approx((inches(79), inches(121)))
    assert (found.groups[0].over, left.over, right.over) == (None, None, None)


def test_along_stairs_nothing_is_over_furniture() -> None:
    # The first centre is at x = 48: 28 in right of the first step, so 21 + 60 in high, its lower edge
    # at 71 in: 6 in above the chest.
    start = Point(inches(20), 0.0)
    flight = replace(
        group("flight", "AB", arrange=Arrangement.STAIR, place=position(left=inches(40))),
        stair=Stair(inches(7.5), inches(10), start, LeftRight.RIGHT),
    )
    chest = furniture("chest", inches(0), inches(80), inches(65))
    found = plan_of(
        layout([piece(name) for name in "AB"], groups=[flight], furniture=[chest], height=inches(200))
    )
    assert found.groups[0].box.y0 == pytest.approx(inches(71))
    assert found.groups[0].over is None
    assert [each.over for each in found.pieces] == [None, None]
    # Nor is a row among what hangs along the stairs.
    pair = replace(group("pair", "BC"), position=None)
    found = plan_of(
        layout(
            [piece(name) for name in "ABC"],
            groups=[replace(flight, members=("A", "pair")), pair],
            furniture=[chest],
            height=inches(200),
        )
    )
    assert [each.over for each in found.groups] == [None, None]
    assert [each.over for each in found.pieces] == [None, None, None]


@pytest.mark.parametrize(
    ("place", "verdicts"),
    [
        # Its middle 20 in off the bench's: past the end by 7 in. 12 in above it, centre at 56 in.
        (
            position(centre=inches(60), bottom=inches(46)),
            {
                "width-over-furniture": "kept",
                "past-the-ends": "broken",
                "clearance": "broken",
                "eye-line": "broken",
            },
        ),
        (
            position(above="boot bench"),
            {
                "width-over-furniture": "kept",
                "past-the-ends": "kept",
                "clearance": "kept",
                "eye-line": "n/a",
            },
        ),
    ],
)
def test_it_is_judged_by_the_furniture_and_unasked_by_the_eye_line(
    place: Position, verdicts: dict[str, str]
) -> None:
    found = {each.rule: each.verdict.value for each in check_rules(plan_of(wall(place)))}
    assert {rule: found[rule] for rule in verdicts} == verdicts


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 140), st.integers(34, 76))
def test_asked_or_not_the_furniture_below_is_the_same(left: int, bottom: int) -> None:
    """Where 'above' would hang it, it hangs over the same furniture; and only what is near is told."""
    (placed,) = plan_of(wall(position(left=inches(left), bottom=inches(bottom)))).pieces
    assert placed.is_over_unasked is (placed.over is not None)
    if placed.over is not None:
        assert 0 <= placed.box.y0 - placed.over.box.y1 <= inches(12) + 1e-6
