"""A hole is drilled where no pipe is likely.

What it checks:
    Whether a hole is plumb over or under a pipe chase, a radiator, a tap, a sink, a basin, a bath
    or a shower, or within 2 in of that on either side.

Why:
    Pipes rise and fall straight from what they serve, and in a chase from floor to ceiling. Common
    practice, no source. It is a likelihood: a pipe may be anywhere.

Example:
    A pipe chase reaches from 100 to 112 in from the wall's left end. A hole at 98 in: caution. One
    at 97 in is clear.

What to write instead:
    The ``kind`` of each fixture: pipe chase, radiator, sink, bath, shower, tap. Move the piece, or
    hang it by other hardware. Whatever is found here, use a detector; local codes and licensed
    trades decide.

"""

from __future__ import annotations

from collections.abc import Iterator

from templater.mounting.amounts import SLACK_MM
from templater.placement.model import PlacedPiece, Plan
from templater.rules.cautions.caution import Caution, Teller, name_hole
from templater.rules.cautions.things import PIPED, Thing, list_things
from templater.rules.model import Finding

CODE = "pipe-zone"

ASIDE_MM = 2 * 25.4
"""A pipe may run so far beside what it serves; common practice, no source."""

_TELL = Teller(CODE, "common practice, no source")
_MEND = "look for a pipe with a detector first; if in doubt, do not drill"


def check_pipe_zone(piece: PlacedPiece, plan: Plan) -> Iterator[Finding]:
    """Hold each hole of a piece against where pipes are likely."""
    things = list(list_things(plan))
    for number, mark in enumerate(piece.marks, start=1):
        for thing in things:
            if not _is_in_line(mark.hole.x, thing):
                continue
            way = "over" if mark.hole.y > thing.box.centre.y else "under"
            if thing.is_of(PIPED):
                yield _TELL.warn(piece, f"plumb {way} {thing.name}", _MEND, other=name_hole(number))
            elif not thing.is_known:
                yield _TELL.ask(piece, thing.ask_kind, other=name_hole(number))


def _is_in_line(x: float, thing: Thing) -> bool:
    reach = ASIDE_MM + SLACK_MM
    return thing.box.x0 - reach <= x <= thing.box.x1 + reach


CAUTION = Caution(CODE, check_pipe_zone, str(__doc__), is_of_holes=True)
