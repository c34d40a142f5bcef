"""Finds, of a pool of pieces, the sets that are worth judging."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Mapping, Sequence
from heapq import nsmallest
from itertools import combinations

from templater.geometry import Size
from templater.layout.model import Arrangement, Group, OpenChoice
from templater.search.extent import Allowance
from templater.search.target import USUAL_GAP_MM
from templater.search.ways import Way, list_ways

SETS_JUDGED = 16
"""How many sets are judged for each arrangement."""

CLUSTERS_JUDGED = 2
"""How many sets are judged as clusters, each of which is a search of its own."""

_ROWS = (Arrangement.ROW, Arrangement.LEDGE)
_WIDELY_SOUGHT = (*_ROWS, Arrangement.CLUSTER)

_ROW_STEP_MM = 1e-6
_STEP_MM = 25.4
"""Widths that differ by no more are equally near: a row's exactly, all others within an inch."""

Gaps = Sequence[float]
"""Gaps to be tried, mm, each larger than the one before."""


def choose_sets(
    group: Group,
    choice: OpenChoice,
    sizes: Mapping[str, Size],
    gaps: Gaps,
    target_mm: float,
    *,
    allowance: Allowance,
) -> Iterator[tuple[Way, tuple[str, ...]]]:
    """For each arrangement the sets of a pool that come nearest a width, with one of the gaps.

    Rows exactly, all others to the inch. Of sets equally near those come first whose
    pieces are most alike (in a row by height, in a column by width), then with the gap nearest to
    3 in, then of more pieces, then as the pool has them.
    """

    def off(pair: tuple[Way, tuple[str, ...]]) -> tuple[float, ...]:
        return _measure(pair[0], [sizes[name] for name in pair[1]], gaps, target_mm)

    counts = range(1, len(choice.pool or ()) + 1)
    ways = {count: list_ways(group, count) for count in counts}
    for arrange in dict.fromkeys(way.arrange for count in counts for way in ways[count]):
        longest = allowance.shorten_pool(is_wide=arrange in _WIDELY_SOUGHT)
        pairs = (
            (way, members)
            for members in list_sets(choice, sizes, longest)
            for way in ways[len(members)]
            if way.arrange is arrange
        )
        yield from nsmallest(
            CLUSTERS_JUDGED if arrange is Arrangement.CLUSTER else SETS_JUDGED, pairs, key=off
        )


def list_sets(choice: OpenChoice, sizes: Mapping[str, Size], longest: int) -> Iterator[tuple[str, ...]]:
    """Every set of a pool that has the number of pieces asked for, in the pool's own order.

    Of a pool that is longer so many pieces are taken, evenly from the narrowest to the widest.
    """
    pool = _shorten(choice.pool or (), sizes, max(longest, choice.count or 0))
    counts = range(1, len(pool) + 1) if choice.count is None else (choice.count,)
    for count in counts:
        yield from combinations(pool, count)


def _shorten(pool: tuple[str, ...], sizes: Mapping[str, Size], longest: int) -> tuple[str, ...]:
    """A pool, or so many pieces of it."""
    if len(pool) <= longest:
        return pool
    ranked = sorted(pool, key=lambda name: sizes[name].width)
    kept = {ranked[number * (len(ranked) - 1) // (longest - 1)] for number in range(longest)}
    return tuple(name for name in pool if name in kept)


def _measure(way: Way, sizes: Sequence[Size], gaps: Gaps, target_mm: float) -> tuple[float, ...]:
    """What sets are compared by."""
    width, spaces = way.estimate_width(sizes)
    step = _ROW_STEP_MM if way.arrange in _ROWS else _STEP_MM
    off, gap = min(
        (round(abs(width + spaces * gap - target_mm) / step), abs(gap - USUAL_GAP_MM))
        for gap in _nearest(width, spaces, gaps, target_mm)
    )
    return off, _unevenness(way, sizes), gap, -float(len(sizes))


def _unevenness(way: Way, sizes: Sequence[Size]) -> float:
    """How much pieces differ in height, except in a column, and in width, except in a row, mm."""
    widths, heights = [size.width for size in sizes], [size.height for size in sizes]
    across = 0.0 if way.arrange in _ROWS else max(widths) - min(widths)
    return across if way.arrange is Arrangement.COLUMN else across + max(heights) - min(heights)


def _nearest(width: float, spaces: int, gaps: Gaps, target_mm: float) -> Gaps:
    """Those of the gaps that bring a width nearest to the target."""
    if not spaces:
        return gaps
    place = bisect_left(gaps, (target_mm - width) / spaces)
    return gaps[max(0, place - 1) : place + 1]
