"""Which group each piece and group belongs to, found while the groups are read one by one."""

from __future__ import annotations

MAX_NESTING = 8
"""How many groups may stand within one another; a wall needs two or three."""


class Nesting:
    """The tree of groups as far as it is known; names are folded, and none has two parents."""

    def __init__(self) -> None:
        self._parents: dict[str, str] = {}
        self._depths: dict[str, int] = {}

    def parent_of(self, member: str) -> str | None:
        """The group that a piece or group is in."""
        return self._parents.get(member)

    def holds(self, outer: str, inner: str) -> bool:
        """Whether the outer is the inner or has it within, at any depth."""
        return outer in self._line(inner)

    def is_too_deep(self, group: str, inner: str) -> bool:
        """Whether too many groups would stand within one another with the inner in the group."""
        return len(self._line(group)) + self._depths.get(inner, 1) > MAX_NESTING

    def put_piece(self, group: str, piece: str) -> None:
        """The piece is in the group."""
        self._parents[piece] = group

    def put_group(self, group: str, inner: str) -> None:
        """The inner group is in the other; asked first whether that is a circle or too deep."""
        self._parents[inner] = group
        depth = self._depths.get(inner, 1)
        for number, outer in enumerate(self._line(group), start=1):
            self._depths[outer] = max(self._depths.get(outer, 1), depth + number)

    def _line(self, group: str) -> list[str]:
        """The group and what it stands within, outward; cut where no sound layout gets to."""
        line = [group]
        while len(line) <= MAX_NESTING and (outer := self._parents.get(line[-1])) is not None:
            line.append(outer)
        return line
