"""Which keys of a group belong to which arrangement, and whether they fit its pieces.

Judged on the raw tree, so that these faults are found even where a value beside them is faulty.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from templater.layout.choices import ANY, find_count
from templater.layout.flaws import Flaw
from templater.layout.idle_keys import find_idle_keys
from templater.layout.members import list_members, list_pool
from templater.layout.model import Arrangement
from templater.layout.names import fold_name
from templater.layout.source import Path
from templater.quoting import list_words, quote

_ALL = tuple(arrangement.value for arrangement in Arrangement)

USERS = {
    "gap": ("row", "column", "grid", "cluster", "stair", "ledge", ANY),
    "choose": ("row", "column", "grid", "cluster", "stair", "ledge", ANY),
    "around": ("row", "column", ANY),
    "spread": ("row", "column"),
    "align": ("row", "column"),
    "columns": ("grid",),
    "rows": ("grid",),
    "cells": ("grid",),
    "width": ("cluster",),
    "height": ("cluster",),
    "stair": ("stair",),
    "ledge": ("ledge",),
    "corners": ("placed",),
}
"""The arrangements to which a key applies; the keys that are not here apply to all."""

_NEEDS = {
    "grid": (("columns", "rows"), "columns: 3"),
    "stair": (
        ("stair",),
        "stair: {rise: 7 1/2 in, run: 10 in, up: right, start: {left: 20 in, bottom: 7 1/2 in}}",
    ),
    "ledge": (
        ("ledge",),
        "ledge: {height: 55 in, width: 48 in, thick: 1 1/2 in, drop: 3/4 in, every: 14 in}",
    ),
    "placed": (("corners",), "corners: {Tide chart: {left: 0 in, bottom: 3 in}}"),
}
"""One of which keys an arrangement cannot do without, and what may be written."""

EXCLUSIVE = (("pieces", "choose"), ("gap", "spread"), ("columns", "rows"))
"""The pairs of keys of which a group has one at most."""

_ALIGNMENTS = {"row": ("top", "centre", "bottom"), "column": ("left", "centre", "right")}


def check_arrangement(path: Path, group: dict[str, Any], owner: str) -> Iterator[Flaw]:
    """All faults in how one group is put together, its position aside."""
    arrange = str(group.get("arrange")).strip()
    yield from _check_filled(path, group)
    for first, second in EXCLUSIVE:
        if first in group and second in group:
            message = f"{quote(second)} does not apply beside {quote(first)}"
            yield Flaw((*path, second), message, "keep one of the two", at_key=True)
    if arrange in (*_ALL, ANY):
        yield from _check_own_keys(path, group, arrange, owner)
    if arrange == "grid":
        yield from _check_rows(path, group)
    if arrange == "placed":
        yield from _check_corners(path, group)
    yield from _check_align(path, group, arrange)
    yield from _check_target(path, group, owner)
    yield from _check_clearance(path, group, arrange)
    yield from _check_count(path, group)


def _check_filled(path: Path, group: dict[str, Any]) -> Iterator[Flaw]:
    if group.get("pieces") == []:
        message = "'pieces' needs at least one piece, but is an empty list"
        yield Flaw((*path, "pieces"), message, "add a piece")
    choose = group.get("choose")
    if isinstance(choose, dict) and choose.get("from") == []:
        message = "'from' needs at least one piece, but is an empty list"
        yield Flaw((*path, "choose", "from"), message, "add the pieces to choose from")


def _check_own_keys(path: Path, group: dict[str, Any], arrange: str, owner: str) -> Iterator[Flaw]:
    yield from find_idle_keys(path, group, USERS, chosen=arrange, told=f"'arrange: {arrange}'")
    keys, example = _NEEDS.get(arrange, ((), ""))
    if keys and not any(key in group for key in keys):
        wanted = list_words([quote(key) for key in keys])
        yield Flaw(
            path, f"{owner} needs {wanted} for 'arrange: {arrange}'", f"add for example '{example}'"
        )


def _check_rows(path: Path, group: dict[str, Any]) -> Iterator[Flaw]:
    """A grid is filled in reading order, so not every number of rows can be had."""
    rows, count = find_count(group.get("rows")), _count_pieces(group)
    if rows is None:
        return
    if count is None:
        message = "'rows' does not apply where the number of pieces is left open"
        yield Flaw((*path, "rows"), message, "use 'columns'", at_key=True)
    elif 0 < (filled := count_rows(count, count_columns(count, rows))) < rows:
        message = f"'rows' is {rows}, but {count} pieces in reading order fill {filled}"
        yield Flaw((*path, "rows"), message, f"write {filled}, or use 'columns'")


def count_columns(pieces: int, rows: int) -> int:
    """How many columns a grid of so many pieces and rows has."""
    return -(-pieces // rows)


def count_rows(pieces: int, columns: int) -> int:
    """How many rows a grid of so many pieces and columns has."""
    return -(-pieces // columns) if columns else 0


def _count_pieces(group: dict[str, Any]) -> int | None:
    """How many pieces hang in a group; None where that is open."""
    choose = group.get("choose")
    if isinstance(choose, dict):
        return find_count(choose.get("count"))
    return len(list(list_members(group)))


def _check_corners(path: Path, group: dict[str, Any]) -> Iterator[Flaw]:
    """Every member has a corner, and only members have."""
    corners = group.get("corners")
    if not isinstance(corners, dict):
        return
    members = {fold_name(name): name for _, name in list_members(group)}
    seen: set[str] = set()
    for name in corners:
        folded = fold_name(name)
        if folded not in members:
            message = f"'corners' names {quote(name)}, which is not one of the group's 'pieces'"
            yield Flaw((*path, "corners", name), message, "mend the name, or remove it", at_key=True)
        elif folded in seen:
            message = f"'corners' names {quote(name)} twice"
            yield Flaw((*path, "corners", name), message, "keep one of the two", at_key=True)
        seen.add(folded)
    for folded, name in members.items():
        if folded not in seen:
            hint = f"add {quote(name)} with its 'left' and 'bottom'"
            yield Flaw((*path, "corners"), f"'corners' has none for {quote(name)}", hint)


def _check_align(path: Path, group: dict[str, Any], arrange: str) -> Iterator[Flaw]:
    align, fitting = group.get("align"), _ALIGNMENTS.get(arrange)
    if not isinstance(align, str) or fitting is None:
        return
    if align.strip() in {"top", "bottom", "left", "right"}.difference(fitting):
        message = f"'align' is {quote(align)}, which does not suit a {arrange}"
        yield Flaw((*path, "align"), message, f"use {list_words(fitting)}")


def _check_target(path: Path, group: dict[str, Any], owner: str) -> Iterator[Flaw]:
    """The size that a cluster should come near has two sides."""
    given = [key for key in ("width", "height") if key in group]
    if len(given) == 1:
        missing = "height" if given == ["width"] else "width"
        message = f"{owner} needs {quote(missing)} beside {quote(given[0])}"
        yield Flaw(path, message, f"add for example '{missing}: 40 in', or remove {quote(given[0])}")


def _check_clearance(path: Path, group: dict[str, Any], arrange: str) -> Iterator[Flaw]:
    """Stairs and a ledge give a height of their own, whatever is below."""
    if arrange in ("stair", "ledge") and "above" in group and "clearance" in group:
        message = f"'clearance' does not apply to 'arrange: {arrange}', which gives the height"
        yield Flaw((*path, "clearance"), message, "remove it", at_key=True)


def _check_count(path: Path, group: dict[str, Any]) -> Iterator[Flaw]:
    choose = group.get("choose")
    if not isinstance(choose, dict):
        return
    count, pool = find_count(choose.get("count")), len(list(list_pool(group)))
    if count is not None and 0 < pool < count:
        message = f"'count' is {count}, more than the {pool} in 'from'"
        yield Flaw((*path, "choose", "count"), message, "lower it, or add pieces to choose from")
