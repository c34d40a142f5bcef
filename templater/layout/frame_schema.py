"""The keys by which a layout says what a piece is made of."""

from __future__ import annotations

from templater.layout.entry import Entry
from templater.layout.materials import Backing, Glazing, MatBoard, WoodName
from templater.layout.values import Extent


class MouldingEntry(Entry):
    """``moulding:`` of ``made_of:``; its width may be that of the piece's own ``moulding``."""

    wood: WoodName
    width: Extent | None = None
    depth: Extent


class MadeOfEntry(Entry):
    """``made_of:`` of a piece."""

    glazing: Glazing | None = None
    mat: MatBoard | None = None
    backing: Backing | None = None
    moulding: MouldingEntry | None = None
