"""What hangs on a wall, counted and told in the same words on every page."""

from __future__ import annotations

from templater.placement.model import PlacedPiece, Plan
from templater.rules.holding import Holding, find_holding

_SUPPORTS = {
    Holding.ON_LEDGE: "stands on the ledge",
    Holding.RAIL: "hangs from the rail",
    Holding.STRIPS: "adhesive strips",
}
"""What holds a piece without a hole."""


def count_things(number: int, thing: str) -> str:
    """``1 hole``, ``2 holes``."""
    return f"{number} {thing}" if number == 1 else f"{number} {thing}s"


def count_pieces(plan: Plan) -> str:
    """``14 pieces and a ledge``: a ledge has a template, but nobody calls it a piece."""
    ledges = sum(is_ledge(piece, plan) for piece in plan.pieces)
    pieces = count_things(len(plan.pieces) - ledges, "piece")
    if not ledges:
        return pieces
    return f"{pieces} and {'a ledge' if ledges == 1 else f'{ledges} ledges'}"


def is_ledge(piece: PlacedPiece, plan: Plan) -> bool:
    """Whether it is a ledge on which others of its group stand."""
    return find_holding(piece, plan) is Holding.LEDGE


def tell_no_hole(piece: PlacedPiece, plan: Plan) -> str:
    """Of a piece without a hole, what holds it: ``none: hangs from the rail``; else ``none yet``."""
    support = _SUPPORTS.get(find_holding(piece, plan))
    return f"none: {support}" if support else "none yet"


def needs_no_hole(piece: PlacedPiece, plan: Plan) -> bool:
    """Whether a piece is held by something else than hardware in a hole."""
    return find_holding(piece, plan) in _SUPPORTS
