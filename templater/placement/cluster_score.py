"""Measures how well a cluster hangs: its objective, and the sums and ties that it is made of.

Lengths are whole steps of a billionth of a millimetre, so that edges line up exactly or not at
all. A *cell* is a piece grown by the gap to its right and above it: cells that touch belong to
pieces exactly the gap apart, cells that overlap to pieces too near. Only sums, products, quotients
and square roots are taken, in one order, which every machine rounds alike: which of two clusters
is the better one must not depend on the machine.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import inf, sqrt
from typing import NamedTuple, TypeAlias

from templater.geometry import Size
from templater.placement.cluster_rounding import add_up, find_logarithm

STEPS_PER_MM = 10**9
"""Sizes are even numbers of steps, so that centres fall on whole steps too."""

FACING = 20 * STEPS_PER_MM
"""How much of their edges two neighbours must share, or a third of the shorter edge if less."""

NEAR = 50 * STEPS_PER_MM
"""Edges, centres or gaps that differ by less read as a mistake, the more so the less they differ."""

REACH = 300 * STEPS_PER_MM
"""Pieces that face each other from farther away are not compared by the eye."""

PROPORTIONS = (0.9, 1.9)
"""Width over height of a whole that is neither a tower nor a ribbon, where there is no target."""

FIT, WASTE, OUTLINE, IMBALANCE, UNLINED, MISTAKES, EYE = 1.0, 1.0, 0.4, 0.6, 0.3, 0.3, 0.3
"""The weights of the objective's terms; they are told in ``arrange_cluster``."""


class Cell(NamedTuple):
    """A piece grown by the gap to its right and above it, in steps."""

    x0: int
    y0: int
    x1: int
    y1: int


class Ties(NamedTuple):
    """What pieces are to each other, summed over pairs."""

    shared: int = 0
    """Length of the edges along which cells touch, steps."""
    joints: int = 0
    """Pairs of neighbours at exactly the gap."""
    lined: int = 0
    """Joints at which two edges or the centres line up."""
    mistakes: int = 0
    """Pairs that nearly line up or hang nearly the gap apart: 2 × NEAR for no visible difference, 0
    from 50 mm."""

    def plus(self, cell: Cell, cells: Iterable[Cell], gap: int) -> Ties:
        """These and what one more cell is to others, none of which it overlaps."""
        shared, joints, lined, mistakes = self
        for apart, start, end, low, high in _list_facing(cell, cells):
            common = (end if end < high else high) - (start if start > low else low)
            if not apart:
                shared += common
            if common - gap < FACING and 3 * (common - gap) < min(end - start, high - low) - gap:
                continue
            off = min(2 * abs(start - low), 2 * abs(end - high), abs(start + end - low - high))
            if not apart:
                joints += 1
                lined += not off
            elif apart < NEAR:
                mistakes += 2 * (NEAR - apart)
            if 0 < off < 2 * NEAR:
                mistakes += 2 * NEAR - off
        return Ties(shared, joints, lined, mistakes)


@dataclass(frozen=True, slots=True)
class Task:
    """What is to be hung: the cells' widths and heights, the gap and the target, in steps."""

    widths: tuple[int, ...]
    heights: tuple[int, ...]
    gap: int
    target: tuple[int, int] | None

    @classmethod
    def of(cls, sizes: Sequence[Size], gap_mm: float, target: Size | None) -> Task:
        """The task for lengths in mm."""
        gap = in_steps(gap_mm)
        return cls(
            tuple(in_steps(size.width) + gap for size in sizes),
            tuple(in_steps(size.height) + gap for size in sizes),
            gap,
            None if target is None else (in_steps(target.width), in_steps(target.height)),
        )

    @property
    def areas(self) -> tuple[float, ...]:
        """The cells' areas."""
        return tuple(float(w) * h for w, h in zip(self.widths, self.heights, strict=True))


def in_steps(mm: float) -> int:
    """A length in mm as an even number of steps."""
    return 2 * round(mm * STEPS_PER_MM / 2)


Axis: TypeAlias = tuple[int, int, float, float, float, float]
"""Pieces along one axis: from where to where they reach, and the sums of their middles.

Each middle, counted twice, is weighed by the area and by its square, first as it is, then squared.
"""

NOTHING_HUNG: Axis = (10**20, -(10**20), 0.0, 0.0, 0.0, 0.0)

Lie: TypeAlias = tuple[int, float, float, float, float, float]
"""What the objective asks of how pieces lie along one axis: the length of the whole, in steps; how far
that is from what is wanted, 0 where nothing is; how far their centroid is from the centre of the whole,
in halves of its length; and the terms of how far they are spread."""


def extend_axis(axis: Axis, start: int, end: int, area: float) -> Axis:
    """The axis with one more piece."""
    low, high, first, first_large, second, second_large = axis
    middle = start + end
    moment = area * middle
    large = area * area * middle
    return (
        start if start < low else low,
        end if end > high else high,
        first + moment,
        first_large + large,
        second + moment * middle,
        second_large + large * middle,
    )


class Scale:
    """Turns the sums of some pieces into the terms that do not ask what they are to each other."""

    __slots__ = ("_area", "_gap", "_square", "goals")

    def __init__(self, task: Task, area: float, square: float) -> None:
        """The pieces' area and squared area in all.

        ``goals`` are the width and the height wanted: while pieces are missing, the target smaller
        in the proportion of the areas.
        """
        self._area, self._square, self._gap = area, square, task.gap
        self.goals: tuple[float, float] | None = None
        if task.target is not None:
            scale = sqrt(area / add_up(task.areas))
            self.goals = task.target[0] * scale, task.target[1] * scale

    def lie(self, axis: Axis, goal: float | None) -> Lie:
        """How the pieces lie along an axis on which they should be so long."""
        low, high, first, first_large, second, second_large = axis
        length, middle = high - low, low + high
        squared = float(length) ** 2
        return (
            length,
            0.0 if goal is None else abs(find_logarithm((length - self._gap) / goal)),
            abs(first / self._area - low - high) / length,
            (second - 2 * middle * first) / squared,
            (second_large - 2 * middle * first_large) / squared,
            middle * middle / squared,
        )

    def cost(self, across: Lie, up: Lie) -> float:
        """The plain terms."""
        width, misfit, left, spread, large, middle = across
        height, misfit_up, low, spread_up, large_up, middle_up = up
        area = self._area
        middle += middle_up
        spread = (spread + spread_up) / area + middle
        large = (large + large_up) / self._square + middle
        if self.goals is None:
            misfit = _find_disproportion(width - self._gap, height - self._gap)
        return (
            FIT * (misfit + misfit_up)
            + WASTE * (1 - area / (float(width) * height))
            + IMBALANCE * (left + low)
            + EYE * (large / spread if spread > 1e-9 else 0.0)
        )


def _find_disproportion(width: int, height: int) -> float:
    """How far a whole is from a good proportion."""
    low, high = PROPORTIONS
    excess = max(low * height / width, width / height / high)
    return find_logarithm(excess) if excess > 1.0 else 0.0


class Cluster:
    """The pieces hung so far and the sums of which the objective is made."""

    __slots__ = ("across", "area", "border", "cells", "square", "task", "ties", "up")

    def __init__(self, task: Task) -> None:
        self.task = task
        self.cells: dict[int, Cell] = {}
        self.ties = Ties()
        self.across = self.up = NOTHING_HUNG
        self.area = self.square = 0.0
        self.border = 0

    def hang(self, piece: int, cell: Cell, ties: Ties | None = None) -> None:
        """Add a piece that overlaps no other; ``ties`` are those of all with it, if they are known."""
        x0, y0, x1, y1 = cell
        area = float(x1 - x0) * (y1 - y0)
        self.across = extend_axis(self.across, x0, x1, area)
        self.up = extend_axis(self.up, y0, y1, area)
        self.area += area
        self.square += area * area
        self.border += x1 - x0 + y1 - y0
        self.ties = self.ties.plus(cell, self.cells.values(), self.task.gap) if ties is None else ties
        self.cells[piece] = cell

    def cost(self) -> float:
        """The objective."""
        scale = Scale(self.task, self.area, self.square)
        wide, high = scale.goals or (None, None)
        across, up = scale.lie(self.across, wide), scale.lie(self.up, high)
        around = across[0] + up[0]
        return scale.cost(across, up) + tied_cost(self.ties, self.border, around, len(self.cells))


def tied_cost(ties: tuple[int, int, int, int], border: int, around: int, count: int) -> float:
    """The terms that ask what so many pieces are to each other, by their ``Ties``.

    ``border`` is half the outline of all cells, ``around`` half that of the whole.
    """
    shared, joints, lined, mistakes = ties
    return (
        OUTLINE * ((border - shared) / around - 1)
        + UNLINED * (1 - lined / joints if joints else 0.0)
        + MISTAKES * (mistakes / (2 * NEAR * count))
    )


def _list_facing(cell: Cell, cells: Iterable[Cell]) -> list[tuple[int, int, int, int, int]]:
    """The cells that share part of an axis with another and are within reach of it on the other axis.

    How far apart they are, and from where to where first the one and then the other runs along the
    axis that they share.
    """
    x0, y0, x1, y1 = cell
    found = []
    for a0, b0, a1, b1 in cells:
        if a0 < x1 and x0 < a1:
            apart = b0 - y1 if b0 >= y1 else y0 - b1
            if apart <= REACH:
                found.append((apart, x0, x1, a0, a1))
        elif b0 < y1 and y0 < b1:
            apart = a0 - x1 if a0 >= x1 else x0 - a1
            if apart <= REACH:
                found.append((apart, y0, y1, b0, b1))
    return found


def total_cost(task: Task, cells: Sequence[Cell]) -> float:
    """The objective of a whole cluster without overlaps; infinite if the pieces are not all joined."""
    if not is_joined(task, cells):
        return inf
    cluster = Cluster(task)
    for piece, cell in enumerate(cells):
        cluster.hang(piece, cell)
    return cluster.cost()


def is_joined(task: Task, cells: Iterable[Cell]) -> bool:
    """Whether every piece leads to every other through neighbours at exactly the gap."""
    rest = list(cells)
    reached = [rest.pop()]
    while reached and rest:
        one = reached.pop()
        near = [cell for cell in rest if _are_neighbours(one, cell, task.gap)]
        rest = [cell for cell in rest if cell not in near]
        reached += near
    return not rest


def _are_neighbours(one: Cell, other: Cell, gap: int) -> bool:
    """Whether two cells touch along enough of their edges."""
    return Ties().plus(one, (other,), gap).joints > 0
