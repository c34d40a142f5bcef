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


WIDE = """\
title: Long wall
units: in
wall: {width: 50 ft, ceiling: [[0, 9 ft], [40 ft, 9 ft], [50 ft, 6 ft]]}
furniture:
  - {name: settle, left: 200, width: 60, height: 32}
openings:
  - {name: sash window, kind: window, left: 40, bottom: 30, width: 36, height: 50}
  - {name: landing door, kind: door, right: 120, width: 32, height: 80, swing: right}
fixtures:
  - {name: thermostat, centre: 100, middle: 60, width: 4, height: 5}
pieces:
  - {name: A, size: 10 x 10}
  - {name: B, size: 10 x 10}
  - {name: C, size: 10 x 10}
  - {name: D, size: 10 x 10}
  - {name: E, size: 10 x 10}
  - {name: F, size: 10 x 10, place: {beside: sash window, side: right, clearance: 4, top: 70}}
  - {name: G, size: 10 x 10}
  - {name: H, size: 10 x 10}
  - {name: I, size: 10 x 10}
  - {name: J, size: 10 x 10}
  - {name: K, size: 10 x 10}
  - {name: L, size: 10 x 10}
  - {name: M, size: 10 x 10}
groups:
  - name: pair
    pieces: [A, B]
    arrange: placed
    corners: {B: {left: 11, bottom: 3}, a: {left: 0, bottom: 0}}
  - {name: big, pieces: [pair, C], arrange: row, spread: 50, between: [Landing Door, Right End]}
  - {name: six, pieces: [D, E], arrange: grid, rows: 2, cells: "true", right: 20}
  - name: rest
    pieces: [G]
    arrange: ledge
    ledge: {height: 55, width: 48, thick: 1 1/2, drop: 3/4, every: 16}
  - name: up
    pieces: [H]
    arrange: stair
    stair: {rise: 7 1/2, run: 10, up: left, start: {left: 300, bottom: 15}}
  - {name: heap, pieces: [I], arrange: cluster, width: 40, height: 30, gap: any, above: settle}
  - {name: pick, choose: {from: [J, K, L], count: 2}, arrange: any, left: 500}
  - {name: pick too, choose: {from: [K, l, M]}, arrange: column, gap: any, left: 550}
rules:
  balance: {to: 12.5 %}
  gap: {from: 2, to: 5}
  eye-line: off
  near-miss: on
accept:
  - {rule: eye-line, for: PICK, because: the stairs put the eye higher here}
"""
"""A sound layout with every key that an arrangement, a thing in the way or a rule can have."""

FULL = """\
title: Lamp room
units: cm
paper: a3
margin: {bottom: 15 mm}
lap: 12 mm
eye_line: 150
datum: {height: 140, at: the door}
for: Inga
from: Wren
contact: at the light
issue: draft 2
wall: {width: 6.2 m, height: 2.6 m}
furniture:
  - {name: oil cabinet, left: 40, width: 120, height: 85}
pieces:
  - name: Mirror
    size: 80 x 60
    weight: 9.5 kg
    hang: {by: cleat, drop: 45 mm, rise: -12 mm, offset: 1, width: 60, every: 15}
    place: {above: oil cabinet, clearance: 18}
  - name: Morning watch
    size: 25 x 20
  - name: Night watch
    size: 25 x 20
    hang: {by: d-rings, drop: 3, apart: 10}
groups:
  - name: the watches
    pieces: [Morning watch, Night watch]
    arrange: column
    align: left
    gap: 6
    left: 480
    top: 2 m
"""
"""A sound layout in centimetres, with every key that is not about arrangements, things and rules."""


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


def change(old: str, new: str, text: str = SMALL) -> str:
    """The small layout, or another text, with one spot changed."""
    assert text.count(old) == 1, old
    return text.replace(old, new)


def check_wide(old: str, new: str, *faults: str) -> None:
    """The wide layout with one spot changed has these faults and no others."""
    check_faults(change(old, new, WIDE), *faults)
