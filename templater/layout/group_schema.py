"""The keys of a group, and of the place that a group or a piece asks for."""

from __future__ import annotations

from typing import Annotated

from pydantic import BeforeValidator, Field, ValidationInfo
from pydantic_core import PydanticKnownError

from templater.layout.choices import (
    AlignName,
    CellsName,
    Count,
    NamePair,
    OpenArrangement,
    OpenCount,
    OpenDistance,
    SideName,
)
from templater.layout.entry import Entry
from templater.layout.model import Align, Cells
from templater.layout.values import DEFAULT_GAP_MM, Distance, Extent, Text, WallPosition, Weight


class PlaceEntry(Entry):
    """``place:`` of a piece; a group has the same keys among its own."""

    above: Text | None = None
    beside: Text | None = None
    side: SideName | None = None
    around: Text | None = None
    between: NamePair | None = None
    clearance: Distance = 177.8
    left: WallPosition | None = None
    centre: WallPosition | None = None
    right: WallPosition | None = None
    eye_line: WallPosition | None = None
    bottom: WallPosition | None = None
    top: WallPosition | None = None


class StartEntry(Entry):
    """``start:`` of a stair: the edge of one step on the wall."""

    left: WallPosition
    bottom: WallPosition


class StairEntry(Entry):
    """``stair:`` of a group."""

    rise: Extent
    run: Extent
    up: SideName
    start: StartEntry


class LedgeEntry(Entry):
    """``ledge:`` of a group: its top's height, its front, its screws, and what it weighs itself."""

    height: WallPosition
    width: Extent
    thick: Extent
    drop: Distance
    every: Extent
    weight: Weight | None = None
    stands_out: Distance | None = None


class CornerEntry(Entry):
    """One entry of ``corners:``: a member's bottom-left corner inside its group."""

    left: Distance
    bottom: Distance


class ChooseEntry(Entry):
    """``choose:`` of a group; a count of None leaves it to the search."""

    pool: list[Text] = Field(alias="from")
    count: OpenCount = None


_FAULTY = object()
"""Stands for a key that is given but cannot be read."""


def _demand_pieces(raw: object, info: ValidationInfo) -> object:
    """Whatever is given; pieces may be missing only where they are to be chosen."""
    if raw is None and info.data.get("choose", _FAULTY) is None:
        raise PydanticKnownError("missing")
    return [] if raw is None else raw


class GroupEntry(PlaceEntry):
    """One entry of ``groups:``; an arrangement or a gap of None leaves it to the search."""

    name: Text
    choose: ChooseEntry | None = None
    pieces: Annotated[list[Text], BeforeValidator(_demand_pieces)] = Field(
        default=None, validate_default=True
    )
    arrange: OpenArrangement
    gap: OpenDistance = DEFAULT_GAP_MM
    spread: Extent | None = None
    align: AlignName = Align.CENTRE
    columns: Count | None = None
    rows: Count | None = None
    cells: CellsName = Cells.EQUAL
    width: Extent | None = None
    height: Extent | None = None
    stair: StairEntry | None = None
    ledge: LedgeEntry | None = None
    corners: dict[str, CornerEntry] | None = None
