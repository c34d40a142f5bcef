"""Where on a sheet something may stand, and what it may lie across, the best way first."""

from __future__ import annotations

from collections.abc import Iterable
from enum import Enum
from typing import NamedTuple

from templater.geometry import Box, Point
from templater.scene.template.board import ALL, EDGES, LINES, NOTHING, Board, Cover, Shape


class Where(Enum):
    """Which part of a sheet: what the scissors leave, the rest, or all of it."""

    INSIDE = "inside the outline"
    OUTSIDE = "outside the outline"
    ANYWHERE = "anywhere"


class Regions(NamedTuple):
    """A sheet's parts that words may stand on."""

    inside: Box
    strips: tuple[Box, ...]
    keep: Box

    @classmethod
    def of(cls, keep: Box, outline: Box) -> Regions:
        """Inside the outline, and on its four sides, as far as a sheet is seen when all are taped."""
        strips = (
            keep._replace(x1=min(keep.x1, outline.x0 - 1)),
            keep._replace(x0=max(keep.x0, outline.x1 + 1)),
            keep._replace(y1=min(keep.y1, outline.y0 - 1)),
            keep._replace(y0=max(keep.y0, outline.y1 + 1)),
        )
        wide = (strip for strip in strips if strip.width > 0 and strip.height > 0)
        return cls(keep.common(outline.grown(-1.0)), tuple(wide), keep)

    def choose(self, where: Where) -> tuple[Box, ...]:
        """The boxes of a part."""
        if where is Where.ANYWHERE:
            return (self.keep,)
        return (self.inside,) if where is Where.INSIDE else self.strips


class Way(NamedTuple):
    """One way to place something: its shape, where, and which lines it interrupts."""

    shape: Shape
    where: Where = Where.INSIDE
    interrupts: Cover = NOTHING


class Found(NamedTuple):
    """Where something was placed, and in which way."""

    box: Box
    way: Way


def find_room(ways: Iterable[Way], board: Board, regions: Regions, near: Point) -> Found | None:
    """Take the place nearest a point in the first way that has any.

    Where there are no lines to lie across, ways that may do so inside the outline are no others than
    those that may not, which come before them in every list.
    """
    has_lines = board.has_any(LINES | EDGES)
    for way in ways:
        boxes = regions.choose(way.where)
        if not has_lines and way.shape[0].clear_of != ALL and boxes == (regions.inside,):
            continue
        box = board.take(way.shape, boxes, near)
        if box is not None:
            return Found(box, way)
    return None
