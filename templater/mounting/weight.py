"""Estimates what a piece weighs from what it is made of.

The estimate takes every sheet to be as large as the frame's outside and the moulding to be solid,
so it errs to the heavy side; the low end of its range takes the sheets to reach no further than the
moulding's inner edge, and a third of the moulding to be cut away for the rabbet and the profile.
The picture itself, wire and hardware are not counted.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from templater.geometry import Size
from templater.layout.model import MadeOf, Material, Moulding, Sheet, Wood
from templater.mounting.model import WeightEstimate


class _Spread(NamedTuple):
    """The usual value and the ends of its range."""

    low: float
    usual: float
    high: float


_DENSITIES = {
    Material.GLASS: _Spread(2500, 2500, 2563),
    Material.ACRYLIC: _Spread(1180, 1190, 1200),
    Material.MDF: _Spread(500, 750, 1000),
    Material.FOAM: _Spread(100, 120, 140),
}
"""Kilograms a cubic metre.

Glass: 2500, EN 572 (2.5 kg a square metre and millimetre); 2563 are the 160 lb a cubic foot of the
US trade. Acrylic: 1.18 to 1.20 g/cm3, makers' data. MDF: nominally 750, from 500 to 1000, makers'
data and the Australian National University. Foam board: 0.5 to 0.7 kg a square metre at 5 mm, from
memory.
"""

_MAT_PLY = _Spread(0.225 * 0.85, 0.225, 0.225 * 1.15)
"""Kilograms a square metre and ply: 4-ply board about 0.9 within 15 %, from memory."""

_WOODS = {
    Wood.OBECHE: _Spread(390 * 0.85, 390, 390 * 1.15),
    Wood.RAMIN: _Spread(670 * 0.85, 670, 670 * 1.15),
    Wood.PINE: _Spread(510 * 0.85, 510, 510 * 1.15),
    Wood.RADIATA: _Spread(480 * 0.85, 480, 480 * 1.15),
    Wood.SPRUCE: _Spread(450 * 0.85, 450, 450 * 1.15),
    Wood.BASSWOOD: _Spread(320, 455, 590),
    Wood.POPLAR: _Spread(350, 425, 500),
    Wood.BEECH: _Spread(700, 800, 900),
    Wood.RED_OAK: _Spread(740 * 0.85, 740, 740 * 1.15),
    Wood.WHITE_OAK: _Spread(770 * 0.85, 770, 770 * 1.15),
    Wood.WALNUT: _Spread(630, 665, 700),
}
"""Kilograms a cubic metre, published tables of wood densities; the middle where a range is given.

Pine is Scots pine. A single value is taken to hold within 15 % (from memory).
"""

_UNCUT = 2 / 3
_GLASS_MM, _WIDE_GLASS_MM, _WIDE_MM = 2.0, 3.0, 1000.0
"""Picture glass is 2 mm thick, 3 mm where it is wider than a metre (a framer's published rule)."""

_M2 = 1e-6
_M3 = 1e-9


def estimate_weight(made_of: MadeOf, size: Size) -> WeightEstimate:
    """The weight of a frame of an outside size, mm, with its range."""
    parts = list(_weigh_parts(made_of, size))
    return WeightEstimate(
        kg=sum(part.usual for part in parts),
        low_kg=sum(part.low for part in parts),
        high_kg=sum(part.high for part in parts),
    )


def _weigh_parts(made_of: MadeOf, size: Size) -> Iterator[_Spread]:
    """What each part weighs, kg."""
    moulding = made_of.moulding
    within = 0.0 if moulding is None else moulding.width_mm
    least = max(size.width - 2 * within, 0.0) * max(size.height - 2 * within, 0.0) * _M2
    most = size.width * size.height * _M2
    for sheet in (made_of.glazing, made_of.mat, made_of.backing):
        if sheet is not None and sheet.material is not Material.NONE:
            each = _weigh_square_metre(sheet, size)
            yield _Spread(each.low * least, each.usual * most, each.high * most)
    if moulding is not None:
        yield _weigh_moulding(moulding, size)


def _weigh_square_metre(sheet: Sheet, size: Size) -> _Spread:
    """What a square metre of a sheet weighs, kg."""
    if sheet.material is Material.MAT:
        return _Spread(*(each * sheet.plies for each in _MAT_PLY))
    thickness = find_thickness(sheet, size)
    return _Spread(*(each * thickness / 1000 for each in _DENSITIES[sheet.material]))


def find_thickness(sheet: Sheet, size: Size) -> float:
    """How thick a sheet is, mm, in a frame of an outside size; glass may be left to the rule."""
    if sheet.thickness_mm is not None:
        return sheet.thickness_mm
    return _WIDE_GLASS_MM if max(size) > _WIDE_MM else _GLASS_MM


def _weigh_moulding(moulding: Moulding, size: Size) -> _Spread:
    """What the moulding weighs, kg: as long as the frame's outer edge, as its mitred corners are."""
    length = 2 * (size.width + size.height)
    volume = length * moulding.width_mm * moulding.depth_mm * _M3
    low, usual, high = _WOODS[moulding.wood]
    return _Spread(low * volume * _UNCUT, usual * volume, high * volume)
