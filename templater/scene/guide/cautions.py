"""The cautions of the trade, in the words that the cover, the steps and the forms print."""

from __future__ import annotations

from typing import NamedTuple

from templater.placement.model import Plan
from templater.rules.cautions import over_stairs


class Caution(NamedTuple):
    """One caution: what it is about, then what to do."""

    title: str
    text: str


ADVICE = Caution(
    "This kit advises. It does not certify.",
    "It says where the holes go. It does not say what your wall can hold. The maker's rating of"
    " each hook, screw and anchor, for your kind of wall, goes before anything printed here.",
)
HEAVY = Caution(
    "Heavy or doubtful work",
    "Heavy pieces, crumbling walls, tiles, or any doubt: leave it to a licensed tradesperson.",
)
CODES = Caution(
    "Local codes",
    "Building, electrical and fire codes of your place go before anything printed here.",
)
CABLES = Caution(
    "Cables and pipes",
    "Run a detector over every cross before you drill. Take great care straight above, below and"
    " beside sockets, switches, taps and radiators. If you are not sure, do not drill.",
)
DUST = Caution(
    "Old paint and dust",
    "Old paint may hold lead, and old plaster or board may hold asbestos. If the wall may be that"
    " old, have it tested before you drill. Always wear a dust mask and eye protection.",
)
LADDER = Caution(
    "Ladder",
    "Stand it on firm, level floor and have somebody hold it. Do not lean out to the side. Do not"
    " climb on furniture.",
)
LADDER_OVER_STAIRS = LADDER._replace(text=f"{LADDER.text} Over the stairs {over_stairs.ACT}.")
RATING = Caution(
    "Hooks and anchors",
    "Use only hooks, screws and anchors that their maker rates for more than the weight of the"
    " piece, in your kind of wall.",
)
BEDS = Caution(
    "Over beds and seats",
    "Nothing with glass should hang over a bed, a sofa or a seat: use acrylic instead. Use two"
    " hangers that cannot jump off.",
)
HEAT = Caution(
    "Heat",
    "Do not hang a piece above a fire, a stove, a heater or a hot lamp.",
)
EARTHQUAKE = Caution(
    "Earthquake country",
    "Use closed hooks that cannot let go, and hold the lower corners to the wall as well.",
)


def choose_ladder(plan: Plan) -> Caution:
    """What to beware of on a ladder at a wall, over stairs too if anything hangs there."""
    return LADDER_OVER_STAIRS if over_stairs.is_over_stairs(plan) else LADDER
