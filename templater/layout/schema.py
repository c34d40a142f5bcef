"""The keys of a layout file, which of them are required, and what is assumed without them.

Lengths are mm once read. Which keys go together, and whether names are known, is judged elsewhere:
those faults must be found even beside others.
"""

from __future__ import annotations

from typing import Any

from pydantic import Field, ValidationInfo, field_validator, model_validator

from templater.layout.choices import RegionName, RuleCode, SideName, UnitName
from templater.layout.entry import Entry
from templater.layout.font_paths import FontPaths
from templater.layout.frame_schema import MadeOfEntry
from templater.layout.group_schema import GroupEntry, PlaceEntry
from templater.layout.hang_schema import HangEntry, HardwareEntry
from templater.layout.kinds import FixtureKind, FurnitureKind
from templater.layout.model import Margins
from templater.layout.rule_schema import RulesEntry
from templater.layout.values import (
    Distance,
    Extent,
    IssueText,
    Outside,
    PaperName,
    SheetEdge,
    Text,
    WallPosition,
    Weight,
    fail,
    read_sheet_edge,
)
from templater.layout.wall_schema import WallEntry

_MARGINS = Margins()


class FurnitureEntry(Entry):
    """One entry of ``furniture:``."""

    name: Text
    left: WallPosition
    width: Extent
    height: Extent
    kind: FurnitureKind | None = None


class ObstacleEntry(Entry):
    """Where an opening or a fixture is; its kind is its name unless it is given."""

    name: Text
    kind: Text | None = None
    left: WallPosition | None = None
    centre: WallPosition | None = None
    right: WallPosition | None = None
    bottom: WallPosition | None = None
    middle: WallPosition | None = None
    top: WallPosition | None = None
    width: Extent
    height: Extent


class FixtureEntry(ObstacleEntry):
    """One entry of ``fixtures:``."""

    kind: FixtureKind | None = None


class OpeningEntry(ObstacleEntry):
    """One entry of ``openings:``; it reaches down to the floor unless it is said how high it is."""

    swing: SideName | None = None


class PieceEntry(Entry):
    """One entry of ``pieces:``."""

    name: Text
    size: Outside | None = None
    picture: Outside | None = None
    mat: Distance = 0.0
    moulding: Extent | None = None
    rabbet: Distance | None = None
    weight: Weight | None = None
    made_of: MadeOfEntry | None = None
    stands_out: Distance | None = None
    hang: HangEntry | None = None
    place: PlaceEntry | None = None

    @field_validator("rabbet")
    @classmethod
    def _check_rabbet(cls, rabbet: float | None, info: ValidationInfo) -> float | None:
        moulding = info.data.get("moulding")
        if rabbet is not None and moulding is not None and rabbet > moulding:
            raise fail("must not be wider than the 'moulding' it is cut into", "measure both again")
        return rabbet


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


class AcceptEntry(Entry):
    """One entry of ``accept:``."""

    rule: RuleCode
    subject: Text = Field(alias="for")
    because: Text


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
    region: RegionName | None = None
    font: FontPaths = ()
    wall: WallEntry
    furniture: list[FurnitureEntry] = Field([])
    openings: list[OpeningEntry] = Field([])
    fixtures: list[FixtureEntry] = Field([])
    hardware: list[HardwareEntry] = Field([])
    pieces: list[PieceEntry]
    groups: list[GroupEntry] = Field([])
    rules: RulesEntry = RulesEntry()
    accept: list[AcceptEntry] = Field([])
