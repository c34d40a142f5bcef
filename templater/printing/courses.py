"""A template in courses: rows of sheets from the top, or columns from the left."""

from __future__ import annotations

from dataclasses import dataclass

from templater.printing.lane import Lane
from templater.printing.prices import CHANGE, SHEET, TO_REFERENCE


@dataclass(frozen=True, slots=True)
class Courses:
    """A template in courses: ``across`` cuts it into them, ``along`` cuts each of them into sheets."""

    across: Lane
    along: tuple[Lane, ...]
    are_columns: bool
    price: int

    @property
    def count(self) -> int:
        """How many sheets there are."""
        return sum(len(lane.sides) for lane in self.along)

    @property
    def paper_mm2(self) -> float:
        """The area of all pages."""
        return sum(
            depth * sum(lane.pages) for depth, lane in zip(self.across.pages, self.along, strict=True)
        )

    @property
    def seam_mm(self) -> float:
        """How long the seams are inside the template."""
        within = sum(
            span * len(lane.cuts) for span, lane in zip(self.across.spans, self.along, strict=True)
        )
        return within + len(self.across.cuts) * self.along[0].length

    @property
    def rank(self) -> tuple[float, ...]:
        """How good the courses are, the smaller the better, as far as two tilings are compared.

        Holes near a seam, sheets, paper (which differs on a roll only), hang points near a seam, seams
        between the holes and to their reference, sheets without room for their bars, changes between
        portrait and landscape, length of all seams; of equals rows.
        """
        return (
            self.price // SHEET,
            round(self.paper_mm2),
            self.price // TO_REFERENCE,
            self.across.narrow + sum(lane.narrow for lane in self.along),
            self.price // CHANGE,
            round(self.seam_mm, 3),
            self.are_columns,
        )
