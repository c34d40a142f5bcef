"""What stands or is fixed near a piece, and what it is by the words of its kind."""

from __future__ import annotations

import re
from collections.abc import Iterator, Set
from dataclasses import dataclass
from functools import lru_cache

from templater.geometry import Box
from templater.layout.model import Obstacle
from templater.memory import remember_last
from templater.mounting.amounts import SLACK_MM
from templater.placement.model import PlacedFurniture, PlacedPiece, Plan
from templater.quoting import quote


@lru_cache(maxsize=1024)
def find_words(kind: str) -> frozenset[str]:
    """The words of a kind, each also without an s at its end."""
    words = re.findall(r"[a-z]+", kind.casefold())
    return frozenset([*words, *(word.removesuffix("s") for word in words)])


PEOPLE = find_words(
    "bed cot crib bunk daybed headboard divan futon seat sofa couch settee settle chair armchair bench"
    " stool pew"
)
"""People lie or sit on it."""

HEAT = find_words("heater radiator stove fireplace hearth range oven cooker hob boiler furnace")
"""It grows hot."""

WATER = find_words("sink basin washbasin bath bathtub tub shower tap faucet toilet")
"""Water is drawn or splashed there."""

AIR = find_words("vent duct grille register fan extractor")
"""Air is blown or drawn through it."""

WIRED = find_words(
    "switch dimmer socket outlet receptacle thermostat light lamp sconce doorbell intercom"
    " alarm detector camera keypad television tv telephone phone meter breaker fuse consumer boiler"
    " cooker oven fan extractor"
)
"""An accessory that a cable runs to."""

PIPED = WATER | find_words("pipe chase radiator boiler")
"""Pipes run to it or in it."""

STAIRS = find_words("stair staircase stairway stairwell")
"""People walk up and down on it, and no ladder stands on it."""

PLAIN = find_words(
    "window door doorway opening hatch arch archway table desk cabinet chest cupboard wardrobe shelf"
    " bookcase sideboard dresser console counter clock mirror rail extinguisher other"
)
"""Nothing is to be said of it."""

VOID = find_words("window door doorway opening hatch arch archway")
"""Where it is there is no wall, and nothing runs in it."""

KNOWN = PEOPLE | HEAT | WATER | AIR | WIRED | PIPED | STAIRS | PLAIN
"""Every word by which it is known what a thing is."""


@dataclass(frozen=True, slots=True)
class Thing:
    """Furniture, an opening or a fixture."""

    name: str
    words: frozenset[str]
    box: Box
    is_furniture: bool

    def is_of(self, words: Set[str]) -> bool:
        """Whether one of its words is one of these."""
        return not words.isdisjoint(self.words)

    @property
    def is_known(self) -> bool:
        """Whether its kind tells what it is."""
        return self.is_of(KNOWN)

    @property
    def ask_kind(self) -> str:
        """The act that tells what it is."""
        return f"add 'kind' to {quote(self.name)}"


def list_things(plan: Plan) -> tuple[Thing, ...]:
    """Everything on a wall besides the pieces."""
    return _name_things(plan.furniture, plan.obstacles)


@remember_last
def _name_things(
    furniture: tuple[PlacedFurniture, ...], obstacles: tuple[Obstacle, ...]
) -> tuple[Thing, ...]:
    """Each thing with the words of its kind; asked once and again for every piece of a plan."""
    stand = (Thing(each.name, find_words(each.kind), each.box, is_furniture=True) for each in furniture)
    fixed = (Thing(each.name, find_words(each.kind), each.box, is_furniture=False) for each in obstacles)
    return (*stand, *fixed)


def list_under(piece: PlacedPiece, plan: Plan) -> Iterator[Thing]:
    """Everything that a piece hangs over."""
    left, foot, right, _ = piece.box
    for thing in list_things(plan):
        x0, _, x1, top = thing.box
        if x1 - left > SLACK_MM and right - x0 > SLACK_MM and foot >= top - SLACK_MM:
            yield thing
