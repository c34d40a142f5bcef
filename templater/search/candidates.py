"""Lists the candidates to be judged: each way with each gap and, of a pool, each set worth a look."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from templater.geometry import Size
from templater.layout.model import Arrangement, Group
from templater.placement.model import Plan
from templater.search.pool import choose_sets
from templater.search.target import USUAL_GAP_MM, find_target, list_gaps
from templater.search.ways import Way, list_ways

NARROWER = (1.0, 0.8, 0.6, 0.4, 0.2)
"""The shares of the target width at which a pool is searched, until a set can be placed at all."""

_CLUSTER_GAP_STEP = 4
"""A cluster, being a search of its own, is tried with every so-manieth gap only."""


def list_candidates(group: Group, sizes: Mapping[str, Size], plan: Plan) -> Iterator[Iterable[Group]]:
    """Rounds of candidates, each a group that leaves nothing open; a round is for when the last failed.

    Without a pool there is one round: each way with each gap. With one, its sets of about the
    target width, then of less.
    """
    gaps = list_gaps(group, plan.units)
    choice = group.open_choice
    if choice is None or choice.pool is None:
        ways = list_ways(group, len(group.members))
        yield _with_gaps(group, ((way, group.members) for way in ways), gaps)
        return
    target = find_target(group, plan) or 0.0
    for share in NARROWER:
        yield _with_gaps(group, choose_sets(group, choice, sizes, gaps, target * share), gaps)


def _with_gaps(
    group: Group, composed: Iterable[tuple[Way, tuple[str, ...]]], gaps: Sequence[float]
) -> Iterator[Group]:
    """Ways and their pieces with every gap worth a try; a chosen cluster with the usual one alone."""
    few = gaps[::_CLUSTER_GAP_STEP] if group.members else (min(gaps, key=_off_usual),)
    for way, members in composed:
        for gap in few if way.arrange is Arrangement.CLUSTER else gaps:
            yield way.settle(group, members, gap)


def _off_usual(gap_mm: float) -> float:
    return abs(gap_mm - USUAL_GAP_MM)
