"""Hardware other than a wire, a hook or a screw: locks, notches, cords, strips, cleats on studs."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.errors import Place
from templater.layout.model import Hanger, Hanging, Layout, MadeOf, Material, Piece, Sheet
from templater.lengths import Unit
from templater.mounting.model import Cord, Mount, Strips
from templater.mounting.mount import mount_pieces
from templater.mounting.notes import note_supports
from tests.builders import hanging, inches, layout, piece, place_layout, plan_of, position

AT = Place("hall.yaml", 7, 11)


def frame(hang: Hanging | None, weight_kg: float | None = None) -> Piece:
    """A frame 16 x 20 in with its left edge at 40 in and its middle at 60 in."""
    place = position(left=inches(40), eye_line=inches(60))
    return piece("Tide chart", inches(16), inches(20), hang=hang, weight_kg=weight_kg, place=place)


def mount_of(hang: Hanging | None, weight_kg: float | None = None) -> Mount:
    mounting = mount_pieces(layout([frame(hang, weight_kg)]))
    assert mounting.faults == ()
    return mounting.mounts["Tide chart"]


def with_studs(hang: Hanging, *studs: float, weight_kg: float | None = None) -> Layout:
    """The frame on a wall with studs, whose centres are in inches."""
    wall = layout([frame(hang, weight_kg)])
    return replace(wall, wall=replace(wall.wall, studs=tuple(inches(stud) for stud in studs)))


D_RINGS = hanging(Hanger.D_RINGS, inches(3), apart=inches(10), rise=0.0, at=AT)


@pytest.mark.parametrize(
    ("offset", "balance", "shares"),
    [
        (0, 0, (0.5, 0.5)),
        (1, 0, (0.6, 0.4)),  # the mass centre is 4 in from the left ring, 6 in from the right: 6/10
        (0, 2, (0.3, 0.7)),  # 7 in from the left ring, 3 in from the right
        (1, 1, (0.5, 0.5)),
        (5, 0, (1.0, 0.0)),  # plumb below the left ring
    ],
)
def test_two_rings_bear_by_their_distance_from_the_mass_centre(
    offset: float, balance: float, shares: tuple[float, float]
) -> None:
    hang = replace(D_RINGS, apart_mm=inches(10), offset_mm=inches(offset), balance_mm=inches(balance))
    wide = piece("Tide chart", inches(30), inches(20), hang=hang, weight_kg=10.0)
    mount = mount_pieces(layout([wide])).mounts["Tide chart"]
    # 10 kg x 9.80665 = 98.0665 N.
    assert [mark.load_n for mark in mount.marks] == pytest.approx([each * 98.0665 for each in shares])
    assert mount.notes == ()


def test_a_mass_centre_beside_both_rings_tips() -> None:
    hang = replace(D_RINGS, apart_mm=inches(4), offset_mm=inches(3))
    mount = mount_of(hang, weight_kg=10.0)
    assert [mark.load_n for mark in mount.marks] == [pytest.approx(98.0665), 0.0]
    assert mount.notes == (
        "Its mass centre is not between its hangers: it would tip; move a hanger or add one.",
    )


@pytest.mark.parametrize("weight", [None, 10.0])
def test_a_lock_is_one_more_hole_below_that_bears_nothing(weight: float | None) -> None:
    mount = mount_of(replace(D_RINGS, lock_below_mm=inches(18)), weight)
    points = [(mark.hole.x / 25.4, mark.hole.y / 25.4) for mark in mount.marks]
    assert points == [pytest.approx(each) for each in [(3, 17), (13, 17), (8, 2)]]
    assert [mark.is_lock for mark in mount.marks] == [False, False, True]
    assert mount.marks[2].load_n == (None if weight is None else 0.0)
    assert mount.notes == ("The lowest hole is for the security lock: it bears no weight.",)


@pytest.mark.parametrize(
    ("below", "shown"), [(3, "3 in (76 mm)"), (2, "2 in (51 mm)"), (21, "21 in (533 mm)")]
)
def test_a_lock_not_below_the_rings_is_a_fault(below: float, shown: str) -> None:
    mounting = mount_pieces(layout([frame(replace(D_RINGS, lock_below_mm=inches(below)))]))
    assert [(fault.message, fault.place) for fault in mounting.faults] == [
        (
            "'lock' of 'Tide chart' must be below its hangers and within the frame, from "
            f"3 in (76 mm) to 20 in (508 mm) below the top edge; it is {shown}",
            AT,
        )
    ]


@pytest.mark.parametrize(
    ("offset", "teeth", "x", "which"),
    [
        (0, 1 / 8, 8, "middle notch"),
        (1 / 4, 1 / 8, 8, "notch 2 to the left of its middle one"),
        (-1 / 8, 1 / 8, 8, "notch 1 to the right of its middle one"),
        (3 / 32, 1 / 8, 8 + 3 / 32 - 1 / 8, "notch 1 to the left of its middle one"),
        (1 / 32, 1 / 8, 8 + 1 / 32, "middle notch"),
    ],
)
def test_a_sawtooth_hangs_on_the_notch_nearest_the_middle(
    offset: float, teeth: float, x: float, which: str
) -> None:
    hang = hanging(Hanger.SAWTOOTH, inches(2), rise=0.0, offset=inches(offset))
    mount = mount_of(replace(hang, teeth_mm=inches(teeth)))
    assert mount.marks[0].hole.x == pytest.approx(inches(x))
    # One notch aside: 16 in wide x 1/8 in / 8 in from the notch down to the middle = 1/4 in.
    assert mount.notes == (
        f"Hang it on the {which}: one notch aside is 1/8 in (3 mm), and tilts it by 1/4 in (6 mm) "
        "over its width.",
    )


def test_a_sawtooth_at_the_middle_or_below_tilts_as_it_likes() -> None:
    hang = hanging(Hanger.SAWTOOTH, inches(10), rise=0.0)
    mount = mount_of(replace(hang, teeth_mm=inches(1 / 8)))
    assert mount.notes == ("Hang it on the middle notch: one notch aside is 1/8 in (3 mm).",)


RAIL = replace(hanging(Hanger.RAIL, inches(2), at=AT), rail_mm=inches(90))


def test_a_cord_from_the_rail_has_no_hole() -> None:
    wall = layout([frame(RAIL, weight_kg=2.0)])
    (placed,) = plan_of(wall).pieces
    (cord,) = placed.supports
    assert isinstance(cord, Cord)
    assert placed.marks == ()
    assert placed.hang == RAIL
    # Tied at 60 + 10 - 2 = 68 in above the floor, in the frame's middle at 48 in: 22 in of cord.
    assert cord.hook == pytest.approx((inches(48), inches(90)))
    assert cord.length_mm == pytest.approx(inches(22))
    assert cord.load_n == pytest.approx(19.6133)
    assert placed.notes == ()
    assert list(note_supports(placed.supports, placed.hang, Unit.INCH)) == [
        "No hole: a cord of 22 in (559 mm) from the rail's hook, 90 in (2286 mm) above the floor."
    ]


def test_two_cords_hang_plumb() -> None:
    hang = replace(RAIL, cords=2, apart_mm=inches(12), balance_mm=inches(3))
    (placed,) = plan_of(layout([frame(hang, weight_kg=2.0)])).pieces
    hooks = [cord.hook.x / 25.4 for cord in placed.supports if isinstance(cord, Cord)]
    assert hooks == pytest.approx([42, 54])
    loads = [cord.load_n for cord in placed.supports if isinstance(cord, Cord)]
    # The mass centre is 9 in from the left cord, 3 in from the right one.
    assert loads == pytest.approx([19.6133 / 4, 19.6133 * 3 / 4])
    (note,) = note_supports(placed.supports, placed.hang, Unit.INCH)
    assert note.startswith("No hole: 2 cords, each of 22 in (559 mm)")


@pytest.mark.parametrize(
    ("height", "message"),
    [
        (
            68,
            "the rail of 'Tide chart' must be above where its cord is tied, 68 in (1727 mm) above "
            "the floor; it is at 68 in (1727 mm)",
        ),
        (97, "the rail of 'Tide chart' would be 1 in (25 mm) above the ceiling"),
    ],
)
def test_a_rail_where_none_can_be_is_a_fault(height: float, message: str) -> None:
    wall = layout([frame(replace(RAIL, rail_mm=inches(height)))])
    faults = place_layout(wall).faults
    assert [(fault.message, fault.place) for fault in faults] == [(message, AT)]


def test_a_rail_just_below_the_ceiling_is_none() -> None:
    assert place_layout(layout([frame(replace(RAIL, rail_mm=inches(96)))])).faults == ()


STRIPS = replace(hanging(Hanger.STRIPS), drop_mm=None, strip_rating_kg=2.0, at=AT)


@pytest.mark.parametrize(
    ("weight", "each", "count", "note"),
    [
        (
            1.5,
            "pair",
            2,
            "No hole: 2 pairs of adhesive strips, each rated 4.4 lb by its maker.",
        ),  # 3 / 2
        (0.5, "strip", 1, "No hole: 1 adhesive strip, each rated 4.4 lb by its maker."),
        (
            None,
            "pair",
            None,
            "No hole: how many strips it needs is not known: weigh it, and go by their maker's table.",
        ),
    ],
)
def test_strips_are_counted_by_the_weight(
    weight: float | None, each: str, count: int | None, note: str
) -> None:
    hang = replace(STRIPS, strip_each=each)
    mount = mount_of(hang, weight)
    assert mount == Mount((), (), supports=(Strips(count, each),))
    assert list(note_supports(mount.supports, hang, Unit.INCH)) == [note]


def test_a_strip_of_ounces_is_told_as_its_packet_has_it() -> None:
    # 12 oz are 3/4 lb = 0.34019 kg; 1.5 kg on half of that is 8.82.
    hang = replace(STRIPS, strip_rating_kg=0.75 * 0.45359237)
    (strips,) = mount_of(hang, 1.5).supports
    told = ["No hole: 9 pairs of adhesive strips, each rated 0.75 lb by its maker."]
    assert list(note_supports([strips], hang, Unit.INCH)) == told


def test_strips_are_counted_by_the_most_an_estimate_may_be() -> None:
    # Acrylic 2 mm over 16 x 20 in (0.2064512 m2) weighs 0.4913 kg, at most 1200 x 2 mm = 0.49548;
    # at a rating of 0.247 kg that is 4.012 strips of half their rating, so five.
    work = replace(
        frame(replace(STRIPS, strip_rating_kg=0.247)),
        made_of=MadeOf(Sheet(Material.ACRYLIC, 2)),
    )
    (strips,) = mount_pieces(layout([work])).mounts["Tide chart"].supports
    assert isinstance(strips, Strips)
    assert strips.count == 5


def test_an_estimate_stands_in_for_a_weight_and_says_so() -> None:
    work = replace(frame(D_RINGS), made_of=MadeOf(Sheet(Material.GLASS, 2)))
    (placed,) = plan_of(layout([work])).pieces
    assert placed.estimate is not None
    # 0.2064512 m2 x 5 kg/m2 = 1.032256 kg; half of it x 9.80665 on each ring.
    assert placed.weight_kg == pytest.approx(1.032256)
    assert [mark.load_n for mark in placed.marks] == pytest.approx([1.032256 * 9.80665 / 2] * 2)


def test_a_weight_that_is_given_needs_no_estimate() -> None:
    work = replace(frame(D_RINGS, weight_kg=3.0), made_of=MadeOf(Sheet(Material.GLASS, 2)))
    (placed,) = plan_of(layout([work])).pieces
    assert (placed.weight_kg, placed.estimate) == (3.0, None)


CLEAT = replace(
    hanging(Hanger.CLEAT, inches(4), rise=inches(-0.5), width=inches(14), at=AT), on_studs=True
)


@pytest.mark.parametrize(
    ("studs", "screws"),
    [
        # The rail runs from 41 to 55 in.
        ((0, 16, 32, 48, 64), [48]),
        ((24, 41, 55, 60), [41, 55]),
        ((40.9, 42, 50, 55.1), [42, 50]),
    ],
)
def test_a_cleat_is_screwed_to_the_studs_behind_it(
    studs: tuple[float, ...], screws: list[float]
) -> None:
    (placed,) = plan_of(with_studs(CLEAT, *studs, weight_kg=10.0)).pieces
    assert [mark.hole.x / 25.4 for mark in placed.marks] == pytest.approx(screws)
    # 60 + 10 - 4 - 1/2 in above the floor.
    assert [mark.hole.y / 25.4 for mark in placed.marks] == pytest.approx([65.5] * len(screws))
    assert sum(mark.load_n or 0 for mark in placed.marks) == pytest.approx(98.0665)
    ends = ("An outer screw is at the very end, where wood splits: measure where yours has holes.",)
    one = ("Only one stud is behind the rail: it could turn; move the piece, or use a longer rail.",)
    assert placed.notes == (one if len(screws) == 1 else ends if 41 in screws else ())


def test_a_cleat_without_a_stud_behind_it_is_a_fault() -> None:
    placement = place_layout(with_studs(CLEAT, 24, 40.5, 56))
    assert [(fault.message, fault.place) for fault in placement.faults] == [
        (
            "'on: studs' of 'Tide chart' finds no stud behind its rail; the nearest is 1/2 in (13 mm) "
            "past the rail's end",
            AT,
        )
    ]


def test_pieces_that_need_no_stud_do_not_hide_the_one_that_lacks_it() -> None:
    wall = with_studs(CLEAT, 24, 40.5, 56)
    bare = piece("Outline", hang=None, place=position(left=0.0))
    nailed = piece("Log book", hang=hanging(rise=0.0), place=position(right=0.0))
    (fault,) = place_layout(replace(wall, pieces=(bare, nailed, *wall.pieces))).faults
    assert "finds no stud behind its rail" in fault.message


def test_a_cleat_on_studs_that_nobody_found_is_a_fault() -> None:
    mounting = mount_pieces(layout([frame(CLEAT)]))
    assert [(fault.message, fault.place) for fault in mounting.faults] == [
        ("'on: studs' of 'Tide chart' needs to know where the wall's studs are", AT)
    ]


def test_a_faulty_cleat_on_studs_is_told_once() -> None:
    wall = with_studs(replace(CLEAT, drop_mm=inches(30)), 48)
    assert len(mount_pieces(wall).faults) == 1
    assert place_layout(wall).faults == ()


@st.composite
def hardware(draw: st.DrawFn) -> Hanging:
    """Any hardware for a frame of 16 x 20 in but a wire with rings, sound or not."""
    by = draw(st.sampled_from(Hanger))
    pairs = (Hanger.D_RINGS, Hanger.KEYHOLES, Hanger.RAIL)
    span = st.floats(5, inches(18))
    is_cleat = by is Hanger.CLEAT
    hang = hanging(
        by,
        draw(st.floats(-5, inches(21))),
        rise=draw(st.none() | st.floats(-30, 30)),
        apart=draw(span) if by in pairs else None,
        offset=draw(st.just(0.0) | st.floats(-100, 100)),
        width=draw(span) if is_cleat else None,
        every=draw(span) if is_cleat else None,
    )
    return replace(
        hang,
        on_studs=is_cleat and draw(st.booleans()),
        balance_mm=draw(st.just(0.0) | st.floats(-100, 100)),
        teeth_mm=draw(st.none() | st.floats(1, 10)) if by is Hanger.SAWTOOTH else None,
        rail_mm=draw(st.floats(1000, 2600)) if by is Hanger.RAIL else None,
        cords=draw(st.integers(1, 2)),
        strip_rating_kg=draw(st.floats(0.1, 10)) if by is Hanger.STRIPS else None,
        lock_below_mm=draw(st.none() | st.floats(0, inches(21))) if is_cleat else None,
    )


@given(hardware(), st.none() | st.floats(0.1, 100), st.lists(st.floats(0, 200), max_size=6))
def test_any_hardware_is_a_fault_or_holds_the_weight(
    hang: Hanging, weight_kg: float | None, studs: list[float]
) -> None:
    wall = with_studs(hang, *studs, weight_kg=weight_kg)
    placement = place_layout(wall)
    (placed,) = placement.plan.pieces
    if mount_pieces(wall).faults or placement.faults:
        return
    assert placed.marks or placed.supports
    cords = [support for support in placed.supports if isinstance(support, Cord)]
    loads = [mark.load_n for mark in placed.marks] + [cord.load_n for cord in cords]
    if weight_kg is None:
        assert set(loads) <= {None}
    elif loads:
        assert sum(load or 0 for load in loads) == pytest.approx(weight_kg * 9.80665)
        assert all(load is not None and load >= 0 for load in loads)
    holes = [mark.hole for mark in placed.template_marks() if not mark.is_lock]
    assert holes == sorted(holes, key=lambda hole: hole.x)
    assert len(set(holes)) == len(holes)
    for cord in cords:
        assert cord.length_mm > 0


def test_the_load_of_a_picture_that_bends_its_nail() -> None:
    # OpenStax, College Physics 2e, section 5.3, example 5.5 (seen): a steel nail of radius 0.750 mm
    # gives 1.80 um over an arm of 5.00 mm at a shear modulus of 80e9: 51 N, a picture of 5.2 kg.
    force = 80e9 * 3.14159265 * 0.750e-3**2 / 5.00e-3 * 1.80e-6
    assert force == pytest.approx(50.894, abs=5e-4)
    (mark,) = mount_of(hanging(Hanger.NAIL, 10.0), weight_kg=force / 9.80).marks
    assert mark.load_n == pytest.approx(51, abs=0.1)
    assert force / 9.80 == pytest.approx(5.193, abs=5e-4)


def test_a_metric_wall_speaks_of_kilograms() -> None:
    supports = mount_of(STRIPS, 1.5).supports
    assert list(note_supports(supports, STRIPS, Unit.MILLIMETRE)) == [
        "No hole: 2 pairs of adhesive strips, each rated 2 kg by its maker."
    ]
