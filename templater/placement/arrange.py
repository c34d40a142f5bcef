"""Composes a group: where each of its pieces lies in the group's own bounding box."""

from __future__ import annotations

from collections.abc import Sequence
from typing import assert_never

from templater.geometry import Box, Point, Size
from templater.layout.model import Align, Arrangement, Group

_SHARE = {
    Align.BOTTOM: 0.0,
    Align.LEFT: 0.0,
    Align.CENTRE: 0.5,
    Align.TOP: 1.0,
    Align.RIGHT: 1.0,
}
"""Which share of the room left over lies below or left of a piece."""


def arrange_group(group: Group, sizes: Sequence[Size]) -> tuple[Box, ...]:
    """The box of each piece in the group's order; origin: the bounding box's bottom-left corner."""
    share = _SHARE[group.align]
    match group.arrange:
        case Arrangement.ROW:
            return _arrange_row(sizes, group.gap_mm, share)
        case Arrangement.COLUMN:
            return _arrange_column(sizes, group.gap_mm, share)
        case _:
            assert_never(group.arrange)


def _arrange_row(sizes: Sequence[Size], gap_mm: float, share: float) -> tuple[Box, ...]:
    """Pieces from left to right."""
    tallest = max(size.height for size in sizes)
    boxes, x = [], 0.0
    for size in sizes:
        boxes.append(Box.of(Point(x, (tallest - size.height) * share), size))
        x += size.width + gap_mm
    return tuple(boxes)


def _arrange_column(sizes: Sequence[Size], gap_mm: float, share: float) -> tuple[Box, ...]:
    """Pieces from the top down, stacked up from the last."""
    widest = max(size.width for size in sizes)
    boxes, y = [], 0.0
    for size in reversed(sizes):
        boxes.append(Box.of(Point((widest - size.width) * share, y), size))
        y += size.height + gap_mm
    return tuple(reversed(boxes))
