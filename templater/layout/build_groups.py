"""The checked groups of a file as the groups that the program works with, and their ledges."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from templater.errors import Place
from templater.geometry import Point, Size
from templater.layout.arrangements import count_columns
from templater.layout.flaws import list_mappings
from templater.layout.group_schema import GroupEntry
from templater.layout.known import Known
from templater.layout.members import list_members
from templater.layout.model import (
    Arrangement,
    Group,
    Hanger,
    Hanging,
    Ledge,
    OpenChoice,
    Piece,
    Stair,
)
from templater.layout.names import fold_name
from templater.layout.values import DEFAULT_GAP_MM


def find_parents(data: dict[str, Any]) -> dict[str, str]:
    """The group that first names each member, as the raw file has it; folded names."""
    parents: dict[str, str] = {}
    for _, group in list_mappings(data, "groups"):
        for _, member in list_members(group):
            parents.setdefault(fold_name(member), fold_name(str(group.get("name"))))
    return parents


def find_whole(
    entries: Iterable[GroupEntry], known: Known, parents: Mapping[str, str]
) -> dict[str, GroupEntry]:
    """The groups of which nothing is missing, inside or around them, by their folded names."""
    whole = {fold_name(entry.name): entry for entry in entries if _can_stand(entry, known)}
    while missing := [
        name for name, entry in whole.items() if _lacks(name, entry, known, whole, parents)
    ]:
        for name in missing:
            del whole[name]
    return whole


def _can_stand(entry: GroupEntry, known: Known) -> bool:
    """Whether the things that its place names, and the pieces to choose from, are there."""
    pool = entry.choose.pool if entry.choose else ()
    return known.stands(entry) and all(fold_name(name) in known.pieces for name in pool)


def _lacks(
    name: str,
    entry: GroupEntry,
    known: Known,
    whole: Mapping[str, GroupEntry],
    parents: Mapping[str, str],
) -> bool:
    """Whether a member of the group, or the group that it is part of, is not there."""
    if parents.get(name, name) not in whole:
        return True
    folded = map(fold_name, entry.pieces)
    return any(member not in known.pieces and member not in whole for member in folded)


class GroupBuilder:
    """Turns whole groups into the model; ``names`` has the pieces and groups by folded names."""

    def __init__(
        self, known: Known, whole: Mapping[str, GroupEntry], parents: Mapping[str, str]
    ) -> None:
        self._known = known
        self._whole = whole
        self._parents = parents
        self._names = {**known.pieces, **{name: entry.name for name, entry in whole.items()}}
        self._ledges = dict(self._name_ledges())

    @property
    def ledges(self) -> tuple[str, ...]:
        """The names of the pieces that stand for ledges, in the order of their groups."""
        return tuple(self._ledges.values())

    def _name_ledges(self) -> Iterator[tuple[str, str]]:
        """A name for each ledge that nothing else has."""
        taken = set(self._names)
        for folded, entry in self._whole.items():
            if entry.ledge is None:
                continue
            name, number = f"{entry.name} ledge", 1
            while fold_name(name) in taken:
                number += 1
                name = f"{entry.name} ledge {number}"
            taken.add(fold_name(name))
            yield folded, name

    def build_ledge(self, entry: GroupEntry, slug: str, at: Place) -> Piece:
        """The piece that stands for a group's ledge: all its screws are in a row along the wall."""
        ledge, name = entry.ledge, self._ledges[fold_name(entry.name)]
        if ledge is None:
            raise ValueError(f"{entry.name!r} has no ledge")
        hang = Hanging(Hanger.CLEAT, ledge.drop, 0.0, None, 0.0, ledge.width, ledge.every, at)
        front = Size(ledge.width, ledge.thick)
        return Piece(name, slug, front, ledge.weight, hang, None, at, stands_out_mm=ledge.stands_out)

    def build_group(self, entry: GroupEntry, at: Place) -> Group:
        """One group, all names in it as their own entries have them."""
        folded = fold_name(entry.name)
        is_inner = folded in self._parents
        target = None
        if entry.width is not None and entry.height is not None:
            target = Size(entry.width, entry.height)
        return Group(
            name=entry.name,
            members=tuple(self._names[fold_name(name)] for name in entry.pieces),
            arrange=entry.arrange or Arrangement.ROW,
            gap_mm=DEFAULT_GAP_MM if entry.gap is None else entry.gap,
            align=entry.align,
            position=None if is_inner else self._known.resolve_position(entry, at),
            at=at,
            spread_mm=entry.spread,
            columns=_columns(entry),
            cells=entry.cells,
            target=target,
            stair=_stair(entry),
            ledge=Ledge(self._ledges[folded], entry.ledge.height) if entry.ledge else None,
            corners=_corners(entry),
            open_choice=self._open_choice(entry),
        )

    def _open_choice(self, entry: GroupEntry) -> OpenChoice | None:
        """What the group leaves to the search, if anything."""
        if entry.arrange is not None and entry.gap is not None and entry.choose is None:
            return None
        pool = count = None
        if entry.choose:
            pool = tuple(self._names[fold_name(name)] for name in entry.choose.pool)
            count = entry.choose.count
        return OpenChoice(entry.arrange is None, entry.gap is None, pool, count)


def _columns(entry: GroupEntry) -> int | None:
    """A grid's columns, as given or from its rows."""
    if entry.rows is None:
        return entry.columns
    count = (entry.choose.count or 1) if entry.choose else len(entry.pieces)
    return count_columns(count, entry.rows)


def _stair(entry: GroupEntry) -> Stair | None:
    stair = entry.stair
    if stair is None:
        return None
    return Stair(stair.rise, stair.run, Point(stair.start.left, stair.start.bottom), stair.up)


def _corners(entry: GroupEntry) -> tuple[Point, ...] | None:
    """The members' corners in the order of the members."""
    if entry.corners is None:
        return None
    by_name = {fold_name(name): Point(at.left, at.bottom) for name, at in entry.corners.items()}
    return tuple(by_name[fold_name(name)] for name in entry.pieces)
