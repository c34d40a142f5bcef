"""How a template is cut into sheets of paper. Template coordinates: mm from the frame's bottom-left."""

from __future__ import annotations

from dataclasses import dataclass

from templater.geometry import Box, Point, Size
from templater.layout.model import Margins
from templater.paper import Paper


@dataclass(frozen=True, slots=True)
class PrintSetup:
    """The paper, what the printer cannot reach on it, and how far sheets overlap (mm)."""

    paper: Paper
    margins: Margins
    lap_mm: float

    def printable(self, page: Size) -> Box:
        """What the printer reaches on a page, mm from its bottom-left corner.

        Margins belong to the paper as it is fed. A page wider than tall is turned by the printer's
        driver, one cannot know which way, so each of its sides keeps the larger margin of the two
        that it may turn out to be.
        """
        left, right, top, bottom = (
            self.margins.left,
            self.margins.right,
            self.margins.top,
            self.margins.bottom,
        )
        if page.width > page.height and not self.paper.is_roll:
            left, right, top, bottom = (
                max(top, bottom),
                max(top, bottom),
                max(left, right),
                max(left, right),
            )
        return Box(left, bottom, page.width - right, page.height - top)


@dataclass(frozen=True, slots=True)
class Tile:
    """One sheet of a template.

    ``clip`` is all that the sheet shows, laps included; ``keep`` is what is seen of it once the
    sheets are taped (outer sides run to the clip). Page point = ``origin`` + template point.
    """

    name: str
    clip: Box
    keep: Box
    page: Size
    origin: Point


@dataclass(frozen=True, slots=True)
class Seam:
    """Where two sheets join: ``over`` is trimmed along the line and laid over ``under``'s lap."""

    under: str
    over: str
    start: Point
    end: Point


@dataclass(frozen=True, slots=True)
class Tiling:
    """All sheets of one template in reading order, and their seams.

    ``near_seam`` holds the numbers (from 1) of the holes that no placing of the seams could keep
    the wanted distance away from a seam's lap edge.
    """

    tiles: tuple[Tile, ...]
    seams: tuple[Seam, ...]
    near_seam: tuple[int, ...]
