from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.geometry import Point
from templater.placement.ceiling import find_headroom

ATTIC = (Point(0, 100), Point(60, 220), Point(140, 220), Point(200, 160))
"""Up by 2 in 1 to 60, level to 140, down by 1 in 1."""


@pytest.mark.parametrize(
    ("x0", "x1", "height"),
    [
        (0, 10, 100),
        (10, 20, 120),  # 100 + 2 x 10
        (30, 100, 160),
        (80, 120, 220),
        (130, 160, 200),  # 220 - 20
        (50, 190, 170),  # the right is lower: 220 - 50
        (20, 20, 140),
        (60, 60, 220),
        (200, 200, 160),
        (-50, 5, 100),
    ],
)
def test_the_lowest_ceiling_over_a_stretch(x0: float, x1: float, height: float) -> None:
    assert find_headroom(ATTIC, 220, x0, x1) == pytest.approx(height)


def test_the_lowest_point_may_lie_within_the_stretch() -> None:
    beam = (Point(0, 200), Point(50, 150), Point(100, 200))
    assert find_headroom(beam, 200, 30, 90) == 150


def test_a_level_ceiling_is_as_high_as_the_wall() -> None:
    assert find_headroom((), 240, 10, 20) == 240


COORDINATE = st.integers(0, 400).map(float)


@given(
    st.lists(COORDINATE, min_size=2, max_size=6, unique=True),
    st.lists(COORDINATE, min_size=6, max_size=6),
    COORDINATE,
    COORDINATE,
)
def test_headroom_agrees_with_a_look_at_many_places(
    xs: list[float], ys: list[float], first: float, second: float
) -> None:
    ceiling = [Point(x, y) for x, y in zip(sorted(xs), ys, strict=False)]
    left, right = ceiling[0].x, ceiling[-1].x
    x0, x1 = sorted(min(max(x, left), right) for x in (first, second))
    heights = []
    for x in (*(x0 + (x1 - x0) * step / 64 for step in range(65)), *(x for x in xs if x0 <= x <= x1)):
        number = max(index for index, point in enumerate(ceiling[:-1]) if point.x <= x)
        (ax, ay), (bx, by) = ceiling[number], ceiling[number + 1]
        heights.append(ay + (by - ay) * (x - ax) / (bx - ax))
    assert find_headroom(ceiling, 400, x0, x1) == pytest.approx(min(heights), abs=1e-6)
