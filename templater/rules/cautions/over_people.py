"""Nothing that can fall hangs over a bed, a cot or a seat.

What it checks:
    Whether a piece hangs over furniture on which people lie or sit, as its ``kind`` or its name
    tells. What furniture of another name is must be told by ``kind``, or it is not checked.

Why:
    A hook fails when nobody looks: over a pillow or a chair that hurts somebody. So says FEMA,
    "Mount framed pictures and mirrors securely", April 2008. A small child also pulls at what it
    can reach from a cot.

Example:
    A print 7 in over a headboard: caution. Over a chest it does not apply. Over something called
    "the long thing", without ``kind``: not checked.

What to write instead:
    ``kind: bed``, ``cot``, ``seat``, ``table``, ``cabinet`` or ``other`` in ``furniture``. Hang it
    elsewhere; or take a light one behind acrylic, on two closed hooks or fixed so that it cannot
    lift off, never on adhesive strips; on a ledge behind a lip. Over a cot hang nothing.

"""

from __future__ import annotations

from collections.abc import Iterator

from templater.layout.model import Material
from templater.placement.model import PlacedPiece, Plan
from templater.rules.cautions.caution import Caution, Teller
from templater.rules.cautions.things import PEOPLE, find_words, list_under
from templater.rules.holding import Holding, find_holding
from templater.rules.model import Finding

CODE = "over-people"

_TELL = Teller(CODE, 'FEMA, "Mount framed pictures and mirrors securely", April 2008')
_LIGHT, _ACRYLIC = "take a light piece", " behind acrylic"
_MEND = "{light}, on two closed hooks, or hang it elsewhere"
_MEND_TWO = "{light}, see that both hooks are closed, or hang it elsewhere"
_MEND_COT = "hang nothing over a cot"
_MENDS = {
    Holding.KEYHOLES: "{light}, fixed so that it cannot lift off its screws, or hang it elsewhere",
    Holding.CLEAT: "{light}, fixed so that it cannot lift off its rail, or hang it elsewhere",
    Holding.LEDGE: "set every screw where it holds firmly, or put the ledge elsewhere",
    Holding.ON_LEDGE: "{light}, held by a lip along the ledge, or stand it elsewhere",
    Holding.RAIL: "{light}, on closed hooks and knotted cords, or hang it elsewhere",
    Holding.STRIPS: f"hang nothing on adhesive strips there: {_MEND}",
}
"""What is to be done by what holds a piece, where that is not hooks."""

_COTS = find_words("cot crib")


def check_over_people(piece: PlacedPiece, plan: Plan) -> Iterator[Finding]:
    """Say what a piece hangs over on which people lie or sit."""
    for thing in list_under(piece, plan):
        if thing.is_furniture and not thing.is_known:
            yield _TELL.ask(piece, thing.ask_kind, other=thing.name)
        elif thing.is_of(PEOPLE):
            mend = _MEND_COT if thing.is_of(_COTS) else _tell_mend(piece, plan)
            yield _TELL.warn(piece, f"over {thing.name}", mend, other=thing.name)


def _tell_mend(piece: PlacedPiece, plan: Plan) -> str:
    """What is to be done that is not done already, as far as the layout tells."""
    glazing = piece.made_of.glazing if piece.made_of else None
    is_safe = glazing is not None and glazing.material is not Material.GLASS
    has_two = sum(not mark.is_lock for mark in piece.marks) > 1
    mend = _MENDS.get(find_holding(piece, plan), _MEND_TWO if has_two else _MEND)
    return mend.format(light=_LIGHT if is_safe else f"{_LIGHT}{_ACRYLIC}")


CAUTION = Caution(CODE, check_over_people, str(__doc__))
