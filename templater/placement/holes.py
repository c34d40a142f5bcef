"""Finds holes that a hook's rise takes off the wall, or into something in the way.

A hole within its own frame is told by the frame.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from templater.errors import Fault
from templater.geometry import Point
from templater.layout.model import Layout
from templater.mounting.amounts import SLACK_MM, format_at_least
from templater.placement.ceiling import find_headroom
from templater.placement.model import PlacedPiece
from templater.quoting import quote


def find_misplaced_holes(layout: Layout, pieces: Iterable[PlacedPiece]) -> Iterator[Fault]:
    """The pieces with a hole where none can be drilled, each told once for each reason."""
    for piece in pieces:
        holes = [mark.hole for mark in piece.marks if not piece.box.has(mark.hole)]
        if piece.hang is None or not holes:
            continue
        for by, where, act in _find_reasons(layout, piece, holes):
            amount = format_at_least(by, layout.units)
            yield Fault(
                f"a hole of piece {quote(piece.name)} would be {amount} {where}",
                f"{act} the piece by at least {amount}, or check the hanger's 'rise'",
                piece.hang.at,
            )


def _find_reasons(
    layout: Layout, piece: PlacedPiece, holes: list[Point]
) -> Iterator[tuple[float, str, str]]:
    """By how much holes are where, and the act that brings them out."""
    wall = layout.wall
    above = max(hole.y - find_headroom(wall.ceiling, wall.size.height, hole.x, hole.x) for hole in holes)
    below = -min(hole.y for hole in holes)
    if above > SLACK_MM:
        yield above, "above the ceiling", "lower"
    if below > SLACK_MM:
        yield below, "below the floor", "raise"
    for thing in (*layout.openings, *layout.fixtures):
        inside = [hole.y for hole in holes if thing.box.has(hole)]
        if inside and inside[0] > piece.box.y1:
            yield max(inside) - thing.box.y0, f"above the lower edge of {quote(thing.name)}", "lower"
        elif inside:
            yield thing.box.y1 - min(inside), f"below the upper edge of {quote(thing.name)}", "raise"
