"""The least objective of all clusters of a few pieces, by trying every one; written on its own.

The space: on each axis, pieces are set one after another in every order, each tied to any earlier
one by same start, same end, same centre, one gap after or one gap before; every way to set the x
axis with every way to set the y axis. Nothing is cut short and nothing comes from the code under
test: the terms are those that ``arrange_cluster`` tells, in mm.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations, permutations
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from templater.geometry import Size

Numbers: TypeAlias = NDArray[np.float64]
Truths: TypeAlias = NDArray[np.bool_]

EQUAL_MM = 1e-6


def least_cost(sizes: Sequence[Size], gap: float, target: Size | None) -> float:
    """The least objective of all clusters in the space."""
    wide, high = np.array(sizes, dtype=float).T
    xs, ys = _every_axis(wide.tolist(), gap), _every_axis(high.tolist(), gap)
    free = np.ones((len(xs), len(ys)), dtype=bool)
    for one, other in combinations(range(len(sizes)), 2):
        clear_x = _clear(xs, wide, one, other) > gap - EQUAL_MM
        clear_y = _clear(ys, high, one, other) > gap - EQUAL_MM
        free &= clear_x[:, None] | clear_y[None, :]
    x_rows, y_rows = np.nonzero(free)
    return float(np.min(costs(xs[x_rows], ys[y_rows], wide, high, gap=gap, target=target)))


def _every_axis(lengths: list[float], gap: float) -> Numbers:
    """All ways to set the pieces on one axis, a row each, the least start at 0."""
    found: set[tuple[float, ...]] = set()
    for order in permutations(range(len(lengths))):
        ways: list[dict[int, float]] = [{order[0]: 0.0}]
        for piece in order[1:]:
            length = lengths[piece]
            ways = [
                {**way, piece: start}
                for way in ways
                for other, at in way.items()
                for start in (
                    at,
                    at + lengths[other] - length,
                    at + (lengths[other] - length) / 2,
                    at + lengths[other] + gap,
                    at - gap - length,
                )
            ]
        for way in ways:
            least = min(way.values())
            found.add(tuple(round(way[piece] - least, 7) for piece in range(len(lengths))))
    return np.array(sorted(found))


def _clear(starts: Numbers, lengths: Numbers, one: int, other: int) -> Numbers:
    """The clear distance of two pieces on one axis, negative where they overlap."""
    low, high = starts[:, one], starts[:, other]
    clear: Numbers = np.maximum(high - low - lengths[one], low - high - lengths[other])
    return clear


def _common(starts: Numbers, lengths: Numbers, one: int, other: int) -> Numbers:
    """How much of an axis two pieces share; negative where they are apart."""
    low, high = starts[:, one], starts[:, other]
    common: Numbers = np.minimum(low + lengths[one], high + lengths[other]) - np.maximum(low, high)
    return common


def costs(
    xs: Numbers, ys: Numbers, wide: Numbers, high: Numbers, *, gap: float, target: Size | None
) -> Numbers:
    """The objective of clusters, a row of left edges and a row of bottom edges each."""
    width, height = np.max(xs + wide, axis=1), np.max(ys + high, axis=1)
    cells = (wide + gap) * (high + gap)
    whole = (width + gap) * (height + gap)
    if target is None:
        proportion = width / height
        misfit = np.log(np.maximum(1, np.maximum(0.9 / proportion, proportion / 1.9)))
    else:
        misfit = abs(np.log(width / target.width)) + abs(np.log(height / target.height))
    # From the centre of the whole, in halves of it with its gap.
    across = (2 * xs + wide - width[:, None]) / (width[:, None] + gap)
    up = (2 * ys + high - height[:, None]) / (height[:, None] + gap)
    imbalance = abs(across @ cells) / cells.sum() + abs(up @ cells) / cells.sum()
    away = across**2 + up**2
    everyone, large = away @ cells / cells.sum(), away @ cells**2 / (cells**2).sum()
    eye = np.divide(large, everyone, out=np.zeros_like(large), where=everyone > 1e-9)
    shared, joined, lined, mistakes = _pairs(xs, ys, wide, high, gap)
    joints = joined.sum(axis=(1, 2)) / 2
    outline = ((wide + high + 2 * gap).sum() - shared) / (width + height + 2 * gap) - 1
    unlined = 1 - np.divide(lined, joints, out=np.ones_like(joints), where=joints > 0)
    total = (
        misfit + (1 - cells.sum() / whole) + 0.4 * outline + 0.6 * imbalance
        + 0.3 * unlined + 0.3 * mistakes / len(wide) + 0.3 * eye
    )  # fmt: skip
    return np.where(_is_whole(joined), total, np.inf)


def _pairs(
    xs: Numbers, ys: Numbers, wide: Numbers, high: Numbers, gap: float
) -> tuple[Numbers, Truths, Numbers, Numbers]:
    """Edges shared with their gaps, who is a neighbour of whom, how many line up, mistakes."""
    count = len(wide)
    joined = np.zeros((len(xs), count, count), dtype=bool)
    shared, lined, mistakes = (np.zeros(len(xs)) for _ in range(3))
    for one, other in combinations(range(count), 2):
        for along, lengths, across, depths in ((ys, high, xs, wide), (xs, wide, ys, high)):
            # Facing each other along one axis, apart across the other.
            apart = _clear(across, depths, one, other) - gap
            common = _common(along, lengths, one, other)
            common_cells = common + gap
            faces = (common_cells > EQUAL_MM) & (apart > -EQUAL_MM) & (apart <= 300 + EQUAL_MM)
            touches = faces & (apart < EQUAL_MM)
            shared += np.where(touches, common_cells, 0)
            seen = faces & (common > min(20.0, min(lengths[one], lengths[other]) / 3) - EQUAL_MM)
            joint = seen & touches
            joined[:, one, other] |= joint
            joined[:, other, one] |= joint
            low = abs(along[:, one] - along[:, other])
            top = abs(along[:, one] + lengths[one] - along[:, other] - lengths[other])
            middle = abs(2 * (along[:, one] - along[:, other]) + lengths[one] - lengths[other]) / 2
            off = np.minimum(np.minimum(low, top), middle)
            is_lined = off < EQUAL_MM
            lined += joint & is_lined
            mistakes += np.where(seen & ~touches, np.clip(1 - apart / 50, 0, 1), 0)
            mistakes += np.where(seen & ~is_lined, np.clip(1 - off / 50, 0, 1), 0)
    return shared, joined, lined, mistakes


def _is_whole(joined: Truths) -> Truths:
    """Whether neighbours lead from every piece to every other."""
    count = joined.shape[1]
    reached: NDArray[np.uint8] = (joined | np.eye(count, dtype=bool)).astype(np.uint8)
    for _ in range(count):
        reached = np.minimum(np.matmul(reached, reached), 1)
    whole: Truths = np.all(reached > 0, axis=(1, 2))
    return whole
