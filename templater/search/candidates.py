"""Lists the candidates to be judged: ways, gaps and, of a pool, the sets of pieces worth a look."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from heapq import nsmallest
from itertools import combinations

from templater.geometry import Size
from templater.layout.model import Arrangement, Group, OpenChoice
from templater.placement.model import Plan
from templater.search.target import USUAL_GAP_MM, find_target, list_gaps
from templater.search.ways import Way, list_ways

LONGEST_POOL = 16
"""A pool up to this long is searched whole, 65,535 sets; of a longer one so many pieces are taken,
evenly from the narrowest to the widest."""

SETS_JUDGED = 16
"""How many sets of a pool are judged for each arrangement, with every gap."""

CLUSTERS_JUDGED = 2
"""How many sets are judged as clusters, each of which is a search of its own."""

_CLUSTER_GAP_STEP = 4
"""Every how many gaps a cluster is tried, for the same reason."""


@dataclass(frozen=True, slots=True)
class Candidate:
    """A set of pieces and the way in which they are to be composed."""

    way: Way
    members: tuple[str, ...]


def list_candidates(group: Group, sizes: Mapping[str, Size], plan: Plan) -> Iterator[Group]:
    """Every candidate as a group that leaves nothing open.

    Without a pool: each way with each gap. With one: of all its sets those that come nearest the
    target width, ``SETS_JUDGED`` a way; for rows, columns and grids that nearness is exact, so
    that the nearest row of all is among them.
    """
    gaps = list_gaps(group, plan.units)
    choice = group.open_choice
    if choice is None or choice.pool is None:
        chosen: Iterable[Candidate] = (
            Candidate(way, group.members) for way in list_ways(group, len(group.members))
        )
    else:
        chosen = _choose_sets(group, choice, sizes, plan)
    for each in chosen:
        for gap in _gaps_for(each.way, group, gaps):
            yield each.way.settle(group, each.members, gap)


def _gaps_for(way: Way, group: Group, gaps: Sequence[float]) -> Sequence[float]:
    """The gaps worth a try: all, but of a cluster few."""
    if way.arrange is not Arrangement.CLUSTER:
        return gaps
    is_chosen = group.open_choice is not None and group.open_choice.pool is not None
    return [min(gaps, key=_off_usual)] if is_chosen else gaps[::_CLUSTER_GAP_STEP]


def _off_usual(gap: float) -> float:
    return abs(gap - USUAL_GAP_MM)


def _choose_sets(
    group: Group, choice: OpenChoice, sizes: Mapping[str, Size], plan: Plan
) -> Iterator[Candidate]:
    """For each arrangement the sets of a pool that come nearest the target width."""
    gaps, target = list_gaps(group, plan.units), find_target(group, plan) or 0.0

    def off(pair: tuple[Way, tuple[str, ...]]) -> tuple[float, ...]:
        return _measure(pair[0], [sizes[name] for name in pair[1]], gaps, target)

    counts = range(len(choice.pool or ()) + 1)
    ways = {count: list_ways(group, count) for count in counts}
    for arrange in dict.fromkeys(way.arrange for count in counts for way in ways[count]):
        pairs = (
            (way, members)
            for members in list_sets(choice, sizes)
            for way in ways[len(members)]
            if way.arrange is arrange
        )
        most = CLUSTERS_JUDGED if arrange is Arrangement.CLUSTER else SETS_JUDGED
        yield from (Candidate(way, members) for way, members in nsmallest(most, pairs, key=off))


def _measure(way: Way, sizes: Sequence[Size], gaps: Sequence[float], target: float) -> tuple[float, ...]:
    """What sets are compared by: distance from the target, unevenness across the way, gap."""
    width, spaces = way.estimate_width(sizes)
    off, gap = min((abs(width + spaces * gap - target), _off_usual(gap)) for gap in gaps)
    heights, widths = [size.height for size in sizes], [size.width for size in sizes]
    uneven = max(widths) - min(widths) if way.arrange is Arrangement.COLUMN else 0.0
    uneven += max(heights) - min(heights) if way.arrange is not Arrangement.COLUMN else 0.0
    return round(off, 6), uneven, gap, -float(len(sizes))


def list_sets(choice: OpenChoice, sizes: Mapping[str, Size]) -> Iterator[tuple[str, ...]]:
    """Every set of a pool that has the number of pieces asked for, in the pool's own order."""
    pool = _shorten_pool(choice, sizes)
    counts = range(1, len(pool) + 1) if choice.count is None else (choice.count,)
    for count in counts:
        yield from combinations(pool, count)


def _shorten_pool(choice: OpenChoice, sizes: Mapping[str, Size]) -> tuple[str, ...]:
    """The pool, or so many pieces of it as can be searched whole."""
    pool = choice.pool or ()
    most = max(LONGEST_POOL, choice.count or 0)
    if len(pool) <= most:
        return pool
    ranked = sorted(pool, key=lambda name: sizes[name].width)
    kept = {ranked[number * (len(ranked) - 1) // (most - 1)] for number in range(most)}
    return tuple(name for name in pool if name in kept)
