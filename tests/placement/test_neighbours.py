from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templater.geometry import Box
from templater.layout.model import Layout
from templater.placement.model import Neighbour, Side
from templater.placement.neighbours import find_neighbours
from tests.builders import plan_of
from tests.strategies import layouts


def test_the_four_sides() -> None:
    boxes = {
        "middle": Box(100, 100, 200, 200),
        "left": Box(0, 120, 70, 180),
        "right": Box(250, 150, 300, 400),
        "above": Box(90, 210, 110, 300),
        "below": Box(150, 0, 160, 40),
        "far left": Box(-300, 100, -100, 200),
    }
    assert find_neighbours(boxes)["middle"] == (
        Neighbour("left", Side.LEFT, 30.0),
        Neighbour("right", Side.RIGHT, 50.0),
        Neighbour("above", Side.ABOVE, 10.0),
        Neighbour("below", Side.BELOW, 60.0),
    )


@pytest.mark.parametrize(
    ("other", "neighbours"),
    [
        (Box(200, 0, 300, 100), (Neighbour("b", Side.RIGHT, 100.0),)),
        (Box(100, 0, 200, 100), (Neighbour("b", Side.RIGHT, 0.0),)),  # touching
        (Box(700, 0, 800, 100), (Neighbour("b", Side.RIGHT, 600.0),)),
        (Box(700.1, 0, 800, 100), ()),
        (Box(200, 99, 300, 199), ()),  # shares 1 mm of height
        (Box(200, 98.9, 300, 199), (Neighbour("b", Side.RIGHT, 100.0),)),
        (Box(150, 150, 250, 250), ()),  # diagonal
    ],
)
def test_reach_and_shared_height(other: Box, neighbours: tuple[Neighbour, ...]) -> None:
    assert find_neighbours({"a": Box(0, 0, 100, 100), "b": other})["a"] == neighbours


def test_of_two_as_near_the_first_in_order_is_taken() -> None:
    upper, lower = Box(130, 60, 200, 100), Box(130.0 + 1e-9, 0, 200, 50)
    wide = Box(0, 0, 100, 100)
    assert find_neighbours({"a": wide, "u": upper, "l": lower})["a"][0].name == "u"
    assert find_neighbours({"l": lower, "u": upper, "a": wide})["a"][0].name == "l"


def looked_up(boxes: dict[str, Box], name: str) -> list[tuple[Side, float, set[str]]]:
    """Each side's nearest gap and all that are as near, by a look at every other piece."""
    me, found = boxes[name], []
    for side in Side:
        gaps = {}
        for other, box in boxes.items():
            height = min(me.y1, box.y1) - max(me.y0, box.y0)
            width = min(me.x1, box.x1) - max(me.x0, box.x0)
            gap, shared = {
                Side.LEFT: (me.x0 - box.x1, height),
                Side.RIGHT: (box.x0 - me.x1, height),
                Side.ABOVE: (box.y0 - me.y1, width),
                Side.BELOW: (me.y0 - box.y1, width),
            }[side]
            if other != name and shared > 1 and -1e-6 <= gap <= 600 + 1e-6:
                gaps[other] = gap
        if gaps:
            least = min(gaps.values())
            found.append((side, least, {other for other, gap in gaps.items() if gap < least + 1e-5}))
    return found


def agree(boxes: dict[str, Box]) -> None:
    for name, neighbours in find_neighbours(boxes).items():
        expected = looked_up(boxes, name)
        assert [near.side for near in neighbours] == [side for side, _, _ in expected]
        for near, (_, gap, names) in zip(neighbours, expected, strict=True):
            assert near.name in names
            assert near.gap_mm == pytest.approx(max(gap, 0.0), abs=1e-5)


GRID = st.integers(0, 12).map(lambda count: 100.0 * count)


@given(
    st.lists(
        st.builds(
            lambda x, y, width, height: Box(x, y, x + width, y + height),
            GRID,
            GRID,
            st.sampled_from([40.0, 60.0, 99.5, 100.0]),
            st.sampled_from([40.0, 60.0, 99.5, 100.0]),
        ),
        max_size=25,
        unique_by=lambda box: box.corner,
    )
)
def test_neighbours_agree_with_a_look_at_every_pair(boxes: list[Box]) -> None:
    agree({str(number): box for number, box in enumerate(boxes)})


@settings(max_examples=40, deadline=None)
@given(layouts())
def test_neighbours_of_a_plan(wall: Layout) -> None:
    plan = plan_of(wall)
    boxes = {piece.name: piece.box for piece in plan.pieces}
    agree(boxes)
    assert {piece.name: piece.neighbours for piece in plan.pieces} == find_neighbours(boxes)
