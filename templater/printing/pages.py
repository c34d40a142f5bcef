"""The pages that a template may be printed on, and what their sides show of it."""

from __future__ import annotations

from dataclasses import dataclass

from templater.geometry import Size
from templater.printing.model import PrintSetup
from templater.printing.search import BAR_ROOM_MM, OWN_MM


@dataclass(frozen=True, slots=True)
class Side:
    """One side of a page, mm: all of it, and what the printer reaches.

    ``room`` is what a sheet shows even where the template ends before: all that the printer reaches
    on a page, along a roll only what the marks need. ``outer`` is the same of the outer one of
    several sheets: across a roll, too, it leaves what the marks do not need to other templates.
    """

    page: float
    reach: float
    room: float
    outer: float

    def cut_to(self, shown: float) -> float:
        """The side of a page that shows so much; only a roll's is shorter than others."""
        return self.page - max(0.0, self.reach - max(self.room, shown))


@dataclass(frozen=True, slots=True)
class Page:
    """A page as it lies: portrait or landscape."""

    across: Side
    down: Side


def list_pages(setup: PrintSetup) -> tuple[Page, ...]:
    """The paper portrait, then landscape, if two laps and more fit on; of a roll, the longest pages."""
    return tuple(
        _lay_page(size, setup)
        for size in setup.page_sizes()
        if min(setup.printable(size).size) >= 2 * setup.lap_mm + OWN_MM
    )


def _lay_page(size: Size, setup: PrintSetup) -> Page:
    """A page of a size; of a roll only the side across it is as wide as it must be."""
    reach = setup.printable(size).size
    room = outer = reach
    if setup.paper.is_roll:
        outer = Size(min(reach.width, BAR_ROOM_MM), min(reach.height, BAR_ROOM_MM))
        is_upright = size == setup.page_sizes()[0]
        room = Size(reach.width, outer.height) if is_upright else Size(outer.width, reach.height)
    across, down = zip(size, reach, room, outer, strict=True)
    return Page(Side(*across), Side(*down))
