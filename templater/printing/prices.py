"""What a seam costs at each place of an axis: holes and hang points near it, and what it parts.

A price is one whole number whose groups of digits count, from the weightiest to the least: holes near
a seam, sheets, hang points near a seam, seams between the holes, seams between the holes and their
reference, changes between portrait and landscape courses, and the length of the seams. So the
smaller of two sums is the better of two tilings.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import inf
from typing import NamedTuple

CLEAR_MM = 12.0
"""How far a hole stays away from both edges of a lap."""

TINY_MM = 1e-6
"""Less than this is the computer's rounding, not a length."""

SEAM_PER_MM = 10
CHANGE = 10**7
TO_REFERENCE = 10**11
BETWEEN_HOLES = 10**15
HANG_POINT = 10**19
SHEET = 10**23
HOLE = 10**29


class Mark(NamedTuple):
    """A hole or a hang point: how far it lies along the courses and across them, mm from top left."""

    along: float
    across: float
    is_hole: bool

    @property
    def price(self) -> int:
        """What a seam near it costs."""
        return HOLE if self.is_hole else HANG_POINT


class Zone(NamedTuple):
    """Places between two ends, without the ends, and what a cut there costs."""

    low: float
    high: float
    price: int


class Stretch(NamedTuple):
    """Places for a cut, both ends included, where all cost the same.

    Of the marks in their order along the axis, the first ``before`` lie clear before the cut; those
    from number ``after`` on lie clear behind it.
    """

    low: float
    high: float
    price: int
    before: int
    after: int


def is_near(place: float, cut: float, lap: float) -> bool:
    """Whether a place lies in the lap of a cut or nearer than allowed to one of its edges."""
    return cut - CLEAR_MM + TINY_MM < place < cut + lap + CLEAR_MM - TINY_MM


def zones_near(places: Iterable[float], prices: Iterable[int], lap: float) -> list[Zone]:
    """Where a cut would be near each of the places, in their order."""
    return [
        Zone(place - CLEAR_MM - lap, place + CLEAR_MM, price)
        for place, price in zip(places, prices, strict=True)
    ]


def zones_between(holes: Sequence[float], reference: float | None) -> list[Zone]:
    """Where a cut would part the holes from each other, or from their reference."""
    if not holes:
        return []
    ends = [*holes] if reference is None else [*holes, reference]
    return [
        Zone(min(holes), max(holes), BETWEEN_HOLES),
        Zone(min(ends), max(ends), TO_REFERENCE),
    ]


def price_places(near: Sequence[Zone], between: Sequence[Zone], end: float) -> list[Stretch]:
    """The whole axis as stretches, first its start at 0, last its end, where cuts cost nothing.

    A cut exactly as far away as a mark demands is clear of it: where two stretches touch, the lower
    price counts. ``near`` is in the order of the marks.
    """
    opening, closing = dict[float, int](), dict[float, int]()
    for low, high, price in (*near, *between):
        if low < high:
            opening[low] = opening.get(low, 0) + price
            closing[high] = closing.get(high, 0) + price
    spans, low, price = list[Zone](), -inf, 0
    for place in sorted({*opening, *closing}):
        spans.append(Zone(low, place, price))
        price -= closing.get(place, 0)
        if place in opening and place in closing:
            spans.append(Zone(place, place, price))
        low, price = place, price + opening.get(place, 0)
    spans.append(Zone(low, inf, price))
    stretches = [Stretch(0.0, 0.0, 0, 0, 0)]
    for low, high, price in spans:
        if low <= end and high >= 0:
            before = sum(zone.high <= low for zone in near)
            after = sum(zone.low < high for zone in near)
            stretches.append(Stretch(max(low, 0.0), min(high, end), price, before, after))
    stretches.append(Stretch(end, end, 0, len(near), len(near)))
    return stretches
