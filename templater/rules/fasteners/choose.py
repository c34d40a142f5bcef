"""Chooses what each hole takes, in generic words, and how much its maker must rate it for."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from templater.layout.model import Hanger, Hardware, Surface
from templater.mounting.amounts import SLACK_MM
from templater.placement.model import PlacedPiece, Plan
from templater.rules.fasteners.load import Load, find_loads, to_kg
from templater.rules.holes import HoleWall, find_hole_wall

RATING_FACTOR = 2.0
"""By how much a rating must pass the load.

Common practice, no source: two hooks never share a load evenly, frames are bumped and taken down,
and the maker's wall was sounder than this one.
"""

ANCHOR_FACTOR = 4.0
"""The same for anchors and plugs; common practice, no source: makers state what broke them in a new
wall, and of that a quarter is counted on."""

NAIL_MOST_KG = 9.0
"""The most that a picture hook with a nail is used for, a hole; common practice, no source."""


class Kind(Enum):
    """Fasteners in generic words, as they are shown."""

    NAIL_HOOK = "picture hook and nail"
    STUD_SCREW = "wood screw into the stud"
    WOOD_SCREW = "wood screw into the wood"
    ANCHOR = "hollow-wall anchor"
    PROBE = "wood screw if it meets the stud, else hollow-wall anchor"
    PLUG = "masonry plug and screw"
    SUITABLE = "screw and anchor that suit the wall"
    LOCK = "screw of the security lock"


_BY_HOLE = {
    HoleWall.STUD: Kind.STUD_SCREW,
    HoleWall.HOLLOW: Kind.ANCHOR,
    HoleWall.DOUBTFUL: Kind.PROBE,
    HoleWall.SOLID: Kind.PLUG,
    HoleWall.NOT_CHECKED: Kind.PROBE,
}
_BY_HEAD = (Hanger.KEYHOLES, Hanger.CLEAT)
_PLAIN = (Kind.NAIL_HOOK, Kind.STUD_SCREW, Kind.WOOD_SCREW)


@dataclass(frozen=True, slots=True)
class Fastener:
    """What one hole takes: the hook that the layout names, else a ``kind``.

    Both are None where the weight is not known, and so then is ``load``.
    """

    wall: HoleWall
    load: Load | None
    hook: Hardware | None
    kind: Kind | None

    @property
    def factor(self) -> float:
        """By how much its rating must pass the load."""
        return RATING_FACTOR if self.hook or self.kind in _PLAIN else ANCHOR_FACTOR

    @property
    def least_kg(self) -> float | None:
        """What its maker must rate it for, kg; None where that is not known, or it bears nothing."""
        if self.load is None or self.kind is Kind.LOCK:
            return None
        return to_kg(self.load.most_n) * self.factor

    @property
    def is_too_weak(self) -> bool:
        """Whether the named hook's own rating is less than what is asked for."""
        rating = self.hook.rating_kg if self.hook else None
        least = self.least_kg
        return rating is not None and least is not None and rating < least - SLACK_MM


def choose_fasteners(piece: PlacedPiece, plan: Plan) -> tuple[Fastener, ...]:
    """What each hole of a piece takes, in the order of its marks."""
    hang = piece.hang
    hook, by_head = (hang.hook, hang.by in _BY_HEAD) if hang else (None, False)
    found = []
    for mark, load in zip(piece.marks, find_loads(piece), strict=True):
        wall = find_hole_wall(mark.hole.x, plan)
        if mark.is_lock:
            found.append(Fastener(wall, load, None, Kind.LOCK))
        elif hook is not None or load is None:
            found.append(Fastener(wall, load, hook, None))
        else:
            found.append(Fastener(wall, load, None, _choose_kind(load, wall, plan, by_head=by_head)))
    return tuple(found)


def _choose_kind(load: Load, wall: HoleWall, plan: Plan, *, by_head: bool) -> Kind:
    """A kind for a load in a wall; ``by_head``: it hangs on a screw's head, or under one."""
    is_light = to_kg(load.most_n) <= NAIL_MOST_KG + SLACK_MM
    if is_light and not by_head and wall is not HoleWall.SOLID:
        return Kind.NAIL_HOOK
    if wall is HoleWall.NOT_CHECKED and plan.wall_surface is None:
        return Kind.SUITABLE
    if plan.wall_surface is Surface.WOOD and wall is not HoleWall.STUD:
        return Kind.WOOD_SCREW
    return _BY_HOLE[wall]
