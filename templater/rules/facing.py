"""Finds which things hang side by side or one above the other, near enough to be compared."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from templater.geometry import Box
from templater.placement.model import Side
from templater.placement.neighbours import find_neighbours


@dataclass(frozen=True, slots=True)
class Facing:
    """The other of a pair; ``is_beside``: on the left or right, not above or below."""

    name: str
    box: Box
    is_beside: bool


def find_facing(parts: Sequence[tuple[str, Box]]) -> dict[str, tuple[Facing, ...]]:
    """For each thing the later ones that are its neighbours, or whose neighbour it is.

    So every pair stands once, with the one that comes first.
    """
    boxes = dict(parts)
    ranks = {name: rank for rank, name in enumerate(boxes)}
    found: dict[str, dict[tuple[str, bool], None]] = {name: {} for name in boxes}
    for name, neighbours in find_neighbours(boxes).items():
        for other in neighbours:
            first, second = sorted((name, other.name), key=ranks.__getitem__)
            found[first][second, other.side in (Side.LEFT, Side.RIGHT)] = None
    return {
        name: tuple(
            Facing(other, boxes[other], is_beside)
            for other, is_beside in sorted(pairs, key=lambda pair: ranks[pair[0]])
        )
        for name, pairs in found.items()
    }
