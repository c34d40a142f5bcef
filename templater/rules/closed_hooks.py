"""Which pieces are to hang on closed hooks, for the cautions that ask for them and the shopping list."""

from __future__ import annotations

from templater.mounting.amounts import SLACK_MM
from templater.placement.model import PlacedPiece, Plan
from templater.rules.cautions.things import PEOPLE, list_under
from templater.rules.cautions.weights import POUND_KG, find_borne_kg
from templater.rules.holding import Holding, find_holding

LIGHT_KG = 20 * POUND_KG
"""Lighter than this a closed hook need not be in a stud; Earthquake Country Alliance."""


def needs_closed_hooks(piece: PlacedPiece, plan: Plan) -> bool:
    """Whether what hangs on hooks must not let go: the ground may shake, or people are below."""
    if find_holding(piece, plan) is not Holding.HOOKS:
        return False
    return bool(plan.is_earthquake) or any(thing.is_of(PEOPLE) for thing in list_under(piece, plan))


def needs_stud(piece: PlacedPiece, plan: Plan) -> bool:
    """Whether it is too heavy to hang on anything but a stud or a solid wall if the ground shakes."""
    kg = find_borne_kg(piece, plan)
    return bool(plan.is_earthquake) and (kg is None or kg >= LIGHT_KG - SLACK_MM)
