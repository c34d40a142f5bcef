"""Finds pieces that hang over one another or behind furniture."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import islice

from templater.errors import Fault
from templater.geometry import Box
from templater.layout.model import Layout
from templater.lengths import Unit
from templater.mounting.amounts import SLACK_MM, format_at_least
from templater.placement.blocks import Block
from templater.placement.bounds import box_of
from templater.quoting import quote

MAX_OVERLAPS = 500
"""Overlaps named in one go: a thousand pieces heaped on one spot would make half a million."""


def find_collisions(layout: Layout, blocks: Sequence[Block]) -> Iterator[Fault]:
    """Every overlap of two pieces, and every block that hangs behind furniture."""
    owners = {name: block for block in blocks for name in block.boxes}
    boxes = {piece.name: owners[piece.name].boxes[piece.name] for piece in layout.pieces}
    furniture = {item.name: box_of(item) for item in layout.furniture}
    yield from _find_hidden(blocks, boxes, furniture, layout.units)
    names = list(boxes)
    found = list(islice(overlapping_pairs(list(boxes.values())), MAX_OVERLAPS + 1))
    for first, second in sorted(found[:MAX_OVERLAPS]):
        yield _overlap(names[first], names[second], boxes, owners, layout.units)
    if len(found) > MAX_OVERLAPS:
        yield Fault(
            f"more than {MAX_OVERLAPS} pairs of pieces hang over one another; not all are named",
            "give each piece its own 'place', or put pieces in a group, then check again",
            layout.wall.at,
        )


def overlapping_pairs(boxes: Sequence[Box]) -> Iterator[tuple[int, int]]:
    """The indices of boxes that share an area, the lower first, by a sweep along one axis.

    Boxes that touch do not count.
    """
    if _crowding([(box.x0, box.x1) for box in boxes]) > _crowding([(box.y0, box.y1) for box in boxes]):
        boxes = [Box(y0, x0, y1, x1) for x0, y0, x1, y1 in boxes]
    reached: list[int] = []
    for index in sorted(range(len(boxes)), key=lambda each: boxes[each].x0):
        box = boxes[index]
        reached = [other for other in reached if boxes[other].x1 - box.x0 > SLACK_MM]
        for other in reached:
            if box.overlap(boxes[other]).height > SLACK_MM:
                yield min(index, other), max(index, other)
        reached.append(index)


def _crowding(spans: Sequence[tuple[float, float]]) -> float:
    """How many spans lie over one point of their axis, on average."""
    if not spans:
        return 0.0
    whole = max(end for _, end in spans) - min(start for start, _ in spans)
    return sum(end - start for start, end in spans) / whole


def _overlap(
    first: str, second: str, boxes: Mapping[str, Box], owners: Mapping[str, Block], units: Unit
) -> Fault:
    """Two pieces that hang over one another; told at the place of the later one."""
    a, b = boxes[first], boxes[second]
    wide, high = (format_at_least(side, units) for side in a.overlap(b))
    across = format_at_least(min(a.x1 - b.x0, b.x1 - a.x0), units)
    up = format_at_least(min(a.y1 - b.y0, b.y1 - a.y0), units)
    return Fault(
        f"piece {quote(second)} hangs over {quote(first)} by {wide} across and {high} up",
        f"move one of them left or right by at least {across}, or up or down by at least {up}",
        owners[second].position.at,
    )


def _find_hidden(
    blocks: Sequence[Block], boxes: Mapping[str, Box], furniture: Mapping[str, Box], units: Unit
) -> Iterator[Fault]:
    """Blocks that hang behind furniture, each told once for each piece of furniture."""
    for block in blocks:
        for name, box in furniture.items():
            if not block.box.meets(box):
                continue
            depths = [
                box.y1 - boxes[piece].y0
                for piece in block.boxes
                if min(boxes[piece].overlap(box)) > SLACK_MM
            ]
            if depths:
                amount = format_at_least(max(depths), units)
                yield Fault(
                    f"{block} hangs behind {quote(name)}, {amount} below its top",
                    f"raise it by at least {amount}, or move it to one side",
                    block.position.at,
                )
