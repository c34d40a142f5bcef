"""What is wrong with a layout, by the way to it in the tree; its place in the file comes later."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from templater.errors import Fault
from templater.layout.source import Node, Path, find_key, find_value
from templater.quoting import quote

SECTIONS = {
    "furniture": "furniture",
    "openings": "opening",
    "fixtures": "fixture",
    "hardware": "hardware",
    "pieces": "piece",
    "groups": "group",
    "accept": "acceptance",
}
"""The lists of a layout, and what one entry of each is called."""


@dataclass(frozen=True, slots=True)
class Flaw:
    """One thing that is wrong at a path; ``at_key``: with the key there, not with its value."""

    path: Path
    message: str
    hint: str
    at_key: bool = False

    def locate(self, root: Node) -> Fault:
        """The fault that the user is shown."""
        find = find_key if self.at_key else find_value
        return Fault(self.message, self.hint, find(root, self.path))


def list_mappings(data: Any, section: str) -> Iterator[tuple[Path, dict[str, Any]]]:
    """Every entry of a section that is a mapping, whatever else is wrong with it."""
    entries = data.get(section)
    for number, entry in enumerate(entries if isinstance(entries, list) else ()):
        if isinstance(entry, dict):
            yield (section, number), entry


def describe_owner(data: Any, path: Path) -> str:
    """A mapping as a message names it: ``the layout``, ``piece 'Tide chart'``, ``'hang'``."""
    if not path:
        return "the layout"
    *parents, last = path
    if isinstance(last, str):
        return quote(last)
    section = str(parents[-1])
    entry = data[section][last]
    name = entry.get("name") if isinstance(entry, dict) else None
    shown = quote(name.strip()) if isinstance(name, str) and name.strip() else str(last + 1)
    return f"{SECTIONS[section]} {shown}"
