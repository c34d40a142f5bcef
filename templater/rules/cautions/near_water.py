"""What hangs keeps away from splashing water and its steam.

What it checks:
    The clear distance from a piece to each sink, basin, bath, shower or tap: at least 24 in.

Why:
    Splashes and steam stain paper, swell wood and rust the hardware until it lets go. Common
    practice, no source.

Example:
    A print 30 in from a basin: kept. At 12 in: caution.

What to write instead:
    ``kind: sink``, ``bath``, ``shower`` or ``tap``. Move the piece, or take one that is sealed
    behind acrylic on hardware that does not rust.

"""

from __future__ import annotations

from collections.abc import Iterator

from templater.placement.model import PlacedPiece, Plan
from templater.rules.band import Band
from templater.rules.cautions.caution import Caution, Teller
from templater.rules.cautions.nearness import check_nearness
from templater.rules.cautions.things import WATER
from templater.rules.model import Finding

CODE = "near-water"

FREE = Band(24 * 25.4)
"""Clear distance to where water splashes, mm; common practice, no source."""

_TELL = Teller(CODE, "common practice, no source")
_MEND = "move it away, or seal it and use hardware that does not rust"


def check_near_water(piece: PlacedPiece, plan: Plan) -> Iterator[Finding]:
    """Hold the distance to water against what keeps it dry."""
    yield from check_nearness(piece, plan, _TELL, words=WATER, free=FREE, mend=_MEND)


CAUTION = Caution(CODE, check_near_water, str(__doc__))
