"""It is known how far a hook's nail is above the place where the hook bears.

What it checks:
    Whether ``rise`` is given where a hole takes a hook: one that the layout names, a picture hook, a
    closed hook, or one whose kind is not chosen because no weight is given. What hangs on a nail, on
    keyholes or on a cleat has no hook, nor is one needed where a screw goes into the wall. A closed
    hook has a rise also where ``rise: 0 in`` was given for a nail.

Why:
    Without a rise the cross is where the hook bears. Its nail goes in above that: driven at the cross
    it lets the piece hang too low by the rise, often 10 to 20 mm. Common practice, no source.

Example:
    A mirror on two rings, without ``rise``: caution, "let the hook bear at the cross, its nail or
    screw above".
    With ``rise: 1/2 in`` the cross is where the nail goes: it does not apply.

What to write instead:
    ``rise: 1/2 in`` in ``hang`` or, of a hook, in ``hardware``: from where the piece bears on the
    hook up to the nail. ``rise: 0 in`` for a nail or a screw without a hook, driven at the cross.

"""

from __future__ import annotations

from collections.abc import Iterator

from templater.layout.model import Hanger, Hanging
from templater.placement.model import PlacedPiece, Plan
from templater.rules.cautions.caution import Caution, Teller, name_hole
from templater.rules.closed_hooks import needs_closed_hooks
from templater.rules.fasteners.choose import Fastener, choose_fasteners
from templater.rules.model import Finding

CODE = "hook-rise"

BEAR_AT_CROSS = "let the hook bear at the cross, its nail or screw above"
"""What to do where the holes are made, when the layout can no longer be mended."""

_FIGURE = "rise not given"
_FIGURE_CLOSED = "rise of its closed hook not given"
_MEND = f"{BEAR_AT_CROSS}; or add 'rise'"

_ON_HOOKS = (Hanger.WIRE, Hanger.D_RINGS, Hanger.SAWTOOTH)
_TELL = Teller(CODE, "common practice, no source")


def check_hook_rise(piece: PlacedPiece, plan: Plan) -> Iterator[Finding]:
    """Say at which holes a hook's nail goes above the cross, nobody knows how far."""
    hang = piece.hang
    if hang is None or hang.rise_mm or _is_told_by_hook(hang):
        return
    is_open = hang.rise_mm is None and (hang.hook is not None or hang.by in _ON_HOOKS)
    figure = _FIGURE if is_open else _FIGURE_CLOSED
    fasteners = choose_fasteners(piece, plan)
    told = [each.is_hook if is_open else _takes_closed(each, piece, plan) for each in fasteners]
    if told and all(told):
        yield _TELL.warn(piece, figure, _MEND, at_wall=BEAR_AT_CROSS)
        return
    for number, is_told in enumerate(told, start=1):
        if is_told:
            hole = name_hole(number)
            yield _TELL.warn(piece, figure, _MEND, other=hole, at_wall=BEAR_AT_CROSS)


def _is_told_by_hook(hang: Hanging) -> bool:
    """Whether a named hook has a rise, its own or one given for it, which is taken at its word."""
    if hang.hook is None:
        return False
    return hang.rise_mm is not None or hang.hook.rise_mm is not None


def _takes_closed(fastener: Fastener, piece: PlacedPiece, plan: Plan) -> bool:
    """Whether a hole whose nail was to bear at the cross takes a closed hook in its place."""
    is_unknown = fastener.kind is None and not fastener.hook
    return fastener.is_closed or (is_unknown and needs_closed_hooks(piece, plan))


CAUTION = Caution(CODE, check_hook_rise, str(__doc__), is_of_holes=True)
