"""From the text of a layout file to a Layout, with every fault of the file found in one go."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from pydantic import ValidationError

from templater.errors import Fault, Place
from templater.layout.build import build_layout
from templater.layout.combinations import check_combinations
from templater.layout.comments import Comments
from templater.layout.extent import check_extent
from templater.layout.flaws import SECTIONS, Flaw
from templater.layout.model import Layout
from templater.layout.names import check_names
from templater.layout.phrasing import phrase_errors
from templater.layout.references import check_references
from templater.layout.schema import LayoutEntry
from templater.layout.source import Node, read_source
from templater.layout.values import BARE_UNIT, show_value
from templater.lengths import Unit, find_unit

_CORE = {"wall", "eye_line", "units"}
"""What decides where everything goes: with a fault here nothing can be said of positions."""

MAX_FAULTS = 2_000
"""How many faults of a file are told."""

_START = "start from the layout that 'templater new FILE' writes"


@dataclass(frozen=True, slots=True)
class Reading:
    """What a file says, and what is wrong with it.

    Where there are faults, ``layout`` holds the sound entries alone, so that their positions can be
    judged in the same run; it is None where not even the wall is known.
    """

    layout: Layout | None
    faults: tuple[Fault, ...]


def read_layout(text: bytes | str, file: str) -> Reading:
    """Read a layout; ``file`` is the name by which places are reported."""
    source = read_source(text, file)
    root = source.root
    if root is None or not isinstance(root.data, dict):
        return Reading(None, _keep_first(source.faults) or (_not_a_layout(root, file),))
    data = root.data
    if too_much := [flaw.locate(root) for flaw in check_extent(data)]:
        return Reading(None, _keep_first((*source.faults, *too_much)))
    entry, flaws = _validate(data)
    flaws += [
        *check_combinations(data),
        *check_names(data, Comments(root, text)),
        *check_references(data),
    ]
    layout = _build_sound_part(root, flaws) if flaws or entry is None else build_layout(entry, root)
    faults = {*source.faults, *(flaw.locate(root) for flaw in flaws)}
    return Reading(layout, _keep_first(sorted(faults, key=_order)))


def _keep_first(faults: Sequence[Fault]) -> tuple[Fault, ...]:
    """The faults, or of very many the first and how many more there are."""
    more = len(faults) - MAX_FAULTS
    if more <= 0:
        return tuple(faults)
    hint = "mend those above; often one act mends many"
    rest = Fault(f"{more:,} more faults are not told", hint, faults[MAX_FAULTS].place)
    return (*faults[:MAX_FAULTS], rest)


def _order(fault: Fault) -> tuple[int, int, str]:
    place = fault.place or Place("")
    return place.line, place.column, fault.message


def _not_a_layout(root: Node | None, file: str) -> Fault:
    if root is None or root.data == "":
        return Fault("the file is empty", _START, Place(file))
    message = (
        f"the layout needs keys such as 'title', 'wall' and 'pieces', but is {show_value(root.data)}"
    )
    return Fault(message, _START, root.at)


def _validate(data: dict[str, Any]) -> tuple[LayoutEntry | None, list[Flaw]]:
    """The entries, or what is wrong with single keys and values."""
    try:
        entry = LayoutEntry.model_validate(data, context={BARE_UNIT: _read_bare_unit(data)})
    except ValidationError as error:
        return None, phrase_errors(error.errors(include_url=False), data)
    return entry, []


def _read_bare_unit(data: dict[str, Any]) -> Unit | None:
    """What a bare number means; where 'units' is faulty any unit will do, to spare further faults."""
    if "units" not in data:
        return None
    return find_unit(str(data["units"])) or Unit.MILLIMETRE


def _build_sound_part(root: Node, flaws: list[Flaw]) -> Layout | None:
    """The layout without the entries that flaws lie in."""
    faulty = {flaw.path[: 2 if flaw.path[0] in SECTIONS else 1] for flaw in flaws if flaw.path}
    if "wall" not in root.data or faulty & {(key,) for key in _CORE}:
        return None
    sound: dict[str, Any] = {"title": "untitled", "pieces": []}
    kept: dict[str, list[int]] = {}
    for key, value in root.data.items():
        if key in SECTIONS and isinstance(value, list):
            kept[key] = [number for number in range(len(value)) if (key, number) not in faulty]
            sound[key] = [value[number] for number in kept[key]]
        elif (key,) not in faulty:
            sound[key] = value
    entry, _ = _validate(sound)
    return build_layout(entry, root, kept) if entry else None
