"""A wall with one piece, small enough to be told by hand: 200 x 100 mm, its hole at 400, 1480 mm."""

from __future__ import annotations

from functools import cache

from templater.geometry import Box, Point, Size
from templater.layout.model import Margins
from templater.paper import parse_paper
from templater.pipeline import plan_wall
from templater.placement.model import Plan
from templater.printing.model import PrintSetup, Tile, Tiling
from templater.verify.model import Expected, PageRecord, PieceRecord, Record

LAYOUT = b"""
title: Gull
units: mm
wall: {width: 2 m, height: 2.5 m}
datum: {height: 1550}
pieces:
  - name: Gull
    size: 200 x 100
    weight: 2 kg
    hang: {by: nail, drop: 30, rise: 10}
    place: {left: 300, bottom: 1400}
"""
# The hang point lies 30 mm under the upper edge at 1500 mm, the hole 10 mm above it.
BOX = Box(300.0, 1400.0, 500.0, 1500.0)
HANG, HOLE = Point(400.0, 1470.0), Point(400.0, 1480.0)
SETUP = PrintSetup(parse_paper("a4"), Margins(10.0, 10.0, 10.0, 10.0), 10.0)
CLIP = Box(-10.0, -10.0, 210.0, 110.0)
PAPER = Size(297.0, 210.0)


@cache
def plan() -> Plan:
    """The plan of the layout."""
    return plan_wall(LAYOUT, "gull.yaml").plan


def expected(clip: Box = CLIP) -> Expected:
    """One sheet, which shows 10 mm more than the outline."""
    tile = Tile("A1", clip, clip, PAPER, Point(40.0, 50.0))
    return Expected(plan(), {"gull": Tiling((tile,), (), ())}, SETUP, "K7M2Q4")


def page(number: int = 3, clip: Box | None = CLIP, sheet: str = "A1", piece: str = "gull") -> PageRecord:
    """The sheet's entry in the manifest."""
    return PageRecord(number, "template", PAPER, piece, sheet, clip, Point(40.0, 50.0), (1.0, 1.0))


def record(*pages: PageRecord, piece: PieceRecord | None = None) -> Record:
    """What a manifest tells of it."""
    gull = piece or PieceRecord("gull", "Gull", BOX, (HANG,), (HOLE,))
    return Record("K7M2Q4", "0.1.0", SETUP, {}, (gull,), pages)
