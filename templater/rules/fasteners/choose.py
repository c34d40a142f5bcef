"""Chooses what each hole takes, in generic words, and how much its maker must rate it for."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from templater.layout.model import Hanger, Hanging, Hardware, Surface
from templater.lengths import Unit
from templater.mounting.amounts import SLACK_MM
from templater.placement.model import PlacedPiece, Plan
from templater.rules.closed_hooks import needs_closed_hooks, needs_stud
from templater.rules.fasteners.beside import Beside, find_beside
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

BARE_NAIL_MOST_KG = 2.0
"""The most for a nail without a hook where it may meet no wood; common practice, no source: nothing
bears on the board beside it, and it works loose."""


class Kind(Enum):
    """Fasteners in generic words, as they are shown."""

    NAIL_HOOK = "picture hook and nail"
    NAIL = "nail or screw"
    STUD_SCREW = "wood screw into the stud"
    WOOD_SCREW = "wood screw into the wood"
    ANCHOR = "hollow-wall anchor"
    PROBE = "wood screw if it meets the stud, else hollow-wall anchor"
    PLUG = "masonry plug and screw"
    SUITABLE = "screw and anchor that suit the wall"
    CLOSED_NAIL_HOOK = "closed picture hook and nail"
    CLOSED_STUD = "closed hook screwed into a stud"
    CLOSED_WOOD = "closed hook screwed into the wood"
    CLOSED_ANCHOR = "closed hook on a hollow-wall anchor"
    CLOSED_PROBE = "closed hook, into the stud if its screw meets it, else on a hollow-wall anchor"
    CLOSED_PLUG = "closed hook on a masonry plug"
    CLOSED_SUITABLE = "closed hook on a screw and anchor that suit the wall"
    LOCK = "screw of the security lock"


_BY_HOLE = {
    HoleWall.STUD: Kind.STUD_SCREW,
    HoleWall.HOLLOW: Kind.ANCHOR,
    HoleWall.DOUBTFUL: Kind.PROBE,
    HoleWall.SOLID: Kind.PLUG,
    HoleWall.NOT_CHECKED: Kind.PROBE,
}
_CLOSED = {
    Kind.STUD_SCREW: Kind.CLOSED_STUD,
    Kind.WOOD_SCREW: Kind.CLOSED_WOOD,
    Kind.ANCHOR: Kind.CLOSED_ANCHOR,
    Kind.PROBE: Kind.CLOSED_PROBE,
    Kind.PLUG: Kind.CLOSED_PLUG,
    Kind.SUITABLE: Kind.CLOSED_SUITABLE,
}
NAILED = (Kind.NAIL_HOOK, Kind.NAIL, Kind.CLOSED_NAIL_HOOK)
"""What is held by a nail, or may be."""

_CLOSED_HOOKS = (Kind.CLOSED_NAIL_HOOK, *_CLOSED.values())
_HOOKS = (Kind.NAIL_HOOK, *_CLOSED_HOOKS)
_BY_HEAD = (Hanger.KEYHOLES, Hanger.CLEAT)
_PLAIN = (*NAILED, Kind.STUD_SCREW, Kind.WOOD_SCREW, Kind.CLOSED_STUD, Kind.CLOSED_WOOD)


@dataclass(frozen=True, slots=True)
class Fastener:
    """What one hole takes: the hook that the layout names, else a ``kind``.

    Both are None where the weight is not known, and so then is ``load``. ``units`` are those in
    which the load is told. ``beside``: what the named hook's screws need in this wall.
    """

    wall: HoleWall
    load: Load | None
    hook: Hardware | None
    kind: Kind | None
    units: Unit
    beside: Beside | None = None

    @property
    def factor(self) -> float:
        """By how much its rating must pass the load."""
        return RATING_FACTOR if self.hook or self.kind in _PLAIN else ANCHOR_FACTOR

    @property
    def least_kg(self) -> float | None:
        """What its maker must rate it for, kg; None where that is not known, or it bears nothing.

        It is a multiple of the load as that is told, so that the two never contradict.
        """
        if self.load is None or self.kind is Kind.LOCK:
            return None
        return self.load.round_up_kg(self.units) * self.factor

    @property
    def beside_kg(self) -> float | None:
        """What the makers of what is beside it must rate that for, kg; None without a load."""
        return None if self.load is None else self.load.round_up_kg(self.units) * ANCHOR_FACTOR

    @property
    def is_hook(self) -> bool:
        """Whether it is a hook, or may be: what bears is then not where its nail or screw is."""
        return self.hook is not None or self.kind in (None, *_HOOKS)

    @property
    def is_closed(self) -> bool:
        """Whether it is a closed hook that was chosen for it, not named by the layout."""
        return self.kind in _CLOSED_HOOKS

    @property
    def is_too_weak(self) -> bool:
        """Whether the named hook's own rating is less than what is asked for."""
        rating = self.hook.rating_kg if self.hook else None
        least = self.least_kg
        return rating is not None and least is not None and rating < least - SLACK_MM


def choose_fasteners(piece: PlacedPiece, plan: Plan) -> tuple[Fastener, ...]:
    """What each hole of a piece takes, in the order of its marks."""
    hook = piece.hang.hook if piece.hang else None
    is_closed = needs_closed_hooks(piece, plan)
    found = []
    for mark, load in zip(piece.marks, find_loads(piece, plan), strict=True):
        wall = find_hole_wall(mark.hole.x, plan)
        if mark.is_lock:
            found.append(Fastener(wall, load, None, Kind.LOCK, plan.units))
        elif hook is not None or load is None:
            beside = _choose_beside(hook, wall, piece, plan) if hook else None
            found.append(Fastener(wall, load, hook, None, plan.units, beside))
        else:
            choose = _choose_closed if is_closed else _choose_kind
            kind = choose(load, wall, piece, plan)
            found.append(Fastener(wall, load, None, kind, plan.units))
    return tuple(found)


def _choose_beside(hook: Hardware, wall: HoleWall, piece: PlacedPiece, plan: Plan) -> Beside | None:
    """What a named hook's screws need beside it; an anchor does not mend what must be in a stud."""
    beside = find_beside(hook, wall, plan.wall_surface)
    return None if beside is not Beside.PLUG and needs_stud(piece, plan) else beside


def _choose_kind(load: Load, wall: HoleWall, piece: PlacedPiece, plan: Plan) -> Kind:
    """A kind for a load in a wall."""
    return _choose_nail(load, wall, piece, plan) or _choose_screw(wall, plan)


def _choose_closed(load: Load, wall: HoleWall, piece: PlacedPiece, plan: Plan) -> Kind:
    """The same, closed, so that the piece cannot jump off."""
    if not needs_stud(piece, plan):
        kind = _choose_nail(load, wall, piece, plan)
        return Kind.CLOSED_NAIL_HOOK if kind is Kind.NAIL_HOOK else _CLOSED[_choose_screw(wall, plan)]
    is_framed = wall is not HoleWall.SOLID and plan.wall_surface is not Surface.WOOD
    return Kind.CLOSED_STUD if is_framed else _CLOSED[_choose_screw(wall, plan)]


def _choose_nail(load: Load, wall: HoleWall, piece: PlacedPiece, plan: Plan) -> Kind | None:
    """A picture hook, or a nail for what bears at its very hole; None where neither will do."""
    if piece.hang is None or piece.hang.by in _BY_HEAD or wall is HoleWall.SOLID:
        return None
    is_bare = bears_at_hole(piece.hang)
    is_wood = wall is HoleWall.STUD or plan.wall_surface is Surface.WOOD
    most = NAIL_MOST_KG if is_wood or not is_bare else BARE_NAIL_MOST_KG
    if to_kg(load.most_n) > most + SLACK_MM:
        return None
    return Kind.NAIL if is_bare else Kind.NAIL_HOOK


def bears_at_hole(hang: Hanging) -> bool:
    """Whether it bears where its hole is, as on a nail: the nail of a picture hook is above that."""
    return hang.rise_mm == 0 or (hang.rise_mm is None and hang.by is Hanger.NAIL)


def _choose_screw(wall: HoleWall, plan: Plan) -> Kind:
    """What goes into the wall itself."""
    if wall is HoleWall.NOT_CHECKED and plan.wall_surface is None:
        return Kind.SUITABLE
    if plan.wall_surface is Surface.WOOD and wall is not HoleWall.STUD:
        return Kind.WOOD_SCREW
    return _BY_HOLE[wall]
