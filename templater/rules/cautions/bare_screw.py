"""The screws of a hook meet something that holds them: a stud, an anchor or a plug.

What it checks:
    Of a hook that the layout names, by its name and what it ``needs``: screws in a hollow or
    doubtful hole, screws or nails in a solid wall. A hook of which anchors, plugs or toggles are
    told, or that it is made for masonry, is let pass. Without ``needs`` it is not checked.

Why:
    A hook's rating holds where its maker says. A screw alone pulls out of a board, and turns loose
    in masonry; a common nail bends there. Common practice, no source.

Example:
    A hook that ``needs: a screw``, 100 mm from the next stud, with a load of 10 lb: caution, "put each
    screw into a hollow-wall anchor, rated 40 lb or more", and the shopping list has the anchor. In
    the stud it does not apply. A picture hook with a nail in drywall: does not apply.

What to write instead:
    ``needs: two screws``, ``needs: a nail``, ``needs: a toggle`` in ``hardware``; ``studs`` and
    ``surface`` in ``wall``. Move the piece to a stud, or use what is made for the wall.

"""

from __future__ import annotations

from collections.abc import Iterator

from templater.placement.model import PlacedPiece, Plan
from templater.rules.cautions.caution import Caution, Teller, name_hole
from templater.rules.fasteners.beside import Beside, brings_its_own, is_nailed, is_screwed
from templater.rules.fasteners.choose import Fastener, choose_fasteners
from templater.rules.fasteners.wording import format_beside
from templater.rules.holes import HoleWall
from templater.rules.model import Finding

CODE = "bare-screw"

_TELL = Teller(CODE, "common practice, no source")
_ASK = "add what the hook 'needs' to 'hardware'"
_MEND_NAIL = "use a hook made for such walls, or one on a masonry plug and screw"
_FIGURES = {
    Beside.ANCHOR: "a screw in the hollow",
    Beside.PROBE: "a screw, perhaps in the hollow",
    Beside.PLUG: "a screw in a solid wall",
}
_DOUBTED = (HoleWall.HOLLOW, HoleWall.DOUBTFUL, HoleWall.SOLID)


def check_bare_screw(piece: PlacedPiece, plan: Plan) -> Iterator[Finding]:
    """Say which screws and nails of a piece's hook do not hold in what they meet."""
    for number, fastener in enumerate(choose_fasteners(piece, plan), start=1):
        if fastener.hook is None:
            continue
        hole = name_hole(number)
        if fastener.beside is not None:
            mend = f"put each screw into a {format_beside(fastener, plan.units)}"
            yield _TELL.warn(piece, _FIGURES[fastener.beside], mend, other=hole)
        elif _is_nailed_in_stone(fastener):
            yield _TELL.warn(piece, "a nail in a solid wall", _MEND_NAIL, other=hole)
        elif fastener.wall in _DOUBTED and _is_untold(fastener):
            yield _TELL.ask(piece, _ASK)
            return


def _is_nailed_in_stone(fastener: Fastener) -> bool:
    hook = fastener.hook
    is_common = hook is not None and is_nailed(hook) and not brings_its_own(hook)
    return is_common and fastener.wall is HoleWall.SOLID


def _is_untold(fastener: Fastener) -> bool:
    """Whether nobody has said by what a hook is fastened."""
    hook = fastener.hook
    return hook is not None and not (is_nailed(hook) or is_screwed(hook) or brings_its_own(hook))


CAUTION = Caution(CODE, check_bare_screw, str(__doc__), is_of_holes=True)
