"""Where a wire between two rings bears on one hook or two, with the frame held level.

Two hooks ``spread`` apart, level with each other, shorten the wire and bring its rings closer by
that much: with both rings moved inward by half of it, the middle of the hooks lies on the ellipse
whose foci are the rings. Where along the ellipse, the balance of the frame tells: the two ends of
the wire, drawn on, must meet plumb over the mass centre (three forces on a body at rest meet in a
point); so a single hook lies plumb over it. All in the frame's own coordinates, mm.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import dist, sqrt

from templater.geometry import Point

_HALVINGS = 200
"""More than a float has bits: the interval has then shrunk to two neighbouring numbers."""


@dataclass(frozen=True, slots=True)
class Rings:
    """Where a wire is tied, left and right, and the frame's mass centre somewhere between them."""

    left: Point
    right: Point
    mass: Point

    @property
    def apart(self) -> float:
        """How far the rings are from each other, level."""
        return self.right.x - self.left.x

    @property
    def is_even(self) -> bool:
        """Whether the frame hangs level by itself: level rings, the mass centre in their middle."""
        middle = (self.left.x + self.right.x) / 2
        return self.left.y == self.right.y and abs(middle - self.mass.x) <= 1e-9 * self.apart


@dataclass(frozen=True, slots=True)
class Wire:
    """A wire over its hooks, one or two, left to right; ``length`` is from ring to ring."""

    rings: Rings
    hooks: tuple[Point, ...]
    length: float


def find_least_length(rings: Rings, spread: float) -> float:
    """What a wire over hooks so far apart must be longer than: the straight way between the rings."""
    return spread + dist(*_moved_in(rings, spread))


def hang_by_length(rings: Rings, length: float, spread: float) -> Wire:
    """The hooks of a wire of known length, which must be more than the least one.

    Level rings S apart, hooks d apart in their middle: the hooks are sqrt(s² - r²) above the rings,
    s = (length - d) / 2, r = (S - d) / 2.
    """
    left, right = _moved_in(rings, spread)
    middle = _balance(rings, spread, lambda x: _height_on_ellipse(left, right, length - spread, x))
    return Wire(rings, _pair(middle, spread), length)


def hang_by_height(rings: Rings, y: float, spread: float) -> Wire:
    """The hooks of a wire that was pulled up to a height above both rings, and so its length."""
    hooks = _pair(_balance(rings, spread, lambda _: y), spread)
    length = dist(rings.left, hooks[0]) + spread + dist(hooks[-1], rings.right)
    return Wire(rings, hooks, length)


def _moved_in(rings: Rings, spread: float) -> tuple[Point, Point]:
    """The rings, each moved toward the other by half the hooks' spread."""
    return rings.left.moved(spread / 2, 0), rings.right.moved(-spread / 2, 0)


def _pair(middle: Point, spread: float) -> tuple[Point, ...]:
    if spread == 0:
        return (middle,)
    return middle.moved(-spread / 2, 0), middle.moved(spread / 2, 0)


def _height_on_ellipse(left: Point, right: Point, ways: float, x: float) -> float:
    """The upper height at x of the points whose ways to both foci add up to ``ways``.

    From r1 + r2 = ways and r1² - r2², which is linear in the height: r1 = m - n y, y measured from
    the left focus, so that r1² = (x - left)² + y² is a quadratic in y.
    """
    a, b, lower = x - left.x, right.x - x, left.y - right.y
    m = (ways + (a * a - b * b - lower * lower) / ways) / 2
    n = lower / ways
    root = sqrt(max(m * m * n * n + (1 - n * n) * (m * m - a * a), 0.0))
    return left.y + (root - m * n) / (1 - n * n)


def _balance(rings: Rings, spread: float, height_at: Callable[[float], float]) -> Point:
    """The middle of the hooks, at a height that may depend on it, with which the frame is level."""
    if spread == 0 or rings.is_even:
        return Point(rings.mass.x, height_at(rings.mass.x))
    low, high = rings.left.x + spread / 2, rings.right.x - spread / 2
    for _ in range(_HALVINGS):
        x = (low + high) / 2
        if _leans_right(rings, Point(x, height_at(x)), spread):
            low = x
        else:
            high = x
    return Point(x, height_at(x))


def _leans_right(rings: Rings, middle: Point, spread: float) -> bool:
    """Whether the hooks must move to the right: over the mass centre the left end passes higher."""
    to_left, to_right = rings.mass.x - rings.left.x, rings.right.x - rings.mass.x
    across_left = middle.x - spread / 2 - rings.left.x
    across_right = rings.right.x - middle.x - spread / 2
    over_left = rings.left.y * across_left + to_left * (middle.y - rings.left.y)
    over_right = rings.right.y * across_right + to_right * (middle.y - rings.right.y)
    return over_left * across_right > over_right * across_left
