"""The keys by which a layout describes its wall, and where the studs in it are."""

from __future__ import annotations

from itertools import pairwise
from math import floor, inf
from typing import Annotated, Any

from pydantic import (
    Field,
    PlainValidator,
    ValidationInfo,
    ValidatorFunctionWrapHandler,
    WrapValidator,
)

from templater.layout.ceiling import Ceiling, WallHeight
from templater.layout.choices import SurfaceName, YesNo
from templater.layout.entry import Entry
from templater.layout.values import (
    Extent,
    WallLength,
    WallPosition,
    fail,
    read_thickness,
    read_wall_position,
    show_value,
)

_MOST_STUDS = 1000
_TINY_MM = 1e-6
"""Lengths that differ by less are the same: the arithmetic of floats."""

_EXAMPLE = "{first: 8 in, every: 16 in}, or [8 in, 24 in, 39 1/2 in]"


class StudsEntry(Entry):
    """``studs:`` of the wall, where all are the same distance apart."""

    first: WallPosition
    every: Extent


def _read_studs(
    raw: object, read_entry: ValidatorFunctionWrapHandler, info: ValidationInfo
) -> tuple[float, ...]:
    """The centre of each stud from the wall's left end, mm."""
    if isinstance(raw, dict):
        return _space_studs(read_entry(raw), info.data.get("width"))
    if not isinstance(raw, list):
        demand = "the first and the distance of studs, or a list of their centres"
        raise fail(f"needs {demand}, but is {show_value(raw)}", f"write for example {_EXAMPLE}")
    return _check_studs([read_wall_position(each, info) for each in raw], info.data.get("width", inf))


def _space_studs(entry: StudsEntry, width: float | None) -> tuple[float, ...]:
    """Studs from the first to the wall's right end; none where the wall's width is not known."""
    if width is None:
        return ()
    if entry.first > width:
        raise fail("starts past the wall's right end", "give 'first' from the wall's left end")
    count = floor((width - entry.first + _TINY_MM) / entry.every) + 1
    if count > _MOST_STUDS:
        raise fail(f"gives {count} studs, more than {_MOST_STUDS}", "check 'every' and its unit")
    return tuple(entry.first + number * entry.every for number in range(count))


def _check_studs(centres: list[float], width: float) -> tuple[float, ...]:
    """The centres as found, which must run from left to right along the wall."""
    if not centres:
        raise fail("has no stud in its list", "list their centres, or remove the key")
    if len(centres) > _MOST_STUDS:
        raise fail(f"has {len(centres)} studs, more than {_MOST_STUDS}", "list fewer")
    for number, (before, after) in enumerate(pairwise(centres), start=2):
        if after <= before:
            message = f"has a stud {number} that is not right of stud {number - 1}"
            raise fail(message, "list the centres from the wall's left end to its right end")
    if centres[-1] > width:
        raise fail("has a stud past the wall's right end", "measure from the wall's left end")
    return tuple(centres)


Studs: Any = Annotated[StudsEntry, WrapValidator(_read_studs)]
"""Read into the centre of each stud."""


Thickness = Annotated[float, PlainValidator(read_thickness, json_schema_input_type=str)]


class WallEntry(Entry):
    """``wall:``."""

    width: WallLength
    ceiling: Ceiling | None = None
    height: WallHeight = Field(default=None, validate_default=True)
    surface: SurfaceName | None = None
    board: Thickness | None = None
    studs: Studs | None = None
    walkway: YesNo | None = None
    earthquake: YesNo | None = None
    outside: YesNo | None = None
