"""How much one layout may hold, so that the answer to any file comes within seconds.

Judged on the raw tree, before the rest of it is.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from templater.layout.flaws import Flaw, list_mappings
from templater.layout.members import list_members
from templater.quoting import quote

MOST_THINGS = 100
"""How much furniture, how many openings and how many fixtures a wall may have: each piece is held
against each of them."""

MOST_HOOKS = 500
"""How many entries 'hardware' may have."""

MOST_CEILING_POINTS = 200
"""How many points a sloping ceiling may have."""

MOST_CLUSTERED = 60
"""How many pieces the clusters of a layout may have in all; each is sought, for about 0.1 s a piece."""

_MOST = {
    "furniture": MOST_THINGS,
    "openings": MOST_THINGS,
    "fixtures": MOST_THINGS,
    "hardware": MOST_HOOKS,
}


def check_extent(data: dict[str, Any]) -> Iterator[Flaw]:
    """The lists with too many entries, and the cluster that is one too many."""
    for section, most in _MOST.items():
        yield from _check_list((section,), data.get(section), most)
    wall = data.get("wall")
    ceiling = wall.get("ceiling") if isinstance(wall, dict) else None
    yield from _check_list(("wall", "ceiling"), ceiling, MOST_CEILING_POINTS)
    yield from _check_clusters(data)


def _check_list(path: tuple[str, ...], entries: Any, most: int) -> Iterator[Flaw]:
    if isinstance(entries, list) and len(entries) > most:
        message = f"{quote(path[-1])} has {len(entries):,} entries, more than {most}"
        yield Flaw((*path, most), message, "list what matters where something hangs, or divide the wall")


def _check_clusters(data: dict[str, Any]) -> Iterator[Flaw]:
    """Only the first cluster with which there are too many pieces is told."""
    count = 0
    for path, group in list_mappings(data, "groups"):
        if str(group.get("arrange")).strip() == "cluster":
            count += sum(1 for _ in list_members(group))
        if count > MOST_CLUSTERED:
            message = f"with this one the clusters have {count:,} pieces, more than {MOST_CLUSTERED}"
            hint = "hang some of them in a grid or in rows, or make two layouts of the wall"
            yield Flaw((*path, "arrange"), message, hint)
            return
