"""Whether every name of a layout is one of its own, known where it is used, and used once.

Two names are the same if they are equal after NFC and case-folding. Judged on the raw tree, so that
an entry with another fault still counts as known.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator
from typing import Any

from templater.layout.flaws import SECTIONS, Flaw, list_mappings
from templater.layout.source import Path
from templater.quoting import find_nearest, quote, suggest

_MAX_SUGGESTIONS = 10
"""How many unknown names are compared with all known ones; more would take noticeable time."""

_OTHERS = {"furniture": "other furniture", "pieces": "another piece", "groups": "another group"}

Names = dict[str, tuple[str, Path]]
"""The names of a section by their folded form: as written, and the path of the entry."""


def fold_name(name: str) -> str:
    """The form in which equal names are equal."""
    folded = unicodedata.normalize("NFC", name.strip()).casefold()
    return unicodedata.normalize("NFC", folded)


def check_names(data: dict[str, Any]) -> Iterator[Flaw]:
    """All faults in the names of the layout."""
    for section in SECTIONS:
        yield from _check_duplicates(data, section)
    yield from _References(data).check()


def list_members(group: dict[str, Any]) -> Iterator[tuple[int, str]]:
    """The pieces that a group names, with their numbers from 0."""
    members = group.get("pieces")
    for number, member in enumerate(members if isinstance(members, list) else ()):
        if isinstance(member, str) and member.strip():
            yield number, member


def _names(data: dict[str, Any], section: str) -> Names:
    names: Names = {}
    for path, entry in list_mappings(data, section):
        name = entry.get("name")
        if isinstance(name, str) and name.strip():
            names.setdefault(fold_name(name), (name.strip(), path))
    return names


def _check_duplicates(data: dict[str, Any], section: str) -> Iterator[Flaw]:
    """Groups are named beside pieces in findings, so their names must differ from those too."""
    first = _names(data, section)
    pieces = _names(data, "pieces") if section == "groups" else {}
    for path, entry in list_mappings(data, section):
        name = entry.get("name")
        if not isinstance(name, str) or not name.strip():
            continue
        folded = fold_name(name)
        other, owner = pieces.get(folded), "a piece"
        if other is None and first[folded][1] != path:
            other, owner = first[folded], _OTHERS[section]
        if other:
            message = f"'name' is {quote(name.strip())}, but {owner} is called {quote(other[0])} already"
            yield Flaw((*path, "name"), message, "give each a name of its own")


class _References:
    """Follows every name that refers to something."""

    def __init__(self, data: dict[str, Any]) -> None:
        self._data = data
        self._pieces = _names(data, "pieces")
        self._furniture = _names(data, "furniture")
        self._group_of: dict[str, str] = {}
        self._suggestions = 0

    def check(self) -> Iterator[Flaw]:
        """All faults in references: of groups to pieces, and of both to furniture."""
        for path, group in list_mappings(self._data, "groups"):
            yield from self._check_members(path, group)
            yield from self._check_above(path, group)
        for path, piece in list_mappings(self._data, "pieces"):
            if isinstance(place := piece.get("place"), dict):
                yield from self._check_above((*path, "place"), place)
            folded = fold_name(str(piece.get("name")))
            group_name = self._group_of.get(folded)
            if "place" in piece and group_name and self._pieces[folded][1] == path:
                message = f"'place' does not apply to a piece of a group, here {group_name}"
                hint = "remove it, or take the piece out of the group"
                yield Flaw((*path, "place"), message, hint, at_key=True)

    def _check_members(self, path: Path, group: dict[str, Any]) -> Iterator[Flaw]:
        group_name = quote(str(group.get("name")).strip())
        for number, member in list_members(group):
            folded = fold_name(member)
            if folded not in self._pieces:
                reason = f"is not in this layout{self._suggest(member, self._pieces)}"
                hint = "mend the name, or add the piece"
            elif folded in self._group_of:
                reason, hint = f"is in the group {self._group_of[folded]} already", "name it once"
            else:
                self._group_of[folded] = group_name
                continue
            message = f"'pieces' names {quote(member)}, which {reason}"
            yield Flaw((*path, "pieces", number), message, hint)

    def _check_above(self, path: Path, position: dict[str, Any]) -> Iterator[Flaw]:
        name = position.get("above")
        if not isinstance(name, str) or not name.strip() or fold_name(name) in self._furniture:
            return
        if fold_name(name) in self._pieces:
            reason, hint = "is a piece, not furniture", "name the furniture that it hangs above"
        else:
            reason = f"is not in this layout{self._suggest(name, self._furniture)}"
            hint = "mend the name, or add it under 'furniture'"
        yield Flaw((*path, "above"), f"'above' names {quote(name)}, which {reason}", hint)

    def _suggest(self, name: str, known: Names) -> str:
        self._suggestions += 1
        if self._suggestions > _MAX_SUGGESTIONS:
            return ""
        return suggest(find_nearest(name, (written for written, _ in known.values())))
