"""Measures how well a cluster hangs: its objective, kept as running sums while pieces are added.

Lengths are whole steps of a billionth of a millimetre, so that edges line up exactly or not at
all. A *cell* is a piece grown by the gap to its right and above it: cells that touch belong to
pieces exactly the gap apart, cells that overlap to pieces too near.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import inf, log
from typing import NamedTuple, TypeAlias

from templater.geometry import Size

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

Sums: TypeAlias = tuple[float, ...]
"""Area, squared area, half border; then of area x and y, of squared area x and y; then the same
four of second order. Centres are counted twice, so that they are whole steps."""


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
    mistakes: float = 0.0
    """Pairs that nearly line up or hang nearly the gap apart: 1 for no visible difference, 0 from
    50 mm."""

    def plus(self, other: Ties) -> Ties:
        """Both together."""
        return Ties(
            self.shared + other.shared,
            self.joints + other.joints,
            self.lined + other.lined,
            self.mistakes + other.mistakes,
        )


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


class Cluster:
    """The pieces hung so far and the sums of which the objective is made."""

    __slots__ = ("area", "box", "cells", "sums", "task", "ties")

    def __init__(self, task: Task) -> None:
        self.task = task
        self.area = sum(task.areas)
        self.cells: dict[int, Cell] = {}
        self.ties = Ties()
        self.sums: Sums = (0.0,) * 11
        self.box: Cell | None = None

    def hang(self, piece: int, cell: Cell, ties: Ties) -> None:
        """Add a piece whose ties to the others are known."""
        self.box = self.box_with(cell)
        self.sums = self.sums_with(cell)
        self.ties = self.ties.plus(ties)
        self.cells[piece] = cell

    def box_with(self, cell: Cell) -> Cell:
        """The cell around everything, one more cell included."""
        box = self.box
        if box is None:
            return cell
        return Cell(
            box[0] if box[0] < cell[0] else cell[0],
            box[1] if box[1] < cell[1] else cell[1],
            box[2] if box[2] > cell[2] else cell[2],
            box[3] if box[3] > cell[3] else cell[3],
        )

    def sums_with(self, cell: Cell) -> Sums:
        """The sums, one more cell included."""
        x0, y0, x1, y1 = cell
        area = float(x1 - x0) * (y1 - y0)
        square = area * area
        x, y = x0 + x1, y0 + y1
        ax, ay, sx, sy = area * x, area * y, square * x, square * y
        new = (
            area, square, x1 - x0 + y1 - y0,
            ax, ay, sx, sy,
            ax * x, ay * y, sx * x, sy * y,
        )  # fmt: skip
        return tuple([a + b for a, b in zip(self.sums, new, strict=True)])

    def plain_cost(self, box: Cell, sums: Sums) -> float:
        """The terms that do not ask what pieces are to each other."""
        x0, y0, x1, y1 = box
        width, height = x1 - x0, y1 - y0
        area = sums[0]
        across, up = sums[3] / area - x0 - x1, sums[4] / area - y0 - y1
        return (
            FIT * self.misfit(width - self.task.gap, height - self.task.gap, area)
            + WASTE * (1 - area / (float(width) * height))
            + IMBALANCE * (abs(across) / width + abs(up) / height)
            + EYE * _eye(box, sums)
        )

    def cost_with(self, cell: Cell, ties: Ties) -> float:
        """The objective, one more cell with its ties included."""
        box, sums = self.box_with(cell), self.sums_with(cell)
        return self.plain_cost(box, sums) + self.tied_cost(box, sums, ties)

    def tied_cost(self, box: Cell, sums: Sums, ties: Ties) -> float:
        """The terms that ask what pieces are to each other; ``ties`` of one more piece."""
        ties = self.ties.plus(ties)
        border = (sums[2] - ties.shared) / (box.x1 - box.x0 + box.y1 - box.y0)
        unlined = 1 - ties.lined / ties.joints if ties.joints else 0.0
        mistakes = ties.mistakes / (len(self.cells) + 1)
        return OUTLINE * (border - 1) + UNLINED * unlined + MISTAKES * mistakes

    def misfit(self, width: int, height: int, area: float) -> float:
        """How far the whole is from its target, or without one from a good proportion.

        While pieces are missing the target is smaller in the proportion of the areas.
        """
        if self.task.target is None:
            low, high = PROPORTIONS
            return log(max(low * height / width, width / height / high, 1.0))
        scale = (area / self.area) ** 0.5
        across, up = self.task.target
        return abs(log(width / (across * scale))) + abs(log(height / (up * scale)))

    def ties_of(self, cell: Cell) -> Ties:
        """What a new piece would be to those that hang; its cell overlaps none of theirs."""
        x0, y0, x1, y1 = cell
        gap = self.task.gap
        shared = joints = lined = 0
        mistakes = 0.0
        for a0, b0, a1, b1 in self.cells.values():
            across = (x1 if x1 < a1 else a1) - (x0 if x0 > a0 else a0)
            up = (y1 if y1 < b1 else b1) - (y0 if y0 > b0 else b0)
            if across > 0:
                apart, common, low, high, shorter = -up, across, x0 - a0, x1 - a1, min(x1 - x0, a1 - a0)
            elif up > 0:
                apart, common, low, high, shorter = -across, up, y0 - b0, y1 - b1, min(y1 - y0, b1 - b0)
            else:
                continue
            if not apart:
                shared += common
            if apart > REACH or (common - gap < FACING and 3 * (common - gap) < shorter - gap):
                continue
            is_lined = not (low and high and low + high)
            if not apart:
                joints += 1
                lined += is_lined
            elif apart < NEAR:
                mistakes += 1 - apart / NEAR
            if not is_lined:
                off = min(abs(low), abs(high), abs(low + high) / 2)
                mistakes += 1 - off / NEAR if off < NEAR else 0
        return Ties(shared, joints, lined, mistakes)


def _eye(box: Cell, sums: Sums) -> float:
    """How far from the middle the large pieces hang, against all pieces alike."""
    area, square, _, ax, ay, sx, sy, axx, ayy, sxx, syy = sums
    x0, y0, x1, y1 = box
    cx, cy, across, up = x0 + x1, y0 + y1, float(x1 - x0) ** 2, float(y1 - y0) ** 2
    middle = cx * cx / across + cy * cy / up
    everyone = ((axx - 2 * cx * ax) / across + (ayy - 2 * cy * ay) / up) / area + middle
    large = ((sxx - 2 * cx * sx) / across + (syy - 2 * cy * sy) / up) / square + middle
    return large / everyone if everyone > 1e-9 else 0.0


def total_cost(task: Task, cells: Sequence[Cell]) -> float:
    """The objective of a whole cluster without overlaps; infinite if the pieces are not all joined."""
    if not is_joined(task, cells):
        return inf
    cluster = Cluster(task)
    for piece, cell in enumerate(cells[:-1]):
        cluster.hang(piece, cell, cluster.ties_of(cell))
    last = cells[-1]
    return cluster.cost_with(last, cluster.ties_of(last))


def is_joined(task: Task, cells: Iterable[Cell]) -> bool:
    """Whether every piece leads to every other through neighbours at exactly the gap."""
    rest = list(cells)
    reached = [rest.pop()]
    while reached and rest:
        one = Cluster(task)
        one.cells[0] = reached.pop()
        near = [cell for cell in rest if one.ties_of(cell).joints]
        rest = [cell for cell in rest if cell not in near]
        reached += near
    return not rest
