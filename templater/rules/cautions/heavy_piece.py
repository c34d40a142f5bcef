"""What is too heavy for a home's hooks is left to a licensed installer.

What it checks:
    The weight of a piece, of an estimated one the most that it may be: up to 23 kg where every hole
    is in a stud or in a solid wall; up to 7 kg on adhesive strips; else up to 14 kg, as on a picture
    rail or a ledge. Without a weight it is not checked. Its template is drawn all the same.

Why:
    A mirror of that weight does not hang by what is sold for pictures, and breaks more than itself
    where it falls; a hollow wall holds by its board alone, strips by its paint alone. Common
    practice, no source: where the maker's limit for a whole piece is lower, that goes first.

Example:
    A mirror of 20 kg on two studs: kept. The same one on a wall whose studs are not known, or of
    25 kg on any: caution, "get a licensed installer". One of 8 kg on strips: caution, "hang it on
    screws in place of adhesive strips".

What to write instead:
    The ``weight`` of each piece, and ``studs`` and ``surface`` in ``wall``. A cleat ``on: studs``
    brings every hole of a heavy piece to a stud. What stands on a ledge counts with it: give the
    ``ledge`` its own ``weight`` too.

"""

from __future__ import annotations

from collections.abc import Iterator

from templater.mounting.amounts import SLACK_MM
from templater.placement.model import PlacedPiece, Plan
from templater.rules.cautions.caution import Caution, Teller
from templater.rules.cautions.weights import find_most_kg, format_pounds
from templater.rules.fasteners.wording import format_at_least_kg
from templater.rules.holding import Holding, find_holding, list_standing
from templater.rules.holes import HoleWall, find_hole_wall
from templater.rules.model import Finding

CODE = "heavy-piece"

MOST_KG = 23.0
"""The most that is hung without help where every hole is firm; common practice, no source."""

HOLLOW_MOST_KG = 14.0
"""The most where some hole is hollow, doubtful or not known; common practice, no source."""

STRIPS_MOST_KG = 7.0
"""The most on adhesive strips, however many; common practice, no source."""

_FIRM = (HoleWall.STUD, HoleWall.SOLID)
_WITHOUT_HOLES = {
    Holding.STRIPS: (STRIPS_MOST_KG, " on adhesive strips"),
    Holding.RAIL: (HOLLOW_MOST_KG, " on a picture rail"),
    Holding.ON_LEDGE: (HOLLOW_MOST_KG, " on a ledge"),
    Holding.NOT_KNOWN: (HOLLOW_MOST_KG, " where it is not known by what it hangs"),
}
_TELL = Teller(CODE, "common practice, no source")
_MEND = "get a licensed installer"
_ASK = "add 'weight' to the piece, or what it is 'made_of'"
_ASK_STANDING = "add 'weight' to each piece that stands on it; its maker's limit decides"
_ASK_LEDGE = "add 'weight' to 'ledge', on which {} stand; its maker's limit decides"
_MEND_STRIPS = "hang it on screws in place of adhesive strips; their maker's limit goes first"


def check_heavy_piece(piece: PlacedPiece, plan: Plan) -> Iterator[Finding]:
    """Hold the weight of a piece against what its wall is trusted with."""
    if find_holding(piece, plan) is Holding.LEDGE:
        yield _check_ledge(piece, plan)
        return
    kg = find_most_kg(piece)
    if kg is None:
        yield _TELL.ask(piece, _ASK)
        return
    most, where = _find_limit(piece, plan) if kg <= MOST_KG + SLACK_MM else (MOST_KG, "")
    limit = f"{format_pounds(most, plan.units)}{where}"
    figure = format_at_least_kg(kg, plan.units)
    if kg > most + SLACK_MM:
        mend = _MEND_STRIPS if most == STRIPS_MOST_KG else _MEND
        yield _TELL.warn(piece, f"{figure}, more than {limit}", mend, band=f"up to {limit}")
    else:
        yield _TELL.clear(piece, figure, f"up to {limit}")


def _check_ledge(ledge: PlacedPiece, plan: Plan) -> Finding:
    """What is said of a ledge, which bears what stands on it too; what of that is known may suffice."""
    own = find_most_kg(ledge)
    standing = [find_most_kg(each) for each in list_standing(ledge, plan)]
    known = sum(kg for kg in (own, *standing) if kg is not None)
    most, where = _find_limit(ledge, plan)
    limit = f"{format_pounds(most, plan.units)}{where}"
    more = "and the ledge itself" if own is None else "with what stands on it"
    told = f"{format_at_least_kg(known, plan.units)} {more}"
    if known > most + SLACK_MM:
        return _TELL.warn(ledge, f"{told}, more than {limit}", _MEND, band=f"up to {limit}")
    if None in standing:
        return _TELL.ask(ledge, _ASK_STANDING)
    if own is None:
        return _TELL.ask(ledge, _ASK_LEDGE.format(format_at_least_kg(known, plan.units)))
    return _TELL.clear(ledge, told, f"up to {limit}")


def _find_limit(piece: PlacedPiece, plan: Plan) -> tuple[float, str]:
    """The most that a piece may weigh by what holds it, kg, and in words where that is so."""
    holding = find_holding(piece, plan)
    if holding in _WITHOUT_HOLES:
        return _WITHOUT_HOLES[holding]
    walls = (find_hole_wall(mark.hole.x, plan) for mark in piece.marks if not mark.is_lock)
    if all(wall in _FIRM for wall in walls):
        return MOST_KG, ""
    return HOLLOW_MOST_KG, " where not every hole is known to be in a stud"


CAUTION = Caution(CODE, check_heavy_piece, str(__doc__))
