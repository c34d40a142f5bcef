"""Large glass is thick enough, or is no glass.

What it checks:
    The thickness of the glass in a piece longer than 1 m on a side: at least 3 mm. Of such a piece
    ``made_of`` must tell its ``glazing``, or it is not checked.

Why:
    Picture glass is 2 mm thick, which bends and breaks when it is large; framers take 3 mm where
    it is wider than 1 m, or acrylic, which weighs half as much.

Example:
    A chart of 1200 by 700 mm behind 3 mm of glass: kept. Behind 2 mm: caution. Behind acrylic it
    does not apply.

What to write instead:
    ``made_of: {glazing: glass 3 mm}``, ``{glazing: acrylic 3 mm}`` or ``{glazing: none}``.

"""

from __future__ import annotations

from collections.abc import Iterator

from templater.layout.model import Material
from templater.lengths import format_length
from templater.mounting.amounts import SLACK_MM
from templater.placement.model import PlacedPiece, Plan
from templater.rules.cautions.caution import Caution, Teller
from templater.rules.holding import Holding, find_holding
from templater.rules.model import Finding

CODE = "glass-size"

LARGE_MM = 1000.0
"""A piece longer than this on a side asks for thick glass; a framer's guide to glazing."""

THICK_MM = 3.0
"""How thick glass is then; a framer's guide to glazing."""

_TELL = Teller(CODE, "a framer's guide to glazing")
_ASK = "add 'made_of' with its 'glazing' to the piece"
_MEND = "use acrylic, or glass of 3 mm"


def check_glass_size(piece: PlacedPiece, plan: Plan) -> Iterator[Finding]:
    """Hold the glass of a large piece against what does not break."""
    longest = max(piece.size)
    if longest <= LARGE_MM + SLACK_MM or find_holding(piece, plan) is Holding.LEDGE:
        return
    glazing = piece.made_of.glazing if piece.made_of else None
    if glazing is None:
        yield _TELL.ask(piece, _ASK)
    elif glazing.material is Material.GLASS:
        thick = glazing.thickness_mm
        shown = "thickness not given" if thick is None else f"{thick:g} mm thick"
        figure, band = f"glass {format_length(longest, plan.units)} long, {shown}", "3 mm or more"
        if thick is None or thick < THICK_MM - SLACK_MM:
            yield _TELL.warn(piece, figure, _MEND, band=band)
        else:
            yield _TELL.clear(piece, figure, band)


CAUTION = Caution(CODE, check_glass_size, str(__doc__))
