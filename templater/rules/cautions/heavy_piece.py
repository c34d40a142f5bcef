"""What is too heavy for a home's hooks is left to a licensed installer.

What it checks:
    The weight of a piece, of an estimated one the most that it may be: up to 23 kg where every hole
    is in a stud or in a solid wall, else up to 14 kg. Without a weight it is not checked. Its
    template is drawn all the same.

Why:
    A mirror of that weight does not hang by what is sold for pictures, and breaks more than itself
    where it falls; a hollow wall holds by its board alone. Common practice, no source.

Example:
    A mirror of 20 kg on two studs: kept. The same one on a wall whose studs are not known, or of
    25 kg on any: caution, "get a licensed installer".

What to write instead:
    The ``weight`` of each piece, and ``studs`` and ``surface`` in ``wall``. A cleat ``on: studs``
    brings every hole of a heavy piece to a stud.

"""

from __future__ import annotations

from collections.abc import Iterator

from templater.mounting.amounts import SLACK_MM
from templater.placement.model import PlacedPiece, Plan
from templater.rules.cautions.caution import Caution, Teller
from templater.rules.cautions.weights import find_most_kg, format_pounds
from templater.rules.fasteners.wording import format_at_least_kg
from templater.rules.holes import HoleWall, find_hole_wall
from templater.rules.model import Finding

CODE = "heavy-piece"

MOST_KG = 23.0
"""The most that is hung without help where every hole is firm; common practice, no source."""

HOLLOW_MOST_KG = 14.0
"""The most where some hole is hollow, doubtful or not known; common practice, no source."""

_FIRM = (HoleWall.STUD, HoleWall.SOLID)
_TELL = Teller(CODE, "common practice, no source")
_MEND = "get a licensed installer"


def check_heavy_piece(piece: PlacedPiece, plan: Plan) -> Iterator[Finding]:
    """Hold the weight of a piece against what its wall is trusted with."""
    kg = find_most_kg(piece)
    if kg is None:
        yield _TELL.ask(piece, "add 'weight' to the piece, or what it is 'made_of'")
        return
    walls = [find_hole_wall(mark.hole.x, plan) for mark in piece.marks if not mark.is_lock]
    is_firm = all(wall in _FIRM for wall in walls)
    most = MOST_KG if is_firm else HOLLOW_MOST_KG
    where = "" if is_firm else " where not every hole is known to be in a stud"
    band = f"up to {format_pounds(most, plan.units)}{where}"
    figure = format_at_least_kg(kg, plan.units)
    if kg > most + SLACK_MM:
        yield _TELL.warn(piece, f"{figure}, more than {band[6:]}", _MEND, band=band)
    else:
        yield _TELL.clear(piece, figure, band)


CAUTION = Caution(CODE, check_heavy_piece, str(__doc__))
