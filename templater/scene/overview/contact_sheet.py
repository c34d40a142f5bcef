"""The contact sheet: several ways to hang one group, small and side by side, to choose from."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from templater.drawing import Item, Line, Polyline
from templater.geometry import ORIGIN, Box, Point, Size
from templater.lettering import LINE_PITCH
from templater.placement.model import PlacedGroup, Plan
from templater.scene.lines import (
    FINE,
    HEAVY,
    MEDIUM,
    NORMAL,
    SMALL,
    THICK,
    THIN,
    centre_dash,
    short_dash,
)
from templater.scene.marks import draw_box
from templater.scene.model import Form, PageDrawing
from templater.scene.overview.piece_labels import Crowd, Wording, write_beside, write_inside
from templater.scene.overview.scales import Scale, choose_scale
from templater.scene.overview.surroundings import draw_slope
from templater.scene.overview.view import Sight, View
from templater.scene.overview.wall_lines import draw_level
from templater.scene.passages import draw_paragraph, move_items
from templater.scene.wording import format_size

A_PAGE = 3
"""How many ways stand on one page."""

_GAP = 5.0
_HEAD = 10.0
_PICTURE_SHARE = 0.6
"""How much of its cell a picture takes of the side that it shares with the words."""

_AFTER = 1.2
"""Below each figure, so that a broken line is nearer to its own than to the next, mm."""

_KEY = "Dashes and dots: the eye line."
_INSET = 0.8
"""From a window's or a door's outline to its inner one, mm."""

_ASIDE = 0.6
"""How much wall is shown on each side of the group, as a share of its width."""

_LEAST_ASIDE = 800.0
"""And how much at least, mm."""


@dataclass(frozen=True, slots=True)
class Entry:
    """One way to hang a group: what it is called, the whole wall, the figures in words."""

    title: str
    plan: Plan
    group: str
    captions: tuple[str, ...]

    @property
    def placed(self) -> PlacedGroup:
        """The group as it hangs."""
        return next(group for group in self.plan.groups if group.name == self.group)


@dataclass(frozen=True, slots=True)
class _Cell:
    """Where a picture and its words stand on the page."""

    picture: Box
    words: Box


def draw_contact_sheet(entries: Sequence[Entry], form: Form) -> tuple[PageDrawing, ...]:
    """All ways, three a page and each group on pages of its own; on a page all at one scale.

    Entries of a group stand together.
    """
    pages: list[PageDrawing] = []
    for group, ways in groupby(entries, key=lambda entry: entry.group):
        listed = list(ways)
        firsts = range(0, len(listed), A_PAGE)
        pages += [_draw_page(group, listed[first : first + A_PAGE], form) for first in firsts]
    return tuple(pages)


def _draw_page(group: str, entries: Sequence[Entry], form: Form) -> PageDrawing:
    """Up to three ways in one row or one column, whichever shows them larger."""
    plan, inner = entries[0].plan, form.inner
    title = f"{plan.title}: {group}"
    head = draw_paragraph(title, inner.width, height_mm=NORMAL, bold=True, most_lines=1)
    window = _find_window(entries)
    room = inner._replace(y1=inner.y1 - _HEAD)
    choices = [(_find_scale(cells, window, plan), cells) for cells in (_rows(room), _columns(room))]
    scale, cells = min(choices, key=lambda choice: choice[0].ratio)
    items: list[Item] = [*move_items(head.items, inner.x0, inner.y1)]
    for entry, cell in zip(entries, cells, strict=False):
        picture = _Picture(entry, window, scale, cell.picture)
        items += picture.draw()
        words = cell.words
        if words.x0 > picture.right:
            words = words._replace(x0=picture.right + 2 * _GAP)
        items += _write_words(entry, scale, words)
    return PageDrawing(f"Ways to hang {group}", form.size, tuple(items))


def _rows(room: Box) -> list[_Cell]:
    """One way under the other, words at the right of each picture."""
    height = (room.height - (A_PAGE - 1) * _GAP) / A_PAGE
    middle = room.x0 + room.width * _PICTURE_SHARE
    tops = [room.y1 - number * (height + _GAP) for number in range(A_PAGE)]
    return [
        _Cell(
            Box(room.x0, top - height, middle - _GAP / 2, top),
            Box(middle + _GAP / 2, top - height, room.x1, top),
        )
        for top in tops
    ]


def _columns(room: Box) -> list[_Cell]:
    """One way beside the other, words under each picture."""
    width = (room.width - (A_PAGE - 1) * _GAP) / A_PAGE
    middle = room.y1 - room.height * _PICTURE_SHARE
    lefts = [room.x0 + number * (width + _GAP) for number in range(A_PAGE)]
    return [
        _Cell(
            Box(left, middle + _GAP / 2, left + width, room.y1),
            Box(left, room.y0, left + width, middle - _GAP / 2),
        )
        for left in lefts
    ]


def _find_window(entries: Sequence[Entry]) -> Box:
    """The part of the wall round every way, from the floor to the ceiling."""
    wall = Box.of(ORIGIN, entries[0].plan.wall)
    shown = [entry.placed.box for entry in entries]
    shown += [entry.placed.over.box for entry in entries if entry.placed.over]
    around = Box.around(shown)
    aside = max(around.width * _ASIDE, _LEAST_ASIDE)
    return wall._replace(x0=max(wall.x0, around.x0 - aside), x1=min(wall.x1, around.x1 + aside))


def _find_scale(cells: Sequence[_Cell], window: Box, plan: Plan) -> Scale:
    """The largest standard scale at which the window fits a picture's place."""
    room = cells[0].picture.size
    return choose_scale(window.size, Size(room.width - 1.0, room.height - 1.0), plan.units)


class _Picture:
    """The wall round one way: furniture, things in the way, pieces, eye line, floor and ceiling."""

    def __init__(self, entry: Entry, window: Box, scale: Scale, place: Box) -> None:
        self._plan, self._group, self._window = entry.plan, entry.placed, window
        bottom = place.y1 - window.height / scale.ratio
        origin = Point(place.x0 - window.x0 / scale.ratio, bottom - window.y0 / scale.ratio)
        self._sight = Sight.of(self._plan, View(scale, origin, window))
        self._frame = self._sight.frame
        self._crowd = Crowd(self._sight.solids)

    @property
    def right(self) -> float:
        """Where the picture ends on the page."""
        return self._frame.x1

    def draw(self) -> Iterator[Item]:
        """Everything, from the wall forward."""
        yield from self._draw_wall()
        yield from self._draw_eye_line()
        yield from self._draw_things()
        yield from self._draw_pieces()

    def _draw_wall(self) -> Iterator[Item]:
        """Floor and ceiling, and the wall's ends where they are seen; dashed where it goes on."""
        (x0, y0, x1, y1), wall = self._frame, self._plan.wall
        yield Line(Point(x0, y0), Point(x1, y0), HEAVY)
        level = [Point(x0, y1), Point(x1, y1)]
        yield from draw_slope(self._sight.ceiling or level, self._frame, self._crowd)
        for x, is_end in ((x0, self._window.x0 <= 0.0), (x1, self._window.x1 >= wall.width)):
            dash = () if is_end else short_dash(THIN)
            yield Line(Point(x, y0), Point(x, y1), THICK if is_end else THIN, dash)

    def _draw_eye_line(self) -> Iterator[Item]:
        """The eye line, where it is on the wall."""
        y = self._sight.view.on_page(Point(0.0, self._plan.eye_line_mm)).y
        if self._frame.y0 < y < self._frame.y1:
            yield from draw_level(y, THIN, centre_dash(THIN), self._sight, self._crowd)

    def _draw_things(self) -> Iterator[Item]:
        """Furniture with its name and size; windows, doors and the like with their names."""
        for _, thing, box in self._sight.furniture:
            size = format_size(thing.box.size, self._plan.units)
            yield draw_box(box, MEDIUM)
            hung = [piece.box for piece in self._sight.pieces if piece.box.meets(box)]
            yield from write_inside(box, hung, (Wording("", thing.name, size), Wording("", thing.name)))
        for _, obstacle, box in self._sight.obstacles:
            yield draw_box(box, THIN)
            yield draw_box(box.grown(-_INSET), THIN) if min(box.size) > 5 * _INSET else _cross(box)
            wordings = (Wording("", obstacle.name), Wording("", obstacle.kind))
            words = write_inside(box.grown(-_INSET), (), wordings)
            around = box.grown(_INSET)
            yield from words or write_beside(around, obstacle.name, self._crowd, self._frame)

    def _draw_pieces(self) -> Iterator[Item]:
        """The group's pieces with their numbers in the list; all others as thin outlines."""
        numbers = {name: str(number) for number, name in enumerate(self._group.pieces, 1)}
        for _, piece, box in self._sight.pieces:
            number = numbers.get(piece.name)
            yield draw_box(box, THICK if number else FINE)
            if number:
                inside = write_inside(box, (), (Wording(number),))
                yield from inside or write_beside(box, number, self._crowd, self._frame)


def _cross(box: Box) -> Polyline:
    """A stroke across a thing too small for a double outline."""
    return Polyline((Point(box.x0, box.y0), Point(box.x1, box.y1)), THIN)


def _write_words(entry: Entry, scale: Scale, place: Box) -> Iterator[Item]:
    """The title, the figures and the scale, then as much of the list of pieces as there is room for."""
    title = draw_paragraph(
        entry.title, place.width, height_mm=NORMAL, bold=True, after_mm=1.5, most_lines=2
    )
    texts = (*entry.captions, f"{scale.text}. {_KEY}")
    passages = [title, *(draw_paragraph(text, place.width, after_mm=_AFTER) for text in texts)]
    top = place.y1
    for passage in passages:
        yield from move_items(passage.items, place.x0, top)
        top -= passage.height_mm + passage.after_mm
    listed = " · ".join(f"{number} {name}" for number, name in enumerate(entry.placed.pieces, 1))
    lines = int((top - place.y0) / (LINE_PITCH * SMALL))
    if lines > 0:
        pieces = draw_paragraph(listed, place.width, most_lines=lines)
        yield from move_items(pieces.items, place.x0, top)
