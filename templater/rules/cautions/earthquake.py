"""In earthquake country a piece can neither jump off its hook nor swing.

What it checks:
    On a wall with ``earthquake: yes`` by what a piece is to be held, as heavy as it is. Without
    ``earthquake`` in ``wall`` it is not checked.

Why:
    An open hook lets go at the first jolt. Lighter than 20 lb a closed hook and putty at the lower
    corners hold it; up to 50 lb a closed hook in a stud; what is heavier is for someone who does
    such work: Earthquake Country Alliance. Two hooks for what is large, and none over beds: FEMA,
    "Mount framed pictures and mirrors securely", April 2008.

Example:
    A print of 6 lb: caution, "on a closed hook, with putty at the lower corners". A mirror of
    60 lb: caution, "leave it to a licensed installer". On a wall with ``earthquake: no`` it does
    not apply.

What to write instead:
    ``earthquake: yes`` or ``no`` in ``wall``, and the ``weight`` of each piece.

"""

from __future__ import annotations

from collections.abc import Iterator

from templater.mounting.amounts import SLACK_MM
from templater.placement.model import PlacedPiece, Plan
from templater.rules.cautions.caution import Caution, Teller
from templater.rules.cautions.weights import POUND_KG, find_most_kg, format_pounds
from templater.rules.model import Finding

CODE = "earthquake"

LIGHT_KG, HEAVY_KG = 20 * POUND_KG, 50 * POUND_KG
"""Lighter than the one a hook and putty do; heavier than the other help is needed; Earthquake
Country Alliance."""

_TELL = Teller(
    CODE,
    'Earthquake Country Alliance; FEMA, "Mount framed pictures and mirrors securely", April 2008',
)
_ASK = "add 'earthquake: yes' or 'earthquake: no' to 'wall'"


def check_earthquake(piece: PlacedPiece, plan: Plan) -> Iterator[Finding]:
    """Say by what a piece is to be held where the ground may shake."""
    if plan.is_earthquake is None:
        yield _TELL.ask(piece, _ASK)
    elif plan.is_earthquake:
        figure, mend = _choose(find_most_kg(piece), plan)
        yield _TELL.warn(piece, figure, mend)


def _choose(kg: float | None, plan: Plan) -> tuple[str, str]:
    """How heavy a piece is, and by what it is to be held."""
    light, heavy = (format_pounds(limit, plan.units) for limit in (LIGHT_KG, HEAVY_KG))
    if kg is None:
        return "weight not given", "hang it on a closed hook in a stud, with putty at the lower corners"
    if kg < LIGHT_KG - SLACK_MM:
        return f"under {light}", "hang it on a closed hook, with putty at the lower corners"
    if kg <= HEAVY_KG + SLACK_MM:
        return f"{light} or more", "hang it on a closed hook in a stud, with putty at the lower corners"
    return f"over {heavy}", "leave it to a licensed installer"


CAUTION = Caution(CODE, check_earthquake, str(__doc__))
