"""How much the search takes on, so that it is done within seconds."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from templater.errors import Fault, LayoutError
from templater.layout.model import Arrangement, Group, Layout
from templater.placement.cluster import MOST_SOLVED
from templater.quoting import quote

MOST_PIECES = 300
"""How many pieces a layout may have: all are placed and judged anew for each candidate."""

MOST_MEMBERS = 24
"""How many pieces may be in one group that is tried as a cluster, with one gap after the other."""

MOST_GROUPS = 20
"""How many groups may leave something open."""

EFFORT = 80_000
"""What a search may cost in all, shared evenly by the groups that leave something open. The unit is
one piece placed and judged once, some 40 µs."""

_SOLVED_COST, _SOUGHT_COST, _SOUGHT_PIECE_COST = 10, 8_000, 400
"""What a cluster costs more: one of up to four pieces by the fourth power of their number, others so
much and for each piece."""

_LONGEST_POOL = {True: 16, False: 12}
"""Of a single pool up to 16 pieces long every set is compared, 65,535 of them, as a row and as a
cluster; up to 12, 4,095 of them, as a column and as a grid."""


@dataclass(frozen=True, slots=True)
class Allowance:
    """What the search for one of so many open groups may take, on a wall of so many pieces."""

    groups: int
    pieces: int

    @classmethod
    def of(cls, layout: Layout) -> Allowance:
        """The allowance of each group that a layout leaves open."""
        return cls(sum(1 for group in layout.groups if group.open_choice), len(layout.pieces))

    @property
    def effort(self) -> int:
        """The group's share."""
        return EFFORT // self.groups

    def find_cost(self, group: Group) -> int:
        """What it costs to judge one way to settle a group."""
        count = len(group.members)
        if group.arrange is not Arrangement.CLUSTER:
            return self.pieces
        if count <= MOST_SOLVED:
            return self.pieces + _SOLVED_COST * count**4
        return self.pieces + _SOUGHT_COST + _SOUGHT_PIECE_COST * count

    def shorten_pool(self, *, is_wide: bool) -> int:
        """How many pieces of a pool are compared in every set.

        One fewer, which halves the sets, for every doubling of the groups.
        """
        return _LONGEST_POOL[is_wide] - (self.groups - 1).bit_length()


def check_extent(layout: Layout) -> None:
    """Refuse what would take too long. Raises LayoutError with every fault found."""
    if faults := tuple(_find_faults(layout)):
        raise LayoutError(faults)


def _find_faults(layout: Layout) -> Iterator[Fault]:
    still_open = [group for group in layout.groups if group.open_choice]
    if still_open and len(layout.pieces) > MOST_PIECES:
        message = f"{len(layout.pieces)} pieces are too many for a search, at most {MOST_PIECES}"
        hint = "settle this group yourself, or search in a layout of this part of the wall alone"
        yield Fault(message, hint, still_open[0].at)
    for group in filter(_is_tried_as_cluster, still_open):
        if len(group.members) > MOST_MEMBERS:
            count = len(group.members)
            message = f"{quote(group.name)} has {count} pieces, at most {MOST_MEMBERS} can be sought"
            hint = "say how it is arranged and its gap, or divide it into several groups"
            yield Fault(message, hint, group.at)
    if len(still_open) > MOST_GROUPS:
        message = f"{len(still_open)} groups leave something open, at most {MOST_GROUPS} can be sought"
        yield Fault(message, "settle this one and those that follow", still_open[MOST_GROUPS].at)


def _is_tried_as_cluster(group: Group) -> bool:
    return group.arrange is Arrangement.CLUSTER or (
        group.open_choice is not None and group.open_choice.arrange
    )
