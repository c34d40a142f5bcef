"""The least paper that shows where to drill: a few sheets with the holes of a template."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import chain, combinations, pairwise, product
from math import inf
from typing import TypeAlias

from templater.geometry import Box, Point, Size
from templater.printing.band import AIR_MM
from templater.printing.model import Coverage, PrintSetup, Shape, Tile, Tiling
from templater.printing.pages import Page, Side, list_pages
from templater.printing.prices import CLEAR_MM
from templater.printing.sheet_names import name_sheet
from templater.printing.tile import NoRoomOnSheetError, make_tile, tile_template

_APART_MM = 50.0
"""Between the holes of two sheets there is at least so much, or the sheets are joined."""

_NEAR_MM = 250.0
"""A roll is cut to what is needed, and to the top edge if it is not farther from the holes."""

_Span: TypeAlias = tuple[float, float]
_Parts: TypeAlias = tuple[Sequence[Box], ...]


def tile_card(shape: Shape, setup: PrintSetup, *, most: int) -> Tiling:
    """One sheet with all holes; else a few, set apart by measure; else as many as join round them.

    A template without holes shows the middle of its top edge. Each sheet shows the top edge and the
    centre line too where it reaches them. Raises TooManySheetsError and NoRoomOnSheetError.
    """
    pages = list_pages(setup)
    if not pages:
        raise NoRoomOnSheetError("margins and laps leave too little of the paper to print on")
    rooms = _list_rooms(shape)
    for parts in _list_partings(rooms):
        views = [_find_view(Box.around(part), shape, pages) for part in parts]
        found = [view for view in views if view is not None]
        if len(found) == len(parts):
            tiles = tuple(view.make(name_sheet(0, place), setup) for place, view in enumerate(found))
            return Tiling(_part_overlapping(tiles, parts), (), (), Coverage.CARD)
    around = Box.around(rooms)
    joined = tile_template(around, shape.holes, shape.hang_points, setup, most=most)
    return replace(joined, cover=Coverage.CARD)


def _list_rooms(shape: Shape) -> list[Box]:
    """What must be seen round each hole and its hang point, from left to right."""
    pairs = [*zip(shape.holes, shape.hang_points, strict=True)]
    if not pairs:
        top = Point(shape.outline.centre.x, shape.outline.y1)
        pairs = [(top, top)]
    return sorted(
        Box.around((Box(*hole, *hole), Box(*hang, *hang))).grown(CLEAR_MM) for hole, hang in pairs
    )


def _list_partings(rooms: Sequence[Box]) -> Iterator[_Parts]:
    """Ways to part the rooms, from the fewest parts on: one, a left and a right, rows, rows parted."""
    yield (rooms,)
    yield from _split(rooms)
    rows = _list_rows(rooms)
    if len(rows) > 1:
        for parted in product(*([(row,), *_split(row)] for row in rows)):
            yield tuple(chain.from_iterable(parted))


def _list_rows(rooms: Sequence[Box]) -> list[list[Box]]:
    """The rooms row by row from the top, each from left to right; rows lie far enough apart."""
    rows: list[list[Box]] = []
    lowest = inf
    for room in sorted(rooms, key=lambda room: room.y1, reverse=True):
        if not rows or lowest - room.y1 >= _APART_MM:
            rows.append([])
        rows[-1].append(room)
        lowest = min(lowest, room.y0)
    return [sorted(row) for row in rows]


def _split(rooms: Sequence[Box]) -> list[_Parts]:
    """The rooms parted in two where they are farthest apart across, if that is far enough."""
    gaps = [(other.x0 - one.x1, place) for place, (one, other) in enumerate(pairwise(rooms), start=1)]
    widest, place = max(gaps, default=(0.0, 0))
    return [(rooms[:place], rooms[place:])] if widest >= _APART_MM else []


@dataclass(frozen=True, slots=True)
class _View:
    """A page and what it shows of the template."""

    page: Page
    shown: Box

    def make(self, name: str, setup: PrintSetup) -> Tile:
        """The sheet."""
        size = Size(self.page.across.cut_to(self.shown.width), self.page.down.cut_to(self.shown.height))
        return make_tile(name, self.shown, self.shown, size, setup)


def _find_view(must: Box, shape: Shape, pages: Sequence[Page]) -> _View | None:
    """The page that shows what it must, and most of what else helps; portrait before landscape."""
    views = []
    for page in pages:
        across = _span_across(must, shape, page.across)
        down = _span_down(must, shape, page.down)
        if across and down:
            shown = Box(across[0], down[0], across[1], down[1])
            views.append(_View(page, shown))
    return max(views, key=lambda view: _worth(view.shown, shape), default=None)


def _worth(shown: Box, shape: Shape) -> int:
    """How many of the lines that set the piece on the wall are seen."""
    edge = shown.y0 < shape.outline.y1 < shown.y1
    return int(edge) + int(shown.x0 < shape.outline.centre.x < shown.x1)


def _span_across(must: Box, shape: Shape, side: Side) -> _Span | None:
    """What is seen from left to right: both sides of the outline, or the centre line, if it can be."""
    outline = shape.outline
    centre = outline.centre.x
    wishes = ((outline.x0 - AIR_MM, outline.x1 + AIR_MM), (centre - AIR_MM, centre + AIR_MM))
    for wish in (*wishes, (must.x0, must.x1)):
        low, high = min(wish[0], must.x0), max(wish[1], must.x1)
        if high - low <= side.reach:
            middle, half = (low + high) / 2, max(side.room, high - low) / 2
            return middle - half, middle + half
    return None


def _span_down(must: Box, shape: Shape, side: Side) -> _Span | None:
    """What is seen from the lowest to the highest: the top edge at the top, if it can be."""
    top = max(shape.outline.y1 + AIR_MM, must.y1)
    if top - must.y0 <= min(side.reach, max(side.room, _NEAR_MM)):
        return top - max(side.room, top - must.y0), top
    if must.height <= side.reach:
        middle, half = must.centre.y, max(side.room, must.height) / 2
        return middle - half, middle + half
    return None


def _part_overlapping(tiles: Sequence[Tile], parts: _Parts) -> tuple[Tile, ...]:
    """The sheets so that none shows the holes of another, and each point is kept by one."""
    boxes, found = [Box.around(part) for part in parts], list(tiles)
    for one, other in combinations(range(len(found)), 2):
        if boxes[other].x0 - boxes[one].x1 >= _APART_MM:
            at = (boxes[one].x1 + boxes[other].x0) / 2
            found[one] = _end(found[one], x1=at)
            found[other] = _end(found[other], x0=at)
        else:
            at = (boxes[one].y0 + boxes[other].y1) / 2
            found[one] = _end(found[one], y0=at)
            found[other] = _end(found[other], y1=at)
    return tuple(found)


def _end(tile: Tile, **sides: float) -> Tile:
    """The sheet kept no farther than a line, and shown little farther."""
    keep, clip = tile.keep, tile.clip
    for side, at in sides.items():
        nearer, reach = (min, _APART_MM / 2) if side.endswith("1") else (max, -_APART_MM / 2)
        keep = keep._replace(**{side: nearer(getattr(keep, side), at)})
        clip = clip._replace(**{side: nearer(getattr(clip, side), at + reach)})
    return replace(tile, keep=keep, clip=clip)
