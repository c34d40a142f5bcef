"""Puts rectangles of paper side by side on one page, never turned."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product
from math import ceil, floor
from typing import Any

from templater.geometry import Point, Size

_PER_MM = 1000
"""The packing library wants whole numbers: thousandths of a mm."""


def nest(sizes: Sequence[Size], area: Size) -> Iterator[tuple[Point, ...]]:
    """Ways to put all sizes on an area: where the top left corner of each goes, x right and y down.

    Several heuristics are tried, since none is best everywhere; each is a packing in which nothing
    overlaps. Empty where none of them finds room.
    """
    from rectpack import MaxRectsBl, MaxRectsBssf

    room = floor(area.width * _PER_MM + 0.5), floor(area.height * _PER_MM + 0.5)
    needed = [(ceil(width * _PER_MM - 0.5), ceil(height * _PER_MM - 0.5)) for width, height in sizes]
    if sum(width * height for width, height in needed) > room[0] * room[1] or _clash(needed, room):
        return
    rectangles = [(width, height, number) for number, (width, height) in enumerate(needed)]
    orders = dict.fromkeys(tuple(order(rectangles)) for order in _list_orders())
    found = set()
    for algorithm, order in product((MaxRectsBl, MaxRectsBssf), orders):
        packing = _pack(algorithm(*room, rot=False), order)
        if packing is not None and packing not in found:
            found.add(packing)
            yield tuple(Point(x / _PER_MM, y / _PER_MM) for x, y in packing)


def _clash(needed: Sequence[tuple[int, int]], room: tuple[int, int]) -> bool:
    """Whether two of the rectangles fit the area neither side by side nor one above the other."""
    wide = [number for number, (width, _) in enumerate(needed) if 2 * width > room[0]]
    return any(
        needed[one][0] + width > room[0] and needed[one][1] + height > room[1]
        for one in wide
        for other, (width, height) in enumerate(needed)
        if other != one
    )


def _pack(area: Any, order: Sequence[tuple[int, int, int]]) -> tuple[tuple[int, int], ...] | None:
    """The corners of rectangles put on an area one after another; None if one finds no room."""
    places = {}
    for width, height, number in order:
        placed = area.add_rect(width, height)
        if placed is None:
            return None
        places[number] = placed.x, placed.y
    return tuple(places[number] for number in sorted(places))


def _list_orders() -> tuple[Any, ...]:
    """The orders in which the library takes rectangles, the largest first in one sense or another."""
    import rectpack

    return (
        rectpack.SORT_SSIDE,
        rectpack.SORT_LSIDE,
        rectpack.SORT_AREA,
        rectpack.SORT_PERI,
        rectpack.SORT_DIFF,
        rectpack.SORT_RATIO,
    )
