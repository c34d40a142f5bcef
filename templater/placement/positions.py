"""Turns what a position asks for into a place on the wall for something of a known size."""

from __future__ import annotations

from collections.abc import Mapping

from templater.geometry import Box, Point, Size
from templater.layout.model import Arrangement, Layout, LeftRight, Position
from templater.placement.compose import Composition
from templater.placement.stairs import find_nosing_height
from templater.placement.things import find_room

_NO_ENDS = Size(0.0, 0.0)


def find_corner(
    size: Size, position: Position, layout: Layout, things: Mapping[str, Box], ends: Size = _NO_ENDS
) -> Point:
    """The bottom-left corner, on the wall, of something of a size that is asked to a position.

    ``things`` are what positions may name; ``ends`` is free space on each side, across and up, that
    belongs to what is placed: an edge asked for is then the edge of that space.
    """
    x = _find_left(size.width, position, layout, things, ends.width)
    return Point(x, _find_bottom(size.height, position, layout, things, ends.height))


def find_group_corner(
    composed: Composition, position: Position, layout: Layout, things: Mapping[str, Box]
) -> Point:
    """The bottom-left corner, on the wall, of a group's box; its arrangement may have a say in it."""
    group = composed.group
    corner = find_corner(composed.size, position, layout, things, composed.ends)
    if group.stair is not None:
        first = composed.boxes[group.members[0]].centre
        nosing = find_nosing_height(group.stair, corner.x + first.x)
        return Point(corner.x, nosing + _find_eye_line(position, layout) - first.y)
    if group.ledge is not None:
        return Point(corner.x, group.ledge.height_mm - composed.boxes[group.ledge.piece].y1)
    if composed.hole is not None and position.around is not None:
        return _put_around(things[position.around], composed, composed.hole, position, corner)
    return corner


def _put_around(
    thing: Box, composed: Composition, hole: Box, position: Position, corner: Point
) -> Point:
    """The corner of a row or column whose hole lies on a thing.

    Across its direction it is centred on the thing, unless the position asks for something there.
    """
    size = composed.size
    if composed.group.arrange is Arrangement.ROW:
        y = corner.y if _asks_up(position) else thing.centre.y - size.height / 2
        return Point(thing.x0 - hole.x0, y)
    x = corner.x if _asks_across(position) else thing.centre.x - size.width / 2
    return Point(x, thing.y0 - hole.y0)


def _asks_across(position: Position) -> bool:
    """Whether left and right are settled by the position's own keys."""
    asked = (position.left_mm, position.centre_mm, position.right_mm, position.above)
    return any(value is not None for value in asked)


def _asks_up(position: Position) -> bool:
    """Whether up and down are settled by the position's own keys."""
    asked = (position.eye_line_mm, position.bottom_mm, position.top_mm, position.above)
    return any(value is not None for value in asked)


def _find_left(
    width: float, position: Position, layout: Layout, things: Mapping[str, Box], end: float
) -> float:
    """Its left edge, from the wall's left end."""
    if position.left_mm is not None:
        return position.left_mm + end
    if position.right_mm is not None:
        return layout.wall.size.width - position.right_mm - end - width
    if position.beside is not None:
        thing = things[position.beside]
        if position.side is LeftRight.LEFT:
            return thing.x0 - position.clearance_mm - width
        return thing.x1 + position.clearance_mm
    return _find_middle(position, layout, things) - width / 2


def _find_middle(position: Position, layout: Layout, things: Mapping[str, Box]) -> float:
    """The middle of what is centred across, from the wall's left end."""
    if position.centre_mm is not None:
        return position.centre_mm
    if position.between is not None:
        room = find_room(position.between, things)
        return (room.left_mm + room.right_mm) / 2
    if position.above is not None:
        return things[position.above].centre.x
    return layout.wall.size.width / 2


def _find_bottom(
    height: float, position: Position, layout: Layout, things: Mapping[str, Box], end: float
) -> float:
    """Its bottom edge, from the floor."""
    if position.above is not None:
        return things[position.above].y1 + position.clearance_mm
    if position.bottom_mm is not None:
        return position.bottom_mm + end
    if position.top_mm is not None:
        return position.top_mm - end - height
    return _find_eye_line(position, layout) - height / 2


def _find_eye_line(position: Position, layout: Layout) -> float:
    """The height of the centre above the floor, or above the nosings of stairs."""
    return layout.eye_line_mm if position.eye_line_mm is None else position.eye_line_mm
