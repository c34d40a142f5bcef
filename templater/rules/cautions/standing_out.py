"""Beside a walkway nothing stands out where a cane would miss it.

What it checks:
    Along a walkway how far a piece stands out from the wall, if its lower edge is higher than
    27 in and no higher than 80 in above the floor, over a flight of stairs above the edges of its
    steps: at most 4 in. It needs ``walkway`` and ``stands_out``, and is not checked without them.

Why:
    Someone who cannot see it finds with a cane what reaches down to 27 in, and passes under what
    is higher than 80 in; between them a shoulder or a head meets it: ADA 2010 Standards, 307.2.

Example:
    A lower edge at 27 in and a depth of 6 in: kept. At 28 in with a depth of 5 in: caution. At
    81 in any depth is kept.

What to write instead:
    ``walkway: yes`` or ``no`` in ``wall``, ``stands_out: 2 in`` in each piece. Hang a deep piece on
    another wall, or put furniture below it that a cane finds.

"""

from __future__ import annotations

from collections.abc import Iterator

from templater.lengths import format_length
from templater.mounting.amounts import SLACK_MM
from templater.placement.model import PlacedPiece, Plan
from templater.rules.band import Band
from templater.rules.cautions.caution import Caution, Teller
from templater.rules.flights import find_lower_heights
from templater.rules.holding import Holding, find_holding
from templater.rules.model import Finding, Verdict

CODE = "standing-out"

LOW_MM, HIGH_MM = 27 * 25.4, 80 * 25.4
"""A lower edge above the one and not above the other is limited; ADA 2010 Standards, 307.2."""

DEPTH = Band(0.0, 4 * 25.4)
"""From the wall to the face of what is limited, mm; ADA 2010 Standards, 307.2."""

_TELL = Teller(CODE, "ADA 2010 Standards, 307.2")
_ASK_WALKWAY = "add 'walkway: yes' or 'walkway: no' to 'wall'"
_ASK_DEPTH = "add 'stands_out' to the piece"
_ASK_LEDGE = "add 'stands_out' to 'ledge'"
_MEND = "hang it where nobody walks past, or something below it that a cane finds"


def check_standing_out(piece: PlacedPiece, plan: Plan) -> Iterator[Finding]:
    """Hold how far a piece stands out beside a walkway against what may."""
    if plan.is_walkway is None:
        yield _TELL.ask(piece, _ASK_WALKWAY)
    elif plan.is_walkway and not is_limited(*find_lower_heights(piece.box, plan)):
        lower = format_length(find_lower_heights(piece.box, plan)[0], plan.units)
        yield _TELL.clear(piece, f"lower edge at {lower}", "any depth there")
    elif plan.is_walkway and piece.stands_out_mm is None:
        is_ledge = find_holding(piece, plan) is Holding.LEDGE
        yield _TELL.ask(piece, _ASK_LEDGE if is_ledge else _ASK_DEPTH)
    elif plan.is_walkway and piece.stands_out_mm is not None:
        figure = f"{DEPTH.format_value(piece.stands_out_mm, plan.units)} from the wall"
        band = DEPTH.format_range(plan.units)
        if DEPTH.verdict(piece.stands_out_mm) is Verdict.KEPT:
            yield _TELL.clear(piece, figure, band)
        else:
            yield _TELL.warn(piece, figure, _MEND, band=band)


def is_limited(least_mm: float, most_mm: float) -> bool:
    """Whether what has its lower edge so high, from the least to the most, may not stand out far."""
    return most_mm > LOW_MM + SLACK_MM and least_mm <= HIGH_MM + SLACK_MM


CAUTION = Caution(CODE, check_standing_out, str(__doc__))
