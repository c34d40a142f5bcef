"""The forces of a wire on its rings and hooks, and whether the frame stays straight.

Everything is a multiple of the weight until a weight is known.
"""

from __future__ import annotations

from math import atan2, exp, hypot, log

from templater.mounting.model import Statics
from templater.mounting.wire import Rings, Wire, hang_by_length

STANDARD_GRAVITY = 9.80665
"""Newton per kilogram: the standard value fixed by the 3rd CGPM (1901)."""

_HALVINGS = 60


def find_statics(wire: Wire, weight_n: float | None) -> Statics:
    """The forces of a wire whose frame is held level.

    Even rings, angle a of the wire from the horizontal: tension = W / (2 sin a), growing without
    bound as the wire gets flat (OpenStax, University Physics 1, section 5.6; College Physics 2e,
    section 4.5). In general the weight and the pulls H (level) and V (up) of the ring ends are at
    rest: the moments about the right ring give V, the wire's direction H. Between two hooks the
    wire is level: each is drawn inward by what the level part pulls more than the sloping one.
    """
    up, level = _find_pulls(wire)
    tensions = hypot(level, up[0]), hypot(level, up[1])
    angles = atan2(up[0], level), atan2(up[1], level)
    friction = find_friction(tensions, sum(angles))
    is_single = len(wire.hooks) == 1
    between = tensions[0] * exp(friction * angles[0] * (-1 if tensions[0] > tensions[1] else 1))
    return Statics(
        angles=angles,
        tensions=tensions,
        down=(sum(up),) if is_single else up,
        inward=(0.0,) if is_single else (between - level, between - level),
        wire_mm=wire.length,
        friction=friction,
        is_stable=wire.rings.is_even and is_stable(wire),
        weight_n=weight_n,
    )


def _find_pulls(wire: Wire) -> tuple[tuple[float, float], float]:
    """What the wire pulls each ring up by, and both toward each other."""
    left, right, mass = wire.rings.left, wire.rings.right, wire.rings.mass
    hook = wire.hooks[0]
    whole = wire.rings.apart * (hook.y - left.y) + (left.y - right.y) * (hook.x - left.x)
    share = (right.x - mass.x) / whole
    up = share * (hook.y - left.y)
    return (up, 1 - up), share * (hook.x - left.x)


def find_friction(tensions: tuple[float, float], wrap: float) -> float:
    """The least coefficient of friction that holds two tensions apart: ln(T1 / T2) / wrap angle.

    The belt friction formula of Euler and Eytelwein (from memory); ``wrap`` in radians, over one
    hook or two.
    """
    return 0.0 if tensions[0] == tensions[1] else abs(log(tensions[0] / tensions[1])) / wrap


def is_stable(wire: Wire) -> bool:
    """Whether an evenly hung frame turns back by itself when it is turned a little, free of friction.

    It does if depth x rise > (S / 2) x (S - d) / 2: depth of the mass centre below the rings, rise
    of the wire, rings S and hooks d apart. Turned by an angle t, the frame finds its lowest place
    with its mass centre (depth - S (S - d) / (4 rise)) t² / 2 higher than before; for one hook
    (d = 0) the criterion is depth x rise > (S / 2)².
    """
    depth = wire.rings.left.y - wire.rings.mass.y
    rise = wire.hooks[0].y - wire.rings.left.y
    spread = wire.hooks[-1].x - wire.hooks[0].x
    return depth * rise > wire.rings.apart * (wire.rings.apart - spread) / 4


def find_steady_spread(rings: Rings, length: float) -> float | None:
    """How far apart two hooks must be for the frame to stay straight without friction, mm.

    None where no spread is enough: the mass centre is not below the rings, or they are uneven.
    """
    if not rings.is_even or rings.mass.y >= rings.left.y:
        return None
    low, high = 0.0, rings.apart
    for _ in range(_HALVINGS):
        spread = (low + high) / 2
        if is_stable(hang_by_length(rings, length, spread)):
            high = spread
        else:
            low = spread
    return high
