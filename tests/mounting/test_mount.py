from __future__ import annotations

from collections.abc import Iterable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.errors import Place
from templater.geometry import Point
from templater.layout.model import Hanger, Hanging
from templater.lengths import Unit
from templater.mounting.model import Mount
from templater.mounting.mount import mount_pieces
from tests.builders import hanging, inches, layout, piece, plan_of, position


def mount_of(hang: Hanging | None, width: float, height: float, weight_kg: float | None = None) -> Mount:
    mounting = mount_pieces(layout([piece("Tide chart", width, height, hang=hang, weight_kg=weight_kg)]))
    assert mounting.faults == ()
    return mounting.mounts["Tide chart"]


def in_inches(points: Iterable[Point]) -> list[tuple[float, float]]:
    """Points in inches, rounded only as far as floats need it."""
    return [(round(point.x / 25.4, 9), round(point.y / 25.4, 9)) for point in points]


def holes_in_inches(mount: Mount) -> list[tuple[float, float]]:
    return in_inches(mark.hole for mark in mount.marks)


@pytest.mark.parametrize(
    ("centre", "height", "drop", "hook"),
    [
        # Outdoor Photographer, "The Art of Exhibition": centre 58 in, frame 16 in, drop 2 in.
        (58, 16, 2, 64),  # 58 + 8 - 2
        # Apartment Therapy, "How to hang your artwork properly": 57 in midline, frame 20 in.
        (57, 20, 2, 65),  # 57 + 10 - 2
        # The 60 in midline of the Hilliard Art Museum ("How does the artwork get on the wall").
        (60, 16, 2, 66),  # 60 + 8 - 2
    ],
)
def test_published_hook_heights(centre: float, height: float, drop: float, hook: float) -> None:
    work = piece(
        "Tide chart",
        inches(12),
        inches(height),
        hang=hanging(Hanger.WIRE, inches(drop), rise=0.0),
        place=position(eye_line=inches(centre)),
    )
    (mark,) = plan_of(layout([work])).pieces[0].marks
    assert mark.hang.y == pytest.approx(inches(hook))
    assert mark.hole.y == pytest.approx(inches(hook))


def test_the_wrong_published_formula_is_not_ours() -> None:
    # A home page (homify.sg, idea book 22241) gives hook = 145 - H - drop, in cm. For H = 60 and a
    # drop of 5 that is 80 cm; the picture's middle would hang at 55 cm. Right is 145 + 30 - 5 = 170.
    work = piece(
        "Tide chart", 400, 600, hang=hanging(Hanger.WIRE, 50, rise=0.0), place=position(eye_line=1450)
    )
    (mark,) = plan_of(layout([work], units=Unit.CENTIMETRE)).pieces[0].marks
    assert mark.hole.y == pytest.approx(1700)
    assert mark.hole.y != pytest.approx(800)


@pytest.mark.parametrize("by", [Hanger.WIRE, Hanger.SAWTOOTH, Hanger.NAIL])
def test_one_hole_stands_on_the_middle_above_its_hang_point(by: Hanger) -> None:
    mount = mount_of(hanging(by, inches(2.25), rise=inches(0.5)), inches(16), inches(20))
    assert in_inches(mark.hang for mark in mount.marks) == [(8.0, 17.75)]  # 20 - 2 1/4
    assert holes_in_inches(mount) == [(8.0, 18.25)]  # + 1/2
    assert mount.notes == ()


@pytest.mark.parametrize("by", [Hanger.D_RINGS, Hanger.KEYHOLES])
def test_two_holes_stand_apart_about_the_offset_middle(by: Hanger) -> None:
    hang = hanging(by, inches(3), apart=inches(12), offset=inches(0.5), rise=inches(-0.25))
    mount = mount_of(hang, inches(16), inches(20))
    # Middle 8 + 1/2; six inches to each side; 20 - 3 - 1/4 up.
    assert holes_in_inches(mount) == [(2.5, 16.75), (14.5, 16.75)]


@pytest.mark.parametrize(
    ("width", "every", "screws"),
    [
        (16, 4, [0.0, 4.0, 8.0, 12.0, 16.0]),
        (15, 4, [2.0, 6.0, 10.0, 14.0]),  # floor(3.75) + 1 = 4 screws, 12 in across
        (3, 4, [8.0]),
    ],
)
def test_cleat_screws_stand_evenly_about_the_middle(
    width: float, every: float, screws: list[float]
) -> None:
    hang = hanging(Hanger.CLEAT, inches(4), width=inches(width), every=inches(every), rise=inches(-0.75))
    mount = mount_of(hang, inches(16), inches(20))
    assert holes_in_inches(mount) == [(x, 15.25) for x in screws]  # 20 - 4 - 3/4
    assert all(mark.hang == mark.hole.moved(0, inches(0.75)) for mark in mount.marks)


def test_a_rail_of_exactly_so_many_spaces_loses_no_screw() -> None:
    # 10 1/2 in and 1 1/2 in as floats of mm: 266.7 / 38.1 is a little less than 7.
    hang = hanging(Hanger.CLEAT, 100.0, width=266.7, every=38.1, rise=0.0)
    assert len(mount_of(hang, 406.4, 508.0).marks) == 8


def test_an_offset_cleat_keeps_its_screws_about_the_rails_middle() -> None:
    hang = hanging(
        Hanger.CLEAT, inches(4), width=inches(8), every=inches(8), offset=inches(-2), rise=0.0
    )
    assert holes_in_inches(mount_of(hang, inches(16), inches(20))) == [(2.0, 16.0), (10.0, 16.0)]


def test_the_load_is_shared_equally() -> None:
    # 2 kg x 9.80665 m/s2 (standard gravity, 3rd CGPM 1901) = 19.6133 N.
    one = mount_of(hanging(rise=0.0), 400, 500, weight_kg=2.0)
    two = mount_of(hanging(Hanger.D_RINGS, apart=300), 400, 500, weight_kg=2.0)
    assert [mark.load_n for mark in one.marks] == [pytest.approx(19.6133)]
    assert [mark.load_n for mark in two.marks] == [pytest.approx(9.80665)] * 2


def test_an_unknown_weight_is_no_load() -> None:
    assert [mark.load_n for mark in mount_of(hanging(), 400, 500).marks] == [None]


def test_a_piece_without_a_hanger_has_no_hole_and_says_so() -> None:
    assert mount_of(None, 400, 500) == Mount(
        (), ("No hanger given: this is an outline to look at; it has no hole.",)
    )


@pytest.mark.parametrize(
    ("hang", "notes"),
    [
        # Of a hook's rise a caution tells, once it is known what the hole takes.
        (hanging(Hanger.WIRE, inches(2)), ()),
        (hanging(Hanger.D_RINGS, inches(2), apart=inches(8)), ()),
        (
            hanging(Hanger.CLEAT, inches(2), width=inches(9), every=inches(8)),
            (
                "The crosses are at the rail's bearing edge: its screws' rise is not given. Hold the"
                " rail there, and mark its own holes.",
            ),
        ),
        # Screws 200 mm apart on a rail of 219 mm are 9.5 mm from its ends, on one of 221 mm 10.5 mm.
        (
            hanging(Hanger.CLEAT, inches(2), width=219.0, every=200.0, rise=0.0),
            ("An outer screw is at the very end, where wood splits: measure where yours has holes.",),
        ),
        (hanging(Hanger.CLEAT, inches(2), width=221.0, every=200.0, rise=0.0), ()),
        (
            hanging(Hanger.NAIL, inches(0.5), rise=inches(1)),  # 1 - 1/2 in above the edge, 12.7 mm
            ("The hole is 1/2 in (13 mm) above the frame's top edge: the fastener will show.",),
        ),
        (
            hanging(Hanger.D_RINGS, inches(19.75), apart=inches(8), rise=inches(-0.5)),
            ("The holes are 1/4 in (6 mm) below the frame's bottom edge: the fasteners will show.",),
        ),
        (hanging(Hanger.NAIL, inches(0.5), rise=inches(0.5)), ()),
    ],
)
def test_notes(hang: Hanging, notes: tuple[str, ...]) -> None:
    assert mount_of(hang, inches(16), inches(20)).notes == notes


AT = Place("hall.yaml", 7, 11)


@pytest.mark.parametrize(
    ("hang", "message"),
    [
        (
            hanging(Hanger.WIRE, inches(21), at=AT),
            "'drop' of 'Tide chart' must be from 0 to the frame's height, 20 in (508 mm); "
            "it is 21 in (533 mm)",
        ),
        (
            hanging(Hanger.WIRE, inches(-1), at=AT),
            "'drop' of 'Tide chart' must be from 0 to the frame's height, 20 in (508 mm); "
            "it is −1 in (−25 mm)",
        ),
        (
            hanging(Hanger.D_RINGS, inches(3), apart=inches(18), at=AT),
            "'apart' of 'Tide chart' is 2 in (51 mm) more than the frame's width, 16 in (406 mm)",
        ),
        (
            hanging(Hanger.CLEAT, inches(3), width=inches(17), every=inches(40), at=AT),
            "'width' of 'Tide chart' is 1 in (25 mm) more than the frame's width, 16 in (406 mm)",
        ),
        (
            hanging(Hanger.KEYHOLES, inches(3), apart=inches(14), offset=inches(1.5), at=AT),
            "'offset' of 'Tide chart' takes its hanger 1/2 in (13 mm) past the frame's right edge",
        ),
        (
            hanging(Hanger.NAIL, inches(3), offset=inches(-9), at=AT),
            "'offset' of 'Tide chart' takes its hanger 1 in (25 mm) past the frame's left edge",
        ),
    ],
)
def test_hardware_outside_the_frame_is_a_fault_at_its_place(hang: Hanging, message: str) -> None:
    mounting = mount_pieces(layout([piece("Tide chart", inches(16), inches(20), hang=hang)]))
    assert [(fault.message, fault.place) for fault in mounting.faults] == [(message, AT)]
    assert mounting.faults[0].hint
    assert mounting.mounts["Tide chart"].marks == ()


def test_hardware_that_just_fits_is_no_fault() -> None:
    edge = hanging(Hanger.D_RINGS, inches(20), apart=inches(12), offset=inches(2), rise=0.0)
    assert holes_in_inches(mount_of(edge, inches(16), inches(20))) == [(4.0, 0.0), (16.0, 0.0)]


def test_every_fault_is_told() -> None:
    hang = hanging(Hanger.D_RINGS, inches(30), apart=inches(30))
    assert len(mount_pieces(layout([piece("A", hang=hang), piece("B", hang=hang)])).faults) == 4


@given(
    st.floats(100, 2000),
    st.floats(100, 2000),
    st.floats(0, 1),
    st.floats(0.1, 1),
    st.floats(0.05, 2),
)
def test_cleat_screws_keep_to_the_rail(
    width: float, height: float, drop: float, rail: float, every: float
) -> None:
    hang = hanging(Hanger.CLEAT, height * drop, width=width * rail, every=width * rail * every, rise=0.0)
    xs = [mark.hole.x for mark in mount_of(hang, width, height).marks]
    assert xs[0] >= width / 2 - width * rail / 2 - 1e-6
    assert xs[0] + xs[-1] == pytest.approx(width)
    assert xs == sorted(xs)
    room = width * rail - (xs[-1] - xs[0])
    assert room < width * rail * every + 1e-6  # no room for one more screw
