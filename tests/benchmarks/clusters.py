"""Twenty clusters to measure the salon-hang search by; run by hand with ``python -m``.

For each: the objective of a plain shelf packing, of the cluster, and of the best cluster there is
where all can be tried; and the processor time of the cluster.
"""

from __future__ import annotations

from collections.abc import Sequence
from time import process_time
from typing import NamedTuple

from templater.geometry import Box, Point, Size
from templater.placement.cluster import MOST_SOLVED, arrange_cluster
from templater.placement.cluster_score import Cell, Task, in_steps, total_cost

INCH_MM = 25.4


class Instance(NamedTuple):
    """Pieces to compose; ``sizes`` and ``target`` as ``width x height`` in inches, ``gap`` too."""

    name: str
    sizes: str
    gap: float
    target: str | None = None

    @property
    def sizes_mm(self) -> list[Size]:
        """The sizes of the pieces, mm."""
        return [_size(text) for text in self.sizes.split()]

    @property
    def gap_mm(self) -> float:
        """The gap, mm."""
        return self.gap * INCH_MM

    @property
    def target_mm(self) -> Size | None:
        """The size the whole should come near, mm."""
        return None if self.target is None else _size(self.target)


def _size(text: str) -> Size:
    width, height = (float(side) * INCH_MM for side in text.split("x"))
    return Size(width, height)


INSTANCES = (
    Instance("pair", "24x30 16x20", 2.5),
    Instance("three mixed", "24x30 16x20 11x14", 2.5),
    Instance("three wide", "20x16 20x16 20x16", 2, "48x36"),
    Instance("four mixed", "24x30 16x20 16x20 11x14", 2.5),
    Instance("four to a target", "31x40 23x17 11x13 9x7", 2, "60x40"),
    Instance("five mixed", "24x30 16x20 11x14 12x12 8x10", 2.5),
    Instance("two wide, three tall", "30x16 28x18 14x22 12x20 16x24", 2.5),
    Instance("six wide", "20x16 20x16 20x16 20x16 20x16 20x16", 2.5),
    Instance("one large, six small", "30x40 8x10 8x10 8x10 11x14 11x14 10x8", 2),
    Instance("seven square", "24x24 20x20 16x16 16x16 12x12 12x12 8x8", 2),
    Instance("a long one", "48x16 16x20 16x20 20x16 12x12 12x12 8x10", 2.5),
    Instance("eight over a sofa", "20x28 16x20 16x20 12x16 12x16 8x12 12x8 20x20", 2.5, "56x43"),
    Instance("nine equal", "12x16 " * 9, 2),
    Instance("nine small over a bench", "8x10 " * 4 + "10x8 " * 3 + "5x7 5x7", 2, "40x24"),
    Instance("ten in pairs", "22x28 22x28 16x20 16x20 16x20 12x16 12x16 12x16 11x14 11x14", 3, "84x50"),
    Instance("eleven narrow", "10x24 " * 3 + "12x36 8x20 8x20 " + "6x18 " * 5, 2),
    Instance(
        "twelve mixed", "24x30 20x24 18x24 16x20 20x16 14x18 11x14 14x11 12x12 8x10 10x8 8x10", 2.5
    ),
    Instance(
        "twelve over a settle",
        "24x30 20x24 18x24 16x20 20x16 14x18 11x14 14x11 12x12 8x10 10x8 8x10",
        2.5,
        "80x54",
    ),
    Instance(
        "fourteen charts", "23.4x33.1 16.5x23.4 16.5x23.4 " + "11.7x16.5 " * 5 + "8.3x11.7 " * 6, 2
    ),
    Instance(
        "sixteen mixed",
        "30x40 24x30 20x24 20x16 18x24 16x20 16x20 14x18 11x14 14x11 11x14 12x12 8x10 10x8 8x10 5x7",
        2.5,
    ),
)


def pack_shelves(sizes: Sequence[Size], gap_mm: float, target: Size | None) -> tuple[Box, ...]:
    """The tallest first, in rows as wide as the target, or as the square root of the area."""
    area = sum((size.width + gap_mm) * (size.height + gap_mm) for size in sizes)
    limit = target.width if target else max(area**0.5, *(size.width for size in sizes))
    boxes: dict[int, Box] = {}
    x = y = top = 0.0
    for piece in sorted(range(len(sizes)), key=lambda piece: -sizes[piece].height):
        if x and x + sizes[piece].width > limit:
            x, y = 0.0, top
        boxes[piece] = Box.of(Point(x, y), sizes[piece])
        x, top = x + sizes[piece].width + gap_mm, max(top, y + sizes[piece].height + gap_mm)
    return tuple(boxes[piece] for piece in range(len(sizes)))


def cost_of(instance: Instance, boxes: Sequence[Box]) -> float:
    """The objective of a composed instance."""
    task = Task.of(instance.sizes_mm, instance.gap_mm, instance.target_mm)
    corners = [(in_steps(box.x0), in_steps(box.y0)) for box in boxes]
    cells = [
        Cell(x, y, x + width, y + height)
        for (x, y), width, height in zip(corners, task.widths, task.heights, strict=True)
    ]
    return total_cost(task, cells)


def main() -> None:
    """Print the table."""
    print("| instance | pieces | shelf | cluster | best of all | seconds |\n|---|---|---|---|---|---|")  # noqa: T201
    for instance in INSTANCES:
        given = (instance.sizes_mm, instance.gap_mm, instance.target_mm)
        shelf = cost_of(instance, pack_shelves(*given))
        start = process_time()
        found = cost_of(instance, arrange_cluster(*given))
        spent = process_time() - start
        best = ""
        if len(instance.sizes_mm) <= MOST_SOLVED:
            from tests.placement.every_cluster import least_cost

            best = f"{least_cost(*given):.3f}"
        figures = f"{len(instance.sizes_mm)} | {shelf:.3f} | {found:.3f} | {best} | {spent:.2f}"
        print(f"| {instance.name} | {figures} |", flush=True)  # noqa: T201


if __name__ == "__main__":
    main()
