"""Puts stand-alone pieces and whole groups on the wall, each as one block."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from templater.geometry import Box, Point, Size
from templater.layout.model import Furniture, Group, Layout, Piece, Position
from templater.placement.arrange import arrange_group
from templater.quoting import quote


@dataclass(frozen=True, slots=True)
class Block:
    """What is placed as one: a stand-alone piece, or a group with all its pieces.

    ``boxes`` gives the place of every piece on the wall by the piece's name; ``box`` is the
    smallest that holds them all.
    """

    name: str
    box: Box
    boxes: Mapping[str, Box]
    position: Position
    is_group: bool

    def __str__(self) -> str:
        return f"{'group' if self.is_group else 'piece'} {quote(self.name)}"


def place_blocks(layout: Layout) -> tuple[Block, ...]:
    """All blocks of a layout: the stand-alone pieces in their order, then the groups in theirs."""
    standing = {item.name: item for item in layout.furniture}
    pieces = {piece.name: piece for piece in layout.pieces}
    alone = (_place_piece(piece, layout, standing) for piece in layout.pieces if piece.position)
    grouped = (_place_group(group, layout, pieces, standing) for group in layout.groups)
    return (*alone, *grouped)


def _place_piece(piece: Piece, layout: Layout, standing: Mapping[str, Furniture]) -> Block:
    """A stand-alone piece where its position asks for it."""
    if piece.position is None:
        raise ValueError(f"{piece.name!r} has no position of its own")
    box = Box.of(find_corner(piece.size, piece.position, layout, standing), piece.size)
    return Block(piece.name, box, {piece.name: box}, piece.position, is_group=False)


def _place_group(
    group: Group, layout: Layout, pieces: Mapping[str, Piece], standing: Mapping[str, Furniture]
) -> Block:
    """A group, its bounding box where its position asks for it."""
    inside = arrange_group(group, [pieces[name].size for name in group.members])
    corner = find_corner(Box.around(inside).size, group.position, layout, standing)
    boxes = {name: box.moved(corner.x, corner.y) for name, box in zip(group.members, inside, strict=True)}
    return Block(group.name, Box.around(boxes.values()), boxes, group.position, is_group=True)


def find_corner(
    size: Size, position: Position, layout: Layout, standing: Mapping[str, Furniture]
) -> Point:
    """The bottom-left corner, on the wall, of something of a size that is asked to a position."""
    if position.above is None:
        return Point(_find_left(size, position, layout), _find_bottom(size, position, layout))
    below = standing[position.above]
    return Point(
        below.left_mm + (below.size.width - size.width) / 2,
        below.size.height + position.clearance_mm,
    )


def _find_left(size: Size, position: Position, layout: Layout) -> float:
    """Its left edge, from the wall's left end."""
    wall = layout.wall.size.width
    if position.left_mm is not None:
        return position.left_mm
    if position.right_mm is not None:
        return wall - position.right_mm - size.width
    centre = wall / 2 if position.centre_mm is None else position.centre_mm
    return centre - size.width / 2


def _find_bottom(size: Size, position: Position, layout: Layout) -> float:
    """Its bottom edge, from the floor."""
    if position.bottom_mm is not None:
        return position.bottom_mm
    if position.top_mm is not None:
        return position.top_mm - size.height
    centre = layout.eye_line_mm if position.eye_line_mm is None else position.eye_line_mm
    return centre - size.height / 2
