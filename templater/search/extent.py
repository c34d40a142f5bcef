"""How much the search takes on, so that it is done within seconds."""

from __future__ import annotations

from collections.abc import Iterator

from templater.errors import Fault, LayoutError
from templater.layout.model import Arrangement, Group, Layout
from templater.quoting import quote

MOST_PIECES = 300
"""How many pieces a layout may have: all are placed and judged anew for each candidate."""

MOST_MEMBERS = 24
"""How many pieces may be in one group that is tried as a cluster, with one gap after the other."""

MOST_GROUPS = 20
"""How many groups may leave something open."""


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
