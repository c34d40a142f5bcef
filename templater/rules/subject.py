"""What the rules are held against: stand-alone pieces, and groups as if each were one piece."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from templater.geometry import Box
from templater.layout.model import Arrangement
from templater.placement.model import PlacedFurniture, PlacedGroup, PlacedPiece, Plan
from templater.rules.facing import Facing, find_facing


@dataclass(frozen=True, slots=True)
class Subject:
    """A stand-alone piece or a group, with its box on the wall.

    ``pieces`` are all pieces in it, a stand-alone piece itself; ``parts`` are what a group is
    composed of, a group inside it counting as one, without the ledge that they may stand on.
    ``is_over_unasked``: over that furniture in fact, not because the layout asks for it.
    ``facing`` are the other stand-alone pieces and groups that it is to be compared with.
    """

    name: str
    box: Box
    over: PlacedFurniture | None
    pieces: tuple[PlacedPiece, ...]
    parts: tuple[tuple[str, Box], ...] = ()
    arrange: Arrangement | None = None
    is_inside: bool = False
    facing: tuple[Facing, ...] = ()
    is_over_unasked: bool = False


def find_subjects(plan: Plan) -> tuple[Subject, ...]:
    """All subjects of a plan: stand-alone pieces, then groups, each in the plan's order."""
    pieces = {piece.name: piece for piece in plan.pieces}
    alone = [piece for piece in plan.pieces if piece.group is None]
    wholes: list[PlacedPiece | PlacedGroup] = [*alone]
    wholes += (group for group in plan.groups if group.within is None)
    facing = find_facing([(each.name, each.box) for each in wholes])
    return (
        *(_of_piece(piece, facing[piece.name]) for piece in alone),
        *(_of_group(group, pieces, facing.get(group.name, ())) for group in plan.groups),
    )


def _of_piece(piece: PlacedPiece, facing: tuple[Facing, ...]) -> Subject:
    return Subject(
        piece.name,
        piece.box,
        piece.over,
        (piece,),
        facing=facing,
        is_over_unasked=piece.is_over_unasked,
    )


def _of_group(
    group: PlacedGroup, pieces: Mapping[str, PlacedPiece], facing: tuple[Facing, ...]
) -> Subject:
    return Subject(
        name=group.name,
        box=group.box,
        over=group.over,
        pieces=tuple(pieces[name] for name in group.pieces),
        parts=group.parts,
        arrange=group.arrange,
        is_inside=group.within is not None,
        facing=facing,
        is_over_unasked=group.is_over_unasked,
    )
