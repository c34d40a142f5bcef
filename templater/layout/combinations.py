"""Which keys of a layout demand each other and which exclude each other.

Judged on the raw tree, so that these faults are found even where a value beside them is faulty.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from templater.layout.flaws import Flaw, list_mappings
from templater.layout.model import Hanger
from templater.layout.source import Path
from templater.quoting import list_words, quote

_OWN_KEYS = {"d-rings": ("apart",), "keyholes": ("apart",), "cleat": ("width", "every")}
"""The keys that one way to hang needs and the others have no use for."""

_OWN_EXAMPLES = {"apart": "12 in", "width": "18 in", "every": "6 in"}
_HANGERS = {hanger.value for hanger in Hanger}

_ACROSS = ("left", "centre", "right")
_UP = ("eye_line", "bottom", "top")

_ALIGNMENTS = {"row": ("top", "centre", "bottom"), "column": ("left", "centre", "right")}


def check_combinations(data: dict[str, Any]) -> Iterator[Flaw]:
    """All faults in how the keys of the layout are put together."""
    yield from _check_filled(("pieces",), data)
    for path, piece in list_mappings(data, "pieces"):
        if isinstance(hang := piece.get("hang"), dict):
            yield from _check_hang((*path, "hang"), hang)
        if isinstance(place := piece.get("place"), dict):
            yield from _check_position((*path, "place"), place)
    for path, group in list_mappings(data, "groups"):
        yield from _check_filled((*path, "pieces"), group)
        yield from _check_position(path, group)
        yield from _check_align(path, group)


def _check_filled(path: Path, owner: dict[str, Any]) -> Iterator[Flaw]:
    if owner.get("pieces") == []:
        yield Flaw(path, "'pieces' needs at least one piece, but is an empty list", "add a piece")


def _check_hang(path: Path, hang: dict[str, Any]) -> Iterator[Flaw]:
    by = str(hang.get("by")).strip()
    if by not in _HANGERS:
        return
    own = _OWN_KEYS.get(by, ())
    for key, example in _OWN_EXAMPLES.items():
        if key in own and key not in hang:
            yield Flaw(path, f"'hang' by {by} needs {quote(key)}", f"add for example '{key}: {example}'")
        if key in hang and key not in own:
            users = list_words([hanger for hanger, keys in _OWN_KEYS.items() if key in keys], "and")
            message = f"{quote(key)} does not apply to 'hang' by {by}"
            yield Flaw((*path, key), message, f"remove it: it belongs to {users}", at_key=True)


def _check_position(path: Path, position: dict[str, Any]) -> Iterator[Flaw]:
    if "above" not in position:
        yield from _check_one_of(path, position, _ACROSS)
        yield from _check_one_of(path, position, _UP)
        if "clearance" in position:
            message = "'clearance' does not apply without 'above'"
            yield Flaw((*path, "clearance"), message, "add 'above', or remove it", at_key=True)
        return
    for key in (*_ACROSS, *_UP):
        if key in position:
            message = f"{quote(key)} does not apply beside 'above', which decides both directions"
            yield Flaw((*path, key), message, "keep one of the two", at_key=True)


def _check_one_of(path: Path, position: dict[str, Any], keys: tuple[str, ...]) -> Iterator[Flaw]:
    first, *others = [key for key in position if key in keys] or [""]
    for key in others:
        message = f"{quote(key)} does not apply beside {quote(first)}, which decides the same direction"
        yield Flaw((*path, key), message, f"keep one of {list_words(keys, 'and')}", at_key=True)


def _check_align(path: Path, group: dict[str, Any]) -> Iterator[Flaw]:
    arrange, align = group.get("arrange"), group.get("align")
    if not isinstance(arrange, str) or not isinstance(align, str):
        return
    fitting = _ALIGNMENTS.get(arrange.strip())
    if fitting and align.strip() in {"top", "bottom", "left", "right"}.difference(fitting):
        message = f"'align' is {quote(align)}, which does not suit a {arrange.strip()}"
        yield Flaw((*path, "align"), message, f"use {list_words(fitting)}")
