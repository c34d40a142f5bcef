"""Cuts a template into the sheets that its cover asks for: all of it, a band, or a card."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from math import ceil, floor

from templater.paper import MIN_PAGE
from templater.printing.band import tile_band
from templater.printing.card import tile_card
from templater.printing.model import Coverage, Printer, PrintSetup, Shape, Tiling
from templater.printing.prices import TINY_MM
from templater.printing.tile import (
    MAX_SHEETS,
    NoRoomOnSheetError,
    TooManySheetsError,
    tile_template,
)
from templater.quoting import quote

CORRECTED = 0.98
"""How much of the least paper's sides must be left where a printer's correction has taken its part.

A printer that shrinks by 2 % leaves so much; a sheet's block, rulers and words still find room.
"""


def cut_template(shape: Shape, setup: PrintSetup, *, most: int = MAX_SHEETS) -> Tiling:
    """The sheets of a template, at most so many.

    Where a band or a card takes as many sheets as all of the template, all of it is printed. Raises
    TooManySheetsError and NoRoomOnSheetError.
    """
    _check_room(setup)
    if setup.cover is Coverage.FULL:
        return _tile_all(shape, setup, most)
    tile_part = tile_band if setup.cover is Coverage.BAND else tile_card
    part = tile_part(shape, setup, most=most)
    if len(part.tiles) > most:
        raise TooManySheetsError(len(part.tiles), most)
    try:
        whole = _tile_all(shape, setup, len(part.tiles))
    except TooManySheetsError:
        return part
    return part if len(whole.near_seam) > len(part.near_seam) else whole


def _check_room(setup: PrintSetup) -> None:
    """Refuse paper on which a sheet cannot say what it must. Raises NoRoomOnSheetError.

    What counts is what a sheet shows beside its lap, however it lies.
    """
    share, cause = (1.0, "") if setup.printer is None else (CORRECTED, _name_correction(setup.printer))
    least = [share * side for side in MIN_PAGE]
    for page in setup.page_sizes():
        own = sorted(side - setup.lap_mm for side in setup.printable(page).size)
        if any(side < needed - TINY_MM for side, needed in zip(own, least, strict=True)):
            short, long = (max(0, floor(side)) for side in own)
            raise NoRoomOnSheetError(
                f"margins and laps leave {short} x {long} mm of a sheet{cause}; what it must say needs"
                f" {ceil(least[0])} x {ceil(least[1])} mm"
            )


def _name_correction(printer: Printer) -> str:
    """Why a sheet shows less than its paper has: where a printer shrinks, less finds room."""
    if max(printer.across, printer.along) <= 1:
        return ""
    return f", corrected for the printer {quote(printer.name)}"


def _tile_all(shape: Shape, setup: PrintSetup, most: int) -> Tiling:
    """The whole template."""
    return tile_template(shape.extent, shape.holes, shape.hang_points, setup, most=most)


def count_sheets(shape: Shape, setup: PrintSetup) -> Mapping[Coverage, int]:
    """How many sheets each cover takes, however many they are. Raises NoRoomOnSheetError."""
    counts = {}
    for cover in Coverage:
        try:
            counts[cover] = len(cut_template(shape, replace(setup, cover=cover)).tiles)
        except TooManySheetsError as error:
            counts[cover] = error.count
    return counts
