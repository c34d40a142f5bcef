"""The wall, or a part of it, drawn to scale: the largest standard scale that a room allows."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import islice

from templater.drawing import Item
from templater.geometry import ORIGIN, Box, Point, Size
from templater.placement.model import Plan
from templater.scene.overview.distance_lines import draw_distances
from templater.scene.overview.named_things import (
    draw_furniture,
    draw_obstacles,
    draw_piece,
    label_hidden,
    name_piece,
)
from templater.scene.overview.nosing_lines import draw_nosing_lines
from templater.scene.overview.piece_labels import Crowd
from templater.scene.overview.scales import Scale, standard_scales
from templater.scene.overview.stud_lines import draw_studs
from templater.scene.overview.view import Sight, View
from templater.scene.overview.wall_figures import Distances, Figures, read_figures
from templater.scene.overview.wall_lines import draw_levels, draw_wall

_SCALES_TRIED = 6


@dataclass(frozen=True, slots=True)
class Elevation:
    """A drawn view: ``box`` is all the page it takes, ``pieces`` the page boxes of those seen.

    ``named`` are the slugs of the pieces whose number is written; ``left_out`` counts the distances
    for which there was no room.
    """

    view: View
    box: Box
    items: tuple[Item, ...]
    pieces: tuple[tuple[str, Box], ...]
    named: frozenset[str]
    left_out: int


@dataclass(frozen=True, slots=True)
class Fitting:
    """The scale at which a part of the wall fits a room: ``room`` is the index of the one chosen.

    ``size`` is what the view takes with its figures (none on tiny paper), ``margins`` what the
    figures take of it round the view.
    """

    room: int
    scale: Scale
    size: Size
    margins: Box
    figures: Figures | None
    window: Box

    def draw(self, plan: Plan, top_left: Point) -> Elevation:
        """The view with the top-left of all that it takes at a point of the page."""
        block = Box(top_left.x, top_left.y - self.size.height, top_left.x + self.size.width, top_left.y)
        ratio = self.scale.ratio
        corner = Point(block.x0 - self.margins.x0, block.y0 - self.margins.y0)
        origin = corner.moved(-self.window.x0 / ratio, -self.window.y0 / ratio)
        view = View(self.scale, origin, self.window)
        distances = self.figures.arrange(view) if self.figures else None
        return _draw(Sight.of(plan, view), block, distances)


def fit_elevation(plan: Plan, rooms: Sequence[Size], part: Box | None = None) -> Fitting:
    """The wall, or a part of it, at the largest standard scale that a room allows with its figures.

    Of rooms that serve alike the first is taken.
    """
    window = part or Box.of(ORIGIN, plan.wall)
    figures = read_figures(plan, window)
    fittings = [_fit(plan, figures, index, room) for index, room in enumerate(rooms)]
    return min(fittings, key=lambda fitting: (fitting.figures is None, fitting.scale.ratio))


def _fit(plan: Plan, figures: Figures, index: int, room: Size) -> Fitting:
    """The largest scale that fits with the figures round the view; on tiny paper, without them."""
    window = figures.window
    fitting = (
        scale
        for scale in standard_scales(plan.units)
        if window.width <= (room.width - 2) * scale.ratio
        and window.height <= (room.height - 2) * scale.ratio
    )
    scales = list(islice(fitting, _SCALES_TRIED))
    for scale in scales:
        margins = figures.arrange(View(scale, ORIGIN, window)).margins
        size = _size_with(margins, window, scale)
        if size.width <= room.width and size.height <= room.height:
            return Fitting(index, scale, size, margins, figures, window)
    bare = Box(-1.0, -1.0, 1.0, 1.0)
    return Fitting(index, scales[0], _size_with(bare, window, scales[0]), bare, None, window)


def _size_with(margins: Box, window: Box, scale: Scale) -> Size:
    """What a view takes on paper with its margins."""
    return Size(window.width / scale.ratio + margins.width, window.height / scale.ratio + margins.height)


def _draw(sight: Sight, block: Box, distances: Distances | None) -> Elevation:
    """Draw everything, in the order in which it must find its place; the studs behind all else."""
    crowd = Crowd(sight.solids)
    items: list[Item] = [*draw_levels(sight, crowd)]
    if distances:
        items += draw_distances(distances, sight, block, crowd)
    items += draw_wall(sight, crowd)
    items += draw_nosing_lines(sight, items, crowd)
    hidden = label_hidden(sight)
    items += draw_furniture(sight, crowd, hidden)
    items += draw_obstacles(sight, crowd, hidden)
    named = set()
    for piece in sight.pieces:
        items += draw_piece(piece, sight)
        if words := name_piece(piece, sight, crowd):
            items += words
            named.add(piece.thing.slug)
    studs = [sight.view.on_page(Point(stud, 0.0)).x for stud in sight.plan.studs]
    items += draw_studs(studs, sight.frame, items, solids=sight.solids, ceiling=sight.ceiling)
    left_out = distances.left_out if distances else sight.plan.hole_count
    pieces = tuple((seen.thing.slug, seen.box) for seen in sight.pieces)
    return Elevation(sight.view, block, tuple(items), pieces, frozenset(named), left_out)
