"""Finds what reaches past the wall's ends, into its ceiling or below its floor."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from templater.errors import Fault, Place
from templater.geometry import Box
from templater.layout.model import Arrangement, Layout
from templater.mounting.amounts import SLACK_MM, format_at_least
from templater.placement.blocks import Block
from templater.placement.ceiling import find_headroom
from templater.placement.things import box_of
from templater.quoting import quote


def find_out_of_bounds(layout: Layout, blocks: Iterable[Block]) -> Iterator[Fault]:
    """Everything in the layout that is not on the wall."""
    for item in layout.furniture:
        yield from _Extent(f"furniture {quote(item.name)}", (box_of(item),), item.at).check(layout)
    for thing in (*layout.openings, *layout.fixtures):
        yield from _Extent(quote(thing.name), (thing.box,), thing.at).check(layout)
    for block in blocks:
        yield from _extent_of(block).check(layout)


@dataclass(frozen=True, slots=True)
class _Extent:
    """Something that must be on the wall.

    ``across`` and ``up`` are the acts that mend what no move can, since a thing settles its place.
    """

    what: str
    boxes: tuple[Box, ...]
    at: Place
    across: str | None = None
    up: str | None = None
    is_between: bool = False

    def check(self, layout: Layout) -> Iterator[Fault]:
        """What of it is past the wall; one fault a direction where it is too big."""
        yield from self._check_across(layout)
        yield from self._check_up(layout)

    def _check_across(self, layout: Layout) -> Iterator[Fault]:
        """Past the wall's ends; what does not fit between two things is told elsewhere."""
        if self.is_between:
            return
        wall = layout.wall.size.width
        left = min(box.x0 for box in self.boxes)
        right = max(box.x1 for box in self.boxes)
        too_wide = right - left - wall
        if too_wide > SLACK_MM:
            yield self._too_large("wider", "narrower", too_wide, layout)
            return
        yield from self._reaches(
            -left, "past the wall's left end", self.across or "move it right", layout
        )
        yield from self._reaches(
            right - wall, "past the wall's right end", self.across or "move it left", layout
        )

    def _check_up(self, layout: Layout) -> Iterator[Fault]:
        """Into the ceiling or below the floor."""
        wall = layout.wall
        bottom = min(box.y0 for box in self.boxes)
        too_tall = max(box.y1 for box in self.boxes) - bottom - wall.size.height
        if too_tall > SLACK_MM:
            yield self._too_large("taller", "lower", too_tall, layout)
            return
        above = max(
            box.y1 - find_headroom(wall.ceiling, wall.size.height, box.x0, box.x1) for box in self.boxes
        )
        where = "into the sloping ceiling" if wall.ceiling else "above the ceiling"
        yield from self._reaches(above, where, self.up or "move it down", layout)
        yield from self._reaches(-bottom, "below the floor", self.up or "move it up", layout)

    def _too_large(self, more: str, less: str, by: float, layout: Layout) -> Fault:
        """It does not fit on the wall wherever it goes."""
        amount = format_at_least(by, layout.units)
        hint = f"make it {less} by at least {amount}, or correct the wall's size"
        return Fault(f"{self.what} is {amount} {more} than the wall", hint, self.at)

    def _reaches(self, by: float, where: str, act: str, layout: Layout) -> Iterator[Fault]:
        """A fault if it reaches past one side of the wall."""
        if by > SLACK_MM:
            amount = format_at_least(by, layout.units)
            yield Fault(f"{self.what} reaches {amount} {where}", f"{act} by at least {amount}", self.at)


def _extent_of(block: Block) -> _Extent:
    """A block with the acts that its place leaves open."""
    boxes, position = tuple(block.boxes.values()), block.position
    across = up = None
    if position.beside is not None:
        across = "make it narrower"
    elif position.around is not None and block.groups:
        if block.groups[0].group.arrange is Arrangement.ROW:
            across = "make what hangs on that side narrower"
        else:
            up = "make what hangs on that side lower"
    return _Extent(str(block), boxes, position.at, across, up, is_between=position.between is not None)
