"""The keys that say where a group or a piece goes, and which of them exclude each other."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from templater.layout.flaws import Flaw
from templater.layout.source import Path
from templater.quoting import list_words, quote

_RELATIVE = ("beside", "around", "between")
_ACROSS = ("left", "centre", "right")
_UP = ("eye_line", "bottom", "top")

POSITION_KEYS = ("above", *_RELATIVE, "side", "clearance", *_ACROSS, *_UP)
"""All of them."""


def check_position(path: Path, position: dict[str, Any], *, in_column: bool = False) -> Iterator[Flaw]:
    """All faults in how a position is put together; a column hangs around a thing up and down."""
    yield from _check_helpers(path, position)
    if "above" in position:
        for key in (*_RELATIVE, *_ACROSS, *_UP):
            if key in position:
                message = f"{quote(key)} does not apply beside 'above', which decides both directions"
                yield Flaw((*path, key), message, "keep one of the two", at_key=True)
        return
    relative = tuple(key for key in _RELATIVE if key in position)
    around = ("around",) if in_column and "around" in position else ()
    across = tuple(key for key in relative if key not in around)
    yield from _check_one_of(path, position, (*across, *_ACROSS))
    yield from _check_one_of(path, position, (*around, *_UP))


def _check_helpers(path: Path, position: dict[str, Any]) -> Iterator[Flaw]:
    """``clearance`` and ``side``, which say more about another key."""
    if "clearance" in position and not {"above", "beside"} & position.keys():
        message = "'clearance' does not apply without 'above' or 'beside'"
        yield Flaw((*path, "clearance"), message, "add one of them, or remove it", at_key=True)
    if "side" in position and "beside" not in position:
        message = "'side' does not apply without 'beside'"
        yield Flaw((*path, "side"), message, "add 'beside', or remove it", at_key=True)
    if "beside" in position and "side" not in position:
        yield Flaw(path, "'beside' needs 'side'", "add 'side: left' or 'side: right'")


def _check_one_of(path: Path, position: dict[str, Any], keys: tuple[str, ...]) -> Iterator[Flaw]:
    first, *others = [key for key in position if key in keys] or [""]
    for key in others:
        message = f"{quote(key)} does not apply beside {quote(first)}, which decides the same direction"
        yield Flaw((*path, key), message, f"keep one of {list_words(keys, 'and')}", at_key=True)
