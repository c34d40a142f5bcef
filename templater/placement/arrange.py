"""Composes a group: where each of its members lies in the group's own bounding box."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate
from typing import TypeVar, assert_never

from templater.geometry import Box, Point, Size
from templater.layout.model import Align, Arrangement, Cells, Group
from templater.placement.stairs import arrange_along_stairs

_Value = TypeVar("_Value")

_SHARE = {
    Align.BOTTOM: 0.0,
    Align.LEFT: 0.0,
    Align.CENTRE: 0.5,
    Align.TOP: 1.0,
    Align.RIGHT: 1.0,
}
"""Which share of the room left over lies below or left of a member."""


def arrange_group(group: Group, sizes: Sequence[Size]) -> tuple[Box, ...]:
    """The box of each member in the group's order; origin: the bounding box's bottom-left corner."""
    return _at_origin(_arrange(group, sizes, find_gap(group, sizes)))


def find_gap(group: Group, sizes: Sequence[Size]) -> float:
    """The gap between members, mm; where they are spread over a length, what that leaves them.

    Even spacing: gap = (length - sum of the members) / (their number + 1), the usual gallery rule.
    Never less than nothing.
    """
    if group.spread_mm is None:
        return group.gap_mm
    return max(0.0, (group.spread_mm - add_lengths(group, sizes)) / (len(sizes) + 1))


def add_lengths(group: Group, sizes: Sequence[Size]) -> float:
    """How long a group's members are in all, in the direction in which it runs, mm."""
    if group.arrange is Arrangement.COLUMN:
        return sum(size.height for size in sizes)
    return sum(size.width for size in sizes)


def _at_origin(boxes: Sequence[Box]) -> tuple[Box, ...]:
    """The boxes moved as one so that their bounding box starts at the origin."""
    left, bottom = Box.around(boxes).corner
    return tuple(box.moved(-left, -bottom) for box in boxes)


def _arrange(group: Group, sizes: Sequence[Size], gap_mm: float) -> Sequence[Box]:
    """The boxes of the members, from any origin."""
    match group.arrange:
        case Arrangement.ROW | Arrangement.LEDGE:
            on_ledge = group.arrange is Arrangement.LEDGE
            return _arrange_row(sizes, gap_mm, _SHARE[Align.BOTTOM if on_ledge else group.align])
        case Arrangement.COLUMN:
            return _arrange_column(sizes, gap_mm, _SHARE[group.align])
        case Arrangement.GRID:
            return _arrange_grid(sizes, gap_mm, group.columns or len(sizes), group.cells)
        case Arrangement.CLUSTER:
            from templater.placement.cluster import arrange_cluster

            return arrange_cluster(sizes, gap_mm, group.target)
        case Arrangement.STAIR:
            return arrange_along_stairs(sizes, gap_mm, _given(group.stair, "stair"))
        case Arrangement.PLACED:
            corners = _given(group.corners, "corners")
            return [Box.of(corner, size) for corner, size in zip(corners, sizes, strict=True)]
        case _:
            assert_never(group.arrange)


def _given(value: _Value | None, name: str) -> _Value:
    """What the layout's reader demands of a group that is composed so."""
    if value is None:
        raise ValueError(f"this arrangement needs {name!r}")
    return value


def _arrange_row(sizes: Sequence[Size], gap_mm: float, share: float) -> tuple[Box, ...]:
    """Members from left to right."""
    tallest = max(size.height for size in sizes)
    starts = _find_starts([size.width for size in sizes], gap_mm)
    return tuple(
        Box.of(Point(x, (tallest - size.height) * share), size)
        for x, size in zip(starts, sizes, strict=True)
    )


def _arrange_column(sizes: Sequence[Size], gap_mm: float, share: float) -> tuple[Box, ...]:
    """Members from the top down, stacked up from the last."""
    widest = max(size.width for size in sizes)
    starts = _find_starts([size.height for size in reversed(sizes)], gap_mm)
    return tuple(
        Box.of(Point((widest - size.width) * share, y), size)
        for y, size in zip(reversed(starts), sizes, strict=True)
    )


def _arrange_grid(sizes: Sequence[Size], gap_mm: float, columns: int, cells: Cells) -> tuple[Box, ...]:
    """Members in reading order, each in the middle of its cell; a short last row starts at the left."""
    rows = [sizes[start : start + columns] for start in range(0, len(sizes), columns)]
    widths = [max(size.width for size in sizes[column::columns]) for column in range(len(rows[0]))]
    heights = [max(size.height for size in row) for row in rows]
    if cells is Cells.EQUAL:
        widths, heights = [max(widths)] * len(widths), [max(heights)] * len(heights)
    lefts = _find_starts(widths, gap_mm)
    tops = _find_starts(heights, gap_mm)
    boxes = []
    for number, size in enumerate(sizes):
        row, column = divmod(number, columns)
        x = lefts[column] + (widths[column] - size.width) / 2
        y = -tops[row] - (heights[row] + size.height) / 2
        boxes.append(Box.of(Point(x, y), size))
    return tuple(boxes)


def _find_starts(lengths: Sequence[float], gap_mm: float) -> list[float]:
    """Where each of some lengths starts when they follow one another with a gap between them."""
    return list(accumulate((length + gap_mm for length in lengths[:-1]), initial=0.0))
