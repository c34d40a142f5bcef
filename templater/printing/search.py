"""Finds the cheapest cuts of an axis among all there are.

An axis runs left to right, or from the top down, from 0 to a length; all in mm. A cut at s means: the
sheet or course before shows up to s + lap, the next one starts at s and is laid over that lap.

Why the search is exact: put a cut 0 at 0 and a last cut at the end, length - lap. Then everything
between two neighbouring cuts, the first and the last too, shows from one cut to the next one + lap,
and the axis is covered if and only if no two neighbouring cuts are further apart than the *stride*,
reach - lap. Where holes forbid places, the places of a cut that can be had are those of the cut
before, moved on by anything from the least to the longest step: stretches of the axis with both ends.
Carried from cut to cut with what each place costs, they hold every placing there is.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import ceil, inf
from typing import NamedTuple

from templater.printing.prices import CHANGE, TINY_MM, Stretch

BAR_ROOM_MM = 115.0
"""What a sheet should keep each way, so that its 4 in scale bar stands inside the outline."""

BLOCK_ROOM_MM = 60.0
"""A sheet that keeps less has no room for the block that tells what it is, 55 mm and air."""

OWN_MM = 10.0
"""What a sheet shows at the least beside its lap."""

_SLACK_MM = 1e-9
"""What a step may be too long or too short, lest rounding part two places that touch."""


class Placing(NamedTuple):
    """One way to cut an axis: its price and the cuts.

    For each cut and for the end: the kind of the step that leads there, and the number of the stretch.
    """

    price: int
    cuts: tuple[float, ...]
    kinds: tuple[int, ...]
    stretches: tuple[int, ...]


class _Place(NamedTuple):
    """Places that a cut can have after so many steps, the last of one kind, and the price up to there.

    ``covered`` is how far the steps go when all are as long as can be.
    """

    low: float
    high: float
    price: int
    stretch: int
    kind: int
    covered: float


@dataclass(frozen=True, slots=True)
class Search:
    """Cuts an axis of a length into at most ``most`` steps of some kinds, given by their strides.

    ``stretches`` tell what a cut costs; ``price_step`` what the sheets cost that lie between a cut in
    one stretch and a cut in another, from the kind of step and the numbers of the stretches: never
    below ``least_price``.
    """

    length: float
    lap: float
    strides: tuple[float, ...]
    most: int
    stretches: Sequence[Stretch]
    price_step: Callable[[int, int, int], int]
    least_price: int

    @property
    def end(self) -> float:
        """Where the last step ends."""
        return self.length - self.lap

    def find(self, least: float, below: float = inf) -> Placing | None:
        """The cheapest cuts where every step keeps ``least``, if any cost less than ``below``.

        Found forward, layer by layer; then chosen backward, the last cut first, each as near its aim
        as the cuts before it allow.
        """
        layers = [[_Place(0.0, 0.0, 0, 0, -1, 0.0)]]
        last = len(self.stretches) - 1
        best: tuple[int, int, int, _Place] | None = None
        for count in range(1, self.most + 1):
            reached = self._reach_next(layers[-1], self.most - count, least)
            reached = self._without_dearer([place for place in reached if place.price < below])
            ends = [
                (place.price, count, place.kind, place) for place in reached if place.stretch == last
            ]
            best = min((best, *ends) if best else ends, default=None)
            below = min(below, best[0]) if best else below
            layers.append([p for p in reached if p.stretch != last and self._price_to_end(p) < below])
        return None if best is None else self._choose(layers[: best[1]], best[3], least)

    def _reach_next(self, places: Sequence[_Place], left: int, least: float) -> list[_Place]:
        """Every place of the next cut, with what it costs together with the cheapest cuts before it.

        With so many steps left, cuts from where these cannot reach the end are of no use.
        """
        useful = self.end - left * (max(self.strides) + TINY_MM) - _SLACK_MM
        lows = [stretch.low for stretch in self.stretches]
        last = len(lows) - 1
        reached = []
        for place in places:
            for kind, stride in enumerate(self.strides):
                furthest = place.high + stride + TINY_MM
                for number in range(max(1, place.stretch), bisect_right(lows, furthest)):
                    stretch = self.stretches[number]
                    step = (least if number < last else least - self.lap) - _SLACK_MM
                    low = max(place.low + step, stretch.low, useful)
                    high = min(furthest, stretch.high)
                    if low <= high and step <= stride:
                        price = place.price + stretch.price + self._price(place, kind, number)
                        covered = place.covered + stride
                        reached.append(_Place(low, high, price, number, kind, covered))
        return reached

    def _price_to_end(self, place: _Place) -> int:
        """What the cuts up to a place and the cheapest steps from there to the end cost at the least."""
        way = self.end - place.high - (self.most + 1) * TINY_MM
        return place.price + ceil(way / max(self.strides)) * self.least_price

    def _price(self, place: _Place, kind: int, stretch: int) -> int:
        """What a step from a place costs, without the cut at its end."""
        change = CHANGE if place.kind not in (-1, kind) else 0
        return change + self.price_step(kind, place.stretch, stretch)

    @staticmethod
    def _without_dearer(places: list[_Place]) -> list[_Place]:
        """The same places: neighbours of one price joined, without those that another holds for less."""
        if len(places) < 2:
            return places
        kept: dict[tuple[int, int], list[_Place]] = {}
        for place in sorted(places, key=lambda place: (place.price, place.low)):
            group = kept.setdefault((place.stretch, place.kind), [])
            if group and group[-1].price == place.price and place.low <= group[-1].high:
                group[-1] = group[-1]._replace(high=max(group[-1].high, place.high))
            elif not any(other.low <= place.low and place.high <= other.high for other in group):
                group.append(place)
        return [place for group in kept.values() for place in group]

    def _choose(self, layers: list[list[_Place]], final: _Place, least: float) -> Placing:
        """The cuts of the cheapest placing, the last first, each as near to its aim as can be."""
        scale = self._find_scale(len(layers), final)
        step, after, at = least - self.lap, final, self.end
        cuts, path = list[float](), [final]
        for places in reversed(layers[1:]):
            found = []
            for place in places:
                low = max(place.low, at - self.strides[after.kind] - TINY_MM - 2 * _SLACK_MM)
                high = min(place.high, at - step + 2 * _SLACK_MM)
                cost = self.stretches[after.stretch].price + self._price(
                    place, after.kind, after.stretch
                )
                if low <= high and place.price + cost == after.price:
                    aim = place.covered * scale
                    cut = min(max(aim, low), high)
                    found.append((abs(cut - aim), cut, place))
            _, at, after = min(found)
            cuts.insert(0, at)
            path.insert(0, after)
            step = least
        kinds, stretches = zip(*((place.kind, place.stretch) for place in path), strict=True)
        return Placing(final.price, tuple(cuts), kinds, stretches)

    def _find_scale(self, count: int, final: _Place) -> float:
        """By how much every step should be shorter than it can be.

        All alike; but where that leaves too little for a scale bar on any sheet, the last one is
        narrower: it keeps no more than leaves room for its bars beside the template, so that the
        others have room inside.
        """
        stride = self.strides[final.kind]
        before = final.covered - stride
        last = max(stride + self.lap - BAR_ROOM_MM, self.length - before)
        if self.length >= count * BAR_ROOM_MM or (self.length - last) < BAR_ROOM_MM * (count - 1):
            return self.end / final.covered
        return (self.length - last) / before if before else 1.0
