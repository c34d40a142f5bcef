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

Facing: TypeAlias = tuple[int, int, int, bool, bool, int]
"""A cell that shares part of an axis with another: where it starts and ends on the other axis, how
much they share, whether that is enough for neighbours, whether two edges or the centres line up,
and how much of a mistake it is if they do not, in the unit of ``Ties.mistakes``."""


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

    def plus(self, *sides: tuple[Iterable[Facing], int, int]) -> Ties:
        """These and what one more cell is to others.

        Each side: the cells that share an axis with it, and where it starts and ends on the other.
        """
        shared, joints, lined, mistakes = self
        for facing, low, high in sides:
            for other_low, other_high, common, faces, is_lined, off in facing:
                apart = other_low - high if other_low >= high else low - other_high
                if not apart:
                    shared += common
                    if faces:
                        joints += 1
                        lined += is_lined
                        mistakes += off
                elif faces and apart <= REACH:
                    mistakes += off + 2 * (NEAR - apart) if apart < NEAR else off
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


class Axis(NamedTuple):
    """Pieces along one axis: from where to where they reach, and the sums of their middles.

    Each middle, counted twice, is weighed by the area and by its square (``large``), as it is and
    squared (``second``).
    """

    low: int = 10**20
    high: int = -(10**20)
    first: float = 0.0
    first_large: float = 0.0
    second: float = 0.0
    second_large: float = 0.0

    def plus(self, start: int, end: int, area: float) -> Axis:
        """The axis with one more piece."""
        low, high, first, first_large, second, second_large = self
        middle = start + end
        moment = area * middle
        large = area * area * middle
        return Axis(
            start if start < low else low,
            end if end > high else high,
            first + moment,
            first_large + large,
            second + moment * middle,
            second_large + large * middle,
        )


class Lie(NamedTuple):
    """What the objective asks of how pieces lie along one axis."""

    length: int
    """Of the whole, steps."""
    misfit: float
    """How far that is from what is wanted; 0 where nothing is."""
    imbalance: float
    """How far their centroid is from the centre of the whole, in halves of its length."""
    spread: float
    spread_large: float
    middle: float


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
        return Lie(
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
        self.across = self.up = Axis()
        self.area = self.square = 0.0
        self.border = 0

    def hang(self, piece: int, cell: Cell, ties: Ties | None = None) -> None:
        """Add a piece that overlaps no other; ``ties`` are those of all with it, if they are known."""
        x0, y0, x1, y1 = cell
        area = float(x1 - x0) * (y1 - y0)
        self.across, self.up = self.across.plus(x0, x1, area), self.up.plus(y0, y1, area)
        self.area += area
        self.square += area * area
        self.border += x1 - x0 + y1 - y0
        self.ties = self._ties_with(cell) if ties is None else ties
        self.cells[piece] = cell

    def _ties_with(self, cell: Cell) -> Ties:
        """What all pieces are to each other with one more."""
        x0, y0, x1, y1 = cell
        cells, gap = self.cells.values(), self.task.gap
        beside = [Cell(b0, a0, b1, a1) for a0, b0, a1, b1 in cells if b0 < y1 and b1 > y0]
        return self.ties.plus(
            (list_facing(x0, x1, cells, gap), y0, y1), (list_facing(y0, y1, beside, gap), x0, x1)
        )

    def cost(self) -> float:
        """The objective."""
        scale = Scale(self.task, self.area, self.square)
        wide, high = scale.goals or (None, None)
        across, up = scale.lie(self.across, wide), scale.lie(self.up, high)
        around = across.length + up.length
        return scale.cost(across, up) + tied_cost(self.ties, self.border, around, len(self.cells))


def tied_cost(ties: Ties, border: int, around: int, count: int) -> float:
    """The terms that ask what so many pieces are to each other.

    ``border`` is half the outline of all cells, ``around`` half that of the whole.
    """
    shared, joints, lined, mistakes = ties
    return (
        OUTLINE * ((border - shared) / around - 1)
        + UNLINED * (1 - lined / joints if joints else 0.0)
        + MISTAKES * (mistakes / (2 * NEAR * count))
    )


def list_facing(start: int, end: int, cells: Iterable[Cell], gap: int) -> list[Facing]:
    """The cells that share part of the x axis with a cell from ``start`` to ``end``."""
    found = []
    for a0, b0, a1, b1 in cells:
        if a0 >= end or a1 <= start:
            continue
        low, high = start - a0, end - a1
        common = (end if high < 0 else a1) - (start if low > 0 else a0)
        faces = common - gap >= FACING or 3 * (common - gap) >= min(end - start, a1 - a0) - gap
        off = min(2 * abs(low), 2 * abs(high), abs(low + high))
        found.append((b0, b1, common, faces, not off, 2 * NEAR - off if 0 < off < 2 * NEAR else 0))
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
    x0, y0, x1, y1 = one
    a0, b0, a1, b1 = other
    if a0 == x1 or a1 == x0:
        return any(facing[3] for facing in list_facing(y0, y1, [Cell(b0, a0, b1, a1)], gap))
    if b0 == y1 or b1 == y0:
        return any(facing[3] for facing in list_facing(x0, x1, [other], gap))
    return False
