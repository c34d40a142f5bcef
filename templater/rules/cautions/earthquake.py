"""In earthquake country a piece can neither jump off its hook nor swing.

What it checks:
    On a wall with ``earthquake: yes`` by what a piece is to be held, as heavy as it is and as it
    hangs. Without ``earthquake`` in ``wall`` it is not checked.

Why:
    An open hook lets go at the first jolt. Lighter than 20 lb a closed hook and putty at the lower
    corners hold it; up to 50 lb a closed hook in a stud; what is heavier is for someone who does
    such work: Earthquake Country Alliance. Two hooks for what is large, and none over beds: FEMA,
    "Mount framed pictures and mirrors securely", April 2008. What keyholes, cleats, ledges and
    picture rails ask for is common practice, no source.

Example:
    A print of 6 lb: caution, "hang it on a closed hook, with putty at the lower corners", and the
    shopping list has a closed hook. On a ledge: "hold it with putty, behind a lip". A mirror of
    60 lb: caution, "leave it to a licensed installer". On a wall with ``earthquake: no`` it does
    not apply.

What to write instead:
    ``earthquake: yes`` or ``no`` in ``wall``, and the ``weight`` of each piece.

"""

from __future__ import annotations

from collections.abc import Iterator

from templater.layout.model import Surface
from templater.mounting.amounts import SLACK_MM
from templater.placement.model import PlacedPiece, Plan
from templater.rules.cautions.caution import Caution, Teller
from templater.rules.cautions.weights import POUND_KG, find_borne_kg, format_pounds
from templater.rules.closed_hooks import LIGHT_KG, needs_stud
from templater.rules.holding import Holding, find_holding
from templater.rules.holes import HoleWall, find_hole_wall
from templater.rules.model import Finding

CODE = "earthquake"

HEAVY_KG = 50 * POUND_KG
"""Heavier than this other help is needed; Earthquake Country Alliance."""

_ALLIANCE = Teller(
    CODE,
    'Earthquake Country Alliance; FEMA, "Mount framed pictures and mirrors securely", April 2008',
)
_USUAL = Teller(CODE, "common practice, no source")
_PUBLISHED = (Holding.HOOKS, Holding.STRIPS, Holding.NOT_KNOWN)
_ASK = "add 'earthquake: yes' or 'earthquake: no' to 'wall'"
_PUTTY = "with putty at the lower corners"
_LOCKED = "and set its security lock"
_ON_HOOK = "hang it on a closed hook{where}, {too}"
_ON_NAMED = "see that {hook} is a closed hook{where}, {too}"
_ON_SCREWS = "set every screw where it holds firmly"
_WAYS = {
    Holding.KEYHOLES: ("{hold}, so that it cannot lift off its screws", "the screws"),
    Holding.CLEAT: ("{hold}, so that it cannot lift off its rail", "the rail's screws"),
    Holding.ON_LEDGE: ("hold it with putty, behind a lip along the ledge", "the ledge's screws"),
    Holding.RAIL: (f"hang it by closed hooks and knotted cords, {_PUTTY}", "the rail's screws"),
    Holding.STRIPS: (f"hang it on a closed hook{{where}} in place of adhesive strips, {_PUTTY}", ""),
}
"""What is to be done by what holds a piece, and which screws must be firm if it is heavy."""


def check_earthquake(piece: PlacedPiece, plan: Plan) -> Iterator[Finding]:
    """Say by what a piece is to be held where the ground may shake."""
    if plan.is_earthquake is None:
        yield _ALLIANCE.ask(piece, _ASK)
    elif plan.is_earthquake:
        kg = find_borne_kg(piece, plan)
        if kg is not None and kg > HEAVY_KG + SLACK_MM:
            figure = f"over {format_pounds(HEAVY_KG, plan.units)}"
            yield _ALLIANCE.warn(piece, figure, "leave it to a licensed installer")
            return
        holding = find_holding(piece, plan)
        teller = _ALLIANCE if holding in _PUBLISHED else _USUAL
        yield teller.warn(piece, _tell_weight(kg, plan), _tell_mend(piece, plan, holding))


def _tell_weight(kg: float | None, plan: Plan) -> str:
    light = format_pounds(LIGHT_KG, plan.units)
    if kg is None:
        return "weight not given"
    return f"under {light}" if kg < LIGHT_KG - SLACK_MM else f"{light} or more"


def _tell_mend(piece: PlacedPiece, plan: Plan, holding: Holding) -> str:
    """By what a piece is to be held, and in what its screws are to be where it is heavy."""
    is_heavy, firm = needs_stud(piece, plan), _name_firm(plan)
    if holding is Holding.LEDGE:
        act, screws = f"set its screws in {firm}" if is_heavy else _ON_SCREWS, ""
    else:
        act, screws = _find_way(piece, holding, f" in {firm}" if is_heavy else "")
    if is_heavy and screws:
        act += f"; {screws} in {firm}"
    walls = [find_hole_wall(mark.hole.x, plan) for mark in piece.marks if not mark.is_lock]
    if is_heavy and HoleWall.HOLLOW in walls:
        act += "; not every hole is at a stud: move it"
    return act


def _find_way(piece: PlacedPiece, holding: Holding, where: str) -> tuple[str, str]:
    """What is to be done, the hook ``where`` it must be, and which other screws must be firm."""
    hook = piece.hang.hook if piece.hang else None
    has_lock = any(mark.is_lock for mark in piece.marks)
    hold = "set its security lock" if has_lock else "hold its lower corners with putty"
    act, screws = _WAYS.get(holding, (_ON_NAMED if hook else _ON_HOOK, ""))
    too, name = _LOCKED if has_lock else _PUTTY, hook.name if hook else ""
    return act.format(hold=hold, where=where, hook=name, too=too), screws


def _name_firm(plan: Plan) -> str:
    """What of a wall holds a screw for certain."""
    surface = plan.wall_surface
    if surface is Surface.WOOD:
        return "the wood"
    return "the solid wall" if surface is not None and surface.is_solid else "a stud"


CAUTION = Caution(CODE, check_earthquake, str(__doc__))
