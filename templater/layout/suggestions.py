"""The nearest known name to an unknown one, for as many as there is time for."""

from __future__ import annotations

from collections.abc import Iterable

from templater.layout.names import Names
from templater.quoting import find_nearest, suggest

_MOST = 10
"""How many unknown names are compared with all known ones; more would take noticeable time."""


class Suggestions:
    """Counts how many have been made."""

    def __init__(self) -> None:
        self._made = 0

    def suggest(self, name: str, known: Names, others: Iterable[str] = ()) -> str:
        """`` (did you mean 'Tide chart'?)``, or nothing."""
        self._made += 1
        if self._made > _MOST:
            return ""
        return suggest(find_nearest(name, (*others, *(written for written, _ in known.values()))))
