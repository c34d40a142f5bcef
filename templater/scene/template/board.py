"""Finds free room on a sheet for words and rulers, so that none covers a line or another.

The sheet is a grid of cells, one bit a cell, row after row in one whole number. All free places
for a block are found at once: where a run of free cells starts, shift and combine; so for the
rows. One column more than the sheet has stays taken, lest a run go on in the next row.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from enum import Flag, auto
from math import ceil, floor, inf
from typing import NamedTuple, TypeAlias

from templater.geometry import ORIGIN, Box, Point, Size

PITCH = 1.0
"""The side of a cell, mm."""

_BYTE = 8
"""A row takes whole bytes, so that it can be cut out of the number at no cost."""

_TINY = 1e-6
"""Part of a cell that is the computer's rounding."""


class Cover(Flag):
    """What stands on a cell.

    ``TAKEN``: words, holes, seams. ``SIDES`` and ``ENDS``: the outline's upright and level edges.
    ``LEVEL``: the datum or the level line. ``ACROSS`` and ``UPRIGHT``: the centre lines. ``STUD``:
    the lines of studs. ``PLUMB``: the ends of the upright centre line, by which it is plumbed.
    """

    TAKEN = auto()
    SIDES = auto()
    ENDS = auto()
    LEVEL = auto()
    ACROSS = auto()
    UPRIGHT = auto()
    STUD = auto()
    PLUMB = auto()


NOTHING = Cover(0)
CENTRES = Cover.ACROSS | Cover.UPRIGHT | Cover.STUD
LINES = CENTRES | Cover.LEVEL | Cover.PLUMB
EDGES = Cover.SIDES | Cover.ENDS
ALL = LINES | EDGES | Cover.TAKEN


class Part(NamedTuple):
    """A box, from the corner of the shape it belongs to, and what must not stand there."""

    box: Box
    clear_of: Cover


Shape: TypeAlias = tuple[Part, ...]
"""Parts of something to be placed; the first part is the box round all of them."""


def plain_shape(size: Size, crossing: Cover = NOTHING) -> Shape:
    """A box that may lie across lines of the kinds given."""
    return (Part(Box.of(ORIGIN, size), ALL & ~crossing),)


Memory: TypeAlias = dict[int, int]
"""The cells of a board, by the value of what stands on them."""


class Board:
    """What stands where on one sheet; ``area`` is all that the sheet shows."""

    def __init__(self, area: Box) -> None:
        self.area = area
        self._columns, self._rows = ceil(area.width / PITCH), ceil(area.height / PITCH)
        self._stride = _BYTE * (self._columns // _BYTE + 1)
        self._cells = {cover.value: 0 for cover in Cover}
        self._regions: dict[Box, int] = {}

    def remember(self) -> Memory:
        """What stands where by now, to be restored if what comes next finds no room."""
        return dict(self._cells)

    def restore(self, memory: Memory) -> None:
        """Forget everything that was marked since."""
        self._cells = dict(memory)

    def mark(self, box: Box, cover: Cover = Cover.TAKEN) -> None:
        """Note what stands on every cell that the box touches."""
        self._cells[cover.value] |= self._touched(box)

    def is_clear(self, box: Box, of: Cover = ALL) -> bool:
        """Whether the box lies on the sheet and nothing of these kinds stands in it."""
        return self.area.holds(box, _TINY) and not self._touched(box) & self._standing(of)

    @property
    def size(self) -> float:
        """How much paper all cells cover, mm²."""
        return self._columns * self._rows * PITCH * PITCH

    def has_any(self, covers: Cover) -> bool:
        """Whether something of these kinds stands anywhere."""
        return self._standing(covers) != 0

    def has_room(self, shape: Shape, regions: Iterable[Box]) -> bool:
        """Whether a shape finds a free place in one of the regions."""
        return self._free(shape, regions) != 0

    def take(self, shape: Shape, regions: Iterable[Box], near: Point) -> Box | None:
        """Take the free place for a shape, in one of the regions, whose middle is nearest a point.

        None if there is none. The regions must not touch where a shape is to lie in one of them.
        """
        size = shape[0].box.size
        wanted = near.moved(-size.width / 2, -size.height / 2)
        corner = self._nearest(self._free(shape, regions), wanted)
        if corner is None:
            return None
        box = Box.of(corner, size)
        self.mark(box.grown(-_TINY))
        return box

    def _standing(self, covers: Cover) -> int:
        """All cells on which something of these kinds stands."""
        wanted, standing = covers.value, 0
        for value, cells in self._cells.items():
            if value & wanted:
                standing |= cells
        return standing

    def _free(self, shape: Shape, regions: Iterable[Box]) -> int:
        """The cells in which the shape's corner may lie."""
        corners, region = -1, 0
        for box in regions:
            region |= self._within(box)
        for part in shape:
            left, bottom = floor(part.box.x0 / PITCH + _TINY), floor(part.box.y0 / PITCH + _TINY)
            wide = ceil(part.box.x1 / PITCH - _TINY) - left
            high = ceil(part.box.y1 / PITCH - _TINY) - bottom
            free = region & ~self._standing(part.clear_of)
            free = _run_starts(_run_starts(free, wide, 1), high, self._stride)
            corners &= free >> (bottom * self._stride + left)
        return corners

    def _nearest(self, corners: int, wanted: Point) -> Point | None:
        """The corner nearest a point; rows nearest the point are looked at first."""
        column = round((wanted.x - self.area.x0) / PITCH)
        row = round((wanted.y - self.area.y0) / PITCH)
        best, least = None, inf
        wide = self._stride // _BYTE
        octets = corners.to_bytes(self._rows * wide, "little")
        for index in _outward(self._rows_with(corners), row):
            away = abs(index - row)
            if away * away >= least:
                break
            bits = int.from_bytes(octets[index * wide : (index + 1) * wide], "little")
            for candidate in _beside(bits, max(column, 0)):
                distance = away * away + (candidate - column) ** 2
                if distance < least:
                    best, least = (candidate, index), distance
        if best is None:
            return None
        return Point(self.area.x0 + best[0] * PITCH, self.area.y0 + best[1] * PITCH)

    def _rows_with(self, corners: int) -> range:
        """The rows from the first to the last in which a bit is set."""
        if not corners:
            return range(0)
        lowest = (corners & -corners).bit_length() - 1
        return range(lowest // self._stride, (corners.bit_length() - 1) // self._stride + 1)

    def _touched(self, box: Box) -> int:
        """The cells that a box touches."""
        return self._rectangle(
            floor((box.x0 - self.area.x0) / PITCH),
            floor((box.y0 - self.area.y0) / PITCH),
            ceil((box.x1 - self.area.x0) / PITCH),
            ceil((box.y1 - self.area.y0) / PITCH),
        )

    def _within(self, box: Box) -> int:
        """The cells that lie wholly in a box and on the sheet; the same few boxes are asked for."""
        cells = self._regions.get(box)
        if cells is None:
            shown = box.common(self.area)
            cells = self._regions[box] = self._rectangle(
                ceil((shown.x0 - self.area.x0) / PITCH - _TINY),
                ceil((shown.y0 - self.area.y0) / PITCH - _TINY),
                floor((shown.x1 - self.area.x0) / PITCH + _TINY),
                floor((shown.y1 - self.area.y0) / PITCH + _TINY),
            )
        return cells

    def _rectangle(self, left: int, bottom: int, right: int, top: int) -> int:
        """The cells from left to right and bottom to top, half open, as far as there are any."""
        left, right = max(left, 0), min(right, self._columns)
        bottom, top = max(bottom, 0), min(top, self._rows)
        if right <= left or top <= bottom:
            return 0
        row = ((1 << (right - left)) - 1) << left
        return _repeat(row, top - bottom, self._stride) << (bottom * self._stride)


def _repeat(row: int, count: int, stride: int) -> int:
    """A row of bits so many times, each a stride from the one before."""
    cells, done = row, 1
    while done < count:
        step = min(done, count - done)
        cells |= cells << (step * stride)
        done += step
    return cells


def _run_starts(free: int, length: int, stride: int) -> int:
    """The bits at which a run of so many set bits starts, each a stride from the one before."""
    done = 1
    while done < length and free:
        step = min(done, length - done)
        free &= free >> (step * stride)
        done += step
    return free


def _outward(rows: range, middle: int) -> Iterator[int]:
    """The rows in the order of their distance from a middle one."""
    if not rows:
        return
    above = min(max(middle, rows.start), rows.stop - 1)
    below = above - 1
    while above < rows.stop or below >= rows.start:
        if below < rows.start or (above < rows.stop and above - middle <= middle - below):
            yield above
            above += 1
        else:
            yield below
            below -= 1


def _beside(bits: int, column: int) -> Iterator[int]:
    """The nearest set bit on each side of a column."""
    left = bits & ((1 << (column + 1)) - 1)
    if left:
        yield left.bit_length() - 1
    right = bits >> column
    if right:
        yield column + (right & -right).bit_length() - 1
