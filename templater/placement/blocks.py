"""Puts stand-alone pieces and whole groups on the wall, each as one block."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from templater.geometry import Box
from templater.layout.model import Group, Layout, Piece, Position
from templater.placement.compose import Composition, compose_groups
from templater.placement.positions import find_corner, find_group_corner
from templater.placement.things import find_things
from templater.quoting import quote


@dataclass(frozen=True, slots=True)
class GroupOnWall:
    """A group where it hangs: ``boxes`` are those of its members and of its ledge, by name."""

    group: Group
    gap_mm: float
    boxes: Mapping[str, Box]

    @property
    def box(self) -> Box:
        """The smallest box that holds them all."""
        return Box.around(self.boxes.values())


@dataclass(frozen=True, slots=True)
class Block:
    """What is placed as one: a stand-alone piece, or a group with all that is in it.

    ``boxes`` gives the place of every piece on the wall by the piece's name; ``box`` is the
    smallest that holds them all. ``groups``: the group, if it is one, and those in it.
    """

    name: str
    box: Box
    boxes: Mapping[str, Box]
    position: Position
    groups: tuple[GroupOnWall, ...] = ()

    def __str__(self) -> str:
        return f"{'group' if self.groups else 'piece'} {quote(self.name)}"


def place_blocks(layout: Layout) -> tuple[Block, ...]:
    """All blocks of a layout: the stand-alone pieces in their order, then the groups in theirs.

    A piece or group without a position is part of another group, or is not to hang.
    """
    things = find_things(layout)
    compositions = compose_groups(layout, things)
    alone = (
        _place_piece(piece, piece.position, layout, things) for piece in layout.pieces if piece.position
    )
    grouped = (
        _place_group(group.name, group.position, layout, things, compositions)
        for group in layout.groups
        if group.position and group.name in compositions
    )
    return (*alone, *grouped)


def _place_piece(piece: Piece, position: Position, layout: Layout, things: Mapping[str, Box]) -> Block:
    """A stand-alone piece where its position asks for it."""
    box = Box.of(find_corner(piece.size, position, layout, things), piece.size)
    return Block(piece.name, box, {piece.name: box}, position)


def _place_group(
    name: str,
    position: Position,
    layout: Layout,
    things: Mapping[str, Box],
    compositions: Mapping[str, Composition],
) -> Block:
    """A group, its bounding box where its position asks for it, and all that is in it."""
    pieces: dict[str, Box] = {}
    groups: list[GroupOnWall] = []
    corners = [(name, find_group_corner(compositions[name], position, layout, things))]
    for inner, (x, y) in corners:  # grows on the way: what is found is looked into in turn
        composed = compositions[inner]
        boxes = {member: box.moved(x, y) for member, box in composed.boxes.items()}
        groups.append(GroupOnWall(composed.group, composed.gap_mm, boxes))
        corners.extend((member, box.corner) for member, box in boxes.items() if member in compositions)
        pieces.update((member, box) for member, box in boxes.items() if member not in compositions)
    return Block(name, groups[0].box, pieces, position, tuple(groups))
