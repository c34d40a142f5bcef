"""The best cuts of small axes in whole millimetres, found by trying every one."""

from __future__ import annotations

from collections.abc import Sequence

Cost = tuple[int, int]
"""How many holes, then how many hang points, are nearer than 12 mm to a lap's edge or in a lap."""


def fewest_spans(length: int, reach: int, lap: int) -> int:
    """Lays one sheet after the other, each as far on as its lap allows, until the end is reached."""
    count, covered = 1, reach
    while covered < length:
        count, covered = count + 1, covered - lap + reach
    return count


def count_near(cuts: Sequence[float], points: Sequence[float], lap: float) -> int:
    """How many (cut, point) pairs are too near, to a thousandth of a millimetre."""
    return sum(cut - 11.999 < point < cut + lap + 11.999 for cut in cuts for point in points)


def least_cost(
    length: int, reach: int, lap: int, *, count: int, holes: Sequence[int], hang_points: Sequence[int]
) -> Cost:
    """The least cost of any placing that keeps 10 mm beside each sheet's laps, by trying every whole mm.

    All bounds are whole numbers here, and bounds on single cuts and on differences of cuts have a
    whole solution whenever they have any, so nothing is missed between the millimetres.
    """
    end, longest, least = length - lap, reach - lap, lap + 10
    best: dict[int, Cost] = {0: (0, 0)}
    for _ in range(count - 1):
        reached: dict[int, Cost] = {}
        for cut in range(end + 1):
            before = [best[at] for at in range(cut - longest, cut - least + 1) if at in best]
            if before:
                near, near_hang = min(before)
                near += count_near([cut], holes, lap)
                reached[cut] = (near, near_hang + count_near([cut], hang_points, lap))
        best = reached
    return min(cost for cut, cost in best.items() if 10 <= end - cut <= longest)
