"""Whether every name of a layout that refers to something is known, and may stand where it stands.

Judged on the raw tree, so that an entry with another fault still counts as known.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from templater.layout.flaws import Flaw, list_mappings
from templater.layout.members import check_members, list_texts
from templater.layout.names import (
    ENDS,
    HUNG_SECTIONS,
    OBSTACLE_SECTIONS,
    find_names,
    fold_name,
    say_what,
)
from templater.layout.source import Path
from templater.layout.suggestions import Suggestions
from templater.quoting import list_words, quote


def check_references(data: dict[str, Any]) -> Iterator[Flaw]:
    """All faults in references: of groups, of places, of acceptances, of hooks."""
    suggestions = Suggestions()
    yield from check_members(data, suggestions)
    yield from _Places(data, suggestions).check()
    yield from _check_accepted(data, suggestions)
    yield from _check_hooks(data, suggestions)


class _Places:
    """Follows the names by which places are asked for."""

    def __init__(self, data: dict[str, Any], suggestions: Suggestions) -> None:
        self._data = data
        self._hung = find_names(data, *HUNG_SECTIONS)
        self._obstacles = find_names(data, *OBSTACLE_SECTIONS)
        self._furniture = find_names(data, "furniture")
        self._suggestions = suggestions

    def check(self) -> Iterator[Flaw]:
        for path, group in list_mappings(self._data, "groups"):
            yield from self._check_position(path, group)
        for path, piece in list_mappings(self._data, "pieces"):
            if isinstance(place := piece.get("place"), dict):
                yield from self._check_position((*path, "place"), place)

    def _check_position(self, path: Path, position: dict[str, Any]) -> Iterator[Flaw]:
        for key in ("above", "beside", "around"):
            if isinstance(name := position.get(key), str) and name.strip():
                yield from self._check_name((*path, key), name.strip(), key)
        ends = list(list_texts(position.get("between")))
        for number, name in ends:
            if fold_name(name) not in ENDS:
                yield from self._check_name((*path, "between", number), name, "between")
        if len({fold_name(name) for _, name in ends}) < len(ends):
            message = f"'between' names {quote(ends[0][1])} twice"
            yield Flaw((*path, "between"), message, "name two different things")

    def _check_name(self, path: Path, name: str, key: str) -> Iterator[Flaw]:
        """One name of furniture, or of anything in the way."""
        known, folded = self._furniture if key == "above" else self._obstacles, fold_name(name)
        if folded in known:
            return
        sections = ("furniture",) if key == "above" else OBSTACLE_SECTIONS
        if other := self._obstacles.get(folded) or self._hung.get(folded):
            wanted = "furniture" if key == "above" else "an opening, a fixture or furniture"
            reason, hint = f"is {say_what(other[1])}, not {wanted}", f"name what it hangs {key}"
        else:
            near = self._suggestions.suggest(name, known, ENDS if key == "between" else ())
            reason = f"is not in this layout{near}"
            hint = f"mend the name, or add it under {list_words([quote(each) for each in sections])}"
        yield Flaw(path, f"{quote(key)} names {quote(name)}, which {reason}", hint)


def _check_accepted(data: dict[str, Any], suggestions: Suggestions) -> Iterator[Flaw]:
    """Each acceptance is of something that hangs, and is given once."""
    hung = find_names(data, *HUNG_SECTIONS)
    seen: set[tuple[str, str]] = set()
    for path, entry in list_mappings(data, "accept"):
        name = entry.get("for")
        if not isinstance(name, str) or not name.strip():
            continue
        if fold_name(name) not in hung:
            reason = f"which is not a piece or group of this layout{suggestions.suggest(name, hung)}"
            message = f"'for' names {quote(name.strip())}, {reason}"
            yield Flaw((*path, "for"), message, "name the piece or group that the finding is about")
        rule = str(entry.get("rule")).strip()
        if (rule, fold_name(name)) in seen:
            message = f"{quote(rule)} is accepted for {quote(name.strip())} already"
            yield Flaw(path, message, "keep one of the two")
        seen.add((rule, fold_name(name)))


def _check_hooks(data: dict[str, Any], suggestions: Suggestions) -> Iterator[Flaw]:
    """Each hook that a piece names is known, and its rise is told once."""
    hardware = find_names(data, "hardware")
    for path, piece in list_mappings(data, "pieces"):
        hang = piece.get("hang")
        name = hang.get("hook") if isinstance(hang, dict) else None
        if not isinstance(hang, dict) or not isinstance(name, str) or not name.strip():
            continue
        known = hardware.get(fold_name(name))
        if known is None:
            reason = f"which is not in this layout{suggestions.suggest(name.strip(), hardware)}"
            message = f"'hook' names {quote(name.strip())}, {reason}"
            hint = "mend the name, or add it under 'hardware'"
            yield Flaw((*path, "hang", "hook"), message, hint)
        elif "rise" in hang and "rise" in data["hardware"][known[1][1]]:
            message = f"'rise' does not apply beside 'hook': {quote(known[0])} has its own"
            yield Flaw((*path, "hang", "rise"), message, "keep one of the two", at_key=True)
