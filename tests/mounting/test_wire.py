from __future__ import annotations

from math import dist, sqrt

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from templater.geometry import Point
from templater.mounting.statics import find_statics, is_stable
from templater.mounting.wire import Rings, find_least_length, hang_by_height, hang_by_length
from tests.mounting.free_frame import find_sinking, find_tilt

# Frame 600 wide and high, rings 600 apart and 200 below its top, wire 700: worked by hand below.
LEVEL = Rings(Point(0, 400), Point(600, 400), Point(300, 300))


def test_one_hook() -> None:
    wire = hang_by_length(LEVEL, 700, 0)
    (hook,) = wire.hooks
    # Half the wire 350, half the span 300: sqrt(350² - 300²) = sqrt(32500) = 180.278 above the rings.
    assert hook == pytest.approx((300, 400 + 180.2776), abs=1e-4)
    # Of a frame whose middle is at 1450 the top is at 1750, the drop 19.722, the hook at 1730.278.
    assert 1450 - 300 + hook.y == pytest.approx(1730.278, abs=5e-4)


def test_a_wire_hardly_longer_than_straight() -> None:
    # Half of it 300.0005 over half the span 300: sqrt(0.0005 x 600.0005) = 0.54773 above the rings.
    (hook,) = hang_by_length(LEVEL, 600.001, 0).hooks
    assert hook == pytest.approx((300, 400.54773), abs=1e-5)


def test_two_hooks() -> None:
    wire = hang_by_length(LEVEL, 700, 200)
    # (700 - 200) / 2 = 250 over (600 - 200) / 2 = 200: the 3-4-5 triangle, 150 above the rings.
    assert [*wire.hooks[0], *wire.hooks[1]] == pytest.approx([200, 550, 400, 550])
    assert 1450 - 300 + wire.hooks[0].y == pytest.approx(1700)


def test_a_measured_height_gives_the_wire_and_the_wire_the_height() -> None:
    assert hang_by_height(LEVEL, 550, 200).length == pytest.approx(700)
    assert hang_by_height(LEVEL, 400 + sqrt(32500), 0).length == pytest.approx(700)


def test_the_picture_wire_of_a_published_exercise() -> None:
    # jiskha.com, id 1291075462 (seen): ends 40 cm apart, nail 3 cm above them; the wire's length
    # by Pythagoras: 2 x sqrt(20² + 3²) = 40.447 cm.
    rings = Rings(Point(-200, 0), Point(200, 0), Point(0, -100))
    assert hang_by_height(rings, 30, 0).length == pytest.approx(404.47, abs=0.01)


def test_a_closed_cord_of_a_published_exercise() -> None:
    # jiskha.com, id 1193993287 (seen): cord 50 cm over a 20 cm frame; sqrt(25² - 10²) = 22.913 cm.
    rings = Rings(Point(-100, 0), Point(100, 0), Point(0, -100))
    (hook,) = hang_by_length(rings, 500, 0).hooks
    assert hook.y == pytest.approx(229.13, abs=0.01)


@pytest.mark.parametrize(
    ("rings", "spread", "least"),
    [
        (LEVEL, 0, 600),
        (LEVEL, 200, 600),  # 200 + (600 - 200)
        # One ring 300 lower, 400 across: 500 straight; with hooks 160 apart 160 + sqrt(240² + 300²).
        (Rings(Point(0, 300), Point(400, 0), Point(200, 0)), 0, 500),
        (Rings(Point(0, 300), Point(400, 0), Point(200, 0)), 160, 160 + sqrt(147600)),
    ],
)
def test_the_straight_way(rings: Rings, spread: float, least: float) -> None:
    assert find_least_length(rings, spread) == pytest.approx(least)


def test_an_uneven_wire_of_whole_numbers() -> None:
    # Left leg 3-4-5 x 50, right leg 5-12-13 x 20: the hook (0, 0), the rings below at both sides.
    rings = Rings(Point(-150, -200), Point(100, -240), Point(0, -300))
    (hook,) = hang_by_length(rings, 250 + 260, 0).hooks
    assert hook == pytest.approx((0, 0), abs=1e-9)
    assert hang_by_height(rings, 0, 0).length == pytest.approx(510)


@st.composite
def even_cases(draw: st.DrawFn) -> tuple[Rings, float, float]:
    """Level rings, hooks closer together, a wire from 1 % to 100 % longer than the straight way."""
    half = draw(st.floats(40, 800))
    spread = draw(st.just(0.0) | st.floats(0, 1.6 * half))
    rings = Rings(Point(-half, 500), Point(half, 500), Point(0, draw(st.floats(100, 499))))
    return rings, find_least_length(rings, spread) * draw(st.floats(1.01, 2)), spread


@st.composite
def uneven_cases(draw: st.DrawFn) -> tuple[Rings, float, float]:
    """Rings at different heights and distances from the mass centre."""
    left = Point(-draw(st.floats(40, 800)), draw(st.floats(400, 600)))
    right = Point(draw(st.floats(40, 800)), draw(st.floats(400, 600)))
    rings = Rings(left, right, Point(0, 300))
    spread = draw(st.just(0.0) | st.floats(0, 0.8)) * rings.apart
    return rings, find_least_length(rings, spread) * draw(st.floats(1.01, 2)), spread


@settings(max_examples=150, deadline=None)
@given(even_cases() | uneven_cases())
def test_the_closed_form_is_where_the_energy_is_least(case: tuple[Rings, float, float]) -> None:
    rings, length, spread = case
    hooks = hang_by_length(rings, length, spread).hooks
    rise, _ = find_sinking(rings, tuple(hook.x for hook in hooks), length)
    assert hooks[0].y - rings.left.y == pytest.approx(rise, rel=1e-6, abs=1e-6)


@settings(max_examples=100, deadline=None)
@given(even_cases())
def test_the_tension_is_that_of_a_wire_that_stretches(case: tuple[Rings, float, float]) -> None:
    # A wire that gives 1 mm for each weight of the frame: its stretch in mm is its tension in
    # weights, and the frame sinks to where a wire longer by so much would let it.
    rings, length, spread = case
    hooks = hang_by_length(rings, length, spread).hooks
    _, stretch = find_sinking(rings, tuple(hook.x for hook in hooks), length, stiffness=1.0)
    stretched = hang_by_length(rings, length + stretch, spread)
    assert find_statics(stretched, None).tensions == pytest.approx((stretch, stretch), rel=1e-4)


@given(even_cases() | uneven_cases())
def test_the_wire_is_as_long_as_it_is(case: tuple[Rings, float, float]) -> None:
    rings, length, spread = case
    hooks = hang_by_length(rings, length, spread).hooks
    assert len(hooks) == (1 if spread == 0 else 2)
    assert dist(hooks[0], hooks[-1]) == pytest.approx(spread)
    path = dist(rings.left, hooks[0]) + spread + dist(hooks[-1], rings.right)
    assert path == pytest.approx(length, rel=1e-9)
    again = hang_by_height(rings, hooks[0].y, spread)
    assume(hooks[0].y > max(rings.left.y, rings.right.y) + 1)
    assert again.hooks[0] == pytest.approx(hooks[0], abs=1e-6)


@given(even_cases() | uneven_cases())
def test_the_frame_is_at_rest(case: tuple[Rings, float, float]) -> None:
    # Two pulls along the ends of the wire, found by least squares, carry the weight and do not turn
    # the frame about its mass centre: three equations, two unknowns.
    rings, length, spread = case
    wire = hang_by_length(rings, length, spread)
    statics = find_statics(wire, None)
    columns = []
    for ring, hook in ((rings.left, wire.hooks[0]), (rings.right, wire.hooks[-1])):
        x, y = (hook.x - ring.x) / dist(hook, ring), (hook.y - ring.y) / dist(hook, ring)
        turn = (ring.x - rings.mass.x) * y - (ring.y - rings.mass.y) * x
        columns.append((x, y, turn / rings.apart))
    pulls, *_ = np.linalg.lstsq(np.array(columns).T, np.array([0.0, 1.0, 0.0]), rcond=None)
    residual = np.array(columns).T @ pulls - np.array([0.0, 1.0, 0.0])
    assert np.abs(residual).max() < 1e-6 * max(abs(pulls).max(), 1)
    assert statics.tensions == pytest.approx(tuple(pulls), rel=1e-6)
    assert sum(statics.down) == pytest.approx(1)


@settings(max_examples=40, deadline=None)
@given(even_cases())
def test_the_free_frame_tilts_where_the_criterion_says(case: tuple[Rings, float, float]) -> None:
    rings, length, spread = case
    wire = hang_by_length(rings, length, spread)
    depth, half = rings.left.y - rings.mass.y, rings.apart / 2
    # depth x rise against half the span x (half the span - half the spread), at least 10 % apart.
    ratio = depth * (wire.hooks[0].y - rings.left.y) / (half * (half - spread / 2))
    assume(not 0.9 < ratio < 1.1)
    tilt = find_tilt(half, depth, spread, length, most=0.02)
    assert (tilt < 1e-3) == is_stable(wire)
