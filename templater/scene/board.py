"""Finds free room on a drawing for words and blocks, so that none covers a line or another.

The drawing is a grid of cells, a row of them one whole number, a bit a cell; a block fits where
all the bits it would cover are clear. All free places for one block are found at once by
shifting and combining rows, so that the work grows with the rows, not with what stands on them.
"""

from __future__ import annotations

from collections.abc import Iterable
from math import ceil, floor
from typing import NamedTuple

from templater.geometry import Box, Point, Size

PITCH = 2.0
"""The side of a cell, mm."""


class _Window(NamedTuple):
    """Rows and columns of the grid, half open."""

    column: int
    row: int
    columns: int
    rows: int


class Board:
    """Which cells of an area are taken, and which hold a line that may be interrupted if it must.

    ``interruptions`` are the boxes that had to be placed across such lines.
    """

    def __init__(self, area: Box) -> None:
        self._area = area
        self._columns = ceil(area.width / PITCH)
        self._rows = [0] * ceil(area.height / PITCH)
        self._lines = [0] * ceil(area.height / PITCH)
        self.interruptions: list[Box] = []

    def block(self, box: Box) -> None:
        """Take every cell that the box touches."""
        self._mark(self._rows, box)

    def avoid(self, box: Box) -> None:
        """Keep the box free as long as there is room elsewhere."""
        self._mark(self._lines, box)

    def has_room(self, box: Box) -> bool:
        """Whether nothing but lines that may be interrupted stands in the box."""
        probe = [0] * len(self._rows)
        self._mark(probe, box)
        return not any(wanted & taken for wanted, taken in zip(probe, self._rows, strict=True))

    def take_across(self, box: Box) -> None:
        """Take the box, interrupting the lines that cross it."""
        self.block(box)
        self.interruptions.append(box)

    def take(
        self, size: Size, regions: Iterable[Box], near: Point, *, interrupt: bool = False
    ) -> Box | None:
        """Take the free place of that size whose middle is nearest a point; None if there is none.

        The regions are tried in turn; the first that has room is used. With ``interrupt`` the
        place may lie across lines that are only to be avoided.
        """
        for region in regions:
            corner = self._find(size, region, near, interrupt=interrupt)
            if corner is not None:
                box = Box.of(corner, size)
                if interrupt:
                    self.take_across(box)
                else:
                    self.block(box)
                return box
        return None

    def _mark(self, rows: list[int], box: Box) -> None:
        """Set the bit of every cell that the box touches."""
        first = max(0, floor((box.x0 - self._area.x0) / PITCH))
        last = min(self._columns, ceil((box.x1 - self._area.x0) / PITCH))
        if last <= first:
            return
        bits = ((1 << (last - first)) - 1) << first
        bottom = max(0, floor((box.y0 - self._area.y0) / PITCH))
        top = min(len(rows), ceil((box.y1 - self._area.y0) / PITCH))
        for row in range(bottom, top):
            rows[row] |= bits

    def _find(self, size: Size, region: Box, near: Point, *, interrupt: bool) -> Point | None:
        window = self._window(region)
        wide, high = ceil(size.width / PITCH), ceil(size.height / PITCH)
        if window.columns < wide or window.rows < high:
            return None
        free = _free(self._taken(window, interrupt=interrupt), window.columns, wide, high)
        column = round((near.x - size.width / 2 - self._area.x0) / PITCH) - window.column
        row = round((near.y - size.height / 2 - self._area.y0) / PITCH) - window.row
        best = _nearest(free, column, row)
        if best is None:
            return None
        return Point(
            self._area.x0 + (window.column + best[0]) * PITCH,
            self._area.y0 + (window.row + best[1]) * PITCH,
        )

    def _taken(self, window: _Window, *, interrupt: bool) -> list[int]:
        """The rows of a window, their first column at bit 0."""
        rows = slice(window.row, window.row + window.rows)
        if interrupt:
            return [row >> window.column for row in self._rows[rows]]
        return [
            (row | line) >> window.column
            for row, line in zip(self._rows[rows], self._lines[rows], strict=True)
        ]

    def _window(self, region: Box) -> _Window:
        """The cells that lie wholly in a region."""
        first = max(0, ceil((region.x0 - self._area.x0) / PITCH - 1e-9))
        last = min(self._columns, floor((region.x1 - self._area.x0) / PITCH + 1e-9))
        bottom = max(0, ceil((region.y0 - self._area.y0) / PITCH - 1e-9))
        top = min(len(self._rows), floor((region.y1 - self._area.y0) / PITCH + 1e-9))
        return _Window(first, bottom, last - first, top - bottom)


def _free(taken: list[int], columns: int, wide: int, high: int) -> list[int]:
    """For each row, a bit for each column where a block of so many cells may have its corner."""
    mask = (1 << columns) - 1
    joined = 1
    while joined < high:
        step = min(joined, high - joined)
        taken = [low | up for low, up in zip(taken, taken[step:], strict=False)]
        joined += step
    return [_runs(~row & mask, wide) for row in taken]


def _runs(free: int, wide: int) -> int:
    """The bits at which a run of so many set bits starts."""
    length = 1
    while length < wide and free:
        step = min(length, wide - length)
        free &= free >> step
        length += step
    return free


def _nearest(free: list[int], column: int, row: int) -> tuple[int, int] | None:
    """The set bit nearest a column and row, as (column, row)."""
    best: tuple[int, int] | None = None
    least = float("inf")
    for index, bits in enumerate(free):
        away = (index - row) ** 2
        if not bits or away >= least:
            continue
        for candidate in _beside(bits, max(column, 0)):
            distance = away + (candidate - column) ** 2
            if distance < least:
                best, least = (candidate, index), distance
    return best


def _beside(bits: int, column: int) -> Iterable[int]:
    """The nearest set bit on each side of a column."""
    left = bits & ((1 << (column + 1)) - 1)
    if left:
        yield left.bit_length() - 1
    right = bits >> column
    if right:
        yield column + (right & -right).bit_length() - 1
