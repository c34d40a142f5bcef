"""One axis of a template and the pages it lies on: the sheets of a course, or the courses."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from templater.printing.pages import Side
from templater.printing.prices import TINY_MM
from templater.printing.search import BAR_ROOM_MM


@dataclass(frozen=True, slots=True)
class Lane:
    """A length from the left or from the top, mm, in as many parts as there are sides of pages."""

    length: float
    lap: float
    sides: tuple[Side, ...]
    cuts: tuple[float, ...]

    @property
    def ends(self) -> tuple[float, float]:
        """From where to where the outer sheets show the axis.

        What they show beyond the template lies outside it; a single sheet shares it between its sides.
        """
        first, last = self.sides[0], self.sides[-1]
        if not self.cuts:
            spare = max(0.0, first.room - self.length) / 2
            return -spare, self.length + spare
        start = self.cuts[0] + self.lap - first.outer
        return min(0.0, start), max(self.length, self.cuts[-1] + last.outer)

    @property
    def kept(self) -> list[tuple[float, float]]:
        """From where to where each part is seen when all are taped."""
        start, end = self.ends
        return list(pairwise((start, *self.cuts, end)))

    @property
    def shown(self) -> list[tuple[float, float]]:
        """From where to where each part shows the axis, its lap included."""
        start, end = self.ends
        lap_ends = (cut + self.lap for cut in self.cuts)
        return list(zip((start, *self.cuts), (*lap_ends, end), strict=True))

    @property
    def pages(self) -> list[float]:
        """The side of each page along the axis; only a roll's is cut to what it shows."""
        return [
            side.cut_to(high - low) for side, (low, high) in zip(self.sides, self.shown, strict=True)
        ]

    @property
    def spans(self) -> list[float]:
        """How much of the template each part keeps."""
        return find_spans(self.cuts, self.length)

    @property
    def narrow(self) -> int:
        """How many parts are too narrow for a scale bar inside the template."""
        return count_narrow(self.cuts, self.length)


def find_spans(cuts: Sequence[float], length: float) -> list[float]:
    """How much of a length each of its parts keeps."""
    return [high - low for low, high in pairwise((0.0, *cuts, length))]


def count_narrow(cuts: Sequence[float], length: float) -> int:
    """How many parts of a length are too narrow for a scale bar."""
    return sum(span < BAR_ROOM_MM - TINY_MM for span in find_spans(cuts, length))
