"""What hangs keeps away from the air of vents and fans.

What it checks:
    The clear distance from a piece to each vent, duct, grille or fan: at least 12 in.

Why:
    Moving air, warm or cold, dries and soils what it meets: Canadian Conservation Institute, Notes
    10/3. How far it reaches is common practice, no source.

Example:
    A print 18 in from a vent: kept. At 6 in: caution.

What to write instead:
    ``kind: vent`` for the fixture. Move the piece, or turn the vent's blades away from it.

"""

from __future__ import annotations

from collections.abc import Iterator

from templater.placement.model import PlacedPiece, Plan
from templater.rules.band import Band
from templater.rules.cautions.caution import Caution, Teller
from templater.rules.cautions.nearness import check_nearness
from templater.rules.cautions.things import AIR
from templater.rules.model import Finding

CODE = "near-vent"

FREE = Band(12 * 25.4)
"""Clear distance to a vent, mm; common practice, no source."""

_TELL = Teller(
    CODE, "Canadian Conservation Institute, Notes 10/3; the distance is common practice, no source"
)
_MEND = "move it away, or turn the vent's blades away from it"


def check_near_vent(piece: PlacedPiece, plan: Plan) -> Iterator[Finding]:
    """Hold the distance to vents against what keeps their air off."""
    yield from check_nearness(piece, plan, _TELL, words=AIR, free=FREE, mend=_MEND)


CAUTION = Caution(CODE, check_near_vent, str(__doc__))
