"""Layouts that leave something open, as text, and the search run on them."""

from __future__ import annotations

from collections.abc import Sequence

from templater.layout.model import Layout
from templater.layout.read import read_layout
from templater.mounting.mount import mount_pieces
from templater.search.model import Settlement
from templater.search.settle import settle_groups

INCH = 25.4


def wall_text(
    sizes: Sequence[str], *groups: str, units: str = "in", furniture: str = "80 x 34", more: str = ""
) -> str:
    """A wall of 200 x 100 in with pieces A, B, C … of these sizes, a bench, and groups.

    ``furniture`` is the bench's width and height, its left end at 30; empty for none.
    """
    scale = 1 if units == "in" else 25
    lines = ["title: Keeper's cottage", f"units: {units}"]
    lines += [f"wall: {{width: {200 * scale}, height: {100 * scale}}}"]
    if furniture:
        width, height = furniture.split(" x ")
        left = 30 * scale
        lines += ["furniture:"]
        lines += [f"  - {{name: bench, left: {left}, width: {width}, height: {height}}}"]
    lines += ["pieces:"]
    lines += [
        f"  - {{name: {name}, size: {size}}}"
        for name, size in zip("ABCDEFGHIJKLMNOPQRSTUVW", sizes, strict=False)
    ]
    lines += ["groups:", *(f"  - {{{group}}}" for group in groups)]
    return "\n".join(lines) + "\n" + more


def read(text: str) -> Layout:
    """A layout that must have no faults."""
    reading = read_layout(text, "wall.yaml")
    assert reading.faults == ()
    assert reading.layout is not None
    return reading.layout


def settle(text: str, *choices: int) -> tuple[Settlement, ...]:
    """The open groups of a layout, settled."""
    layout = read(text)
    return settle_groups(layout, mount_pieces(layout).mounts, choices)
