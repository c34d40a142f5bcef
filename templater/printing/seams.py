"""Where one course of sheets is cut, so that few sheets cover it and no hole lies near a seam."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from templater.printing.prices import (
    BETWEEN_HOLES,
    SHEET,
    TINY_MM,
    TO_REFERENCE,
    Mark,
    price_places,
    zones_between,
    zones_near,
)
from templater.printing.search import BAR_ROOM_MM, BLOCK_ROOM_MM, OWN_MM, Placing, Search


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


def choose_cuts(axis: Axis, marks: Sequence[Mark], reference: float | None = None) -> Placing:
    """The cuts of a course of sheets of one kind, and their price.

    As few sheets as can be, or one more where that keeps more holes clear of the seams. Among the
    placings with the fewest holes near a seam: the fewest hang points near one, then the fewest seams
    between the holes, then between them and their reference, then room for the scale bars on every
    sheet, then as even as can be.
    """
    count = axis.count
    if count == 1:
        return Placing(SHEET, (), (0,), (0,))
    near = zones_near([mark.along for mark in marks], [mark.price for mark in marks], axis.lap)
    between = zones_between([mark.along for mark in marks if mark.is_hole], reference)
    end = axis.length - axis.lap
    stretches = price_places(near, between, end)
    search = Search(
        axis.length, axis.lap, (axis.stride,), count + 1, stretches, lambda *_: SHEET, least_price=SHEET
    )
    return find_roomy(search, fewest_steps=count, ideal=count * SHEET)


def find_roomy(search: Search, *, fewest_steps: int, ideal: int) -> Placing:
    """The cheapest placing; of equals one that leaves room for scale bars on every sheet.

    One that has no room for a sheet's block is taken only where it saves more than a seam between the
    holes and their reference. No placing is cheaper than ``ideal``.
    """
    roomy = None
    for least, dearer_by in ((BAR_ROOM_MM, TO_REFERENCE), (BLOCK_ROOM_MM, BETWEEN_HOLES)):
        if search.length < fewest_steps * least or max(search.strides) < least:
            continue
        found = _find(search, least, ideal)
        if found is not None and (
            roomy is None or found.price // TO_REFERENCE < roomy.price // TO_REFERENCE
        ):
            roomy = found
        if roomy is not None and roomy.price < ideal + dearer_by:
            return roomy
    tight = _find(search, min(search.lap + OWN_MM, search.end / search.most), ideal)
    if tight is None or (roomy and roomy.price // BETWEEN_HOLES <= tight.price // BETWEEN_HOLES):
        tight = roomy
    if tight is None:
        raise AssertionError("steps of at most a stride reach the end")
    return tight


def _is_cheaper(one: Placing, other: Placing) -> bool:
    """Whether it saves at least a seam between the holes and their reference."""
    return one.price // TO_REFERENCE < other.price // TO_REFERENCE


def _find(search: Search, least: float, ideal: int) -> Placing | None:
    """The cheapest placing where every step keeps ``least``: first sought among those without flaw."""
    return search.find(least, below=ideal + SHEET) or search.find(least)
