"""What the names of a layout stand for, and where its entries are in the file."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Protocol

from templater.errors import Place
from templater.layout.group_schema import PlaceEntry
from templater.layout.model import Position
from templater.layout.names import ENDS, fold_name
from templater.layout.schema import LayoutEntry
from templater.layout.source import Node, Path, find_value


class _Named(Protocol):
    @property
    def name(self) -> str: ...


class Known:
    """The names of the entries that were read, by their folded form.

    ``kept`` says where the entries of a list stood in the file, if some of them were left out.
    """

    def __init__(self, entry: LayoutEntry, root: Node, kept: Mapping[str, Sequence[int]]) -> None:
        self._root = root
        self._kept = kept
        self._furniture = _written(entry.furniture)
        ends = {end: end for end in ENDS}
        self._things = {
            **ends,
            **self._furniture,
            **_written(entry.openings),
            **_written(entry.fixtures),
        }
        self.pieces = _written(entry.pieces)

    def find_place(self, section: str, number: int, *rest: str) -> Place:
        """Where an entry, or a part of it, stands in the file."""
        kept = self._kept.get(section)
        path: Path = (section, kept[number] if kept is not None else number, *rest)
        return find_value(self._root, path)

    def stands(self, place: PlaceEntry | None) -> bool:
        """Whether everything is there by which a place is asked for."""
        if place is None:
            return True
        named = (place.beside, place.around, *(place.between or ()))
        return (place.above is None or fold_name(place.above) in self._furniture) and all(
            fold_name(name) in self._things for name in named if name is not None
        )

    def resolve_position(self, place: PlaceEntry, at: Place) -> Position:
        """A place that stands, its names as their entries have them."""
        between = place.between and (self._thing(place.between[0]), self._thing(place.between[1]))
        return Position(
            above=place.above and self._thing(place.above),
            clearance_mm=place.clearance,
            left_mm=place.left,
            centre_mm=place.centre,
            right_mm=place.right,
            eye_line_mm=place.eye_line,
            bottom_mm=place.bottom,
            top_mm=place.top,
            at=at,
            beside=place.beside and self._thing(place.beside),
            side=place.side,
            around=place.around and self._thing(place.around),
            between=between,
        )

    def _thing(self, name: str) -> str:
        return self._things[fold_name(name)]


def _written(entries: Sequence[_Named]) -> dict[str, str]:
    return {fold_name(each.name): each.name for each in entries}
