"""What is behind each hole."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.layout.model import Surface
from templater.placement.model import Plan
from templater.rules.holes import STUD_HALF_MM, HoleWall, find_hole_wall, measure_off_stud
from tests.rules.plans import wall

EVERY_16_IN = tuple(406.4 * number for number in range(10))


def with_studs(*studs: float) -> Plan:
    return replace(wall(), studs=studs)


@pytest.mark.parametrize(
    ("x", "off", "meets"),
    [
        # Studs every 16 in from x = 0: 1000 - 812.8 = 187.2 mm, a miss; 3 x 406.4 = 1219.2, a hit.
        # 2 x 4 is 1 1/2 x 3 1/2 in (PS 20, American Softwood Lumber Standard): 19.05 mm to the edge;
        # 10 and 30 mm are common practice, no source.
        (1000.0, 187.2, HoleWall.HOLLOW),
        (1219.2, 0.0, HoleWall.STUD),
        (1229.2, 10.0, HoleWall.STUD),
        (1209.2, 10.0, HoleWall.STUD),
        (1229.3, 10.1, HoleWall.DOUBTFUL),
        (1238.25, 19.05, HoleWall.DOUBTFUL),
        (1249.2, 30.0, HoleWall.DOUBTFUL),
        (1249.3, 30.1, HoleWall.HOLLOW),
        (0.0, 0.0, HoleWall.STUD),
    ],
)
def test_a_stud_is_hit_or_missed(x: float, off: float, meets: HoleWall) -> None:
    plan = with_studs(*EVERY_16_IN)
    assert measure_off_stud(x, plan) == pytest.approx(off)
    assert find_hole_wall(x, plan) is meets


def test_half_a_stud() -> None:
    assert pytest.approx(1.5 * 25.4 / 2) == STUD_HALF_MM


def test_without_studs_nothing_is_known() -> None:
    assert measure_off_stud(1000.0, with_studs()) is None
    assert find_hole_wall(1000.0, with_studs()) is HoleWall.NOT_CHECKED


@pytest.mark.parametrize("surface", Surface)
def test_masonry_and_concrete_are_solid(surface: Surface) -> None:
    is_solid = surface in (Surface.MASONRY, Surface.CONCRETE)
    expected = HoleWall.SOLID if is_solid else HoleWall.NOT_CHECKED
    assert find_hole_wall(1000.0, replace(wall(), wall_surface=surface)) is expected


@given(st.lists(st.floats(0, 5000), min_size=1, max_size=20), st.floats(0, 5000), st.floats(-5000, 5000))
def test_another_stud_never_makes_a_hole_more_hollow(studs: list[float], x: float, more: float) -> None:
    order = [HoleWall.STUD, HoleWall.DOUBTFUL, HoleWall.HOLLOW]
    before, after = with_studs(*studs), with_studs(*studs, more)
    assert order.index(find_hole_wall(x, after)) <= order.index(find_hole_wall(x, before))
    # What is a hit for certain is on the stud's face.
    if find_hole_wall(x, before) is HoleWall.STUD:
        assert min(abs(stud - x) for stud in studs) < STUD_HALF_MM
