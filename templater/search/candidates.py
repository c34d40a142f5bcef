"""Lists the candidates to be judged: each way with each gap and, of a pool, each set worth a look."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from templater.geometry import Size
from templater.layout.model import Arrangement, Group
from templater.placement.model import Plan
from templater.search.extent import Allowance
from templater.search.pool import choose_sets
from templater.search.target import USUAL_GAP_MM, find_target, list_gaps
from templater.search.ways import Way, list_ways

NARROWER = (1.0, 0.8, 0.6, 0.4, 0.2)
"""The shares of the target width at which a pool is searched, until a set can be placed at all."""

_CLUSTER_GAP_STEP = 4
"""A cluster, being a search of its own, is tried with every so-manieth gap only."""

_LEAST_SHARE = 10
"""A round for when others failed may take at least this part of the effort, one in so many."""


@dataclass(frozen=True, slots=True)
class Round:
    """Candidates to be judged, each a group that leaves nothing open, and how many there were."""

    groups: tuple[Group, ...]
    listed: int


@dataclass(frozen=True, slots=True)
class _Candidate:
    """A way to settle a group; of those with a lower rank more is expected."""

    group: Group
    rank: int


def list_candidates(
    group: Group, sizes: Mapping[str, Size], plan: Plan, allowance: Allowance
) -> Iterator[Round]:
    """Rounds of candidates; a round is for when the last failed.

    Without a pool there is one round: each way with each gap. With one, its sets of about the
    target width, then of less. Where the allowance is not enough for all, those are left out whose
    gap and set are the least likely.
    """
    gaps = list_gaps(group, plan.units)
    choice = group.open_choice
    left = allowance.effort
    if choice is None or choice.pool is None:
        ways = list_ways(group, len(group.members))
        yield _thin(_with_gaps(group, ((way, group.members) for way in ways), gaps), left, allowance)
        return
    target = find_target(group, plan) or 0.0
    for share in NARROWER:
        sets = choose_sets(group, choice, sizes, gaps, target * share, allowance=allowance)
        candidates = _thin(_with_gaps(group, sets, gaps), left, allowance)
        yield candidates
        left -= sum(allowance.find_cost(each) for each in candidates.groups)
        left = max(left, allowance.effort // _LEAST_SHARE)


def _with_gaps(
    group: Group, composed: Iterable[tuple[Way, tuple[str, ...]]], gaps: Sequence[float]
) -> Iterator[_Candidate]:
    """Ways and their pieces with every gap worth a try; a chosen cluster with the usual one alone.

    Their ranks: how many gaps are nearer to the usual one, and how many sets of the way come before.
    """
    usual = sorted(gaps, key=_off_usual)
    few = gaps[::_CLUSTER_GAP_STEP] if group.members else usual[:1]
    before: dict[Way, int] = {}
    for way, members in composed:
        sets = before[way] = before.get(way, -1) + 1
        for gap in few if way.arrange is Arrangement.CLUSTER else gaps:
            yield _Candidate(way.settle(group, members, gap), usual.index(gap) + sets)


def _off_usual(gap_mm: float) -> float:
    return abs(gap_mm - USUAL_GAP_MM)


def _thin(candidates: Iterable[_Candidate], effort: int, allowance: Allowance) -> Round:
    """As many candidates as an effort allows, those with the least ranks, and one at least."""
    listed = list(candidates)
    kept: set[int] = set()
    for number in sorted(range(len(listed)), key=lambda number: listed[number].rank):
        cost = allowance.find_cost(listed[number].group)
        if cost <= effort or not kept:
            kept.add(number)
            effort -= cost
    return Round(tuple(each.group for number, each in enumerate(listed) if number in kept), len(listed))
