"""What a named hook's screws need beside it, so that they hold in the wall that they meet."""

from __future__ import annotations

from enum import Enum

from templater.layout.model import Hardware, Surface
from templater.rules.cautions.things import find_words
from templater.rules.holes import HoleWall

_HOLDS = find_words("anchor plug toggle molly hardened masonry concrete brick")
"""A hook of which this is said, or what it needs, is made for such a wall or comes with what is."""

_SCREWED = find_words("screw lag")
_NAILED = find_words("nail pin brad")
_FRAMED = (Surface.DRYWALL, Surface.PLASTER, Surface.PANELLING)


class Beside(Enum):
    """What each screw goes into, in the words that are shown."""

    ANCHOR = "hollow-wall anchor"
    PROBE = "hollow-wall anchor if it misses the stud"
    PLUG = "masonry plug"


def is_screwed(hook: Hardware) -> bool:
    """Whether a hook is fastened by screws, as its name or what it needs says."""
    return not _words(hook).isdisjoint(_SCREWED)


def is_nailed(hook: Hardware) -> bool:
    """Whether a hook is fastened by nails, as its name or what it needs says."""
    return not _words(hook).isdisjoint(_NAILED)


def brings_its_own(hook: Hardware) -> bool:
    """Whether what a hook is said to need holds in hollow or solid walls."""
    return not _words(hook).isdisjoint(_HOLDS)


def find_beside(hook: Hardware, wall: HoleWall, surface: Surface | None) -> Beside | None:
    """What each of a hook's screws needs; None where it holds by itself, is a nail, or is not known.

    In a board without a stud a screw holds next to nothing, in masonry nothing without a plug; the
    nail of a picture hook bears on the board. Common practice, no source.
    """
    if brings_its_own(hook) or not is_screwed(hook):
        return None
    if wall is HoleWall.SOLID:
        return Beside.PLUG
    if is_nailed(hook) or surface is Surface.WOOD:
        return None
    if wall is HoleWall.HOLLOW:
        return Beside.ANCHOR
    is_open = wall is HoleWall.DOUBTFUL or (wall is HoleWall.NOT_CHECKED and surface in _FRAMED)
    return Beside.PROBE if is_open else None


def _words(hook: Hardware) -> frozenset[str]:
    return find_words(f"{hook.name} {hook.needs or ''}")
