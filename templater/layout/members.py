"""Whether the groups of a layout name what they may hold, each piece and group for one alone.

Judged on the raw tree, so that an entry with another fault still counts as known.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from templater.layout.flaws import Flaw, list_mappings
from templater.layout.names import HUNG_SECTIONS, find_names, fold_name, list_names
from templater.layout.nesting import MAX_NESTING, Nesting
from templater.layout.position_keys import POSITION_KEYS
from templater.layout.source import Path
from templater.layout.suggestions import Suggestions
from templater.quoting import quote

_ADD_PIECE = "mend the name, or add the piece"
_NAME_PIECES = "name the pieces themselves"


def list_texts(raw: Any) -> Iterator[tuple[int, str]]:
    """The texts of a list with their numbers from 0, whatever else is in it."""
    for number, text in enumerate(raw if isinstance(raw, list) else ()):
        if isinstance(text, str) and text.strip():
            yield number, text.strip()


def list_members(group: dict[str, Any]) -> Iterator[tuple[int, str]]:
    """The pieces and groups that a group names, with their numbers from 0."""
    return list_texts(group.get("pieces"))


def list_pool(group: dict[str, Any]) -> Iterator[tuple[int, str]]:
    """The pieces that a group is to be chosen from, with their numbers from 0."""
    choose = group.get("choose")
    return list_texts(choose.get("from") if isinstance(choose, dict) else None)


def check_members(data: dict[str, Any], suggestions: Suggestions) -> Iterator[Flaw]:
    """All faults in what groups hold, and in the keys that their members must not have."""
    return _Members(data, suggestions).check()


class _Members:
    """Follows the names in ``pieces`` and ``choose``."""

    def __init__(self, data: dict[str, Any], suggestions: Suggestions) -> None:
        self._data = data
        self._pieces = find_names(data, "pieces")
        self._hung = find_names(data, *HUNG_SECTIONS)
        self._nesting = Nesting()
        self._pools: dict[str, str] = {}
        self._suggestions = suggestions

    def check(self) -> Iterator[Flaw]:
        groups = list(list_mappings(self._data, "groups"))
        for path, group in groups:
            yield from self._check_members(path, group)
        for path, group in groups:
            yield from self._check_pool(path, group)
            yield from self._check_position(path, group)
        for name, path in list_names(self._data, "pieces"):
            if self._pieces[fold_name(name)][1] == path:
                yield from self._check_place(fold_name(name), path)
        yield from self._check_ledges(groups)

    def _check_members(self, path: Path, group: dict[str, Any]) -> Iterator[Flaw]:
        owner = fold_name(str(group.get("name")))
        for number, member in list_members(group):
            folded = fold_name(member)
            is_group = self._hung[folded][1][0] == "groups" if folded in self._hung else False
            fault = self._judge_member(owner, folded, member)
            if fault is None and is_group:
                fault = self._judge_inner(owner, folded, group)
            if fault:
                message = f"'pieces' names {quote(member)}, which {fault[0]}"
                yield Flaw((*path, "pieces", number), message, fault[1])
            elif is_group:
                self._nesting.put_group(owner, folded)
            else:
                self._nesting.put_piece(owner, folded)

    def _judge_member(self, owner: str, folded: str, member: str) -> tuple[str, str] | None:
        """Why something cannot be a member of a group, and what to do."""
        if folded not in self._hung:
            return f"is not in this layout{self._suggestions.suggest(member, self._hung)}", _ADD_PIECE
        if (parent := self._nesting.parent_of(folded)) is not None:
            return f"is in the group {self._written(parent)} already", "name it once"
        if self._nesting.holds(folded, owner):
            return "is this group itself, or has it within", "take one of the two out of the other"
        return None

    def _judge_inner(self, owner: str, folded: str, group: dict[str, Any]) -> tuple[str, str] | None:
        """Why a group cannot be a member of this one, and what to do."""
        if self._nesting.is_too_deep(owner, folded):
            reason = f"makes more than {MAX_NESTING} groups stand within one another"
            return reason, _NAME_PIECES
        if _arrange(group) == "ledge":
            return "is a group, but a ledge holds pieces alone", _NAME_PIECES
        return None

    def _check_pool(self, path: Path, group: dict[str, Any]) -> Iterator[Flaw]:
        seen: set[str] = set()
        for number, name in list_pool(group):
            folded = fold_name(name)
            if fault := self._judge_choice(folded, name, is_twice=folded in seen):
                message = f"'from' names {quote(name)}, which {fault[0]}"
                yield Flaw((*path, "choose", "from", number), message, fault[1])
            seen.add(folded)
            self._pools.setdefault(folded, str(group.get("name")).strip())

    def _judge_choice(self, folded: str, name: str, *, is_twice: bool) -> tuple[str, str] | None:
        """Why something cannot be chosen, and what to do."""
        if folded not in self._hung:
            return f"is not in this layout{self._suggestions.suggest(name, self._pieces)}", _ADD_PIECE
        if folded not in self._pieces:
            return "is a group, not a piece", "name the pieces to choose from"
        if (parent := self._nesting.parent_of(folded)) is not None:
            return f"is in the group {self._written(parent)} already", "take it out of one of the two"
        return ("is in it already", "name it once") if is_twice else None

    def _check_position(self, path: Path, group: dict[str, Any]) -> Iterator[Flaw]:
        """A group within another goes where that one puts it."""
        folded = fold_name(str(group.get("name")))
        parent = self._nesting.parent_of(folded)
        if parent is None or self._hung[folded][1] != path:
            return
        for key in filter(group.__contains__, POSITION_KEYS):
            message = (
                f"{quote(key)} does not apply to a group within a group, here {self._written(parent)}"
            )
            hint = "remove it, or take the group out of that one"
            yield Flaw((*path, key), message, hint, at_key=True)

    def _check_place(self, folded: str, path: Path) -> Iterator[Flaw]:
        """A piece of a group goes where that one puts it."""
        if "place" not in self._data["pieces"][path[1]]:
            return
        if (parent := self._nesting.parent_of(folded)) is not None:
            message = f"'place' does not apply to a piece of a group, here {self._written(parent)}"
            hint = "remove it, or take the piece out of the group"
            yield Flaw((*path, "place"), message, hint, at_key=True)
        elif folded in self._pools:
            message = f"'place' does not apply to a piece that {quote(self._pools[folded])} may choose"
            hint = "remove it, or take the piece out of 'from'"
            yield Flaw((*path, "place"), message, hint, at_key=True)

    def _check_ledges(self, groups: list[tuple[Path, dict[str, Any]]]) -> Iterator[Flaw]:
        """What stands on a ledge has no hardware of its own."""
        standing = {
            fold_name(name): str(group.get("name")).strip()
            for _, group in groups
            if _arrange(group) == "ledge"
            for _, name in (*list_members(group), *list_pool(group))
        }
        for name, path in list_names(self._data, "pieces"):
            if "hang" in self._data["pieces"][path[1]] and fold_name(name) in standing:
                ledge = quote(standing[fold_name(name)])
                message = f"'hang' does not apply to a piece that stands on the ledge, here {ledge}"
                yield Flaw(
                    (*path, "hang"), message, "remove it: the ledge alone has screws", at_key=True
                )

    def _written(self, folded: str) -> str:
        """A group's name as it is written, quoted."""
        return quote(self._hung[folded][0] if folded in self._hung else folded)


def _arrange(group: dict[str, Any]) -> str:
    return str(group.get("arrange")).strip()
