"""Finds pieces that have nothing to hang on where they are: no stud behind a cleat, no rail above."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from templater.errors import Fault
from templater.layout.model import Hanging, Layout
from templater.lengths import format_both
from templater.mounting.amounts import SLACK_MM, format_at_least
from templater.mounting.hang_points import find_middle, find_reach
from templater.mounting.model import Cord
from templater.placement.ceiling import find_headroom
from templater.placement.model import PlacedPiece
from templater.quoting import quote


def find_unsupported(layout: Layout, pieces: Iterable[PlacedPiece]) -> Iterator[Fault]:
    """Every piece whose cleat has no stud behind it, or whose rail is not where a rail can be."""
    hangings = {piece.name: piece.hang for piece in layout.pieces}
    for piece in pieces:
        hang = hangings[piece.name]
        if hang is None:
            continue
        if hang.on_studs and layout.wall.studs:
            yield from _check_studs(piece, hang, layout)
        cords = [support for support in piece.supports if isinstance(support, Cord)]
        if cords:
            yield from _check_rail(cords, piece, hang, layout)


def _check_studs(piece: PlacedPiece, hang: Hanging, layout: Layout) -> Iterator[Fault]:
    middle = piece.box.x0 + find_middle(hang, piece.size)
    outside = min(abs(stud - middle) for stud in layout.wall.studs) - find_reach(hang)
    if outside > SLACK_MM:
        yield Fault(
            f"'on: studs' of {quote(piece.name)} finds no stud behind its rail; the nearest is "
            f"{format_at_least(outside, layout.units)} past the rail's end",
            "move the piece or widen the rail, or use 'every' and anchors that suit the wall",
            hang.at,
        )


def _check_rail(
    cords: Sequence[Cord], piece: PlacedPiece, hang: Hanging, layout: Layout
) -> Iterator[Fault]:
    """A rail that is no higher than the piece is tied, or above the ceiling."""
    low = -min(cord.length_mm for cord in cords)
    xs = [cord.hang.x for cord in cords]
    headroom = find_headroom(layout.wall.ceiling, layout.wall.size.height, min(xs), max(xs))
    high = cords[0].rail_mm - headroom
    if low >= -SLACK_MM:
        yield Fault(
            f"the rail of {quote(piece.name)} must be above where its cord is tied, "
            f"{format_both(cords[0].hang.y, layout.units)} above the floor; "
            f"it is at {format_both(cords[0].rail_mm, layout.units)}",
            "lower the piece, or correct the rail's 'height' above the floor",
            hang.at,
        )
    elif high > SLACK_MM:
        yield Fault(
            f"the rail of {quote(piece.name)} would be {format_at_least(high, layout.units)} above "
            "the ceiling",
            "correct the rail's 'height' above the floor",
            hang.at,
        )
