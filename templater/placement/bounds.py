"""Finds what reaches past the wall's ends, above its ceiling or below its floor."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from templater.errors import Fault, Place
from templater.geometry import ORIGIN, Box
from templater.layout.model import Furniture, Layout
from templater.lengths import Unit
from templater.mounting.amounts import SLACK_MM, format_at_least
from templater.placement.blocks import Block
from templater.placement.model import PlacedPiece
from templater.quoting import quote


def find_out_of_bounds(
    layout: Layout, blocks: Iterable[Block], pieces: Iterable[PlacedPiece]
) -> Iterator[Fault]:
    """Every piece of furniture, block and hole that is not on the wall."""
    wall, units = Box.of(ORIGIN, layout.wall.size), layout.units
    for item in layout.furniture:
        yield from _check_box(f"furniture {quote(item.name)}", box_of(item), wall, item.at, units)
    for block in blocks:
        yield from _check_box(str(block), block.box, wall, block.position.at, units)
    for piece in pieces:
        yield from _check_holes(piece, wall, units)


def box_of(item: Furniture) -> Box:
    """What a piece of furniture hides of the wall."""
    return Box(item.left_mm, 0.0, item.left_mm + item.size.width, item.size.height)


def _check_box(what: str, box: Box, wall: Box, at: Place, units: Unit) -> Iterator[Fault]:
    """The sides on which a box is past the wall; one fault a direction where it is too big."""
    across = (
        (wall.x0 - box.x0, "past the wall's left end", "move it right"),
        (box.x1 - wall.x1, "past the wall's right end", "move it left"),
    )
    up = (
        (box.y1 - wall.y1, "above the ceiling", "move it down"),
        (wall.y0 - box.y0, "below the floor", "move it up"),
    )
    excess = (
        (box.width - wall.width, across, "wider", "narrower"),
        (box.height - wall.height, up, "taller", "lower"),
    )
    for too_much, sides, more, less in excess:
        if too_much > SLACK_MM:
            amount = format_at_least(too_much, units)
            hint = f"make it {less} by at least {amount}, or correct the wall's size"
            yield Fault(f"{what} is {amount} {more} than the wall", hint, at)
            continue
        for by, where, act in sides:
            if by > SLACK_MM:
                amount = format_at_least(by, units)
                yield Fault(f"{what} reaches {amount} {where}", f"{act} by at least {amount}", at)


def _check_holes(piece: PlacedPiece, wall: Box, units: Unit) -> Iterator[Fault]:
    """Holes that the hook's rise takes off the wall; a frame past the wall is told of itself."""
    outside = [
        mark.hole.y for mark in piece.marks if not (wall.has(mark.hole) or piece.box.has(mark.hole))
    ]
    if piece.hang is None or not outside:
        return
    sides = (
        (max(outside) - wall.y1, "above the ceiling", "lower"),
        (wall.y0 - min(outside), "below the floor", "raise"),
    )
    for by, where, act in sides:
        if by > SLACK_MM:
            amount = format_at_least(by, units)
            yield Fault(
                f"a hole of piece {quote(piece.name)} would be {amount} {where}",
                f"{act} the piece by at least {amount}, or check the hanger's 'rise'",
                piece.hang.at,
            )
