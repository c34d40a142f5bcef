"""Decides where everything hangs, and says what cannot be placed as the layout asks."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from templater.errors import Fault
from templater.layout.model import Group, Layout, Piece
from templater.mounting.model import Mount
from templater.placement.blocks import Block, place_blocks
from templater.placement.bounds import box_of, find_out_of_bounds
from templater.placement.collisions import find_collisions
from templater.placement.model import Neighbour, PlacedFurniture, PlacedGroup, PlacedPiece, Plan
from templater.placement.neighbours import find_neighbours


@dataclass(frozen=True, slots=True)
class Placement:
    """The plan of a wall and all that is wrong with it; to be trusted only without faults."""

    plan: Plan
    faults: tuple[Fault, ...]


def place_pieces(layout: Layout, mounts: Mapping[str, Mount]) -> Placement:
    """Place every piece of a layout on its wall; ``mounts`` by the pieces' names."""
    blocks = place_blocks(layout)
    plan = _make_plan(layout, mounts, blocks)
    faults = (*find_out_of_bounds(layout, blocks, plan.pieces), *find_collisions(layout, blocks))
    return Placement(plan, faults)


def _make_plan(layout: Layout, mounts: Mapping[str, Mount], blocks: Sequence[Block]) -> Plan:
    """Everything on the wall, in the order of the layout."""
    furniture = {item.name: PlacedFurniture(item.name, box_of(item)) for item in layout.furniture}
    owners = {name: block for block in blocks for name in block.boxes}
    groups = {block.name: block for block in blocks if block.is_group}
    neighbours = find_neighbours(
        {piece.name: owners[piece.name].boxes[piece.name] for piece in layout.pieces}
    )
    return Plan(
        title=layout.title,
        units=layout.units,
        wall=layout.wall.size,
        eye_line_mm=layout.eye_line_mm,
        datum=layout.datum,
        furniture=tuple(furniture.values()),
        pieces=tuple(
            _make_piece(piece, mounts[piece.name], owners[piece.name], neighbours[piece.name], furniture)
            for piece in layout.pieces
        ),
        groups=tuple(_make_group(group, groups[group.name], furniture) for group in layout.groups),
        for_whom=layout.for_whom,
        from_whom=layout.from_whom,
        contact=layout.contact,
        issue=layout.issue,
    )


def _make_piece(
    piece: Piece,
    mount: Mount,
    block: Block,
    neighbours: tuple[Neighbour, ...],
    furniture: Mapping[str, PlacedFurniture],
) -> PlacedPiece:
    """One piece on the wall, its marks moved there with it."""
    box = block.boxes[piece.name]
    return PlacedPiece(
        name=piece.name,
        slug=piece.slug,
        box=box,
        marks=tuple(mark.moved(box.x0, box.y0) for mark in mount.marks),
        notes=mount.notes,
        hang=piece.hang,
        weight_kg=piece.weight_kg,
        group=block.name if block.is_group else None,
        over=_find_over(block, furniture),
        neighbours=neighbours,
    )


def _make_group(group: Group, block: Block, furniture: Mapping[str, PlacedFurniture]) -> PlacedGroup:
    """One group on the wall."""
    return PlacedGroup(
        name=group.name,
        box=block.box,
        pieces=group.members,
        arrange=group.arrange,
        over=_find_over(block, furniture),
    )


def _find_over(block: Block, furniture: Mapping[str, PlacedFurniture]) -> PlacedFurniture | None:
    """The furniture that a block is asked to hang above."""
    above = block.position.above
    return None if above is None else furniture[above]
