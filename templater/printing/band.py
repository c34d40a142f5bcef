"""The least of a template that still shows where its outline is: a band along its top, and a corner."""

from __future__ import annotations

from dataclasses import replace

from templater.geometry import Box, Size
from templater.printing.model import Coverage, PrintSetup, Shape, Tile, Tiling
from templater.printing.pages import Side, list_pages
from templater.printing.prices import CLEAR_MM
from templater.printing.sheet_names import name_course
from templater.printing.tile import make_tile, tile_template

AIR_MM = 3.0
"""What is shown beyond an edge of the outline, so that its line is printed whole."""

_BELOW_MM = 25.0
"""How far the band goes on below the lowest hole or hang point."""

_LEAST_DEPTH_MM = 60.0
_LEAST_REST_MM = 150.0
"""A band that would leave out less of the height than this is no band: all of it is printed."""


def tile_band(shape: Shape, setup: PrintSetup, *, most: int) -> Tiling:
    """The sheets of the band, joined; then one that shows the bottom left corner, joined to none.

    The whole template where the band leaves too little out. Raises as tile_template does.
    """
    lowest = min((point.y for point in (*shape.holes, *shape.hang_points)), default=shape.outline.y1)
    bottom = min(lowest - _BELOW_MM, shape.outline.y1 - _LEAST_DEPTH_MM)
    if bottom - shape.extent.y0 < _LEAST_REST_MM:
        return tile_template(shape.extent, shape.holes, shape.hang_points, setup, most=most)
    band = _tile_down_to(bottom, shape, setup, most)
    if deeper := _find_deeper_bottom(band, shape, setup):
        band = _tile_down_to(min(bottom, deeper), shape, setup, len(band.tiles))
    corner = _show_corner(shape, setup, lowest - 2 * CLEAR_MM, name=_name_next(band))
    return replace(band, tiles=(*band.tiles, corner), cover=Coverage.BAND)


def _tile_down_to(bottom: float, shape: Shape, setup: PrintSetup, most: int) -> Tiling:
    """The template from its top down to a height."""
    extent = shape.extent._replace(y0=max(bottom, shape.extent.y0))
    return tile_template(extent, shape.holes, shape.hang_points, setup, most=most)


def _find_deeper_bottom(band: Tiling, shape: Shape, setup: PrintSetup) -> float | None:
    """How far down one row of sheets reaches from the top edge; nothing of rows or of a roll."""
    tops = {round(tile.clip.y1, 3) for tile in band.tiles}
    if len(tops) > 1 or setup.paper.is_roll:
        return None
    reach = min(setup.printable(tile.page).height for tile in band.tiles)
    return shape.extent.y1 - reach + 2 * AIR_MM


def _name_next(band: Tiling) -> str:
    """The first sheet of the course after the last one."""
    courses = {tile.name.rstrip("0123456789") for tile in band.tiles}
    return f"{name_course(len(courses))}1"


def _show_corner(shape: Shape, setup: PrintSetup, below: float, *, name: str) -> Tile:
    """A sheet with the bottom left corner of the outline, that shows nothing above a height."""
    page = list_pages(setup)[0]
    corner = shape.outline.corner.moved(-_beside(page.across), -_beside(page.down))
    shown = Box.of(corner, Size(page.across.room, page.down.room))
    shown = shown._replace(y1=min(shown.y1, below))
    size = Size(page.across.cut_to(shown.width), page.down.cut_to(shown.height))
    return make_tile(name, shown, shown, size, setup)


def _beside(side: Side) -> float:
    """How much of the wall is shown beside the outline."""
    return min(4 * AIR_MM, side.room / 10)
