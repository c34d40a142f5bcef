"""Nothing hangs over a heater, a radiator, a stove or a fireplace.

What it checks:
    Whether a piece hangs anywhere over something that grows hot, as its ``kind`` or its name
    tells. What a thing of another name is must be told by ``kind``, or it is not checked.

Why:
    Rising heat dries wood and paper, lifts paint and cracks mouldings, and brings soot and dust:
    Canadian Conservation Institute, Notes 10/3. Glue and adhesive strips let go.

Example:
    A painting 30 in over a radiator: caution, as is one over a fireplace. Beside the radiator it
    does not apply.

What to write instead:
    ``kind: radiator``, ``heater``, ``stove`` or ``fireplace`` for what grows hot. Hang the piece
    elsewhere, or put a deep shelf between.

"""

from __future__ import annotations

from collections.abc import Iterator

from templater.placement.model import PlacedPiece, Plan
from templater.rules.cautions.caution import Caution, Teller
from templater.rules.cautions.things import HEAT, list_under
from templater.rules.model import Finding

CODE = "over-heat"

_TELL = Teller(CODE, "Canadian Conservation Institute, Notes 10/3")
_MEND = "hang it elsewhere, or put a deep shelf between"


def check_over_heat(piece: PlacedPiece, plan: Plan) -> Iterator[Finding]:
    """Say what a piece hangs over that grows hot."""
    for thing in list_under(piece, plan):
        if not thing.is_known:
            yield _TELL.ask(piece, thing.ask_kind, other=thing.name)
        elif thing.is_of(HEAT):
            yield _TELL.warn(piece, f"over {thing.name}", _MEND, other=thing.name)


CAUTION = Caution(CODE, check_over_heat, str(__doc__))
