"""The written form of a generated layout says what the layout says."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given, settings

from templater.geometry import Box
from templater.layout.model import Layout, Obstacle
from templater.layout.read import read_layout
from tests.builders import HERE
from tests.strategies import layouts, write_layout


def without_places(wall: Layout) -> Layout:
    """The layout with what the reader alone decides, slugs and places in the file, made alike."""
    return replace(
        wall,
        wall=replace(wall.wall, at=HERE),
        furniture=tuple(replace(each, at=HERE) for each in wall.furniture),
        pieces=tuple(
            replace(
                each,
                slug="",
                at=HERE,
                hang=each.hang and replace(each.hang, at=HERE),
                position=each.position and replace(each.position, at=HERE),
            )
            for each in wall.pieces
        ),
        groups=tuple(
            replace(each, at=HERE, position=each.position and replace(each.position, at=HERE))
            for each in wall.groups
        ),
        openings=tuple(without_place(each) for each in wall.openings),
        fixtures=tuple(without_place(each) for each in wall.fixtures),
    )


def without_place(obstacle: Obstacle) -> Obstacle:
    """Something in the way without its place in the file, to a millionth of a millimetre."""
    return replace(obstacle, at=HERE, box=Box(*(round(value, 6) for value in obstacle.box)))


@settings(max_examples=60, deadline=None)
@given(layouts())
def test_a_written_layout_is_read_back_the_same(wall: Layout) -> None:
    reading = read_layout(write_layout(wall), "hall.yaml")
    assert reading.faults == ()
    assert reading.layout is not None
    assert without_places(reading.layout) == without_places(wall)
