"""The forces of a wire, against published exercises; seen: read in the source, else from memory."""

from __future__ import annotations

from math import atan, cos, e, hypot, log, pi, radians, sin, tan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.geometry import Point
from templater.mounting.model import Statics
from templater.mounting.statics import (
    STANDARD_GRAVITY,
    find_friction,
    find_statics,
    find_steady_spread,
    is_stable,
)
from templater.mounting.wire import Rings, Wire, hang_by_length

LEVEL = Rings(Point(0, 400), Point(600, 400), Point(300, 300))


def at_angles(left: float, right: float, weight_n: float) -> Statics:
    """A load on one hook by two ends of a wire at so many degrees below the horizontal."""
    run, other = 100 / tan(radians(left)), 100 / tan(radians(right))
    rings = Rings(Point(-run, -100), Point(other, -100), Point(0, -150))
    wire = Wire(rings, (Point(0, 0),), 100 / sin(radians(left)) + 100 / sin(radians(right)))
    return find_statics(wire, weight_n)


def test_the_tightrope() -> None:
    # OpenStax, University Physics 1, example 5.13, and College Physics 2e, example 4.6 (seen):
    # 70.0 kg, 5.0 degrees, g 9.80: 3930 N, which is 70 x 9.80 / (2 sin 5°) = 3935.48 N.
    assert at_angles(5, 5, 70 * 9.80).tension_n == pytest.approx(3935.48, abs=0.01)
    assert at_angles(5, 5, 70 * 9.80).tension_n == pytest.approx(3930, rel=0.005)


def test_two_unequal_angles() -> None:
    # OpenStax, University Physics 1, example 6.1, and College Physics 2e, example 4.8 (seen):
    # 15.0 kg at 30 and 45 degrees, g 9.80: 108 N and 132 N.
    statics = at_angles(30, 45, 15 * 9.80)
    assert statics.weight_n is not None
    first, second = (each * statics.weight_n for each in statics.tensions)
    assert [first, second] == pytest.approx([108, 132], abs=0.5)
    assert [first, second] == pytest.approx([107.61, 131.80], abs=0.005)


def test_an_unequal_picture_wire() -> None:
    # wyzant.com, resources/answers/865538 (seen): 2.4 N at 73 degrees, the other at 47: 1.03 N; the
    # weight is 2.4 sin 73° + 1.03 sin 47° = 3.05 N, which is 0.31 kg.
    weight = 2.4 * sin(radians(73)) + 1.03 * sin(radians(47))
    statics = at_angles(73, 47, weight)
    assert [each * weight for each in statics.tensions] == pytest.approx([2.4, 1.03], abs=0.005)
    assert weight / 9.81 == pytest.approx(0.31, abs=0.005)


def test_one_hook_and_two() -> None:
    # Frame 600 wide, wire 700, 10 kg (98.0665 N). One hook: sin a = 180.278 / 350, a = 31.003°,
    # 98.0665 / 2 / 0.515079 = 95.196 N. Two hooks 200 apart: sin a = 150 / 250, a = 36.870°,
    # 49.03325 / 0.6 = 81.722 N; inward 81.722 (1 - 200 / 250) = 16.344 N.
    weight = 10 * STANDARD_GRAVITY
    one = find_statics(hang_by_length(LEVEL, 700, 0), weight)
    two = find_statics(hang_by_length(LEVEL, 700, 200), weight)
    assert one.angles == pytest.approx([radians(31.003)] * 2, abs=1e-5)
    assert one.tension_n == pytest.approx(95.196, abs=5e-4)
    assert one.down_n == pytest.approx([98.0665])
    assert one.sideways_n == (0.0,)
    assert two.angles == pytest.approx([radians(36.870)] * 2, abs=1e-5)
    assert two.tension_n == pytest.approx(81.722, abs=5e-4)
    assert two.down_n == pytest.approx([49.03325] * 2)
    assert two.sideways_n == pytest.approx([16.344] * 2, abs=5e-4)
    # What each hook resists: sqrt(49.033² + 16.344²) = 51.686 N; each ring 81.722 x 0.8 inward.
    assert hypot(two.down[0] * weight, two.inward[0] * weight) == pytest.approx(51.686, abs=5e-4)
    assert two.ring_inward_n == pytest.approx(65.378, abs=5e-4)
    assert (one.friction, two.friction) == (0.0, 0.0)


def test_the_picture_wire() -> None:
    # jiskha.com, id 1291075462 (seen): 40 N, ends 40 cm apart, nail 3 cm above:
    # T = 20 / sin(atan 0.15) = 134.825 N at 8.531 degrees.
    statics = at_angles(8.5308, 8.5308, 40)
    assert statics.tension_n == pytest.approx(20 / sin(atan(0.15)), rel=1e-4)
    assert statics.tension_n == pytest.approx(134.825, abs=0.01)


def test_the_closed_cord() -> None:
    # jiskha.com, id 1193993287 (seen: the angle): 50 cm over 20 cm, 10 N, 23.58 degrees from the
    # vertical; T = 5 / cos 23.58° = 5.455 N (worked by hand).
    rings = Rings(Point(-100, 0), Point(100, 0), Point(0, -100))
    statics = find_statics(hang_by_length(rings, 500, 0), 10)
    assert 90 - statics.angles[0] * 180 / pi == pytest.approx(23.58, abs=0.005)
    assert statics.tension_n == pytest.approx(5.455, abs=5e-4)


def test_the_angle_of_a_tension() -> None:
    # ask.learncbse.in/t/35179 (seen): three quarters of the weight in each wire at 48.2 degrees from
    # the vertical: cos 48.19° = 2/3.
    assert at_angles(90 - 48.19, 90 - 48.19, 1).tension_n == pytest.approx(0.75, abs=1e-4)


@pytest.mark.parametrize(
    ("degrees", "ratio"),
    # T/W = 1 / (2 sin a), worked by hand.
    [(60, 0.577), (45, 0.707), (30, 1.0), (20, 1.462), (15, 1.932), (10, 2.879), (5, 5.737)],
)
def test_flatter_wires_pull_harder(degrees: float, ratio: float) -> None:
    assert at_angles(degrees, degrees, 1).tension_n == pytest.approx(ratio, abs=5e-4)


@pytest.mark.parametrize(
    ("weight", "degrees", "tension", "within"),
    [
        # physicsforums.com/threads/78306 (seen): 3.5 N each at 45 degrees carry 4.9 N.
        (2 * 3.5 * sin(radians(45)), 45, 3.5, 1e-9),
        (4.9, 45, 3.5, 0.05),
        # science-mathematics.com, Physics/201206/33762 (seen): 70 kg in the middle of 460 m that sag
        # by 1.5 m: 5.25e4 N; 686 / 2 / sin(atan(1.5 / 230)) = 52 594 N.
        (70 * 9.80, atan(1.5 / 230) * 180 / pi, 52594, 1),
        # coursehero.com/file/6893 (seen): 90 kg at 10 degrees: 2.54e3 N.
        (90 * 9.80, 10, 2540, 5),
    ],
)
def test_more_published_tensions(weight: float, degrees: float, tension: float, within: float) -> None:
    assert at_angles(degrees, degrees, weight).tension_n == pytest.approx(tension, abs=within)


def test_a_published_wrong_answer_is_not_ours() -> None:
    # physicsforums.com/threads/376779 (seen): 2.15 kg at 15 degrees is accepted as 38.1 N, which
    # takes g for 9.18. Right, with g 9.81: 2.15 x 9.81 / (2 sin 15°) = 40.746 N.
    tension = at_angles(15, 15, 2.15 * 9.81).tension_n
    assert tension == pytest.approx(40.746, abs=5e-4)
    assert tension != pytest.approx(38.1, rel=0.05)
    assert at_angles(15, 15, 2.15 * 9.18).tension_n == pytest.approx(38.1, abs=0.05)


def test_standard_gravity() -> None:
    # 9.80665 m/s² (from memory: 3rd CGPM, 1901); 1 lbf = 4.4482216 N for 0.45359237 kg (from memory).
    pound_force = STANDARD_GRAVITY * 0.45359237
    assert pound_force == pytest.approx(4.4482216, abs=1e-7)


def test_friction_by_hand() -> None:
    # 3-4-5 and 5-12-13 legs meeting over the mass centre: H = 3/5 T1 = 5/13 T2 and
    # 4/5 T1 + 12/13 T2 = 1, so T1 = 125/280 = 0.44643 and T2 = 39/56 = 0.69643. Wrapped by
    # atan(4/3) + atan(12/5) = 0.92730 + 1.17601 = 2.10331; ln(1.56) = 0.44469; / 2.10331 = 0.21142.
    rings = Rings(Point(-150, -200), Point(100, -240), Point(0, -300))
    statics = find_statics(hang_by_length(rings, 510, 0), None)
    assert statics.tensions == pytest.approx([125 / 280, 39 / 56])
    assert statics.friction == pytest.approx(0.21142, abs=1e-5)
    assert not statics.is_stable


def test_friction_of_the_belt_formula() -> None:
    # From memory: a rope half round a post with coefficient 0.3 holds e^(0.3 pi) = 2.566 times.
    assert find_friction((2.566, 1.0), pi) == pytest.approx(0.3, abs=1e-4)
    assert find_friction((1.0, 2.566), pi) == pytest.approx(0.3, abs=1e-4)


def test_two_hooks_share_the_friction() -> None:
    # With coefficient mu at both hooks, T between them is T1 e^(mu a1) = T2 e^(-mu a2): each hook
    # is drawn inward by T less the level pull, alike on both sides as the level part is level.
    rings = Rings(Point(-200, 20), Point(280, 0), Point(0, -100))
    statics = find_statics(hang_by_length(rings, 640, 150), 1.0)
    (first, second), (left, right) = statics.tensions, statics.angles
    grip = log(second / first) / (left + right)
    assert statics.friction == pytest.approx(abs(grip))
    between = statics.inward[0] + first * cos(left)
    assert between == pytest.approx(first * e ** (grip * left))
    assert between == pytest.approx(second * e ** (-grip * right))
    assert statics.inward[0] == pytest.approx(statics.inward[1])


def test_hooks_are_drawn_inward_as_much_in_a_mirror() -> None:
    # 3-4-5 and 5-12-13 legs as above from two hooks 50 to each side. Drawn on, they meet over the
    # mass centre: (x + 50) 4/3 = (50 - x) 12/5 at x = 100/7. T1 125/280, T2 39/56, level pull
    # 3/5 T1 = 15/56 = 0.26786. Between the hooks the greater tension is less by e^(-mu a):
    # 0.69643 e^(-0.21142 x 1.17601) = 0.54312; inward 0.54312 - 0.26786 = 0.27526.
    rings = Rings(Point(-200, -200), Point(150, -240), Point(100 / 7, -300))
    mirrored = Rings(Point(-150, -240), Point(200, -200), Point(-100 / 7, -300))
    for each in (rings, mirrored):
        statics = find_statics(hang_by_length(each, 610, 100), None)
        assert sorted(statics.tensions) == pytest.approx([125 / 280, 39 / 56])
        assert statics.inward == pytest.approx([0.27526] * 2, abs=1e-5)
        assert statics.ring_inward == pytest.approx(15 / 56)


def test_without_a_weight_there_are_only_ratios() -> None:
    statics = find_statics(hang_by_length(LEVEL, 700, 200), None)
    assert statics.tensions[0] == pytest.approx(0.5 / 0.6)
    forces = (statics.tension_n, statics.down_n, statics.sideways_n, statics.ring_inward_n)
    assert forces == (None, None, None, None)


@pytest.mark.parametrize(
    ("depth", "length", "stable"),
    [
        # Half the span 300: depth x rise must pass 90 000. The wire 1000 rises by 400.
        (224, 1000, False),  # 89 600
        (226, 1000, True),  # 90 400
        (100, 700, False),  # 100 x 180.278
    ],
)
def test_one_hook_by_the_criterion(depth: float, length: float, stable: bool) -> None:
    rings = Rings(Point(0, 400), Point(600, 400), Point(300, 400 - depth))
    wire = hang_by_length(rings, length, 0)
    assert is_stable(wire) is stable
    assert find_statics(wire, None).is_stable is stable


@given(st.floats(100, 1000), st.floats(1.01, 2), st.floats(0.02, 1))
def test_the_steady_spread_is_where_two_hooks_start_to_be_steady(
    apart: float, slack: float, depth: float
) -> None:
    rings = Rings(Point(0, 0), Point(apart, 0), Point(apart / 2, -depth * apart))
    length = apart * slack
    spread = find_steady_spread(rings, length)
    assert spread is not None
    assert is_stable(hang_by_length(rings, length, spread))
    if spread > 1e-6 * apart:
        assert not is_stable(hang_by_length(rings, length, spread * 0.999))


def test_no_spread_steadies_what_is_top_heavy_or_uneven() -> None:
    assert find_steady_spread(Rings(Point(0, 0), Point(600, 0), Point(300, 0)), 700) is None
    assert find_steady_spread(Rings(Point(0, 0), Point(600, 0), Point(300, 50)), 700) is None
    assert find_steady_spread(Rings(Point(0, 0), Point(600, 0), Point(290, -100)), 700) is None
