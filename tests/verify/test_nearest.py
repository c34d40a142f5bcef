"""Points that are taken by how near they lie."""

from __future__ import annotations

from templater.geometry import Point
from templater.verify.nearest import Points


def test_the_nearest_point_within_reach_is_taken_once() -> None:
    one, other = Point(1.49, 2.51), Point(1.52, 2.51)
    points = Points([one, other, Point(9.0, 9.0)])
    assert points.take(Point(1.5, 2.49), 0.01) is None
    assert points.take(Point(1.5, 2.5), 0.05) == one
    assert points.take(Point(1.5, 2.5), 0.05) == other
    assert points.take(Point(1.5, 2.5), 0.05) is None
    assert list(points) == [Point(9.0, 9.0)]
    # Whichever square millimetres they lie in.
    for x in (-0.2, 0.2):
        for y in (-0.2, 0.2):
            assert Points([Point(5.5 + x, 5.5 + y)]).take(Point(5.5, 5.5), 0.3) is not None
            assert Points([Point(5.5, 5.5)]).take(Point(5.5 + x, 5.5 + y), 0.3) is not None
