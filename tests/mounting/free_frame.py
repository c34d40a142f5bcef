"""A frame on its wire found by its potential energy alone, to compare the program's formulas with.

The wire is a path of a given length over fixed hooks, free of friction; the frame sinks until its
mass centre can get no lower. Nothing here knows of the program's formulas. Hooks are level, mm.
"""

from __future__ import annotations

from math import cos, dist, sin

from scipy.optimize import brentq, minimize_scalar

from templater.mounting.wire import Rings

STIFF = 1e9
"""How hard it is to stretch a wire, in weights of the frame for each mm: so it hardly stretches."""


def find_sinking(
    rings: Rings, hook_xs: tuple[float, ...], length: float, *, stiffness: float = STIFF
) -> tuple[float, float]:
    """How far the hooks are above the left ring, and the wire's stretch, with the frame held level.

    The height is the only freedom; what is least is the energy of the weight and the stretched wire.
    """

    def stretch(rise: float) -> float:
        y = rings.left.y + rise
        hooks = [(x, y) for x in hook_xs]
        path = dist(rings.left, hooks[0]) + hook_xs[-1] - hook_xs[0] + dist(hooks[-1], rings.right)
        return max(path - length, 0.0)

    found = minimize_scalar(
        lambda rise: stiffness / 2 * stretch(rise) ** 2 - rise,
        bounds=(-length, 2 * length),
        method="bounded",
        options={"xatol": 1e-11, "maxiter": 5000},
    )
    return float(found.x), stretch(found.x)


def find_tilt(half: float, depth: float, spread: float, length: float, *, most: float) -> float:
    """The tilt, radians up to ``most``, at which a free frame with level rings comes to rest.

    ``half`` the rings' spacing; the mass centre ``depth`` below their middle.
    """

    def height(tilt: float) -> float:
        found = minimize_scalar(
            lambda x: _sink(half, spread, length, x, tilt),
            bounds=(-half, half),
            method="bounded",
            options={"xatol": 1e-9},
        )
        return float(found.fun) - depth * cos(tilt)

    found = minimize_scalar(height, bounds=(0, most), method="bounded", options={"xatol": 1e-7})
    return float(found.x)


def _sink(half: float, spread: float, length: float, x: float, tilt: float) -> float:
    """The height of the rings' middle at x, below the hooks at 0, that the wire lets it sink to."""

    def slack(y: float) -> float:
        across, up = half * cos(tilt), half * sin(tilt)
        left = dist((x - across, y - up), (-spread / 2, 0))
        return length - left - spread - dist((x + across, y + up), (spread / 2, 0))

    top = minimize_scalar(lambda y: -slack(y), bounds=(-half, half), method="bounded").x
    if slack(top) <= 0:
        return length
    return float(brentq(slack, -2 * length, top, xtol=1e-12))
