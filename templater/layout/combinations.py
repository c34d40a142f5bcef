"""Which keys of a layout demand each other and which exclude each other.

Judged on the raw tree, so that these faults are found even where a value beside them is faulty.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from templater.layout.arrangements import check_arrangement
from templater.layout.flaws import Flaw, describe_owner, list_mappings
from templater.layout.hang_keys import check_hang
from templater.layout.piece_keys import check_piece
from templater.layout.position_keys import check_position
from templater.layout.source import Path
from templater.layout.wall_keys import check_wall
from templater.quoting import list_words, quote

_ACROSS = ("left", "centre", "right")
_UP = ("bottom", "middle", "top")


def check_combinations(data: dict[str, Any]) -> Iterator[Flaw]:
    """All faults in how the keys of the layout are put together."""
    if data.get("pieces") == []:
        yield Flaw(("pieces",), "'pieces' needs at least one piece, but is an empty list", "add a piece")
    yield from check_wall(data)
    for section in ("openings", "fixtures"):
        for path, obstacle in list_mappings(data, section):
            yield from _check_obstacle(path, obstacle, describe_owner(data, path))
    for path, piece in list_mappings(data, "pieces"):
        yield from check_piece(path, piece, describe_owner(data, path))
        if isinstance(hang := piece.get("hang"), dict):
            yield from check_hang((*path, "hang"), hang)
        if isinstance(place := piece.get("place"), dict):
            yield from _check_place((*path, "place"), place)
    for path, group in list_mappings(data, "groups"):
        yield from check_position(path, group, in_column=str(group.get("arrange")).strip() == "column")
        yield from check_arrangement(path, group, describe_owner(data, path))


def _check_place(path: Path, place: dict[str, Any]) -> Iterator[Flaw]:
    yield from check_position(path, place)
    if "around" in place:
        message = "'around' does not apply to a piece: it has no pieces to hang on both sides"
        yield Flaw((*path, "around"), message, "use 'beside'", at_key=True)


def _check_obstacle(path: Path, obstacle: dict[str, Any], owner: str) -> Iterator[Flaw]:
    """Where an opening or a fixture is: one key across, one up; a door stands on the floor."""
    yield from _check_one_of(path, obstacle, owner, _ACROSS)
    is_window = str(obstacle.get("kind", obstacle.get("name"))).strip().casefold() == "window"
    if path[0] == "fixtures" or is_window or any(key in obstacle for key in _UP):
        yield from _check_one_of(path, obstacle, owner, _UP)


def _check_one_of(
    path: Path, obstacle: dict[str, Any], owner: str, keys: tuple[str, ...]
) -> Iterator[Flaw]:
    given = [key for key in obstacle if key in keys]
    if not given:
        shown = list_words([quote(key) for key in keys])
        yield Flaw(path, f"{owner} needs {shown}", f"add for example '{keys[0]}: 40 in'")
    for key in given[1:]:
        message = f"{quote(key)} does not apply beside {quote(given[0])}, which says the same"
        yield Flaw((*path, key), message, f"keep one of {list_words(keys, 'and')}", at_key=True)
