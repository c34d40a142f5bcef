from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.geometry import Box, Point
from templater.scene.overview.sightlines import draw_seen, find_share

FRAME = Box(0, 0, 100, 100)


def ends(lines: list) -> list[tuple[float, ...]]:  # type: ignore[type-arg]
    return [(*line.start, *line.end) for line in lines]


@pytest.mark.parametrize(
    ("start", "end", "seen"),
    [
        (Point(10, 10), Point(90, 90), [(10, 10, 90, 90)]),
        (Point(-50, 50), Point(50, 50), [(0, 50, 50, 50)]),
        (Point(50, 150), Point(150, 50), []),  # past the corner
        (Point(-50, -50), Point(150, 150), [(0, 0, 100, 100)]),
        (Point(0, 10), Point(0, 60), [(0, 10, 0, 60)]),  # along the frame
        (Point(10, 120), Point(90, 120), []),
        (Point(60, 60), Point(20, 20), [(60, 60, 20, 20)]),
    ],
)
def test_what_a_frame_shows_of_a_line(start: Point, end: Point, seen: list[tuple[float, ...]]) -> None:
    assert ends(draw_seen(start, end, 0.25, FRAME)) == [pytest.approx(each) for each in seen]


def test_a_line_goes_on_behind_what_stands_in_front() -> None:
    # A diagonal from (0, 0) to (100, 100), boxes from 20 to 30 and from 25 to 60.
    fronts = [Box(20, 20, 30, 30), Box(25, 25, 60, 60), Box(70, 0, 80, 10)]
    lines = draw_seen(Point(0, 0), Point(100, 100), 0.25, FRAME, fronts)
    assert ends(lines) == [pytest.approx((0, 0, 20, 20)), pytest.approx((60, 60, 100, 100))]


COORDINATE = st.integers(-50, 150).map(float)


@given(COORDINATE, COORDINATE, COORDINATE, COORDINATE)
def test_a_share_agrees_with_a_look_at_many_points(x0: float, y0: float, x1: float, y1: float) -> None:
    share = find_share(Point(x0, y0), Point(x1, y1), FRAME)
    for step in range(1, 200):
        at = step / 200 + 0.0007
        x, y = x0 + (x1 - x0) * at, y0 + (y1 - y0) * at
        inside = 0 < x < 100 and 0 < y < 100
        if inside and (x0, y0) != (x1, y1):
            assert share is not None
            assert share[0] - 1e-9 <= at <= share[1] + 1e-9
        elif not FRAME.has(Point(x, y)) and share is not None:
            assert not share[0] + 1e-9 < at < share[1] - 1e-9
