"""Decides where everything hangs, and says what cannot be placed as the layout asks."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import chain

from templater.errors import Fault
from templater.layout.model import Arrangement, Layout, Piece
from templater.mounting.model import Mount
from templater.mounting.mount import mount_on_studs
from templater.placement.blocks import Block, GroupOnWall, place_blocks
from templater.placement.bounds import find_out_of_bounds
from templater.placement.collisions import find_collisions
from templater.placement.demands import find_unmet_demands
from templater.placement.holes import find_misplaced_holes
from templater.placement.model import Neighbour, PlacedFurniture, PlacedGroup, PlacedPiece, Plan
from templater.placement.neighbours import find_neighbours
from templater.placement.over import find_furniture_below
from templater.placement.supports import find_unsupported
from templater.placement.things import box_of


@dataclass(frozen=True, slots=True)
class Placement:
    """The plan of a wall and all that is wrong with it; to be trusted only without faults."""

    plan: Plan
    faults: tuple[Fault, ...]


def place_pieces(layout: Layout, mounts: Mapping[str, Mount]) -> Placement:
    """Place every piece of a layout on its wall; ``mounts`` by the pieces' names.

    A piece that is neither placed by itself nor in a group that is settled is left out.
    """
    blocks = place_blocks(layout)
    plan = _make_plan(layout, mounts, blocks)
    faults = (
        *find_unmet_demands(layout, blocks),
        *find_out_of_bounds(layout, blocks),
        *find_misplaced_holes(layout, plan.pieces),
        *find_unsupported(layout, plan.pieces),
        *find_collisions(layout, blocks),
    )
    return Placement(plan, faults)


def _make_plan(layout: Layout, mounts: Mapping[str, Mount], blocks: Sequence[Block]) -> Plan:
    """Everything on the wall, in the order of the layout."""
    furniture = {
        item.name: PlacedFurniture(item.name, box_of(item), item.kind) for item in layout.furniture
    }
    pieces = _make_pieces(layout, mounts, blocks, furniture)
    groups = {group.name: group for block in blocks for group in _make_groups(block, furniture)}
    return Plan(
        title=layout.title,
        units=layout.units,
        wall=layout.wall.size,
        eye_line_mm=layout.eye_line_mm,
        datum=layout.datum,
        furniture=tuple(furniture.values()),
        pieces=pieces,
        groups=tuple(groups[group.name] for group in layout.groups if group.name in groups),
        for_whom=layout.for_whom,
        from_whom=layout.from_whom,
        contact=layout.contact,
        issue=layout.issue,
        ceiling=layout.wall.ceiling,
        obstacles=(*layout.openings, *layout.fixtures),
        rules=layout.rules,
        accepted=layout.accepted,
        wall_surface=layout.wall.surface,
        board_mm=layout.wall.board_mm,
        studs=layout.wall.studs,
        is_walkway=layout.wall.is_walkway,
        is_earthquake=layout.wall.is_earthquake,
        is_outside=layout.wall.is_outside,
        region=layout.region,
    )


def _make_pieces(
    layout: Layout,
    mounts: Mapping[str, Mount],
    blocks: Sequence[Block],
    furniture: Mapping[str, PlacedFurniture],
) -> tuple[PlacedPiece, ...]:
    """All pieces on the wall, in the order of the layout."""
    owners = {name: block for block in blocks for name in block.boxes}
    placed = [piece for piece in layout.pieces if piece.name in owners]
    neighbours = find_neighbours({piece.name: owners[piece.name].boxes[piece.name] for piece in placed})
    groups = {
        name: group.group.name for block in blocks for group in block.groups for name in group.boxes
    }
    return tuple(
        _make_piece(
            piece,
            _settle_mount(piece, mounts[piece.name], owners[piece.name], layout),
            owners[piece.name],
            neighbours[piece.name],
            furniture,
            group=groups.get(piece.name),
        )
        for piece in placed
    )


def _make_piece(
    piece: Piece,
    mount: Mount,
    block: Block,
    neighbours: tuple[Neighbour, ...],
    furniture: Mapping[str, PlacedFurniture],
    *,
    group: str | None,
) -> PlacedPiece:
    """One piece on the wall, what holds it moved there with it; without that it hangs by nothing."""
    box = block.boxes[piece.name]
    supports = tuple(support.moved(box.x0, box.y0) for support in mount.supports)
    over = _find_over(block, furniture)
    return PlacedPiece(
        name=piece.name,
        slug=piece.slug,
        box=box,
        marks=tuple(mark.moved(box.x0, box.y0) for mark in mount.marks),
        notes=mount.notes,
        hang=piece.hang if mount.marks or supports else None,
        weight_kg=mount.estimate.kg if mount.estimate else piece.weight_kg,
        group=group,
        over=over,
        neighbours=neighbours,
        statics=mount.statics,
        supports=supports,
        estimate=mount.estimate,
        stands_out_mm=piece.stands_out_mm,
        made_of=piece.made_of,
        is_over_unasked=_is_unasked(block, over),
    )


def _settle_mount(piece: Piece, mount: Mount, block: Block, layout: Layout) -> Mount:
    """What holds a piece, now that it is known which studs are behind it."""
    if piece.hang is None or not piece.hang.on_studs:
        return mount
    left = block.boxes[piece.name].x0
    return mount_on_studs(piece, mount, (stud - left for stud in layout.wall.studs), layout.units)


def _make_groups(block: Block, furniture: Mapping[str, PlacedFurniture]) -> Iterator[PlacedGroup]:
    """A block's group and those in it; what hangs over furniture is the outermost, as one."""
    within = {name: group.group.name for group in block.groups for name in group.boxes}
    pieces = _list_pieces(block.groups)
    for group in block.groups:
        name = group.group.name
        outer = within.get(name)
        over = _find_over(block, furniture) if outer is None else None
        yield PlacedGroup(
            name=name,
            box=group.box,
            pieces=pieces[name],
            arrange=group.group.arrange,
            over=over,
            gap_mm=group.gap_mm,
            parts=tuple((member, group.boxes[member]) for member in group.group.members),
            within=outer,
            is_over_unasked=_is_unasked(block, over),
            stair=group.group.stair,
        )


def _list_pieces(groups: Sequence[GroupOnWall]) -> dict[str, tuple[str, ...]]:
    """The names of all pieces in each group, given every group before those in it."""
    pieces: dict[str, tuple[str, ...]] = {}
    for group in reversed(groups):
        found = (pieces.get(name, (name,)) for name in group.boxes)
        pieces[group.group.name] = tuple(chain.from_iterable(found))
    return pieces


def _find_over(block: Block, furniture: Mapping[str, PlacedFurniture]) -> PlacedFurniture | None:
    """The furniture that a block is asked to hang above, or else that it hangs over in fact.

    What hangs along stairs is not over furniture: there the steps set every height.
    """
    above = block.position.above
    if above is not None:
        return furniture[above]
    if block.groups and block.groups[0].group.arrange is Arrangement.STAIR:
        return None
    return find_furniture_below(block.box, furniture.values())


def _is_unasked(block: Block, over: PlacedFurniture | None) -> bool:
    """Whether a block hangs over furniture of which its position does not speak."""
    return over is not None and block.position.above is None
