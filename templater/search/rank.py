"""Ranks what was judged, and picks the best that are clearly different from one another."""

from __future__ import annotations

from collections.abc import Sequence

from templater.search.model import Proposal
from templater.search.target import USUAL_GAP_MM

PROPOSALS = 3
"""How many ways are proposed."""

_OTHER_GAP_MM = 12.7
"""From half an inch on one sees that a gap is another."""

_SAME_MM = 0.1


def rank(proposals: Sequence[Proposal], target_mm: float | None) -> list[Proposal]:
    """All proposals, the best first.

    What counts, in this order: fewest rules broken by the group, and fewest times; nearness of its
    width to the target (two thirds of the furniture's width), if there is one; balance, which is
    how near the middle of all areas lies to the centre of the whole, to half an inch; how near the
    gap is to 3 in; more of the pool's pieces; the order in which candidates are listed. What
    cannot be placed is no proposal at all.
    """
    return sorted(proposals, key=lambda proposal: _key(proposal, target_mm))


def _key(proposal: Proposal, target_mm: float | None) -> tuple[float, ...]:
    figures = proposal.figures
    return (
        len(proposal.broken_rules),
        len(proposal.broken),
        0.0 if target_mm is None else round(abs(figures.width_mm - target_mm), 3),
        round(figures.imbalance_mm / _OTHER_GAP_MM),
        round(abs(figures.gap_mm - USUAL_GAP_MM), 3),
        -len(proposal.placed.pieces),
    )


def pick_different(ranked: Sequence[Proposal]) -> tuple[Proposal, ...]:
    """The best, then others clearly different from it and from one another, in their order.

    Other compositions that break no more rules come first; then whatever is best.
    """
    fewest = len(ranked[0].broken_rules)
    picked = {0: ranked[0]}
    for is_wanted in (
        lambda each, other: len(each.broken_rules) <= fewest and _is_new(each, other),
        _differ,
    ):
        for place, proposal in enumerate(ranked):
            if len(picked) < PROPOSALS and all(is_wanted(proposal, one) for one in picked.values()):
                picked[place] = proposal
    return tuple(ranked[place] for place in sorted(picked))


def _is_new(proposal: Proposal, other: Proposal) -> bool:
    """Whether it is of another composition, and looks different."""
    return proposal.composition != other.composition and not _look_alike(proposal, other)


def _differ(one: Proposal, other: Proposal) -> bool:
    """Whether two ways are clearly different.

    Another composition, another number of pieces, half of the pieces exchanged, or a gap
    half an inch larger or smaller.
    """
    if _look_alike(one, other):
        return False
    mine, others = set(one.group.members), set(other.group.members)
    exchanged = len(mine - others)
    return (
        one.composition != other.composition
        or len(mine) != len(others)
        or 2 * exchanged >= len(mine)
        or abs(one.figures.gap_mm - other.figures.gap_mm) > _OTHER_GAP_MM - _SAME_MM
    )


def _look_alike(one: Proposal, other: Proposal) -> bool:
    """Whether the same pieces hang in the same places, whatever the arrangement is called."""
    mine, others = _shape(one), _shape(other)
    return mine.keys() == others.keys() and all(
        abs(a - b) < _SAME_MM for name in mine for a, b in zip(mine[name], others[name], strict=True)
    )


def _shape(proposal: Proposal) -> dict[str, tuple[float, ...]]:
    """Where each part hangs inside the group, by its name."""
    (x, y), parts = proposal.placed.box.corner, proposal.placed.parts
    return {name: tuple(box.moved(-x, -y)) for name, box in parts}
