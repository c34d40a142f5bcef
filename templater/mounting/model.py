"""Where a piece bears and where its holes go, in the piece's own frame, and the forces there.

Origin: the bottom-left outside corner of the frame; x right, y up, mm. Left and right are as seen
from the front.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import cos
from typing import TypeAlias

from templater.geometry import Point


@dataclass(frozen=True, slots=True)
class Mark:
    """One hang point and the hole that serves it.

    ``load_n`` is the static vertical share on this hole, newton, no safety factor; None when no
    weight is known. ``is_lock``: the hole of a security lock, which bears nothing.
    """

    hang: Point
    hole: Point
    load_n: float | None
    is_lock: bool = False

    def moved(self, dx: float, dy: float) -> Mark:
        """The same mark seen from an origin that lies (-dx, -dy) away."""
        return replace(self, hang=self.hang.moved(dx, dy), hole=self.hole.moved(dx, dy))


@dataclass(frozen=True, slots=True)
class Cord:
    """A plumb cord from a hook on a picture rail to a piece: no hole.

    ``hang`` is where the cord is tied to the piece; ``rail_mm`` the rail's height above the floor;
    ``load_n`` the static share on this cord, newton (None when no weight is known).
    """

    hang: Point
    rail_mm: float
    load_n: float | None

    def moved(self, dx: float, dy: float) -> Cord:
        """The same cord seen from an origin that lies (-dx, -dy) away; the rail stays where it is."""
        return replace(self, hang=self.hang.moved(dx, dy))

    @property
    def hook(self) -> Point:
        """The rail's hook, on the wall (of use once the piece is placed)."""
        return Point(self.hang.x, self.rail_mm)

    @property
    def length_mm(self) -> float:
        """The cord from the rail's hook to the piece (of use once the piece is placed)."""
        return self.rail_mm - self.hang.y


@dataclass(frozen=True, slots=True)
class Strips:
    """Adhesive strips behind a piece: no hole.

    ``count`` of what the maker rates, a pair or a strip (``each``); None when no weight is known.
    """

    count: int | None
    each: str

    def moved(self, _dx: float, _dy: float) -> Strips:
        """The same strips: they have no place of their own."""
        return self


Support: TypeAlias = Cord | Strips
"""What holds a piece without a hole."""


@dataclass(frozen=True, slots=True)
class Statics:
    """The forces of a wire on its rings and hooks, as multiples of the weight, left to right.

    ``angles``: of the two ends of the wire from the horizontal, radians. ``tensions``: of those
    ends. ``down`` and ``inward``: on each hook. ``friction``: the least coefficient between wire
    and hook that holds the frame level, 0 where it is level by itself. ``is_stable``: whether the
    frame, once level, stays so without friction. ``weight_n`` is None when no weight is known, and
    so then are all forces in newton.
    """

    angles: tuple[float, float]
    tensions: tuple[float, float]
    down: tuple[float, ...]
    inward: tuple[float, ...]
    wire_mm: float
    friction: float
    is_stable: bool
    weight_n: float | None

    @property
    def tension_n(self) -> float | None:
        """The wire's tension, newton; where its two ends differ the greater."""
        return self._in_newton(max(self.tensions))

    @property
    def down_n(self) -> tuple[float, ...] | None:
        """What pulls each hook down, newton."""
        return None if self.weight_n is None else tuple(each * self.weight_n for each in self.down)

    @property
    def sideways_n(self) -> tuple[float, ...] | None:
        """What pulls each hook toward the other, newton; nothing on a single hook."""
        return None if self.weight_n is None else tuple(each * self.weight_n for each in self.inward)

    @property
    def ring_inward_n(self) -> float | None:
        """What pulls each of the two rings toward the other, newton."""
        return self._in_newton(self.ring_inward)

    @property
    def ring_inward(self) -> float:
        """What pulls each of the two rings toward the other, as a multiple of the weight."""
        return self.tensions[0] * cos(self.angles[0])

    def _in_newton(self, ratio: float) -> float | None:
        return None if self.weight_n is None else ratio * self.weight_n


@dataclass(frozen=True, slots=True)
class WeightEstimate:
    """A weight worked out from what a piece is made of, and the range in which it may lie, kg."""

    kg: float
    low_kg: float
    high_kg: float


@dataclass(frozen=True, slots=True)
class Mount:
    """The marks of one piece, in rows from the top down, each left to right, and what else holds it.

    ``notes`` are whole sentences for the template, the overview and ``check``; ``supports`` hold a
    piece without a hole, of which no note tells; ``estimate`` is set where the weight was not given.
    """

    marks: tuple[Mark, ...]
    notes: tuple[str, ...]
    statics: Statics | None = None
    supports: tuple[Support, ...] = ()
    estimate: WeightEstimate | None = None
