"""The keys by which a layout says how a piece hangs, and of which hooks."""

from __future__ import annotations

from typing import Any

from pydantic import Field, ValidationInfo, model_validator

from templater.layout.choices import Count, Each, HangerName, OneOrTwo, Studs
from templater.layout.entry import Entry
from templater.layout.values import (
    Distance,
    Extent,
    SignedDistance,
    Text,
    WallPosition,
    Weight,
    read_signed_distance,
)


class HardwareEntry(Entry):
    """One entry of ``hardware:``."""

    name: Text
    rise: SignedDistance | None = None
    rating: Weight | None = None
    holes: Count = 1
    needs: Text | None = None
    length: Extent | None = None


class RingEntry(Entry):
    """``left:`` or ``right:`` of ``rings:``."""

    from_middle: Extent
    below_top: Distance


class RingsEntry(Entry):
    """``rings:``, both alike or each by itself."""

    apart: Extent | None = None
    below_top: Distance | None = None
    left: RingEntry | None = None
    right: RingEntry | None = None


class BalanceEntry(Entry):
    """``balance:``, how far the mass centre is to the right, or also how far below the top."""

    right: SignedDistance = 0.0
    below_top: Distance | None = None

    @model_validator(mode="before")
    @classmethod
    def _read_right(cls, raw: Any, info: ValidationInfo) -> Any:
        if isinstance(raw, str):
            read_signed_distance(raw, info)
            return {"right": raw}
        return raw


class LockEntry(Entry):
    """``lock:``."""

    below_top: Distance


class HangEntry(Entry):
    """``hang:`` of a piece."""

    by: HangerName
    drop: Distance | None = None
    rise: SignedDistance | None = None
    apart: Extent | None = None
    offset: SignedDistance = 0.0
    width: Extent | None = None
    every: Extent | None = None
    studs: Studs | None = Field(None, alias="on")
    hooks: OneOrTwo = 1
    spread: Extent | None = None
    rings: RingsEntry | None = None
    wire: Extent | None = None
    measured_at: OneOrTwo | None = None
    balance: BalanceEntry = BalanceEntry()
    teeth: Extent | None = None
    height: WallPosition | None = None
    cords: OneOrTwo = 1
    rating: Weight | None = None
    each: Each = "pair"
    lock: LockEntry | None = None
    hook: Text | None = None
