"""It is known how far a hook's nail is above the place where the hook bears.

What it checks:
    Whether ``rise`` is given where a hole takes a hook: one that the layout names, a picture hook, a
    closed hook, or one whose kind is not chosen because no weight is given. What hangs on a nail, on
    keyholes or on a cleat has no hook, nor is one needed where a screw goes into the wall.

Why:
    Without a rise the cross is where the hook bears. Its nail goes in above that: driven at the cross
    it lets the piece hang too low by the rise, often 10 to 20 mm. Common practice, no source.

Example:
    A mirror on two rings, without ``rise``: caution, "let the hook bear at the cross, its nail above".
    With ``rise: 1/2 in`` the cross is where the nail goes: it does not apply.

What to write instead:
    ``rise: 1/2 in`` in ``hang`` or, of a hook, in ``hardware``: from where the piece bears on the
    hook up to the nail. ``rise: 0 in`` for a nail or a screw without a hook, driven at the cross.

"""

from __future__ import annotations

from collections.abc import Iterator

from templater.layout.model import Hanger
from templater.placement.model import PlacedPiece, Plan
from templater.rules.cautions.caution import Caution, Teller, name_hole
from templater.rules.fasteners.choose import choose_fasteners
from templater.rules.model import Finding

CODE = "hook-rise"

BEAR_AT_CROSS = "let the hook bear at the cross, its nail above"
"""What to do where the holes are made, when the layout can no longer be mended."""

_FIGURE = "rise not given"
_MEND = f"{BEAR_AT_CROSS}; or add 'rise'"

_ON_HOOKS = (Hanger.WIRE, Hanger.D_RINGS, Hanger.SAWTOOTH)
_TELL = Teller(CODE, "common practice, no source")


def check_hook_rise(piece: PlacedPiece, plan: Plan) -> Iterator[Finding]:
    """Say at which holes a hook's nail goes above the cross, nobody knows how far."""
    if not _lacks_rise(piece):
        return
    fasteners = choose_fasteners(piece, plan)
    if fasteners and all(fastener.is_hook for fastener in fasteners):
        yield _TELL.warn(piece, _FIGURE, _MEND)
        return
    for number, fastener in enumerate(fasteners, start=1):
        if fastener.is_hook:
            yield _TELL.warn(piece, _FIGURE, _MEND, other=name_hole(number))


def _lacks_rise(piece: PlacedPiece) -> bool:
    """Whether a piece hangs by what may take a hook whose rise nobody has given."""
    hang = piece.hang
    if hang is None or hang.rise_mm is not None:
        return False
    return hang.by in _ON_HOOKS if hang.hook is None else hang.hook.rise_mm is None


CAUTION = Caution(CODE, check_hook_rise, str(__doc__), is_of_holes=True)
