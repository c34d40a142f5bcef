"""On an outside wall air can pass behind what hangs.

What it checks:
    Whether the wall has the weather on its other side: ``outside: yes`` in ``wall``. Without
    ``outside`` it is not checked.

Why:
    An outside wall is colder than the room: damp settles behind a frame that lies close to it, and
    mould follows: Canadian Conservation Institute, Notes 10/3.

Example:
    A print on a wall with ``outside: yes``: caution, "let air pass behind it". On one with
    ``outside: no`` it does not apply.

What to write instead:
    ``outside: yes`` or ``no`` in ``wall``. Hang what is precious on an inside wall; else put
    spacers at the frame's lower corners.

"""

from __future__ import annotations

from collections.abc import Iterator

from templater.placement.model import PlacedPiece, Plan
from templater.rules.cautions.caution import Caution, Teller
from templater.rules.model import Finding

CODE = "outside-wall"

_TELL = Teller(CODE, "Canadian Conservation Institute, Notes 10/3")
_ASK = "add 'outside: yes' or 'outside: no' to 'wall'"
_MEND = "let air pass behind it: spacers at its lower corners"


def check_outside_wall(piece: PlacedPiece, plan: Plan) -> Iterator[Finding]:
    """Say what an outside wall asks of a piece."""
    if plan.is_outside is None:
        yield _TELL.ask(piece, _ASK)
    elif plan.is_outside:
        yield _TELL.warn(piece, None, _MEND)


CAUTION = Caution(CODE, check_outside_wall, str(__doc__))
