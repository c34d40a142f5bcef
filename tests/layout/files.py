"""Layout files for the tests of the reader, and its faults as the user sees them."""

from __future__ import annotations

from pathlib import Path

from templater.layout.model import Layout
from templater.layout.read import read_layout

SHIPPED = sorted((Path(__file__).parents[2] / "layouts").glob("*.yaml"))

SMALL = """\
title: Front room
units: in
wall: {width: 12 ft, height: 8 ft}
furniture:
  - {name: window seat, left: 24, width: 60, height: 20}
pieces:
  - {name: Cliff path, size: 16 x 16, hang: {by: nail, drop: 1/2}}
  - {name: Tide clock, size: 10 x 10, place: {left: 100}}
  - {name: Harbour, size: 20 x 16}
groups:
  - {name: seat pair, pieces: [Cliff path, Harbour], arrange: row, above: window seat}
"""
"""A sound layout of eleven lines; tests of faults change one spot of it."""


def read_sound(text: bytes | str) -> Layout:
    """The layout of a text that must be sound."""
    reading = read_layout(text, "hall.yaml")
    assert reading.faults == ()
    assert reading.layout is not None
    return reading.layout


def list_faults(text: bytes | str) -> list[str]:
    """Every fault of a text: its line, then the act that mends it."""
    return [str(fault) for fault in read_layout(text, "hall.yaml").faults]


def list_faults_after(old: str, new: str) -> list[str]:
    """The faults of the small layout with one spot changed."""
    assert SMALL.count(old) == 1, old
    return list_faults(SMALL.replace(old, new))
