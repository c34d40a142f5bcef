"""A hook is rated by its maker for more than what pulls on it.

What it checks:
    The ``rating`` of the hook that a piece names against twice the load on each of its holes: down
    and, on a wire with two hooks, sideways. Of an estimated weight the most that it may be counts.
    Without a rating or a weight it is not checked; where no hook is named it does not apply.

Why:
    The maker's rating goes before any formula. That it should be twice the load is common practice,
    no source: two hooks never share a load evenly, and frames are bumped.

Example:
    A mirror of 20 lb on two hooks, each rated 30 lb: each bears 10 lb, 20 lb are asked for: kept.
    On one such hook 40 lb are asked for: caution.

What to write instead:
    ``hardware: [{name: brass hook, rating: 30 lb}]`` and ``hook: brass hook`` in ``hang``, with the
    ``weight`` of the piece. Use a stronger hook, or two.

"""

from __future__ import annotations

from collections.abc import Iterator

from templater.placement.model import PlacedPiece, Plan
from templater.rules.cautions.caution import Caution, Teller, name_hole
from templater.rules.fasteners.choose import RATING_FACTOR, choose_fasteners
from templater.rules.fasteners.wording import format_least, format_rating
from templater.rules.model import Finding

CODE = "weak-hook"

_TELL = Teller(CODE, "the maker's rating; its margin is common practice, no source")
_ASK_WEIGHT = "add 'weight' to the piece, or what it is 'made_of'"
_ASK_RATING = "add the hook's 'rating' to 'hardware'"
_MEND = "use a stronger hook, or two"


def check_weak_hook(piece: PlacedPiece, plan: Plan) -> Iterator[Finding]:
    """Hold the rating of a piece's hook against the load on each of its holes."""
    for number, fastener in enumerate(choose_fasteners(piece, plan), start=1):
        if fastener.hook is None:
            continue
        if fastener.load is None or fastener.hook.rating_kg is None:
            yield _TELL.ask(piece, _ASK_WEIGHT if fastener.load is None else _ASK_RATING)
            return
        figure = f"rated {format_rating(fastener.hook.rating_kg, plan.units)}"
        band = f"{format_least(fastener, plan.units)} or more ({RATING_FACTOR:g} × the load)"
        hole = name_hole(number)
        if fastener.is_too_weak:
            too_little = f"{figure}, {format_least(fastener, plan.units)} asked for"
            yield _TELL.warn(piece, too_little, _MEND, band=band, other=hole)
        else:
            yield _TELL.clear(piece, figure, band, other=hole)


CAUTION = Caution(CODE, check_weak_hook, str(__doc__), is_of_holes=True)
