"""The fewest sheets of mixed courses as an integer programme, which shares no code with the search."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import ceil, inf

import numpy
from scipy.optimize import Bounds, LinearConstraint, milp

CLEAR = 12.0
OWN = 10.0


class Programme:
    """Unknowns with bounds and weights, and sums of them that must lie between two ends."""

    def __init__(self) -> None:
        self.unknowns: list[tuple[float, float, float, bool]] = []
        self.rows: list[tuple[dict[int, float], float, float]] = []

    def add(self, low: float, high: float, *, weight: float = 0.0, whole: bool = False) -> int:
        """One more unknown."""
        self.unknowns.append((low, high, weight, whole))
        return len(self.unknowns) - 1

    def demand(self, terms: dict[int, float], low: float, high: float = inf) -> None:
        """The sum of the terms must lie between low and high."""
        self.rows.append((terms, low, high))

    def solve(self) -> float | None:
        """The least weight, if the demands can be met."""
        lows, highs, weights, wholes = map(numpy.array, zip(*self.unknowns, strict=True))
        matrix = numpy.zeros((len(self.rows), len(self.unknowns)))
        for number, (terms, _, _) in enumerate(self.rows):
            for unknown, factor in terms.items():
                matrix[number, unknown] = factor
        limits = LinearConstraint(matrix, [row[1] for row in self.rows], [row[2] for row in self.rows])
        solved = milp(
            weights,
            bounds=Bounds(lows, highs),
            integrality=wholes.astype(int),
            constraints=limits,
            options={"mip_rel_gap": 0.0},
        )
        return float(solved.fun) if solved.success else None


def count_course(length: float, reach: float, lap: float, holes: Sequence[float]) -> int | None:
    """The fewest sheets of a course with no hole near a seam; at most one more than without holes."""
    fewest = max(1, ceil((length - lap) / (reach - lap) - 1e-9))
    for count in (fewest, fewest + 1):
        if count == 1 or _can_cut(length, reach, lap, count, holes):
            return count
    return None


def _can_cut(length: float, reach: float, lap: float, count: int, holes: Sequence[float]) -> bool:
    programme = Programme()
    end = length - lap
    cuts = [programme.add(0, end) for _ in range(count - 1)]
    for first, second in pairwise(cuts):
        programme.demand({second: 1, first: -1}, lap + OWN, reach - lap)
    programme.demand({cuts[0]: 1}, lap + OWN, reach - lap)
    programme.demand({cuts[-1]: -1}, OWN - end, reach - lap - end)
    for hole in holes:
        for cut in cuts:
            is_before = programme.add(0, 1, whole=True)  # the cut lies before the hole
            programme.demand({cut: 1, is_before: length}, hole + CLEAR)
            programme.demand({cut: 1, is_before: length}, -inf, hole - lap - CLEAR + length)
    return programme.solve() is not None


def count_courses(
    depth: float,
    lap: float,
    kinds: Sequence[tuple[float, int, int | None]],
    holes: Sequence[float],
) -> int | None:
    """The fewest sheets of courses of some kinds with no hole near a seam between two of them.

    Of each kind: how far it reaches across, its sheets in a course without holes and in one with some,
    if that can be had at all. A course that is not used has no depth.
    """
    programme = Programme()
    end = depth - lap
    most = 1 + max(ceil(end / (reach - lap)) for reach, _, _ in kinds)
    before: int | None = None
    homes: list[list[int]] = [[] for _ in holes]
    for _ in range(most):
        cut = programme.add(0, end)
        uses = [programme.add(0, 1, weight=free, whole=True) for _, free, _ in kinds]
        programme.demand(dict.fromkeys(uses, 1.0), 0, 1)
        step = {cut: 1.0} if before is None else {cut: 1.0, before: -1.0}
        programme.demand(
            step | {use: lap - reach for use, (reach, _, _) in zip(uses, kinds, strict=True)}, -inf, 0
        )
        programme.demand(step | dict.fromkeys(uses, -OWN), 0)
        held = [_hold(programme, cut, before, hole, lap=lap, end=end) for hole in holes]
        for hole_homes, home in zip(homes, held, strict=True):
            hole_homes.append(home)
        for use, (_, free, with_holes) in zip(uses, kinds, strict=True):
            for home in held:
                if with_holes is None:
                    programme.demand({use: 1, home: 1}, -inf, 1)
            if held and with_holes is not None:
                extra = programme.add(0, 1, weight=with_holes - free)
                for home in held:
                    programme.demand({extra: 1, use: -1, home: -1}, -1)
        before = cut
    for hole_homes in homes:
        programme.demand(dict.fromkeys(hole_homes, 1.0), 1, 1)
    if before is not None:
        programme.demand({before: 1}, end)
    weight = programme.solve()
    return None if weight is None else round(weight)


def _hold(
    programme: Programme, cut: int, before: int | None, hole: float, *, lap: float, end: float
) -> int:
    """An unknown that is 1 only where a hole lies in a course, clear of the cuts before and after it.

    The start of the first course and the end of the last one are no seams.
    """
    home, is_last = programme.add(0, 1, whole=True), programme.add(0, 1, whole=True)
    programme.demand({cut: 1, is_last: -end}, 0)
    room = end + lap + CLEAR
    programme.demand({cut: 1, home: -room, is_last: room}, hole + CLEAR - room)
    if before is not None:
        is_first = programme.add(0, 1, whole=True)
        programme.demand({before: 1, is_first: end}, -inf, end)
        programme.demand({before: 1, home: room, is_first: -room}, -inf, hole - lap - CLEAR + room)
    return home
