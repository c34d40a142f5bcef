"""Hardware that just fits its frame is no fault; a tenth of a millimetre more is one."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from templater.layout.model import Hanger, Hanging, Ring, Rings
from templater.lengths import Unit
from templater.mounting.mount import Mounting, mount_pieces
from tests.builders import hanging, layout, piece

WIDTH, HEIGHT, MORE = 600.0, 800.0, 0.1
D_RINGS = hanging(Hanger.D_RINGS, 50, apart=400)
WIRE = replace(hanging(Hanger.WIRE, 0.0, rise=0.0), drop_mm=None)
LEVEL = Rings(Ring(200, 300), Ring(200, 300))


def mounting_of(hang: Hanging) -> Mounting:
    work = piece("Tide chart", WIDTH, HEIGHT, hang=hang)
    return mount_pieces(layout([work], units=Unit.MILLIMETRE))


@pytest.mark.parametrize(
    ("fits", "word"),
    [
        # Hardware across the whole frame, or pushed to one of its edges.
        (lambda more: replace(D_RINGS, apart_mm=WIDTH + more), "'apart'"),
        (lambda more: replace(D_RINGS, offset_mm=100 + more), "the frame's right edge"),
        (lambda more: replace(D_RINGS, offset_mm=-100 - more), "the frame's left edge"),
        (lambda more: replace(D_RINGS, apart_mm=WIDTH, offset_mm=more), "the frame's right edge"),
        (lambda more: replace(D_RINGS, apart_mm=WIDTH, offset_mm=-more), "the frame's left edge"),
        # Hangers on the top edge, on the bottom edge; a lock on the bottom edge.
        (lambda more: replace(D_RINGS, drop_mm=-more), "'drop'"),
        (lambda more: replace(D_RINGS, drop_mm=HEIGHT + more), "'drop'"),
        (lambda more: replace(D_RINGS, lock_below_mm=HEIGHT + more), "'lock'"),
        # A ring on the frame's edge; hooks straight above the rings, 400 apart.
        (
            lambda more: replace(WIRE, wire_mm=700, rings=Rings(Ring(300 + more, 300), Ring(300, 300))),
            "the left ring",
        ),
        (
            lambda more: replace(WIRE, wire_mm=700, rings=Rings(Ring(300, 300), Ring(300 + more, 300))),
            "the right ring",
        ),
        (
            lambda more: replace(
                WIRE, wire_mm=700, rings=Rings(Ring(200, HEIGHT), Ring(200, HEIGHT + more))
            ),
            "the right ring",
        ),
        (
            lambda more: replace(WIRE, rings=LEVEL, wire_mm=600, hooks=2, spread_mm=400 + more),
            "'spread'",
        ),
        # 3-4-5: rings 400 apart and 300 below the top, half the span 200; two hooks 400 apart on a
        # wire of 400 + 2 x 300 bear on the top edge.
        (
            lambda more: replace(WIRE, rings=LEVEL, wire_mm=1000 + 2 * more, hooks=2, spread_mm=400),
            "above the frame's top edge",
        ),
    ],
)
def test_what_just_fits(fits: Callable[[float], Hanging], word: str) -> None:
    assert mounting_of(fits(0.0)).faults == ()
    assert mounting_of(fits(0.0)).mounts["Tide chart"].marks
    (fault,) = mounting_of(fits(MORE)).faults
    assert word in fault.message


@pytest.mark.parametrize("more", [0.0, -MORE])
def test_a_drop_as_deep_as_the_rings_is_one_too_many(more: float) -> None:
    # Rings 300 below the top: a wire pulled up to 300 is the straight way, and bears nothing.
    hang = replace(WIRE, rings=LEVEL, drop_mm=300 + more)
    assert [fault.message.split(" of ")[0] for fault in mounting_of(hang).faults] == (
        ["'drop'"] if more == 0 else []
    )


@pytest.mark.parametrize(("balance", "side"), [(200.0, "right"), (-200.0, "left")])
def test_a_mass_centre_plumb_under_a_ring_is_not_between(balance: float, side: str) -> None:
    faults = mounting_of(replace(WIRE, rings=LEVEL, wire_mm=700, balance_mm=balance)).faults
    assert [fault.message for fault in faults] == [
        "the mass centre of 'Tide chart' must be between its rings; it is "
        f"0 mm (0 in) past the {side} one"
    ]
    inside = balance * (1 - MORE / 200)
    assert mounting_of(replace(WIRE, rings=LEVEL, wire_mm=700, balance_mm=inside)).faults == ()


def test_a_rail_has_no_more_screws_than_anybody_drives() -> None:
    # 400 mm by steps of 2 mm: 200 screws and one; by steps of 0.001 mm, a slip of the unit, 400,000.
    cleat = replace(hanging(Hanger.CLEAT, 50), width_mm=400.0)
    assert mounting_of(replace(cleat, every_mm=2.0)).faults == ()
    (fault,) = mounting_of(replace(cleat, every_mm=0.001)).faults
    assert "400000 screws" in fault.message
    assert fault.hint == "check 'every' and its unit"
