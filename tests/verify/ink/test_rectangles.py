"""Chains of straight lines, some of which make an upright rectangle."""

from __future__ import annotations

from itertools import pairwise

import pytest

from templater.geometry import Box, Point
from templater.verify.ink.rectangles import read_rectangle

CORNERS = (Point(10, 20), Point(40, 20), Point(40, 30), Point(10, 30))


@pytest.mark.parametrize("first", range(4))
@pytest.mark.parametrize("step", [1, -1])
def test_a_rectangle_from_any_corner_either_way(first: int, step: int) -> None:
    points = [CORNERS[(first + step * number) % 4] for number in range(5)]
    assert read_rectangle(points) == Box(10, 20, 40, 30)
    assert read_rectangle(points[:4]) is None
    assert read_rectangle([*points, points[1]]) is None
    for at in range(5):
        for dx, dy in pairwise((0.0, 0.01, 0.0, -0.01, 0.0)):
            points[at], before = points[at].moved(dx, dy), points[at]
            assert read_rectangle(points) is None
            points[at] = before


def test_four_corners_in_another_order_are_no_rectangle() -> None:
    one, two, three, four = CORNERS
    assert read_rectangle([one, three, two, four, one]) is None
