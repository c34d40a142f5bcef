"""How a template is cut into sheets of paper. Template coordinates: mm from the frame's bottom-left."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum
from typing import TypeAlias

from templater.geometry import Box, Point, Size
from templater.layout.model import Margins
from templater.paper import Paper

Scale: TypeAlias = tuple[float, float]
"""Across and up a page: by how much longer a line must be in the file than it shall measure on paper."""

UNSCALED: Scale = (1.0, 1.0)


@dataclass(frozen=True, slots=True)
class Printer:
    """A printer that has been measured: what it makes of a length, and what it leaves blank.

    ``across`` and ``along`` belong to the paper as it is fed in portrait: true length asked for by
    length measured. ``rulers`` are the lengths that were asked for (mm); the longer, the surer the
    factors.
    """

    name: str
    across: float
    along: float
    margins: Margins
    rulers: Size


class Coverage(Enum):
    """How much of each template is printed.

    A band is the top edge with its corners, all holes, and one bottom corner; a card is a sheet or
    two with the holes.
    """

    FULL = "full"
    BAND = "band"
    CARD = "card"


@dataclass(frozen=True, slots=True)
class PrintSetup:
    """The paper, what the printer cannot reach on it, and how far sheets overlap (mm).

    With a ``printer`` every page is drawn as it will measure once that printer has printed it: the
    page's own size too, and its margins.
    """

    paper: Paper
    margins: Margins
    lap_mm: float
    printer: Printer | None = None
    cover: Coverage = Coverage.FULL

    def page_sizes(self) -> tuple[Size, ...]:
        """The paper portrait, then landscape, in mm as they measure after printing.

        A square page lies one way only. Of a roll, the longest pages.
        """
        width, height = self.paper.size
        across, along = self._factors
        portrait = Size(width / across, height / along)
        is_square = width == height or portrait.width == portrait.height
        return (portrait,) if is_square else (portrait, Size(portrait.height, portrait.width))

    def scale_of(self, page: Size) -> Scale:
        """The factors across and up a page; on a landscape page they change places.

        The paper's width tells how a page lies, since only one of its sides measures that.
        """
        across, along = self._factors
        off_across, off_up = (abs(side * across - self.paper.size.width) for side in page)
        return (across, along) if off_across <= off_up else (along, across)

    def printable(self, page: Size) -> Box:
        """What the printer reaches on a page, mm from its bottom-left corner after printing.

        Margins belong to the paper as it is fed. A page wider than tall is turned by the printer's
        driver, one cannot know which way, so each of its sides keeps the larger margin of the two
        that it may turn out to be.
        """
        across, up = self.scale_of(page)
        left, right, top, bottom = (
            self.margins.left,
            self.margins.right,
            self.margins.top,
            self.margins.bottom,
        )
        if page.width * across > page.height * up and not self.paper.is_roll:
            left, right, top, bottom = (
                max(top, bottom),
                max(top, bottom),
                max(left, right),
                max(left, right),
            )
        return Box(left / across, bottom / up, page.width - right / across, page.height - top / up)

    @property
    def _factors(self) -> Scale:
        """The printer's factors across and along the paper."""
        return (self.printer.across, self.printer.along) if self.printer else UNSCALED


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
    the wanted distance away from a seam's lap edge. ``cover`` tells how much of the template the
    sheets show; ``is_shared`` whether it is cut out of a page that other templates stand on too.
    """

    tiles: tuple[Tile, ...]
    seams: tuple[Seam, ...]
    near_seam: tuple[int, ...]
    cover: Coverage = Coverage.FULL
    is_shared: bool = False


@dataclass(frozen=True, slots=True)
class Shape:
    """What matters of a template where it is cut into sheets.

    ``extent`` is all that must be on paper where it is printed whole: the outline, and the crosses of
    holes that pass it. The n-th hang point belongs to the n-th hole.
    """

    outline: Box
    extent: Box
    holes: tuple[Point, ...] = ()
    hang_points: tuple[Point, ...] = ()


@dataclass(frozen=True, slots=True)
class SheetCounts:
    """How many sheets templates take, by the pieces' slugs, for each cover.

    ``shared`` names the page of each piece that shares one; ``lie_both_ways`` tells whether some of
    the sheets that are printed are portrait and some landscape.
    """

    by_cover: Mapping[Coverage, Mapping[str, int]]
    shared: Mapping[str, str]
    lie_both_ways: bool

    def total(self, cover: Coverage) -> int:
        """All sheets of templates, a shared page counted once.

        The strips of one template share a page only where all of it is printed, as it is also where a
        band or a card would take as many sheets.
        """
        counts, whole = self.by_cover[cover], self.by_cover[Coverage.FULL]
        shared = {slug: page for slug, page in self.shared.items() if counts[slug] == whole[slug]}
        own = (count for slug, count in counts.items() if slug not in shared)
        return sum(own) + len(set(shared.values()))
