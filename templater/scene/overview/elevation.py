"""The wall, or a part of it, drawn to scale: outline, furniture, pieces, holes, levels, distances."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import islice

from templater.drawing import Item, Line, Words
from templater.geometry import ORIGIN, Box, Point, Size
from templater.lettering import shorten, text_width, words_box
from templater.placement.model import Plan
from templater.scene.lines import (
    FINE,
    HEAVY,
    MEDIUM,
    SMALL,
    THICK,
    THIN,
    centre_dash,
    datum_dash,
    short_dash,
)
from templater.scene.marks import draw_box
from templater.scene.overview.dimensions import GAP as OUTLINE_GAP
from templater.scene.overview.dimensions import draw_ordinates
from templater.scene.overview.piece_labels import Crowd, Wording, write_beside, write_inside
from templater.scene.overview.scales import Scale, standard_scales
from templater.scene.overview.stud_lines import draw_studs
from templater.scene.overview.surroundings import (
    draw_crossed_box,
    draw_slope,
    find_low_spans,
    obstacle_key,
    write_by,
)
from templater.scene.overview.wall_figures import (
    TITLE_OFF,
    Distances,
    Figures,
    View,
    figure,
    find_levels,
    read_figures,
)
from templater.scene.spans import common_spans, dash_spans, keep_apart, open_spans
from templater.scene.wording import format_size

CROSS_ARM = 1.0
"""How far a hole's cross reaches to each side on paper, mm."""

LEAST_PIECE = 5.0
"""A piece drawn smaller than this in either direction is shown again at a larger scale, mm."""

_BUNCHED = 1.2
_HIDDEN_GAP = 0.8
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
        return _Drawing(plan, view, block, distances).finish()


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


class _Drawing:
    """One view as it is drawn, from the wall forward to the words."""

    def __init__(self, plan: Plan, view: View, block: Box, distances: Distances | None) -> None:
        self._plan, self._view, self._block, self._distances = plan, view, block, distances
        self._items: list[Item] = []
        self._named: set[str] = set()
        self._crowd = Crowd()
        self._frame = view.box_on_page(view.window)
        self._span = (self._frame.x0, self._frame.x1)
        self._level_heights: list[float] = []
        self._pieces = [
            (number, piece, view.box_on_page(piece.box.common(view.window)))
            for number, piece in enumerate(plan.pieces, start=1)
            if piece.box.meets(view.window)
        ]
        self._furniture = [
            (number, thing, view.box_on_page(thing.box.common(view.window)))
            for number, thing in enumerate(plan.furniture, start=1)
            if thing.box.meets(view.window)
        ]
        self._obstacles = [
            (number, thing, view.box_on_page(thing.box.common(view.window)))
            for number, thing in enumerate(plan.obstacles, start=1)
            if thing.box.meets(view.window)
        ]
        self._solid = [box for _, _, box in (*self._pieces, *self._furniture, *self._obstacles)]
        self._ceiling = [view.on_page(point) for point in plan.ceiling]

    def finish(self) -> Elevation:
        """Draw everything, in the order in which it must find its place."""
        for box in self._solid:
            self._crowd.add(box)
        self._draw_levels()
        self._draw_distances()
        self._draw_wall()
        self._draw_furniture()
        self._draw_obstacles()
        self._draw_pieces()
        self._draw_studs()
        sides = self._distances
        left_out = sides.above.left_out + sides.left.left_out if sides else self._plan.hole_count
        pieces = tuple((piece.slug, box) for _, piece, box in self._pieces)
        named = frozenset(self._named)
        return Elevation(self._view, self._block, tuple(self._items), pieces, named, left_out)

    def _draw_levels(self) -> None:
        """The datum and the eye line, hidden where something hangs or stands in front."""
        for level in find_levels(self._plan):
            y = self._view.on_page(Point(0.0, level.height_mm)).y
            if level.name == "ceiling" or not self._frame.y0 <= y <= self._frame.y1:
                continue
            is_datum = level.name == "datum"
            width = MEDIUM if is_datum else THIN
            dashes = dash_spans(datum_dash(width) if is_datum else centre_dash(width), *self._span)
            hidden = [(box.x0, box.x1) for box in self._solid if box.y0 < y < box.y1]
            hidden += find_low_spans(self._ceiling, y)
            for x0, x1 in common_spans(dashes, open_spans(hidden, *self._span)):
                self._add(Line(Point(x0, y), Point(x1, y), width))
            self._level_heights.append(y)

    def _draw_distances(self) -> None:
        """The figures outside the wall and, inside it, the lines that lead them to the holes."""
        sides = self._distances
        if sides is None:
            return
        frame, x0 = self._frame, self._view.origin.x
        self._items += draw_ordinates(sides.above, frame.y1, origin=x0, start=frame.x0)
        self._items += draw_ordinates(sides.below, frame.y0, origin=x0, start=frame.x0)
        datum = self._view.on_page(Point(0.0, self._plan.datum.height_mm)).y
        self._items += draw_ordinates(sides.left, frame.x0, origin=datum, start=frame.y0, end=frame.y1)
        self._items += sides.draw_rise(frame.x1)
        self._items += draw_ordinates(sides.levels, frame.x1)
        for words in sides.inside:
            self._items.append(words)
            self._crowd.add(words_box(words))
        self._title_distances(sides)
        self._lead_to_holes(sides)

    def _title_distances(self, sides: Distances) -> None:
        """Say at each side what its figures are and in which unit."""
        unit = "inches" if self._plan.units.is_imperial else "mm"
        frame, block = self._frame, self._block
        titles = (
            (sides.above, f"holes: {unit} from the left end", frame.y1 + sides.above.depth + TITLE_OFF),
            (
                sides.below,
                f"{self._list_standing()}wall: {unit} from the left end",
                frame.y0 - sides.below.depth - TITLE_OFF - SMALL,
            ),
        )
        for side, text, y in titles:
            if side.ticks:
                whole = text + (" (others in the table)" if side.left_out else "")
                x = max(block.x0, min(frame.x0, block.x1 - text_width(whole, SMALL)))
                self._items.append(Words(Point(x, y), shorten(whole, SMALL, block.x1 - x), SMALL))
        if sides.left.ticks:
            self._title_heights(sides, f"{unit} from the datum")

    def _title_heights(self, sides: Distances, text: str) -> None:
        """Say it of the heights, in full where there is room under the title that stands above."""
        frame, block = self._frame, self._block
        top = frame.y1 + sides.above.depth if sides.above.ticks else block.y1
        whole = f"holes: {text}, + up" + (" (others in the table)" if sides.left.left_out else "")
        if text_width(whole, SMALL) > top - block.y0:
            whole = f"{text}, + up"
        y = max(block.y0, min(frame.y0, top - text_width(whole, SMALL)))
        x = frame.x0 - sides.left.depth - TITLE_OFF
        self._items.append(Words(Point(x, y), shorten(whole, SMALL, top - y), SMALL, turned=True))

    def _list_standing(self) -> str:
        """What the figures along the floor are of, besides the wall."""
        furniture = "furniture, " if self._furniture else ""
        return furniture + ("openings, fixtures, " if self._obstacles else "")

    def _lead_to_holes(self, sides: Distances) -> None:
        """Carry each distance's line on to its farthest hole below, or its nearest to the right."""
        lowest: dict[float, float] = {}
        leftmost: dict[float, float] = {}
        for hole in (
            self._view.on_page(mark.hole) for piece in self._plan.pieces for mark in piece.marks
        ):
            if self._frame.has(hole):
                lowest[round(hole.x, 3)] = min(hole.y, lowest.get(round(hole.x, 3), hole.y))
                leftmost[round(hole.y, 3)] = min(hole.x, leftmost.get(round(hole.y, 3), hole.x))
        for x in keep_apart([tick.along for tick in sides.above.ticks], _BUNCHED):
            taken = [(box.y0, box.y1) for box in self._solid if box.x0 < x < box.x1]
            for y0, y1 in open_spans(taken, lowest.get(round(x, 3), self._frame.y1), self._frame.y1):
                is_open = y1 == self._frame.y1 and _is_over(self._ceiling, x, y1)
                top = y1 + OUTLINE_GAP if is_open else y1 - _HIDDEN_GAP
                self._lead(Point(x, y0 + _HIDDEN_GAP), Point(x, top))
        for y in keep_apart([tick.along for tick in sides.left.ticks], _BUNCHED, self._level_heights):
            taken = [(box.x0, box.x1) for box in self._solid if box.y0 < y < box.y1]
            for x0, x1 in open_spans(taken, self._frame.x0, leftmost.get(round(y, 3), self._frame.x0)):
                is_open = x0 == self._frame.x0 and _is_over(self._ceiling, x0, y)
                left = x0 - OUTLINE_GAP if is_open else x0 + _HIDDEN_GAP
                self._lead(Point(left, y), Point(x1 - _HIDDEN_GAP, y))

    def _lead(self, start: Point, end: Point) -> None:
        """A line that leads a distance to its hole, unless nothing is left of it."""
        if start.x + start.y < end.x + end.y:
            self._add(Line(start, end, FINE))

    def _draw_wall(self) -> None:
        """The wall's floor, ends and ceiling; where a part is cut off, a dashed line."""
        wall, window, slope = self._plan.wall, self._view.window, self._ceiling
        x0, y0, x1, y1 = self._frame
        left, right = (slope[0].y, slope[-1].y) if slope else (y1, y1)
        edges = (
            (window.x0 <= 0.0, Point(x0, y0), Point(x0, y1), left, THICK),
            (window.x1 >= wall.width, Point(x1, y0), Point(x1, y1), right, THICK),
            (window.y1 >= wall.height, Point(x0, y1), Point(x1, y1), y1, 0.0 if slope else THICK),
            (window.y0 <= 0.0, Point(x0, y0), Point(x1, y0), y0, HEAVY),
        )
        for is_end, start, end, top, width in edges:
            if not is_end:
                self._items.append(Line(start, end, THIN, short_dash(THIN)))
            elif width and top >= start.y:
                self._items.append(Line(start, end._replace(y=min(end.y, top)), width))
        if slope:
            self._draw_slope(slope)

    def _draw_slope(self, slope: Sequence[Point]) -> None:
        """A sloping ceiling, its height written at each of its points."""
        self._items += draw_slope(slope, self._frame, self._crowd)
        for point, (_, height) in zip(slope, self._plan.ceiling, strict=True):
            if self._frame.grown(_HIDDEN_GAP).has(point):
                text = f"ceiling {figure(height, self._plan.units)}"
                self._items += write_by(point, text, self._frame, self._crowd)

    def _draw_obstacles(self) -> None:
        """Each opening and fixture, crossed, with its name and size, or its letter and number."""
        fronts = [box for _, _, box in self._furniture]
        for number, thing, box in self._obstacles:
            size, key = format_size(thing.box.size, self._plan.units), obstacle_key(number)
            covers = [front for front in fronts if front.meets(box)]
            wordings = (Wording("", thing.name, size), Wording("", thing.name), Wording(key))
            words = write_inside(box, covers, wordings)
            whole = self._view.box_on_page(thing.box)
            self._items += draw_crossed_box(whole, self._frame, covers, words)
            self._items += words or write_beside(box, key, self._crowd, self._frame)

    def _draw_furniture(self) -> None:
        """Each piece of furniture with its name and size, or its letter and number."""
        for number, thing, box in self._furniture:
            self._outline(thing.box, box, MEDIUM)
            size, key = format_size(thing.box.size, self._plan.units), furniture_key(number)
            hung = [other for _, _, other in self._pieces if other.meets(box)]
            wordings = (Wording("", thing.name, size), Wording("", thing.name), Wording(key))
            self._items += write_inside(box, hung, wordings) or write_beside(
                box, key, self._crowd, self._frame
            )

    def _draw_pieces(self) -> None:
        """Each piece with its holes and its number, name and size, or its number alone."""
        for number, piece, box in self._pieces:
            is_small = min(box.size) < LEAST_PIECE
            self._outline(piece.box, box, FINE if is_small else MEDIUM)
            holes = [self._view.on_page(mark.hole) for mark in piece.marks]
            seen = [hole for hole in holes if self._frame.has(hole)]
            for hole in seen:
                self._items += draw_cross(hole)
            crosses = [Box(*hole, *hole).grown(CROSS_ARM) for hole in seen]
            size = format_size(piece.size, self._plan.units)
            words = write_inside(
                box, crosses, _piece_wordings(str(number), piece.name, size)
            ) or write_beside(box, str(number), self._crowd, self._frame)
            self._items += words
            if words:
                self._named.add(piece.slug)

    def _draw_studs(self) -> None:
        """The studs, behind all else."""
        xs = [self._view.on_page(Point(stud, 0.0)).x for stud in self._plan.studs]
        self._items += draw_studs(
            xs, self._frame, self._items, solids=self._solid, ceiling=self._ceiling
        )

    def _outline(self, whole: Box, seen: Box, width_mm: float) -> None:
        """A rectangle, left open where the view cuts it off."""
        window, (x0, y0, x1, y1) = self._view.window, seen
        if window.holds(whole):
            self._items.append(draw_box(seen, width_mm))
            return
        sides = (
            (whole.x0 >= window.x0, Point(x0, y0), Point(x0, y1)),
            (whole.x1 <= window.x1, Point(x1, y0), Point(x1, y1)),
            (whole.y0 >= window.y0, Point(x0, y0), Point(x1, y0)),
            (whole.y1 <= window.y1, Point(x0, y1), Point(x1, y1)),
        )
        self._items += [Line(start, end, width_mm) for is_seen, start, end in sides if is_seen]

    def _add(self, line: Line) -> None:
        """Draw a line and keep words away from it."""
        self._items.append(line)
        self._crowd.add(line.box.grown(0.3))


def _is_over(slope: Sequence[Point], x: float, y: float) -> bool:
    """Whether a point of the page lies clearly above a sloping ceiling."""
    return any(x0 <= x <= x1 for x0, x1 in find_low_spans(slope, y - _HIDDEN_GAP))


def draw_cross(hole: Point) -> tuple[Item, ...]:
    """A hole on the overview: two short lines that cross at it."""
    return (
        Line(hole.moved(-CROSS_ARM, 0.0), hole.moved(CROSS_ARM, 0.0), THIN),
        Line(hole.moved(0.0, -CROSS_ARM), hole.moved(0.0, CROSS_ARM), THIN),
    )


def furniture_key(number: int) -> str:
    """What stands for a piece of furniture where its name does not fit."""
    return f"F{number}"


def _piece_wordings(number: str, name: str, size: str) -> tuple[Wording, ...]:
    """What to write in a piece, the richest first."""
    return (
        Wording(number, name, size),
        Wording("", f"{number} {name}", size),
        Wording(number, name),
        Wording("", f"{number} {name}"),
        Wording(number),
    )
