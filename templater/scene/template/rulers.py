"""The rulers of a sheet, across and up: whether it was printed at its true size."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product

from templater.drawing import Item
from templater.geometry import Box, Point, Size
from templater.scene.marks import draw_scale_bar
from templater.scene.template.board import ALL, LINES, NOTHING, Board, Cover, Memory, Part, Shape
from templater.scene.template.room import Found, Regions, Way, Where, find_room

_MM_SIDE, _INCH_SIDE = 6.7, 7.3
_DEPTH = _MM_SIDE + _INCH_SIDE
_LONG = Size(104.0, _DEPTH)
_SHORT = Size(54.0, _DEPTH)
LONG_RULERS_AREA = 2 * _LONG.width * _LONG.height
"""What both rulers take where they are as long as they should be, mm²."""

_ZERO = 1.4
_FIGURES = ((0.0, 3.0), (48.0, 55.0), (86.0, 104.0))
_SHORT_FIGURES = ((0.0, 3.0), (36.0, 54.0))
"""Where along a ruler its figures stand, mm; no line may pass there."""


@dataclass(frozen=True, slots=True)
class Rulers:
    """Both rulers of a sheet; ``crowding`` counts what is wrong with them, 0 at best."""

    places: tuple[Found, ...]
    items: tuple[Item, ...]
    crowding: int


def place_rulers(board: Board, regions: Regions) -> Rulers:
    """Find room for both rulers, in the corners of the sheet if it can be.

    Which one comes first, and in which corner, is tried until both find room as they should.
    """
    blank = board.remember()
    (x0, y0, x1, y1) = board.area
    tried: list[tuple[Rulers, Memory]] = []
    for first_up, corner in product((True, False), (Point(x0, y0), Point(x1, y0), Point(x0, y1))):
        board.restore(blank)
        rulers = _try(board, regions, corner, first_up=first_up)
        if not rulers.crowding:
            return rulers
        tried.append((rulers, board.remember()))
    best, covers = min(tried, key=lambda one: one[0].crowding)
    board.restore(covers)
    return best


def may_hold_rulers(board: Board, regions: Regions) -> bool:
    """Whether each of the long rulers could stand inside the outline, if it were alone."""
    inside = regions.choose(Where.INSIDE)
    return all(board.has_room(_shape(_LONG, upward), inside) for upward in (True, False))


def _try(board: Board, regions: Regions, corner: Point, *, first_up: bool) -> Rulers:
    """Place both rulers as near a corner as they can be."""
    places, items, crowding = [], list[Item](), 0
    for upward in (first_up, not first_up):
        found = find_room(_list_ways(upward), board, regions, corner)
        if found is None:
            crowding += 10
            continue
        is_short = max(found.box.size) < _LONG.width - 1
        crowding += is_short + 2 * (Cover.LEVEL in found.way.interrupts)
        start = found.box.corner
        zero = start.moved(_MM_SIDE, _ZERO) if upward else start.moved(_ZERO, _INCH_SIDE)
        places.append(found)
        items += draw_scale_bar(zero, upward=upward, short=is_short)
    return Rulers(tuple(places), tuple(items), crowding)


def _list_ways(upward: bool) -> Iterator[Way]:
    """Inside the outline, outside, on its edge; then shorter, 50 mm and 2 in; then across all lines."""
    lines = Cover.LEVEL | Cover.ACROSS if upward else Cover.UPRIGHT | Cover.STUD
    edges = Cover.ENDS if upward else Cover.SIDES
    for size in (_LONG, _SHORT):
        yield Way(_shape(size, upward))
        yield Way(_shape(size, upward, lines))
        yield Way(_shape(size, upward), Where.OUTSIDE)
        yield Way(_shape(size, upward, lines | edges), Where.ANYWHERE)
        yield Way(_shape(size, upward, lines | Cover.PLUMB))
    for size, where in product((_LONG, _SHORT), (Where.INSIDE, Where.OUTSIDE)):
        yield Way(_shape(size, upward, LINES)[:1], where, LINES)


def _shape(size: Size, upward: bool, crossing: Cover = NOTHING) -> Shape:
    """A ruler's box, and in it the places of its figures, which stay clear of every line."""
    figures = _FIGURES if size == _LONG else _SHORT_FIGURES
    whole = Part(_turn(Box(0, 0, *size), upward), ALL & ~crossing)
    boxes = (Box(low, 0, high, size.height) for low, high in figures if crossing)
    return (whole, *(Part(_turn(box, upward), ALL) for box in boxes))


def _turn(box: Box, upward: bool) -> Box:
    """A box of a level ruler, or of one that stands."""
    return Box(box.y0, box.x0, box.y1, box.x1) if upward else box
