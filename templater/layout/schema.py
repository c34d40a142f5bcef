"""The keys of a layout file, which of them are required, and what is assumed without them.

Lengths are mm once read. Which keys go together, and whether names are known, is judged elsewhere:
those faults must be found even beside others.
"""

from __future__ import annotations

from typing import Any

from pydantic import BaseModel, ConfigDict, Field, ValidationInfo, model_validator

from templater.layout.model import Align, Margins
from templater.layout.values import (
    AlignName,
    ArrangementName,
    Distance,
    Extent,
    HangerName,
    IssueText,
    Outside,
    PaperName,
    SheetEdge,
    SignedDistance,
    Text,
    UnitName,
    WallLength,
    WallPosition,
    Weight,
    read_sheet_edge,
)

_MARGINS = Margins()


class Entry(BaseModel):
    """A mapping of the file; a key that it does not know is a fault."""

    model_config = ConfigDict(extra="forbid", frozen=True)


class WallEntry(Entry):
    """``wall:``."""

    width: WallLength
    height: WallLength


class FurnitureEntry(Entry):
    """One entry of ``furniture:``."""

    name: Text
    left: WallPosition
    width: Extent
    height: Extent


class HangEntry(Entry):
    """``hang:`` of a piece."""

    by: HangerName
    drop: Distance
    rise: SignedDistance | None = None
    apart: Extent | None = None
    offset: SignedDistance = 0.0
    width: Extent | None = None
    every: Extent | None = None


class PlaceEntry(Entry):
    """``place:`` of a piece; a group has the same keys among its own."""

    above: Text | None = None
    clearance: Distance = 177.8
    left: WallPosition | None = None
    centre: WallPosition | None = None
    right: WallPosition | None = None
    eye_line: WallPosition | None = None
    bottom: WallPosition | None = None
    top: WallPosition | None = None


class PieceEntry(Entry):
    """One entry of ``pieces:``."""

    name: Text
    size: Outside
    weight: Weight | None = None
    hang: HangEntry | None = None
    place: PlaceEntry | None = None


class GroupEntry(PlaceEntry):
    """One entry of ``groups:``."""

    name: Text
    pieces: list[Text]
    arrange: ArrangementName
    gap: Distance = 76.2
    align: AlignName = Align.CENTRE


class DatumEntry(Entry):
    """``datum:``."""

    height: WallPosition | None = None
    at: Text | None = None


class MarginEntry(Entry):
    """``margin:``, one length for all four sides or side by side."""

    left: SheetEdge = _MARGINS.left
    right: SheetEdge = _MARGINS.right
    top: SheetEdge = _MARGINS.top
    bottom: SheetEdge = _MARGINS.bottom

    @model_validator(mode="before")
    @classmethod
    def _spread(cls, raw: Any, info: ValidationInfo) -> Any:
        if isinstance(raw, str):
            read_sheet_edge(raw, info)
            return dict.fromkeys(cls.model_fields, raw)
        return raw


class LayoutEntry(Entry):
    """The whole file."""

    title: Text
    units: UnitName | None = None
    paper: PaperName | None = None
    margin: MarginEntry = MarginEntry()
    lap: SheetEdge = 10.0
    eye_line: WallPosition = 1524.0
    datum: DatumEntry = DatumEntry()
    for_whom: Text | None = Field(None, alias="for")
    from_whom: Text | None = Field(None, alias="from")
    contact: Text | None = None
    issue: IssueText | None = None
    wall: WallEntry
    furniture: list[FurnitureEntry] = []
    pieces: list[PieceEntry]
    groups: list[GroupEntry] = []
