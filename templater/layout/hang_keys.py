"""Which keys of ``hang:`` demand each other and which exclude each other.

Judged on the raw tree, so that these faults are found even where a value beside them is faulty.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from templater.layout.flaws import Flaw
from templater.layout.hang_schema import HangEntry, RingsEntry
from templater.layout.idle_keys import find_idle_keys
from templater.layout.misspelt import lacks
from templater.layout.model import Hanger
from templater.layout.source import Path
from templater.quoting import quote

_PAIRS = ("d-rings", "keyholes")
_HOLED = ("wire", "d-rings", "keyholes", "sawtooth", "nail", "cleat")

_USERS = {
    "drop": (*_HOLED, "rail"),
    "rise": _HOLED,
    "apart": (*_PAIRS, "rail"),
    "offset": (*_HOLED, "rail"),
    "width": ("cleat",),
    "every": ("cleat",),
    "on": ("cleat",),
    "hooks": ("wire",),
    "spread": ("wire",),
    "rings": ("wire",),
    "wire": ("wire",),
    "measured_at": ("wire",),
    "balance": ("wire", *_PAIRS, "rail"),
    "teeth": ("sawtooth",),
    "height": ("rail",),
    "cords": ("rail",),
    "rating": ("strips",),
    "each": ("strips",),
    "lock": (*_PAIRS, "cleat"),
    "hook": _HOLED,
}
"""The ways to hang to which a key applies."""

_NEEDS = {
    "wire": (),
    "d-rings": ("drop", "apart"),
    "keyholes": ("drop", "apart"),
    "sawtooth": ("drop",),
    "nail": ("drop",),
    "cleat": ("drop", "width"),
    "rail": ("drop", "height"),
    "strips": ("rating",),
}
"""The keys that a way to hang cannot do without."""

_EXAMPLES = {
    "drop": "2 1/4 in",
    "apart": "12 in",
    "width": "18 in",
    "every": "7 in",
    "spread": "8 in",
    "height": "90 in",
    "rating": "4 lb",
    "below_top": "6 in",
    "left": "{from_middle: 10 in, below_top: 6 in}",
    "right": "{from_middle: 10 in, below_top: 6 in}",
}
_HANGERS = {hanger.value for hanger in Hanger}
_RINGS = "'rings: {apart: 12 in, below_top: 6 in}'"


def check_hang(path: Path, hang: dict[str, Any]) -> Iterator[Flaw]:
    """All faults in how the keys of one ``hang`` are put together."""
    by = _word(hang, "by", "")
    if by not in _HANGERS:
        return
    yield from find_idle_keys(path, hang, _USERS, chosen=by, told=f"'hang' by {by}")
    for key in _NEEDS[by]:
        yield from _need(path, hang, by, key)
    match by:
        case "wire":
            yield from _check_wire(path, hang)
        case "cleat":
            yield from _check_cleat(path, hang)
        case "rail":
            yield from _check_pair(path, hang, "cords", "apart")


def _word(mapping: dict[str, Any], key: str, default: str) -> str:
    return str(mapping.get(key, default)).strip()


def _need(path: Path, hang: dict[str, Any], by: str, key: str) -> Iterator[Flaw]:
    if lacks(hang, key, HangEntry):
        message = f"'hang' by {by} needs {quote(key)}"
        yield Flaw(path, message, f"add for example '{key}: {_EXAMPLES[key]}'")


def _check_cleat(path: Path, hang: dict[str, Any]) -> Iterator[Flaw]:
    """Screws at a spacing, or on the studs."""
    if "on" in hang and "every" in hang:
        message = "'every' does not apply beside 'on', which says where the screws go"
        yield Flaw((*path, "every"), message, "keep one of the two", at_key=True)
    elif "on" not in hang:
        yield from _need(path, hang, "cleat", "every")


def _check_pair(path: Path, hang: dict[str, Any], count: str, key: str) -> Iterator[Flaw]:
    """Two hooks or cords have a distance, a single one has none."""
    if _word(hang, count, "1") == "2":
        if lacks(hang, key, HangEntry):
            message = f"'{count}: 2' needs {quote(key)}"
            yield Flaw(path, message, f"add for example '{key}: {_EXAMPLES[key]}'")
    elif key in hang and _word(hang, count, "1") == "1":
        message = f"{quote(key)} does not apply without '{count}: 2'"
        yield Flaw((*path, key), message, f"add '{count}: 2', or remove it", at_key=True)


def _check_wire(path: Path, hang: dict[str, Any]) -> Iterator[Flaw]:
    """A wire bears where its drop says, or where its rings and its length do."""
    yield from _check_pair(path, hang, "hooks", "spread")
    if "rings" not in hang:
        yield from _check_wire_without_rings(path, hang)
        return
    if "drop" in hang and "wire" in hang:
        message = "'wire' does not apply beside 'drop', from which its length follows"
        yield Flaw((*path, "wire"), message, "keep the one that you measured", at_key=True)
    elif "wire" not in hang and lacks(hang, "drop", HangEntry):
        message = "'hang' by wire with 'rings' needs 'drop' or 'wire'"
        yield Flaw(path, message, "add for example 'wire: 14 in', its length from ring to ring")
    if "offset" in hang:
        message = "'offset' does not apply beside 'rings'"
        hint = "say where each ring is: 'left: {from_middle: 10 in, below_top: 6 in}', and 'right'"
        yield Flaw((*path, "offset"), message, hint, at_key=True)
    yield from _check_measured(path, hang)
    if isinstance(rings := hang["rings"], dict):
        yield from _check_rings((*path, "rings"), rings)


def _check_wire_without_rings(path: Path, hang: dict[str, Any]) -> Iterator[Flaw]:
    """Without rings nothing but the drop says where a wire bears."""
    for key in ("wire", "measured_at", "balance"):
        if key in hang:
            message = f"{quote(key)} does not apply without 'rings'"
            yield Flaw((*path, key), message, f"add for example {_RINGS}", at_key=True)
    if "wire" not in hang:
        yield from _need(path, hang, "wire", "drop")


def _check_measured(path: Path, hang: dict[str, Any]) -> Iterator[Flaw]:
    """At how many hooks a drop was measured; there is a drop, and as many hooks."""
    if "measured_at" not in hang:
        return
    if "drop" not in hang:
        message = "'measured_at' does not apply without 'drop'"
        yield Flaw((*path, "measured_at"), message, "remove it", at_key=True)
    elif _word(hang, "measured_at", "1") == "2" and _word(hang, "hooks", "1") == "1":
        message = "'measured_at' is 2, but it hangs on one hook"
        yield Flaw((*path, "measured_at"), message, "add 'hooks: 2', or measure at one hook")


def _check_rings(path: Path, rings: dict[str, Any]) -> Iterator[Flaw]:
    """Both rings alike, or each by itself."""
    alike, single = ("apart", "below_top"), ("left", "right")
    keys, others = (single, alike) if any(key in rings for key in single) else (alike, single)
    for key in keys:
        if lacks(rings, key, RingsEntry):
            example = f"'{key}: {_EXAMPLES[key]}'"
            yield Flaw(path, f"'rings' needs {quote(key)}", f"add for example {example}")
    for key in others:
        if key in rings:
            message = f"{quote(key)} does not apply beside 'left' and 'right'"
            yield Flaw((*path, key), message, "remove it", at_key=True)
