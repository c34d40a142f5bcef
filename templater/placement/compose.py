"""Composes all groups of a layout, the innermost first: a group in a group counts as one member."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from templater.geometry import Box, Point, Size
from templater.layout.model import Arrangement, Group, Layout
from templater.placement.arrange import arrange_group, find_gap

_CLUSTER_SHARE = 2 / 3
"""How wide a cluster without a target is beside the furniture below; common practice, no source."""


@dataclass(frozen=True, slots=True)
class Composition:
    """A group's insides; origin: the bottom-left corner of the box of all that belongs to it.

    ``boxes`` are those of its members by name, and of the ledge on which they stand, if any;
    ``hole`` is the room left in a row or column for the thing that it hangs around; ``ends`` is
    the space left free at both ends of a length over which members are spread.
    """

    group: Group
    boxes: Mapping[str, Box]
    gap_mm: float
    hole: Box | None
    ends: Size

    @property
    def size(self) -> Size:
        """The size of the box of all that belongs to the group."""
        return Box.around(self.boxes.values()).size


def compose_groups(layout: Layout, things: Mapping[str, Box]) -> dict[str, Composition]:
    """Every group by its name, an inner one before the group that it is part of.

    Left out are groups that leave something open, and those of which such a group is part.
    ``things``: what the layout's positions may name.
    """
    sizes = {piece.name: piece.size for piece in layout.pieces}
    compositions: dict[str, Composition] = {}
    for group in sort_innermost_first(layout):
        if group.open_choice is None and all(name in sizes for name in group.members):
            settled = _settle_target(group, sizes, things)
            composition = _compose(settled, sizes, things)
            compositions[group.name] = composition
            sizes[group.name] = composition.size
    return compositions


def sort_innermost_first(layout: Layout) -> list[Group]:
    """All groups, every one before the group that it is part of."""
    by_name = {group.name: group for group in layout.groups}
    inner = {name for group in layout.groups for name in group.members}
    outermost_first = [group for group in layout.groups if group.name not in inner]
    for group in outermost_first:  # grows on the way: what is found is looked into in turn
        outermost_first.extend(by_name[name] for name in group.members if name in by_name)
    return outermost_first[::-1]


def hangs_around(group: Group) -> bool:
    """Whether the group leaves room for a thing among its members."""
    return (
        group.position is not None
        and group.position.around is not None
        and group.arrange in (Arrangement.ROW, Arrangement.COLUMN)
        and len(group.members) > 1
    )


def _settle_target(group: Group, sizes: Mapping[str, Size], things: Mapping[str, Box]) -> Group:
    """A cluster above furniture that asks for no size of its own: two thirds of it wide."""
    above = group.position and group.position.above
    if group.arrange is not Arrangement.CLUSTER or group.target or not above:
        return group
    gap = group.gap_mm
    width = things[above].width * _CLUSTER_SHARE
    members = (sizes[name] for name in group.members)
    area = sum((size.width + gap) * (size.height + gap) for size in members)
    return replace(group, target=Size(width, area / (width + gap) - gap))


def _compose(group: Group, sizes: Mapping[str, Size], things: Mapping[str, Box]) -> Composition:
    """One group whose members' sizes are known."""
    names = list(group.members)
    extents = [sizes[name] for name in names]
    middle = len(names) // 2
    around = group.position.around if group.position and hangs_around(group) else None
    if around is not None:
        extents.insert(middle, things[around].size)
    gap = find_gap(group, extents)
    boxes = list(arrange_group(group, extents))
    hole = None if around is None else boxes.pop(middle)
    named = dict(zip(names, boxes, strict=True))
    if group.ledge is not None:
        named[group.ledge.piece] = _put_ledge(sizes[group.ledge.piece], Box.around(boxes))
    left, bottom = Box.around(named.values()).corner
    return Composition(
        group=group,
        boxes={name: box.moved(-left, -bottom) for name, box in named.items()},
        gap_mm=gap,
        hole=None if hole is None else hole.moved(-left, -bottom),
        ends=_find_ends(group, gap),
    )


def _put_ledge(size: Size, row: Box) -> Box:
    """A ledge under a row of pieces that stand on it."""
    return Box.of(Point(row.centre.x - size.width / 2, row.y0 - size.height), size)


def _find_ends(group: Group, gap_mm: float) -> Size:
    """The space that spreading leaves free at both ends, across and up."""
    if group.spread_mm is None:
        return Size(0.0, 0.0)
    return Size(0.0, gap_mm) if group.arrange is Arrangement.COLUMN else Size(gap_mm, 0.0)
