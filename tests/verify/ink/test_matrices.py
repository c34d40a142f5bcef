"""Plane transformations, by sums worked by hand."""

from __future__ import annotations

from templater.geometry import Point
from templater.verify.ink.matrices import apply, multiply, stretch


def test_transformations() -> None:
    first, then = (2.0, 3.0, 5.0, 7.0, 11.0, 13.0), (17.0, 19.0, 23.0, 29.0, 31.0, 37.0)
    # (1, 1) -> (2 + 5 + 11, 3 + 7 + 13) -> (17 x 18 + 23 x 23 + 31, 19 x 18 + 29 x 23 + 37)
    assert apply(first, 1.0, 1.0) == Point(18.0, 23.0)
    assert apply(then, 18.0, 23.0) == Point(866.0, 1046.0)
    for x, y in ((1.0, 1.0), (0.0, 0.0), (3.0, -2.0), (0.0, 1.0)):
        assert apply(multiply(first, then), x, y) == apply(then, *apply(first, x, y))
    assert stretch((2.0, 0.0, 5.0, 8.0, 1.0, 1.0)) == 4.0
    assert stretch((0.0, 3.0, -3.0, 0.0, 0.0, 0.0)) == 3.0
