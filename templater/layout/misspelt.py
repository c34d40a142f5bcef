"""Whether a key is missing, and not merely misspelt, which is told elsewhere."""

from __future__ import annotations

from typing import Any

from templater.layout.entry import Entry, list_keys
from templater.quoting import find_nearest

_MOST = 4
"""How many unknown keys of one mapping are compared; more would take noticeable time."""


def lacks(mapping: dict[str, Any], key: str, entry: type[Entry]) -> bool:
    """Whether a mapping of a kind has neither a key nor an unknown one that is near it."""
    if key in mapping:
        return False
    known = list_keys(entry)
    unknown = [other for other in mapping if other not in known]
    near = [other for other in unknown[:_MOST] if find_nearest(str(other), (key,))]
    return all(find_nearest(other, known) != key for other in near)
