"""Finds pieces that hang over one another, over something in the way or behind furniture."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import islice

from templater.errors import Fault
from templater.geometry import Box
from templater.layout.model import Layout
from templater.lengths import Unit
from templater.mounting.amounts import SLACK_MM, format_at_least
from templater.placement.blocks import Block
from templater.placement.things import box_of
from templater.quoting import quote

MAX_OVERLAPS = 500
"""Overlaps named in one go: a thousand pieces heaped on one spot would make half a million."""


def find_collisions(layout: Layout, blocks: Sequence[Block]) -> Iterator[Fault]:
    """Every overlap of two pieces, and every block over an opening, a fixture or behind furniture."""
    owners = {name: block for block in blocks for name in block.boxes}
    for block in blocks:
        yield from _find_hidden(block, layout)
        yield from _find_covered(block, layout)
    names = [piece.name for piece in layout.pieces if piece.name in owners]
    boxes = {name: owners[name].boxes[name] for name in names}
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
    wide, high = (format_at_least(side, units) for side in boxes[first].overlap(boxes[second]))
    block = owners[second]
    if block is owners[first]:  # two members of one group
        mend = _mend_covering(f"piece {quote(second)}", [boxes[second]], boxes[first], units)
    else:
        mend = _mend_covering(str(block), list(block.boxes.values()), boxes[first], units)
    return Fault(
        f"piece {quote(second)} hangs over {quote(first)} by {wide} across and {high} up",
        mend,
        block.position.at,
    )


def _find_hidden(block: Block, layout: Layout) -> Iterator[Fault]:
    """The furniture behind which a block hangs, each told once."""
    for item in layout.furniture:
        box = box_of(item)
        if _meet(block, box) and not _is_told(block, item.name):
            depths = (box.y1 - each.y0 for each in block.boxes.values() if _share_area(each, box))
            amount = format_at_least(max(depths), layout.units)
            yield Fault(
                f"{block} hangs behind {quote(item.name)}, {amount} below its top",
                f"raise it by at least {amount}, or move it to one side",
                block.position.at,
            )


def _find_covered(block: Block, layout: Layout) -> Iterator[Fault]:
    """The openings and fixtures over which a block hangs, each told once."""
    for thing in (*layout.openings, *layout.fixtures):
        if _meet(block, thing.box) and not _is_told(block, thing.name):
            overlaps = [
                each.overlap(thing.box) for each in block.boxes.values() if _share_area(each, thing.box)
            ]
            wide = format_at_least(max(overlap.width for overlap in overlaps), layout.units)
            high = format_at_least(max(overlap.height for overlap in overlaps), layout.units)
            yield Fault(
                f"{block} hangs over {quote(thing.name)} by {wide} across and {high} up",
                _mend_covering("it", list(block.boxes.values()), thing.box, layout.units),
                block.position.at,
            )


def _mend_covering(name: str, boxes: Sequence[Box], thing: Box, units: Unit) -> str:
    """The shortest ways, across and up, to move boxes as one so that none is over a thing."""
    beside = [box for box in boxes if box.overlap(thing).height > SLACK_MM]
    in_line = [box for box in boxes if box.overlap(thing).width > SLACK_MM]
    across = (
        (max(box.x1 for box in beside) - thing.x0, "left"),
        (thing.x1 - min(box.x0 for box in beside), "right"),
    )
    up = (
        (thing.y1 - min(box.y0 for box in in_line), "up"),
        (max(box.y1 for box in in_line) - thing.y0, "down"),
    )
    acts = [f"{way} by at least {format_at_least(by, units)}" for by, way in (min(across), min(up))]
    return f"move {name} {acts[0]}, or {acts[1]}"


def _meet(block: Block, box: Box) -> bool:
    """Whether any piece of a block shares an area with a box."""
    return block.box.meets(box) and any(_share_area(each, box) for each in block.boxes.values())


def _share_area(a: Box, b: Box) -> bool:
    """Whether two boxes do more than touch."""
    return min(a.overlap(b)) > SLACK_MM


def _is_told(block: Block, name: str) -> bool:
    """Whether a block hangs between a thing and another: if it meets it, it does not fit there."""
    return block.position.between is not None and name in block.position.between
