"""What a position may name on a wall: furniture, openings, fixtures and the wall's two ends."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from templater.geometry import Box
from templater.layout.model import Furniture, Layout

LEFT_END = "left end"
RIGHT_END = "right end"


@dataclass(frozen=True, slots=True)
class Room:
    """The stretch of wall between the facing edges of two things, from the wall's left end, mm."""

    left: str
    right: str
    left_mm: float
    right_mm: float

    @property
    def width(self) -> float:
        """How wide it is; negative where the two things overlap, mm."""
        return self.right_mm - self.left_mm


def box_of(item: Furniture) -> Box:
    """What a piece of furniture hides of the wall."""
    return Box(item.left_mm, 0.0, item.left_mm + item.size.width, item.size.height)


def find_things(layout: Layout) -> dict[str, Box]:
    """The box of everything that a position may name; the wall's ends have no width."""
    width, height = layout.wall.size
    ends = {LEFT_END: Box(0.0, 0.0, 0.0, height), RIGHT_END: Box(width, 0.0, width, height)}
    standing = {item.name: box_of(item) for item in layout.furniture}
    in_the_way = {thing.name: thing.box for thing in (*layout.openings, *layout.fixtures)}
    return {**ends, **standing, **in_the_way}


def find_room(names: tuple[str, str], things: Mapping[str, Box]) -> Room:
    """The room between two things, in whichever order they are named."""
    left, right = sorted(names, key=lambda name: things[name].centre.x)
    return Room(left, right, things[left].x1, things[right].x0)
