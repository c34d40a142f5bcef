"""Where the hardware of a piece bears, from its measures alone, and how much each place bears."""

from __future__ import annotations

from math import floor
from typing import assert_never

from templater.geometry import Point, Size
from templater.layout.model import Hanger, Hanging
from templater.mounting.amounts import SLACK_MM
from templater.mounting.wire import Rings, Wire, hang_by_height, hang_by_length


def find_hang_points(hang: Hanging, size: Size) -> tuple[Point, ...]:
    """Where the hardware bears, left to right, from the frame's bottom-left corner.

    A hang point lies ``drop`` below the frame's top edge, so on the wall it is at the height
    centre + frame height / 2 - drop. Sources of that formula: Hilliard Art Museum, "How does the
    artwork get on the wall" (60 in midline); Outdoor Photographer, "The Art of Exhibition".
    """
    middle, y = find_middle(hang, size), size.height - given(hang.drop_mm)
    return tuple(Point(middle + aside, y) for aside in _spread(hang))


def find_middle(hang: Hanging, size: Size) -> float:
    """The x of the hardware's middle; of a sawtooth, the x of the notch to hang it on."""
    middle = size.width / 2 + hang.offset_mm
    return middle + find_notch(hang) * hang.teeth_mm if hang.teeth_mm else middle


def find_notch(hang: Hanging) -> int:
    """Which notch of a sawtooth is nearest the frame's middle: 0 its own middle one, 1 to the right."""
    return -round(hang.offset_mm / hang.teeth_mm) if hang.teeth_mm else 0


def _spread(hang: Hanging) -> tuple[float, ...]:
    """How far each hang point lies right of the hardware's middle, left to right."""
    if hang.by is Hanger.CLEAT:
        every = given(hang.every_mm)
        spaces = floor(given(hang.width_mm) / every + 1e-9)
        return tuple((screw - spaces / 2) * every for screw in range(spaces + 1))
    half = find_reach(hang)
    return (-half, half) if half else (0.0,)


def find_reach(hang: Hanging) -> float:
    """How far the hardware reaches to each side of its middle, mm."""
    match hang.by:
        case Hanger.CLEAT:
            return given(hang.width_mm) / 2
        case Hanger.D_RINGS | Hanger.KEYHOLES:
            return given(hang.apart_mm) / 2
        case Hanger.RAIL:
            return given(hang.apart_mm) / 2 if hang.cords > 1 else 0.0
        case Hanger.WIRE:
            return find_spread(hang) / 2
        case Hanger.SAWTOOTH | Hanger.NAIL | Hanger.STRIPS:
            return 0.0
        case _:
            assert_never(hang.by)


def find_spread(hang: Hanging) -> float:
    """How far apart the hooks of a wire are, mm; 0 for a single one."""
    return given(hang.spread_mm) if hang.hooks > 1 else 0.0


def given(value: float | None) -> float:
    """A measure that the layout's reader demands of this kind of hanger."""
    if value is None:
        raise ValueError("a measure is missing that this kind of hanger cannot do without")
    return value


def find_mass_centre(hang: Hanging, size: Size) -> Point:
    """The mass centre of a piece: the middle of its frame unless the layout says otherwise."""
    below = size.height / 2 if hang.balance_below_mm is None else hang.balance_below_mm
    return Point(size.width / 2 + hang.balance_mm, size.height - below)


def find_rings(hang: Hanging, size: Size) -> Rings | None:
    """Where a wire is tied, in the frame's coordinates, if the layout says it."""
    if hang.rings is None:
        return None
    left, right = hang.rings.left, hang.rings.right
    return Rings(
        Point(size.width / 2 - left.from_middle_mm, size.height - left.below_top_mm),
        Point(size.width / 2 + right.from_middle_mm, size.height - right.below_top_mm),
        find_mass_centre(hang, size),
    )


def find_wire_length(hang: Hanging, size: Size, rings: Rings) -> float:
    """A wire's length from ring to ring: given, or by the drop with the wire pulled up at its hooks."""
    if hang.wire_mm is not None:
        return hang.wire_mm
    spread = 0.0 if hang.measured_at == 1 else find_spread(hang)
    return hang_by_height(rings, size.height - given(hang.drop_mm), spread).length


def hang_wire(hang: Hanging, size: Size, rings: Rings) -> Wire:
    """A wire on its hooks; a drop measured at as many hooks stands as it was measured."""
    spread = find_spread(hang)
    if hang.wire_mm is None and hang.measured_at in (None, hang.hooks):
        return hang_by_height(rings, size.height - given(hang.drop_mm), spread)
    return hang_by_length(rings, find_wire_length(hang, size, rings), spread)


def share_load(points: tuple[Point, ...], mass_x: float) -> tuple[float, ...]:
    """What share of the weight each hang point bears, static.

    Two points bear inversely to their level distances from the mass centre (the moments about each
    of them), and the nearer one all of it where the mass centre is not between them. More than two
    are screws of one rail, and share alike.
    """
    if len(points) != 2:
        return (1 / len(points),) * len(points)
    (left, _), (right, _) = points
    share = min(max((mass_x - left) / (right - left), 0.0), 1.0)
    return (1 - share, share)


def is_between(points: tuple[Point, ...], mass_x: float) -> bool:
    """Whether the mass centre is not beside two hang points."""
    return len(points) != 2 or points[0].x - SLACK_MM <= mass_x <= points[1].x + SLACK_MM
