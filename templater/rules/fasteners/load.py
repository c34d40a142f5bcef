"""What pulls on each hole and cord, and what the layout knows of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot

from templater.lengths import Unit
from templater.mounting.model import Cord
from templater.mounting.statics import STANDARD_GRAVITY
from templater.placement.model import PlacedPiece, Plan
from templater.rules.cautions.weights import find_least_kg, find_most_kg, round_up_weight
from templater.rules.holding import list_standing

_LEAST_TOLD_N = 0.05


@dataclass(frozen=True, slots=True)
class Load:
    """What pulls on one hole or cord, static, newton, no safety factor.

    ``sideways_n``: toward the other of two hooks on a wire. ``low`` and ``high``: between what
    multiples of it the load may lie, where the weight is an estimate.
    """

    down_n: float
    sideways_n: float = 0.0
    low: float = 1.0
    high: float = 1.0

    @property
    def most_down_n(self) -> float:
        """The most that it may pull down with, newton."""
        return self.down_n * self.high

    @property
    def is_estimate(self) -> bool:
        """Whether the weight was worked out, not given."""
        return self.low != self.high

    @property
    def most_n(self) -> float:
        """The most that it may pull with, down and sideways together, newton."""
        return hypot(self.down_n, self.sideways_n) * self.high

    @property
    def told_sideways_n(self) -> float:
        """Its pull sideways, newton; 0 where that is too small to be told."""
        return self.sideways_n if self.sideways_n >= _LEAST_TOLD_N else 0.0

    def round_up_kg(self, units: Unit) -> float:
        """The most that it may pull with, kg, worked out of what is told of it, each rounded up."""
        pulls = (self.most_down_n, self.told_sideways_n * self.high)
        return round_up_weight(hypot(*(round_up_weight(to_kg(pull), units) for pull in pulls)), units)


def find_loads(piece: PlacedPiece, plan: Plan) -> tuple[Load | None, ...]:
    """The load on each hole of a piece, in the order of its marks; None where it is not known.

    A ledge bears what stands on it too.
    """
    sideways = piece.statics.sideways_n if piece.statics else None
    borne = (piece, *list_standing(piece, plan))
    return tuple(
        _make_load(mark.load_n, abs(sideways[index]) if sideways else 0.0, borne)
        for index, mark in enumerate(piece.marks)
    )


def find_cord_load(cord: Cord, piece: PlacedPiece) -> Load | None:
    """The load on a cord and on its hook."""
    return _make_load(cord.load_n, 0.0, (piece,))


def _make_load(down_n: float | None, sideways_n: float, borne: Sequence[PlacedPiece]) -> Load | None:
    """A load with its range, where the weight of some of what it comes from is an estimate."""
    if down_n is None:
        return None
    usual = sum(each.weight_kg or 0.0 for each in borne)
    if not usual or not any(each.estimate for each in borne):
        return Load(down_n, sideways_n)
    low, high = (
        sum(find(each) or 0.0 for each in borne) / usual for find in (find_least_kg, find_most_kg)
    )
    return Load(down_n, sideways_n, low, high)


def to_kg(force_n: float) -> float:
    """The mass that weighs so many newton."""
    return force_n / STANDARD_GRAVITY
