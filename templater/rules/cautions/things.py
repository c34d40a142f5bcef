"""What stands or is fixed near a piece, and what it is by the words of its kind."""

from __future__ import annotations

import re
from collections.abc import Iterator, Set
from dataclasses import dataclass
from functools import lru_cache

from templater.geometry import Box
from templater.mounting.amounts import SLACK_MM
from templater.placement.model import PlacedPiece, Plan
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

HEAT = find_words("heater radiator stove fireplace hearth range oven cooker hob boiler")
"""It grows hot."""

WATER = find_words("sink basin washbasin bath bathtub tub shower tap faucet toilet")
"""Water is drawn or splashed there."""

AIR = find_words("vent duct grille register fan extractor")
"""Air is blown or drawn through it."""

WIRED = find_words(
    "switch dimmer socket outlet receptacle thermostat light lamp sconce doorbell intercom"
)
"""An accessory that a cable runs to."""

PIPED = WATER | find_words("pipe chase radiator")
"""Pipes run to it or in it."""

STAIRS = find_words("stair staircase stairway stairwell")
"""People walk up and down on it, and no ladder stands on it."""

PLAIN = find_words(
    "window door opening hatch table desk cabinet chest cupboard wardrobe shelf bookcase sideboard"
    " dresser console counter clock mirror rail other"
)
"""Nothing is to be said of it."""

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
        owner = "furniture" if self.is_furniture else "fixture"
        return f"add 'kind' to {owner} {quote(self.name)}"


def list_things(plan: Plan) -> Iterator[Thing]:
    """Everything on a wall besides the pieces."""
    for item in plan.furniture:
        yield Thing(item.name, find_words(item.kind), item.box, is_furniture=True)
    for thing in plan.obstacles:
        yield Thing(thing.name, find_words(thing.kind), thing.box, is_furniture=False)


def list_under(piece: PlacedPiece, plan: Plan) -> Iterator[Thing]:
    """Everything that a piece hangs over."""
    for thing in list_things(plan):
        if piece.box.overlap(thing.box).width > SLACK_MM and piece.box.y0 >= thing.box.y1 - SLACK_MM:
            yield thing
