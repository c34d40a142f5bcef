"""The schema's findings in plain words: the key, what is asked of it, what was found, what to do."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache
from itertools import islice
from typing import Any

from pydantic_core import ErrorDetails

from templater.layout.entry import Entry, list_keys
from templater.layout.flaws import Flaw, describe_owner
from templater.layout.frame_schema import MadeOfEntry, MouldingEntry
from templater.layout.group_schema import (
    ChooseEntry,
    CornerEntry,
    GroupEntry,
    LedgeEntry,
    PlaceEntry,
    StairEntry,
    StartEntry,
)
from templater.layout.hang_schema import (
    BalanceEntry,
    HangEntry,
    HardwareEntry,
    LockEntry,
    RingEntry,
    RingsEntry,
)
from templater.layout.rule_schema import LengthBand, RulesEntry
from templater.layout.schema import (
    AcceptEntry,
    DatumEntry,
    FixtureEntry,
    FurnitureEntry,
    LayoutEntry,
    MarginEntry,
    OpeningEntry,
    PieceEntry,
)
from templater.layout.source import Path
from templater.layout.values import EMPTY, EMPTY_ENTRY, show_value
from templater.layout.wall_schema import StudsEntry, WallEntry
from templater.lengths import mend_comma
from templater.quoting import find_nearest, list_words, quote, suggest

_ENTRIES: dict[str, type[Entry]] = {
    "wall": WallEntry,
    "studs": StudsEntry,
    "furniture": FurnitureEntry,
    "pieces": PieceEntry,
    "hang": HangEntry,
    "rings": RingsEntry,
    "balance": BalanceEntry,
    "lock": LockEntry,
    "hardware": HardwareEntry,
    "made_of": MadeOfEntry,
    "moulding": MouldingEntry,
    "place": PlaceEntry,
    "groups": GroupEntry,
    "datum": DatumEntry,
    "margin": MarginEntry,
    "openings": OpeningEntry,
    "fixtures": FixtureEntry,
    "stair": StairEntry,
    "start": StartEntry,
    "ledge": LedgeEntry,
    "choose": ChooseEntry,
    "rules": RulesEntry,
    "accept": AcceptEntry,
}
"""What each mapping of a layout is read as, by the last key on the way to it."""

_ENTRIES_IN: dict[str, type[Entry]] = {"corners": CornerEntry, "rules": LengthBand, "rings": RingEntry}
"""The same for those whose own key is a name, by the key above it."""

_EXAMPLES = {
    "title": "Lamp room corridor",
    "wall": "{width: 16 ft 4 in, height: 8 ft}",
    "width": "80 in",
    "height": "34 in",
    "left": "30 in",
    "name": "Tide chart",
    "size": "16 x 20 in",
    "by": "wire",
    "drop": "2 1/4 in",
    "hang": "{by: wire, drop: 2 1/4 in}",
    "rings": "{apart: 12 in, below_top: 6 in}",
    "rings.left": "{from_middle: 10 in, below_top: 6 in}",
    "rings.right": "{from_middle: 10 in, below_top: 6 in}",
    "from_middle": "10 in",
    "below_top": "6 in",
    "balance": "{right: 1/2 in, below_top: 12 in}",
    "lock": "{below_top: 18 in}",
    "hardware": "[{name: brass hook, rise: 1/2 in, rating: 30 lb}]",
    "made_of": "{glazing: glass 2 mm, moulding: {wood: pine, width: 30 mm, depth: 20 mm}}",
    "made_of.moulding": "{wood: pine, width: 30 mm, depth: 20 mm}",
    "wood": "pine",
    "depth": "20 mm",
    "place": "{centre: 150 in}",
    "datum": "{height: 48 in, at: the door}",
    "margin": "{bottom: 12.7 mm}",
    "pieces": "[{name: Tide chart, size: 16 x 20 in}]",
    "groups.pieces": "[Tide chart, Kelp print]",
    "furniture": "[{name: boot bench, left: 30 in, width: 80 in, height: 34 in}]",
    "groups": "[{name: bench trio, pieces: [Tide chart, Kelp print], arrange: row}]",
    "arrange": "row",
    "openings": "[{name: sash window, left: 40 in, bottom: 30 in, width: 36 in, height: 50 in}]",
    "fixtures": "[{name: thermostat, centre: 100 in, middle: 60 in, width: 4 in, height: 5 in}]",
    "ceiling": "[[0, 9 ft], [16 ft, 6 ft]]",
    "choose": "{from: [Tide chart, Kelp print, Gull study], count: 2}",
    "from": "[Tide chart, Kelp print, Gull study]",
    "stair": "{rise: 7 1/2 in, run: 10 in, up: right, start: {left: 20 in, bottom: 7 1/2 in}}",
    "rise": "7 1/2 in",
    "run": "10 in",
    "up": "right",
    "start": "{left: 20 in, bottom: 7 1/2 in}",
    "bottom": "7 1/2 in",
    "ledge": "{height: 55 in, width: 48 in, thick: 1 1/2 in, drop: 3/4 in, every: 14 in}",
    "thick": "1 1/2 in",
    "every": "16 in",
    "first": "8 in",
    "corners": "{Tide chart: {left: 0 in, bottom: 3 in}}",
    "rules": "{gap: {from: 2 in, to: 5 in}, eye-line: off}",
    "accept": "[{rule: eye-line, for: Tide chart, because: the stairs put the eye higher here}]",
    "rule": "eye-line",
    "for": "Tide chart",
    "because": "the stairs put the eye higher here",
}
"""What may be written for a key; ``groups.pieces``: for ``pieces`` within ``groups``."""

_MAX_SUGGESTIONS = 1000
"""How many unknown keys are compared with the known ones; more would take noticeable time."""


def phrase_errors(errors: Sequence[ErrorDetails], data: Any) -> list[Flaw]:
    """The schema's findings about the raw layout ``data``; a misspelt key is not also a missing one."""
    misspelt: dict[Path, Path] = {}
    unknown = [error["loc"] for error in errors if error["type"] == "extra_forbidden"]
    for *owner, key in unknown[:_MAX_SUGGESTIONS]:
        if nearest := find_nearest(str(key), _known_keys(owner)):
            misspelt[(*owner, key)] = (*owner, nearest)
    meant = set(misspelt.values())
    return [
        _phrase_error(error, data, misspelt)
        for error in errors
        if error["type"] != "missing" or error["loc"] not in meant
    ]


def _phrase_error(error: ErrorDetails, data: Any, misspelt: Mapping[Path, Path]) -> Flaw:
    path: Path = error["loc"]
    match error["type"]:
        case "missing":
            return _phrase_missing(path, data)
        case "extra_forbidden":
            return _phrase_unknown(path, data, misspelt.get(path))
        case "layout":
            key = next(step for step in reversed(path) if isinstance(step, str))
            message, hint = error["ctx"]["message"], error["ctx"]["hint"]
            if (message, hint) == EMPTY and isinstance(path[-1], int):
                hint = EMPTY_ENTRY
            return Flaw(path, f"{quote(key)} {message}", hint)
    return _phrase_shape(path, error, data)


def _known_keys(owner: Sequence[str | int]) -> Sequence[str]:
    """The keys of the mapping that stands at the path."""
    above, last = ["", "", *(step for step in owner if isinstance(step, str))][-2:]
    if not last:
        return list_keys(LayoutEntry)
    return list_keys(_ENTRIES_IN.get(above) or _ENTRIES[last])


@lru_cache(maxsize=64)
def _list_known_keys(owner: tuple[str, ...]) -> str:
    """The keys of a mapping as a hint; kept, since there may be very many faults of one kind."""
    return f"use {list_words(_known_keys(owner))}"


def _example(path: Path) -> str:
    """What may be written for the last key on the way."""
    above, key = ["", *(step for step in path if isinstance(step, str))][-2:]
    if above == "corners":
        return "'Tide chart: {left: 0 in, bottom: 3 in}'"
    return f"'{key}: {_EXAMPLES.get(f'{above}.{key}') or _EXAMPLES[key]}'"


def _phrase_missing(path: Path, data: Any) -> Flaw:
    *owner, key = path
    message = f"{describe_owner(data, tuple(owner))} needs {quote(str(key))}"
    return Flaw(tuple(owner), message, f"add for example {_example(path)}")


def _phrase_unknown(path: Path, data: Any, meant: Path | None) -> Flaw:
    *owner, last = path
    key = str(last)
    near = suggest(str(meant[-1]) if meant else None)
    message = f"{quote(key)} is not a key of {describe_owner(data, tuple(owner))}{near}"
    hint = _list_known_keys(tuple(step for step in owner if isinstance(step, str)))
    if key[:1].isdigit():
        hint = f"if it is the rest of a number, {_mend_parted_number(path, data)}"
    return Flaw(path, message, hint, at_key=True)


_MOST_KEYS = 100
"""A number that is parted by a comma is looked for among the first so many keys."""


def _mend_parted_number(path: Path, data: Any) -> str:
    """What to write where a comma within braces has parted a number, whose rest looks like a key."""
    for step in path[:-1]:
        data = data[step]
    keys = [*islice(data, _MOST_KEYS)]
    at = keys.index(path[-1]) if path[-1] in keys else 0
    start = data[keys[at - 1]] if at else None
    if not isinstance(start, str) or not start[-1:].isdigit():
        return "write a point instead of the comma"
    return mend_comma(f"{start},{path[-1]}")


def _phrase_shape(path: Path, error: ErrorDetails, data: Any) -> Flaw:
    """A text where a list or a mapping is due, or the one in place of the other."""
    owner, raw = describe_owner(data, path), error["input"]
    if isinstance(raw, str) and not raw.strip():
        message, hint = EMPTY
        return Flaw(path, f"{owner} {message}", EMPTY_ENTRY if isinstance(path[-1], int) else hint)
    demand = "a list" if error["type"] == "list_type" else "keys and values"
    message = f"{owner} needs {demand}, but is {show_value(raw)}"
    return Flaw(path, message, f"write for example {_example(path)}")
