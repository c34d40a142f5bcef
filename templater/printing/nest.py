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
    from rectpack import MaxRectsBl, MaxRectsBssf, PackingMode, newPacker

    room = tuple(floor(side * _PER_MM + 0.5) for side in area)
    needed = [tuple(ceil(side * _PER_MM - 0.5) for side in size) for size in sizes]
    if sum(width * height for width, height in needed) > room[0] * room[1]:
        return
    found = set()
    for algorithm, order in product((MaxRectsBl, MaxRectsBssf), _list_orders()):
        packer = newPacker(
            mode=PackingMode.Offline, pack_algo=algorithm, sort_algo=order, rotation=False
        )
        packer.add_bin(*room)
        for number, (width, height) in enumerate(needed):
            packer.add_rect(width, height, number)
        packer.pack()
        places = {number: (x, y) for _, x, y, _, _, number in packer.rect_list()}
        packing = tuple(places[number] for number in sorted(places))
        if len(packing) == len(sizes) and packing not in found:
            found.add(packing)
            yield tuple(Point(x / _PER_MM, y / _PER_MM) for x, y in packing)


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
