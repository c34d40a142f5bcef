from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.geometry import Box, Point
from templater.layout.model import Obstacle, Region
from templater.placement.model import PlacedFurniture, Plan
from tests.rules.cautions.drilled import brief, drilled, metric_wall, told
from tests.rules.plans import obstacle

CODE = "cable-zone"
SWITCH = obstacle("hall switch", Box(1960, 1100, 2040, 1220), kind="switch")


def in_uk(x: float, y: float) -> Plan:
    return replace(metric_wall(drilled((x, y)), obstacles=[SWITCH]), region=Region.UK)


@pytest.mark.parametrize(
    ("x", "y", "figure"),
    [
        # BS 7671, 522.6.202, as quoted by owelectric.co.uk and the-regs.co.uk: within 150 mm of the
        # top of the wall, of an angle of two walls, or in line with an accessory. Wall 2400 x 2400.
        (140, 1000, "140 mm from the left end"),
        (1200, 2260, "140 mm under the ceiling"),
        (1200, 2240, None),
        (2000, 300, "plumb under hall switch"),
        (2000, 2000, "plumb over hall switch"),
        (1000, 1160, "level with hall switch"),
        # Both edges belong to a zone.
        (150, 1000, "150 mm from the left end"),
        (150.1, 1000, None),
        (2250, 1000, "150 mm from the right end"),
        (2249.9, 1000, None),
        (1200, 2250, "150 mm under the ceiling"),
        (1200, 2249.9, None),
        (1960, 300, "plumb under hall switch"),
        (1959.9, 300, None),
        (2040, 300, "plumb under hall switch"),
        (2040.1, 300, None),
        (1000, 1100, "level with hall switch"),
        (1000, 1099.9, None),
        (1000, 1220, "level with hall switch"),
        (1000, 1220.1, None),
        (140, 2260, "140 mm under the ceiling; 140 mm from the left end"),
    ],
)
def test_zones_of_the_united_kingdom(x: float, y: float, figure: str | None) -> None:
    found = told(in_uk(x, y), CODE)
    assert [brief(each) for each in found] == ([("caution", "hole 1", figure)] if figure else [])
    assert {each.because for each in found} <= {"BS 7671, 522.6.202"}


DOOR = obstacle("door", Box(1400, 0, 1800, 2000), kind="door")
HATCH = obstacle("hatch", Box(1400, 1150, 1800, 2000), kind="hatch")
WINDOW = obstacle("window", Box(1900, 1300, 2100, 1700), kind="window")


@pytest.mark.parametrize(
    ("hole", "across", "is_told"),
    [
        # A cable goes through no doorway; past a hatch that leaves some of its height it may.
        ((1000, 1160), DOOR, False),
        ((1000, 1160), HATCH, True),
        ((1000, 1160), WINDOW, True),
        ((1850, 1160), DOOR, True),
        ((2000, 1900), WINDOW, False),
        ((2000, 1250), WINDOW, True),
        ((2000, 300), WINDOW, True),
    ],
)
@pytest.mark.parametrize("region", [Region.US, Region.UK])
def test_what_is_behind_a_door_or_a_window_is_in_no_line(
    hole: tuple[float, float], across: Obstacle, region: Region, *, is_told: bool
) -> None:
    plan = metric_wall(drilled(hole), obstacles=[SWITCH, across])
    found = told(replace(plan, region=region), CODE)
    # BS 7671, 522.6.202, knows no such exception.
    assert bool(found) is (is_told or region is Region.UK)


@pytest.mark.parametrize("region", [None, Region.US, Region.EU])
def test_elsewhere_only_the_lines_of_an_accessory(region: Region | None) -> None:
    plan = replace(in_uk(140, 1000), region=region)
    assert told(plan, CODE) == []
    (found,) = told(replace(in_uk(2000, 300), region=region), CODE)
    assert (found.figure, found.because) == ("plumb under hall switch", "common practice, no source")
    assert found.mend == "look for a cable with a detector first; if in doubt, do not drill"


def test_what_only_sounds_like_a_door_or_a_window_cuts_off_no_cable() -> None:
    # Between the switch, 1960 to 2040 by 1100 to 1220 mm, and a hole plumb under it.
    across = Box(1900, 500, 2100, 900)
    hole = drilled((2000, 300))
    door = metric_wall(hole, obstacles=[SWITCH, obstacle("attic hatch", across, kind="hatch")])
    assert told(door, CODE) == []
    chime = metric_wall(hole, obstacles=[SWITCH, obstacle("door chime", across, kind="door chime")])
    seat = metric_wall(hole, obstacles=[SWITCH], furniture=[PlacedFurniture("hatch", across, "hatch")])
    for plan in (chime, seat):
        assert "plumb under hall switch" in [found.figure for found in told(plan, CODE)]


def test_a_sloping_ceiling_is_measured_over_the_hole() -> None:
    # From 2400 down to 2000 mm over 2400 mm: 2200 mm over the middle; 2200 - 2060 = 140 mm.
    plan = replace(in_uk(1200, 2060), ceiling=(Point(0.0, 2400.0), Point(2400.0, 2000.0)))
    (found,) = told(plan, CODE)
    assert found.figure == "140 mm under the ceiling"


def test_each_hole_is_told_by_its_number() -> None:
    plan = metric_wall(drilled((2000, 300), (1000, 300), (2010, 300)), obstacles=[SWITCH])
    assert [found.other for found in told(plan, CODE)] == ["hole 1", "hole 3"]


def test_without_an_accessory_it_is_not_checked() -> None:
    window = obstacle("sash window", Box(1000, 900, 1500, 1800))
    for plan in (metric_wall(drilled((500, 300))), metric_wall(drilled((500, 300)), obstacles=[window])):
        (found,) = told(plan, CODE)
        assert brief(found) == ("not checked", None, None)
        assert found.mend == "add the switches, sockets and lights of this wall to 'fixtures'"


def test_without_a_hole_it_does_not_apply() -> None:
    assert told(metric_wall(drilled()), CODE) == []


def test_in_line_with_something_unknown_it_is_not_checked() -> None:
    plaque = obstacle("brass plaque", Box(1000, 1100, 1100, 1200), kind="brass plaque")
    plan = metric_wall(drilled((1050, 300), (500, 300)), obstacles=[plaque, SWITCH])
    (found,) = told(plan, CODE)
    assert brief(found) == ("not checked", "hole 1", None)
    assert found.mend == "add 'kind' to 'brass plaque'"


@given(st.floats(0, 2400), st.floats(0, 2400))
def test_every_hole_on_a_switchs_cross_is_told_and_no_other(x: float, y: float) -> None:
    plan = metric_wall(drilled((x, y)), obstacles=[SWITCH])
    is_on_it = 1960 <= x <= 2040 or 1100 <= y <= 1220
    near = min(abs(x - 1960), abs(x - 2040), abs(y - 1100), abs(y - 1220)) < 1e-5
    assert near or bool(told(plan, CODE)) == is_on_it
