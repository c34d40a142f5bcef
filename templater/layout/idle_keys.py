"""Finds keys that do nothing for the way that was chosen: of hanging, of arranging."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from templater.layout.flaws import Flaw
from templater.layout.source import Path
from templater.quoting import list_words, quote


def find_idle_keys(
    path: Path,
    keys: Iterable[str],
    users: Mapping[str, tuple[str, ...]],
    *,
    chosen: str,
    told: str,
) -> Iterator[Flaw]:
    """A flaw for each key that the way chosen does not use.

    ``users`` has the ways that use a key; a key that is not there is used by all. ``told`` names
    the way chosen in the message.
    """
    for key in keys:
        known = users.get(key, (chosen,))
        if chosen not in known:
            message = f"{quote(key)} does not apply to {told}"
            hint = f"remove it: it belongs to {list_words(known, 'and')}"
            yield Flaw((*path, key), message, hint, at_key=True)
