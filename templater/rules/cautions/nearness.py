"""Holds the clear distance from a piece to things of one kind against the least that is wise."""

from __future__ import annotations

from collections.abc import Iterator, Set

from templater.placement.model import PlacedPiece, Plan
from templater.rules.band import Band
from templater.rules.cautions.caution import Teller
from templater.rules.cautions.things import list_things
from templater.rules.model import Finding
from templater.rules.spacing import measure_gap


def check_nearness(
    piece: PlacedPiece, plan: Plan, teller: Teller, *, words: Set[str], free: Band, mend: str
) -> Iterator[Finding]:
    """Say which things are too near; if none is, the nearest is told as far enough."""
    things = [thing for thing in list_things(plan) if thing.is_of(words) or not thing.is_known]
    gaps = sorted((measure_gap(piece.box, thing.box), number) for number, thing in enumerate(things))
    band = free.format_range(plan.units)
    is_told = False
    for gap, number in gaps:
        thing = things[number]
        if free.change(gap) and not thing.is_known:
            yield teller.ask(piece, thing.ask_kind, other=thing.name)
        elif free.change(gap):
            figure = f"{free.format_value(max(gap, 0.0), plan.units)} from {thing.name}"
            yield teller.warn(piece, figure, mend, band=band, other=thing.name)
        elif thing.is_known and not is_told:
            figure = f"{free.format_value(gap, plan.units)} from {thing.name}"
            yield teller.clear(piece, figure, band, other=thing.name)
        else:
            continue
        is_told = True
