from __future__ import annotations

from dataclasses import replace

import pytest

from templater.geometry import Box
from templater.layout.model import Hanger, Hanging, Ring, Rings, Surface
from templater.lengths import Unit
from templater.mounting.model import WeightEstimate
from templater.placement.model import PlacedFurniture
from templater.rules.fasteners.choose import Fastener, Kind, choose_fasteners
from templater.rules.holes import HoleWall
from tests.rules.fasteners.walls import POUND, by, hook, hung_at, only, wall_of

AT = 1000.0
OFF = 1200.0
SHY = 1020.0


def chosen(
    kg: float | None,
    *,
    hanger: Hanger = Hanger.WIRE,
    stud: float | None = None,
    surface: Surface | None = Surface.DRYWALL,
) -> Fastener:
    """What the hole of a piece takes that hangs at 1000 mm."""
    studs = () if stud is None else (stud,)
    plan = wall_of(hung_at(AT, by(hanger), kg), studs=studs, surface=surface, units=Unit.CENTIMETRE)
    (found,) = choose_fasteners(only(plan), plan)
    return found


@pytest.mark.parametrize(
    ("kg", "stud", "surface", "kind"),
    [
        # Up to 9 kg a hole a picture hook and a nail, but not in masonry.
        (9.0, OFF, Surface.DRYWALL, Kind.NAIL_HOOK),
        (9.0, AT, Surface.DRYWALL, Kind.NAIL_HOOK),
        (9.0, None, None, Kind.NAIL_HOOK),
        (2.0, None, Surface.MASONRY, Kind.PLUG),
        (2.0, None, Surface.CONCRETE, Kind.PLUG),
        # Heavier ones by what is behind the hole: 0, 200 and 20 mm from a stud's centre.
        (9.1, AT, Surface.DRYWALL, Kind.STUD_SCREW),
        (9.1, OFF, Surface.DRYWALL, Kind.ANCHOR),
        (9.1, SHY, Surface.PLASTER, Kind.PROBE),
        (9.1, None, Surface.PANELLING, Kind.PROBE),
        (9.1, None, Surface.WOOD, Kind.WOOD_SCREW),
        (9.1, OFF, Surface.WOOD, Kind.WOOD_SCREW),
        (9.1, None, None, Kind.SUITABLE),
    ],
)
def test_the_kind_follows_from_load_and_wall(
    kg: float, stud: float | None, surface: Surface | None, kind: Kind
) -> None:
    assert chosen(kg, stud=stud, surface=surface).kind is kind


@pytest.mark.parametrize(
    ("kg", "stud", "surface", "kind"),
    [
        # Common practice, no source: 9 kg on a nail in wood, 2 kg where it may meet none.
        (9.0, AT, Surface.DRYWALL, Kind.NAIL),
        (9.1, AT, Surface.DRYWALL, Kind.STUD_SCREW),
        (9.0, OFF, Surface.WOOD, Kind.NAIL),
        (2.0, OFF, Surface.DRYWALL, Kind.NAIL),
        (2.1, OFF, Surface.DRYWALL, Kind.ANCHOR),
        (2.0, None, None, Kind.NAIL),
        (2.1, None, None, Kind.SUITABLE),
        (2.0, None, Surface.MASONRY, Kind.PLUG),
    ],
)
@pytest.mark.parametrize("hang", [by(Hanger.NAIL), replace(by(Hanger.SAWTOOTH), rise_mm=0.0)])
def test_what_bears_at_its_hole_takes_no_picture_hook(
    kg: float, stud: float | None, surface: Surface | None, kind: Kind, hang: Hanging
) -> None:
    # The nail of a picture hook is above the place where it bears: the piece would hang too low.
    studs = () if stud is None else (stud,)
    plan = wall_of(hung_at(AT, hang, kg), studs=studs, surface=surface)
    (found,) = choose_fasteners(only(plan), plan)
    assert found.kind is kind


@pytest.mark.parametrize("rise", [12.7, -3.0])
def test_a_nail_with_a_rise_is_that_of_a_picture_hook(rise: float) -> None:
    plan = wall_of(hung_at(AT, replace(by(Hanger.NAIL), rise_mm=rise), 4.0))
    (found,) = choose_fasteners(only(plan), plan)
    assert found.kind is Kind.NAIL_HOOK


@pytest.mark.parametrize(
    ("pounds", "stud", "surface", "rise", "kind"),
    [
        # Earthquake Country Alliance, "Hanging objects": from 20 lb (9.07 kg) on in a stud.
        (6, OFF, Surface.DRYWALL, None, Kind.CLOSED_NAIL_HOOK),
        (19.9, OFF, Surface.DRYWALL, None, Kind.CLOSED_ANCHOR),  # 9.03 kg on one hole
        (20, AT, Surface.DRYWALL, None, Kind.CLOSED_STUD),
        (20, OFF, Surface.DRYWALL, None, Kind.CLOSED_STUD),
        (20, None, None, None, Kind.CLOSED_STUD),
        (20, OFF, Surface.WOOD, None, Kind.CLOSED_WOOD),
        (20, None, Surface.CONCRETE, None, Kind.CLOSED_PLUG),
        (6, None, Surface.CONCRETE, None, Kind.CLOSED_PLUG),
        # A closed picture hook has a rise; what bears at its very hole screws in there.
        (6, OFF, Surface.DRYWALL, 0.0, Kind.CLOSED_ANCHOR),
        (6, None, None, 0.0, Kind.CLOSED_SUITABLE),
        (6, SHY, Surface.PLASTER, 0.0, Kind.CLOSED_PROBE),
    ],
)
def test_where_the_ground_may_shake_hooks_are_closed(
    pounds: float, stud: float | None, surface: Surface | None, rise: float | None, kind: Kind
) -> None:
    studs = () if stud is None else (stud,)
    hang = replace(by(Hanger.WIRE), rise_mm=rise)
    plan = wall_of(hung_at(AT, hang, pounds * POUND), studs=studs, surface=surface)
    plan = replace(plan, is_earthquake=True)
    (found,) = choose_fasteners(only(plan), plan)
    assert found.kind is kind


@pytest.mark.parametrize("hanger", [Hanger.KEYHOLES, Hanger.CLEAT])
def test_what_hangs_on_no_hook_gets_no_closed_one(hanger: Hanger) -> None:
    hang = by(hanger, apart=200) if hanger is Hanger.KEYHOLES else replace(by(hanger), width_mm=200)
    plan = wall_of(hung_at(AT, replace(hang, every_mm=200), 3.0), studs=(OFF,), surface=Surface.DRYWALL)
    plan = replace(plan, is_earthquake=True)
    assert {each.kind for each in choose_fasteners(only(plan), plan)} == {Kind.ANCHOR}


@pytest.mark.parametrize(
    ("kind", "expected"), [("bed", Kind.CLOSED_NAIL_HOOK), ("chest", Kind.NAIL_HOOK)]
)
def test_over_people_hooks_are_closed(kind: str, expected: Kind) -> None:
    plan = wall_of(hung_at(AT, by(Hanger.WIRE), 3.0), surface=Surface.DRYWALL)
    below = PlacedFurniture("long thing", Box(500, 0, 1500, 500), kind)
    plan = replace(plan, furniture=(below,))
    (found,) = choose_fasteners(only(plan), plan)
    assert found.kind is expected


def test_keyholes_hang_on_screws_however_light() -> None:
    plan = wall_of(
        hung_at(AT, by(Hanger.KEYHOLES, apart=200), 1.0), studs=(900.0,), surface=Surface.DRYWALL
    )
    # Holes at 900 and 1100 mm: in the stud, and 200 mm beside it.
    found = choose_fasteners(only(plan), plan)
    assert [each.kind for each in found] == [Kind.STUD_SCREW, Kind.ANCHOR]
    assert [each.wall for each in found] == [HoleWall.STUD, HoleWall.HOLLOW]


@pytest.mark.parametrize(("stud", "times"), [(AT, 2.0), (OFF, 4.0)])
def test_the_least_rating_is_the_load_by_a_factor(stud: float, times: float) -> None:
    # Common practice, no source: twice the load, of an anchor four times.
    assert chosen(10.0, stud=stud).least_kg == pytest.approx(10.0 * times)


def test_of_an_estimate_the_most_counts() -> None:
    plan = wall_of(hung_at(AT, by(Hanger.WIRE), 4.0), units=Unit.CENTIMETRE)
    guessed = replace(only(plan), estimate=WeightEstimate(4.0, 3.0, 5.0))
    (found,) = choose_fasteners(guessed, plan)
    assert found.least_kg == pytest.approx(2 * 5.0)
    assert found.load is not None
    assert found.load.is_estimate


def test_without_a_weight_nothing_is_chosen() -> None:
    found = chosen(None)
    assert (found.kind, found.load, found.least_kg) == (None, None, None)


@pytest.mark.parametrize(("rating", "weak"), [(20.0, False), (19.99, True), (None, False)])
def test_a_named_hooks_own_rating_goes_first(rating: float | None, weak: bool) -> None:
    # Two rings share 20 kg: 10 kg each, 20 kg asked for, whatever the wall.
    hang = by(Hanger.D_RINGS, apart=200, hook=hook(rating))
    plan = wall_of(hung_at(AT, hang, 20.0), surface=Surface.DRYWALL, units=Unit.CENTIMETRE)
    for found in choose_fasteners(only(plan), plan):
        assert found.kind is None
        assert found.least_kg == pytest.approx(20.0)
        assert found.is_too_weak is weak


def test_a_wire_on_two_hooks_also_pulls_them_together() -> None:
    # Worked by hand: 98.0665 N (10 kg), rings 600 and hooks 200 apart, wire 700: rise 150 (3-4-5),
    # each hook 49.033 N down and 16.344 N inward: 51.686 N together. Told are 5.0 and 1.7 kg, which
    # are 5.281 kg together, told as 5.3 kg; twice that is 10.6 kg.
    ring = Ring(300.0, 200.0)
    hang = replace(
        by(Hanger.WIRE), drop_mm=None, hooks=2, spread_mm=200.0, rings=Rings(ring, ring), wire_mm=700.0
    )
    wide = hung_at(AT, hang, 10.0)
    large = replace(wide, size=wide.size._replace(width=700.0, height=600.0))
    plan = wall_of(large, units=Unit.CENTIMETRE)
    for found in choose_fasteners(only(plan), plan):
        assert found.load is not None
        assert found.load.down_n == pytest.approx(49.033, abs=1e-3)
        assert found.load.sideways_n == pytest.approx(16.344, abs=1e-3)
        assert found.load.most_n == pytest.approx(51.686, abs=1e-3)
        assert found.least_kg == pytest.approx(10.6)


def test_a_lock_bears_nothing() -> None:
    hang = replace(by(Hanger.D_RINGS, apart=200, hook=hook(20.0)), lock_below_mm=400.0)
    plan = wall_of(hung_at(AT, hang, 4 * POUND))
    *_, lock = choose_fasteners(only(plan), plan)
    assert (lock.kind, lock.hook, lock.least_kg) == (Kind.LOCK, None, None)


def test_a_piece_without_hardware_has_no_fastener() -> None:
    plan = wall_of(hung_at(AT, None, 4.0))
    assert choose_fasteners(only(plan), plan) == ()
