"""Holds every caution against every piece on the wall."""

from __future__ import annotations

from templater.memory import remember_last
from templater.placement.model import PlacedPiece, Plan
from templater.rules.cautions import (
    bare_screw,
    cable_zone,
    deep_fastener,
    earthquake,
    glass_size,
    heavy_piece,
    hook_rise,
    near_vent,
    near_water,
    outside_wall,
    outward_pull,
    over_heat,
    over_people,
    over_stairs,
    pipe_zone,
    standing_out,
    stud_edge,
    two_persons,
    weak_hook,
)
from templater.rules.cautions.caution import Caution
from templater.rules.model import Finding, Verdict

CAUTIONS: tuple[Caution, ...] = (
    hook_rise.CAUTION,
    cable_zone.CAUTION,
    pipe_zone.CAUTION,
    weak_hook.CAUTION,
    bare_screw.CAUTION,
    heavy_piece.CAUTION,
    stud_edge.CAUTION,
    deep_fastener.CAUTION,
    outward_pull.CAUTION,
    over_people.CAUTION,
    over_stairs.CAUTION,
    standing_out.CAUTION,
    earthquake.CAUTION,
    two_persons.CAUTION,
    glass_size.CAUTION,
    over_heat.CAUTION,
    near_water.CAUTION,
    near_vent.CAUTION,
    outside_wall.CAUTION,
)
"""Every caution, in the order in which it is told. A new one is a new file and a line here."""


@remember_last
def check_cautions(plan: Plan) -> tuple[Finding, ...]:
    """What each caution says of each piece, piece by piece."""
    return tuple(
        finding
        for piece in plan.pieces
        for caution in CAUTIONS
        for finding in _check(caution, piece, plan)
    )


def _check(caution: Caution, piece: PlacedPiece, plan: Plan) -> tuple[Finding, ...]:
    """What a caution says; that it does not apply, where it has nothing to say."""
    none = Finding(caution.code, piece.name, None, Verdict.NOT_APPLICABLE, None, None, None)
    return tuple(caution.check(piece, plan)) or (none,)
