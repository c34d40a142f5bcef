"""Where one axis of a template is cut, so that few sheets cover it and no hole lies near a seam.

An axis runs left to right, or from the top down, from 0 to a length; all in mm. One sheet shows at
most its *reach* of it. A cut at s means: the sheet before shows up to s + lap, the next one starts
at s and is laid over that lap.

Why the search is exact: put a cut 0 at 0 and a cut n at length - lap. Then every sheet i, the first
and the last too, shows from cut i - 1 to cut i + lap, and n sheets cover the axis if and only if no
two neighbouring cuts are further apart than the *stride*, reach - lap. So n suffices if and only if
length - lap <= n * stride. Where holes forbid places, the places of cut i that can be had are those
of cut i - 1, moved on by anything from the least to the longest step: stretches of the axis with
both ends. Carried from cut to cut with what each place costs, they hold every placing there is.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import ceil, inf
from typing import NamedTuple

CLEAR_MM = 12.0
"""How far a hole stays away from both edges of a lap."""

BAR_ROOM_MM = 115.0
"""What a sheet should keep each way, so that its 4 in scale bar stands inside the outline."""

OWN_MM = 10.0
"""What a sheet shows at the least beside its lap."""

TINY_MM = 1e-6
"""Less than this is the computer's rounding, not a length."""

_SLACK_MM = 1e-9
"""What a step may be too long, lest rounding part two places that touch."""

_HANG_POINT_PRICE = 1
_HOLE_PRICE = 1_000_000
"""More than all hang points of a template together."""


class Stretch(NamedTuple):
    """Places for a cut, both ends included, and what the cuts up to there cost."""

    low: float
    high: float
    price: int


class Placing(NamedTuple):
    """One way to cut an axis, and its price: holes near its seams first, then hang points."""

    price: int
    cuts: tuple[float, ...]

    @property
    def near_holes(self) -> int:
        """How often a hole is near a seam."""
        return self.price // _HOLE_PRICE


@dataclass(frozen=True, slots=True)
class Axis:
    """A length to be covered by sheets that show at most ``reach`` and overlap by ``lap`` (mm)."""

    length: float
    reach: float
    lap: float

    @property
    def stride(self) -> float:
        """How far apart two cuts may be."""
        return self.reach - self.lap

    @property
    def count(self) -> int:
        """The fewest sheets that cover the axis; exact multiples are not spoilt by rounding."""
        return max(1, ceil((self.length - self.lap - TINY_MM) / self.stride))


def choose_cuts(axis: Axis, holes: Iterable[float], hang_points: Iterable[float]) -> tuple[float, ...]:
    """The cuts of an axis, in order.

    As few sheets as can be, or one more where that keeps more holes clear of the seams. Among the
    placings with the fewest holes near a seam: the fewest hang points near one, then room for the
    scale bars on every sheet, then as even as can be.
    """
    if axis.count == 1:
        return ()
    prices = _price_places(axis.lap, holes, hang_points)
    chosen = _place(axis, axis.count, prices)
    if chosen.near_holes:
        one_more = _place(axis, axis.count + 1, prices)
        chosen = one_more if one_more.near_holes < chosen.near_holes else chosen
    return chosen.cuts


def is_near(place: float, cut: float, lap: float) -> bool:
    """Whether a place lies in the lap of a cut or nearer than allowed to one of its edges."""
    return cut - CLEAR_MM + TINY_MM < place < cut + lap + CLEAR_MM - TINY_MM


def _price_places(lap: float, holes: Iterable[float], hang_points: Iterable[float]) -> list[Stretch]:
    """The whole axis as stretches, each with the price of a cut in it.

    A cut exactly as far away as a mark demands is clear of it: where two stretches touch, the lower
    price counts.
    """
    marks = [(place, _HOLE_PRICE) for place in holes]
    marks += [(place, _HANG_POINT_PRICE) for place in hang_points]
    changes = [(place - CLEAR_MM - lap, price) for place, price in marks]
    changes += [(place + CLEAR_MM, -price) for place, price in marks]
    stretches, low, price = [], -inf, 0
    for place, change in sorted(changes):
        stretches.append(Stretch(low, place, price))
        low, price = place, price + change
    stretches.append(Stretch(low, inf, price))
    return stretches


def _place(axis: Axis, count: int, prices: Sequence[Stretch]) -> Placing:
    """The cheapest placing for a count of sheets; of equals one that leaves room for scale bars."""
    least = min(axis.lap + OWN_MM, (axis.length - axis.lap) / count)
    if axis.length < count * BAR_ROOM_MM or axis.stride < BAR_ROOM_MM:
        return _place_with(axis, count, prices, least=least)
    roomy = _place_with(axis, count, prices, least=max(least, BAR_ROOM_MM))
    if roomy.price == 0:
        return roomy
    return min(roomy, _place_with(axis, count, prices, least=least), key=lambda placing: placing.price)


def _place_with(axis: Axis, count: int, prices: Sequence[Stretch], *, least: float) -> Placing:
    """The cheapest placing where every sheet keeps ``least``; of equals the one nearest the aims.

    Found forward, each cut only where the end can still be reached; then chosen backward, the last
    cut first, each as near its aim as the cuts before it allow.
    """
    end = axis.length - axis.lap
    longest = max(axis.stride, end / count)
    places = [[Stretch(0.0, 0.0, 0)]]
    for index in range(1, count):
        window = _clip(prices, end - (count - index) * longest - _SLACK_MM, index * longest + _SLACK_MM)
        places.append(_reach_next(places[-1], window, least, longest))
    aims = _find_aims(axis, count)
    step = max(0.0, least - axis.lap)
    after, chosen = end, list[tuple[int, float]]()
    for index in range(count - 1, 0, -1):
        price, after = _nearest(places[index], after - longest, after - step, aims[index - 1])
        chosen.insert(0, (price, after))
        step = least
    return Placing(chosen[-1][0], tuple(cut for _, cut in chosen))


def _clip(stretches: Iterable[Stretch], low: float, high: float) -> list[Stretch]:
    """Stretches as far as they lie from low to high."""
    return [
        Stretch(max(stretch.low, low), min(stretch.high, high), stretch.price)
        for stretch in stretches
        if stretch.low <= high and low <= stretch.high
    ]


def _reach_next(
    places: Sequence[Stretch], prices: Sequence[Stretch], least: float, longest: float
) -> list[Stretch]:
    """Every place of the next cut, with what it costs together with the cheapest cuts before it."""
    return _without_dearer(
        Stretch(
            max(last.low + least, here.low), min(last.high + longest, here.high), last.price + here.price
        )
        for last in places
        for here in prices
        if last.low + least <= here.high and here.low <= last.high + longest
    )


def _without_dearer(stretches: Iterable[Stretch]) -> list[Stretch]:
    """The same places, neighbours of one price joined, those left out that another holds for less."""
    kept: list[Stretch] = []
    for low, high, price in sorted(stretches, key=lambda stretch: (stretch.price, stretch.low)):
        if kept and kept[-1].price == price and low <= kept[-1].high:
            kept[-1] = Stretch(kept[-1].low, max(kept[-1].high, high), price)
        elif not any(other.low <= low and high <= other.high for other in kept):
            kept.append(Stretch(low, high, price))
    return kept


def _nearest(places: Sequence[Stretch], low: float, high: float, aim: float) -> tuple[int, float]:
    """The price and the place of the cheapest cut from low to high; of equals the nearest to an aim."""
    found = []
    for place in places:
        first, last = max(place.low, low - _SLACK_MM), min(place.high, high + _SLACK_MM)
        if first <= last:
            at = min(max(aim, first), last)
            found.append((place.price, abs(at - aim), at))
    price, _, at = min(found)
    return price, at


def _find_aims(axis: Axis, count: int) -> list[float]:
    """Where the cuts would be best: every sheet alike.

    Where that leaves too little for a scale bar on any sheet, the last one is narrower: it keeps no
    more than leaves room for its bars beside the template, so that the others have room inside.
    """
    last = max(axis.reach - BAR_ROOM_MM, axis.length - (count - 1) * axis.stride)
    other = (axis.length - last) / (count - 1)
    if axis.length >= count * BAR_ROOM_MM or other < BAR_ROOM_MM:
        other = (axis.length - axis.lap) / count
    return [number * other for number in range(1, count)]
