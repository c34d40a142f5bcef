"""Where one course of sheets is cut, so that few sheets cover it and no hole lies near a seam."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
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
    if search.length >= fewest_steps * BAR_ROOM_MM and max(search.strides) >= BAR_ROOM_MM:
        roomy = _find(search, BAR_ROOM_MM, ideal)
        if roomy is not None and roomy.price < ideal + TO_REFERENCE:
            return roomy
    tight = _find(search, min(search.lap + OWN_MM, search.end / search.most), ideal)
    if tight is None or (roomy and roomy.price // TO_REFERENCE <= tight.price // TO_REFERENCE):
        tight = roomy
    if tight is None:
        raise AssertionError("steps of at most a stride reach the end")
    return _make_room(tight, search, ideal)


def _make_room(tight: Placing, search: Search, ideal: int) -> Placing:
    """A placing, if there is one, in which each inner sheet has room for its block; outer ones have."""
    if all(high - low >= BLOCK_ROOM_MM - TINY_MM for low, high in pairwise(tight.cuts)):
        return tight
    wider = _find(search, BLOCK_ROOM_MM, ideal) if max(search.strides) >= BLOCK_ROOM_MM else None
    if wider is None or wider.price // BETWEEN_HOLES > tight.price // BETWEEN_HOLES:
        return tight
    return wider


def _find(search: Search, least: float, ideal: int) -> Placing | None:
    """The cheapest placing where every step keeps ``least``: first sought among those without flaw."""
    return search.find(least, below=ideal + SHEET) or search.find(least)
