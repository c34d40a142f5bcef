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


def check_faults(marked: str, *faults: str) -> None:
    """The text has these faults and no others, each where a ``¦`` stands in it, in this order.

    A fault is given as ``message => hint``; the marks are no part of the text.
    """
    *parts, rest = marked.split("¦")
    text, expected = "", []
    for part, fault in zip(parts, faults, strict=True):
        text += part
        lines = text.split("\n")
        message, hint = fault.split(" => ")
        expected.append(f"hall.yaml:{len(lines)}:{len(lines[-1]) + 1}: {message}\n  {hint}")
    assert list_faults(text + rest) == expected


def change(old: str, new: str) -> str:
    """The small layout with one spot changed."""
    assert SMALL.count(old) == 1, old
    return SMALL.replace(old, new)
