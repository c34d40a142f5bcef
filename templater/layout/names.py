"""Whether every name of a layout belongs to one thing alone.

Two names are the same if they are equal after NFC and case-folding. Judged on the raw tree, so that
an entry with another fault still counts as known.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator
from typing import Any

from templater.layout.comments import Comments
from templater.layout.flaws import Flaw, list_mappings
from templater.layout.source import Path
from templater.quoting import list_words, quote

ENDS = ("left end", "right end")
"""The wall's ends, as ``between`` names them."""

OBSTACLE_SECTIONS = ("furniture", "openings", "fixtures")
"""What hangs beside, around or between; their names are told apart without saying which it is."""

HUNG_SECTIONS = ("pieces", "groups")
"""What findings are about; their names are told apart too."""

_OWNERS = {
    "furniture": ("furniture", "other furniture"),
    "openings": ("an opening", "another opening"),
    "fixtures": ("a fixture", "another fixture"),
    "hardware": ("hardware", "other hardware"),
    "pieces": ("a piece", "another piece"),
    "groups": ("a group", "another group"),
}
"""How a message speaks of an entry of a section, from outside it and from within."""

_OWN_NAME = "give each a name of its own"
_COMMENTED = "from ' #' on a line is a comment: put a name with ' #' in it in quotes"

Names = dict[str, tuple[str, Path]]
"""Names by their folded form: as written, and the path of the entry."""


def fold_name(name: str) -> str:
    """The form in which equal names are equal."""
    folded = unicodedata.normalize("NFC", name.strip()).casefold()
    return unicodedata.normalize("NFC", folded)


def list_names(data: dict[str, Any], *sections: str) -> Iterator[tuple[str, Path]]:
    """Every name in some sections as written, with the path of its entry."""
    for section in sections:
        for path, entry in list_mappings(data, section):
            name = entry.get("name")
            if isinstance(name, str) and name.strip():
                yield name.strip(), path


def find_names(data: dict[str, Any], *sections: str) -> Names:
    """The first entry of each name in some sections."""
    names: Names = {}
    for name, path in list_names(data, *sections):
        names.setdefault(fold_name(name), (name, path))
    return names


def say_what(path: Path) -> str:
    """What stands at an entry's path: ``a piece``, ``furniture``."""
    return _OWNERS[str(path[0])][0]


def check_names(data: dict[str, Any], comments: Comments) -> Iterator[Flaw]:
    """All names that two things have, or that have a meaning of their own."""
    for sections in (OBSTACLE_SECTIONS, HUNG_SECTIONS, ("hardware",)):
        yield from _check_duplicates(data, sections, comments)
    for name, path in list_names(data, *OBSTACLE_SECTIONS):
        if fold_name(name) in ENDS:
            message = f"'name' is {quote(name)}, which means an end of the wall"
            yield Flaw((*path, "name"), message, f"give it another name than {list_words(ENDS)}")


def _check_duplicates(
    data: dict[str, Any], sections: tuple[str, ...], comments: Comments
) -> Iterator[Flaw]:
    first = find_names(data, *sections)
    for name, path in list_names(data, *sections):
        written, other = first[fold_name(name)]
        if other == path:
            continue
        thing = _OWNERS[str(other[0])][other[0] == path[0]]
        message = f"'name' is {quote(name)}, but {thing} is called {quote(written)} already"
        shortened = ((path, name), (other, written))
        is_cut_off = any(comments.follows((*owner, "name"), text) for owner, text in shortened)
        hint = f"{_OWN_NAME}; {_COMMENTED}" if is_cut_off else _OWN_NAME
        yield Flaw((*path, "name"), message, hint)
