"""What is heavy or large is lifted by two.

What it checks:
    The weight of a piece, of an estimated one the most that it may be: up to 25 lb; and its longer
    side: up to 48 in. Without a weight a piece that is no larger is not checked.

Why:
    On a ladder both hands are needed, and the hooks behind a large frame are found by the one who
    stands aside. Common practice, no source.

Example:
    A print of 6 lb, 20 in long: kept. A mirror of 40 lb, or one 60 in long: caution, "lift it
    together with somebody".

What to write instead:
    The ``weight`` of each piece, or what it is ``made_of``.

"""

from __future__ import annotations

from collections.abc import Iterator

from templater.lengths import format_length
from templater.mounting.amounts import SLACK_MM
from templater.placement.model import PlacedPiece, Plan
from templater.rules.cautions.caution import Caution, Teller
from templater.rules.cautions.weights import POUND_KG, find_most_kg, format_pounds, format_weight
from templater.rules.holding import Holding, find_holding
from templater.rules.model import Finding

CODE = "two-persons"

MOST_KG = 25 * POUND_KG
"""What one person hangs; common practice, no source."""

LONGEST_MM = 48 * 25.4
"""What one person holds level; common practice, no source."""

_TELL = Teller(CODE, "common practice, no source")
_ASK = "add 'weight' to the piece"
_ASK_LEDGE = "add 'weight' to 'ledge'"
_MEND = "lift it together with somebody"


def check_two_persons(piece: PlacedPiece, plan: Plan) -> Iterator[Finding]:
    """Hold a piece's weight and size against what one person can handle."""
    kg, most = find_most_kg(piece), format_pounds(MOST_KG, plan.units)
    longest = format_length(LONGEST_MM, plan.units)
    band = f"up to {most} and {longest}"
    if kg is not None and kg > MOST_KG + SLACK_MM:
        yield _TELL.warn(piece, f"heavier than {most}", _MEND, band=band)
    elif max(piece.size) > LONGEST_MM + SLACK_MM:
        yield _TELL.warn(piece, f"longer than {longest}", _MEND, band=band)
    elif kg is None:
        is_ledge = find_holding(piece, plan) is Holding.LEDGE
        yield _TELL.ask(piece, _ASK_LEDGE if is_ledge else _ASK)
    else:
        figure = f"{format_weight(kg, plan.units)}, {format_length(max(piece.size), plan.units)} long"
        yield _TELL.clear(piece, figure, band)


CAUTION = Caution(CODE, check_two_persons, str(__doc__))
