"""Furniture, openings, fixtures and pieces on the wall's elevation, each with its name or a key."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from templater.drawing import Item, Line, Words
from templater.geometry import Box, Point
from templater.lettering import words_box
from templater.placement.model import PlacedPiece
from templater.scene.lines import FINE, MEDIUM, THIN
from templater.scene.marks import draw_box
from templater.scene.overview.piece_labels import AIR, Crowd, Wording, write_beside, write_inside
from templater.scene.overview.surroundings import draw_hidden, draw_opening, is_hidden
from templater.scene.overview.view import Seen, Sight
from templater.scene.wording import format_size

CROSS_ARM = 1.0
"""How far a hole's cross reaches to each side on paper, mm."""

LEAST_PIECE = 5.0
"""A piece drawn smaller than this in either direction is shown again at a larger scale, mm."""


def furniture_key(number: int) -> str:
    """What stands for a piece of furniture where its name does not fit."""
    return f"F{number}"


def obstacle_key(number: int) -> str:
    """What stands for an opening or a fixture where its name does not fit."""
    return f"X{number}"


def draw_cross(hole: Point) -> tuple[Item, ...]:
    """A hole on the overview: two short lines that cross at it."""
    return (
        Line(hole.moved(-CROSS_ARM, 0.0), hole.moved(CROSS_ARM, 0.0), THIN),
        Line(hole.moved(0.0, -CROSS_ARM), hole.moved(0.0, CROSS_ARM), THIN),
    )


Labels = Mapping[int, Sequence[Words]]
"""What is written by things that cannot be seen, by their numbers in the plan."""


def label_hidden(sight: Sight) -> Labels:
    """What to write in or beside each opening and fixture that furniture hides."""
    labels: dict[int, Sequence[Words]] = {}
    crowd = Crowd([*(seen.box for seen in sight.pieces), *(seen.box for seen in sight.obstacles)])
    for number, thing, box in sight.obstacles:
        if is_hidden(thing.box, [each.box for each in sight.plan.furniture]):
            hung = [piece.box for piece in sight.pieces if piece.box.meets(box)]
            key = obstacle_key(number)
            wordings = _thing_wordings(thing.name, format_size(thing.box.size, sight.plan.units), key)
            fronts = [each.box.grown(-AIR) for each in sight.furniture if each.box.meets(box)]
            beside = (write_beside(box, key, crowd, front) for front in fronts)
            labels[number] = write_inside(box, hung, wordings) or next(filter(None, beside), [])
    return labels


def draw_furniture(sight: Sight, crowd: Crowd, hidden: Labels) -> Iterator[Item]:
    """Each piece of furniture with its name and size, or its letter and number.

    What is written keeps clear of what is ``hidden`` behind it.
    """
    behind = [seen.box.grown(2 * AIR) for seen in sight.obstacles if seen.number in hidden]
    behind += [words_box(words) for label in hidden.values() for words in label]
    for number, thing, box in sight.furniture:
        yield from _draw_outline(thing.box, box, sight.view.window, MEDIUM)
        hung = [piece.box for piece in sight.pieces]
        taken = [each for each in (*hung, *behind) if each.meets(box)]
        key = furniture_key(number)
        wordings = _thing_wordings(thing.name, format_size(thing.box.size, sight.plan.units), key)
        yield from write_inside(box, taken, wordings) or write_beside(box, key, crowd, sight.frame)


def draw_obstacles(sight: Sight, crowd: Crowd, hidden: Labels) -> Iterator[Item]:
    """Each opening and fixture, crossed, with its name and size, or its letter and number.

    Those that are ``hidden`` are drawn in dashes.
    """
    for number, thing, box in sight.obstacles:
        whole = sight.view.box_on_page(thing.box)
        if number in hidden:
            yield from draw_hidden(whole, sight.frame)
            yield from hidden[number]
            continue
        key, covers = obstacle_key(number), [each.box for each in sight.furniture if each.box.meets(box)]
        wordings = _thing_wordings(thing.name, format_size(thing.box.size, sight.plan.units), key)
        words = write_inside(box, covers, wordings)
        yield from draw_opening(whole, sight.frame, covers, words, hinges=thing.swing)
        yield from words or write_beside(box, key, crowd, sight.frame)


def _thing_wordings(name: str, size: str, key: str) -> tuple[Wording, ...]:
    """What to write in furniture or an opening, the richest first."""
    return (Wording("", name, size), Wording("", name), Wording(key))


def draw_piece(seen: Seen[PlacedPiece], sight: Sight) -> Iterator[Item]:
    """A piece's outline and its holes."""
    _, piece, box = seen
    width = FINE if min(box.size) < LEAST_PIECE else MEDIUM
    yield from _draw_outline(piece.box, box, sight.view.window, width)
    for hole in _list_holes(piece, sight):
        yield from draw_cross(hole)


def name_piece(seen: Seen[PlacedPiece], sight: Sight, crowd: Crowd) -> list[Words]:
    """Its number, name and size, or its number alone; nothing where there is no room."""
    number, piece, box = str(seen.number), seen.thing, seen.box
    crosses = [Box(*hole, *hole).grown(CROSS_ARM) for hole in _list_holes(piece, sight)]
    wordings = _piece_wordings(number, piece.name, format_size(piece.size, sight.plan.units))
    return write_inside(box, crosses, wordings) or write_beside(box, number, crowd, sight.frame)


def _list_holes(piece: PlacedPiece, sight: Sight) -> list[Point]:
    """The holes of a piece that are seen, on the page."""
    holes = (sight.view.on_page(mark.hole) for mark in piece.marks)
    return [hole for hole in holes if sight.frame.has(hole)]


def _piece_wordings(number: str, name: str, size: str) -> tuple[Wording, ...]:
    """What to write in a piece, the richest first."""
    return (
        Wording(number, name, size),
        Wording("", f"{number} {name}", size),
        Wording(number, name),
        Wording("", f"{number} {name}"),
        Wording(number),
    )


def _draw_outline(whole: Box, seen: Box, window: Box, width_mm: float) -> Iterator[Item]:
    """A rectangle, left open where the view cuts it off."""
    x0, y0, x1, y1 = seen
    if window.holds(whole):
        yield draw_box(seen, width_mm)
        return
    sides = (
        (whole.x0 >= window.x0, Point(x0, y0), Point(x0, y1)),
        (whole.x1 <= window.x1, Point(x1, y0), Point(x1, y1)),
        (whole.y0 >= window.y0, Point(x0, y0), Point(x1, y0)),
        (whole.y1 <= window.y1, Point(x0, y1), Point(x1, y1)),
    )
    yield from (Line(start, end, width_mm) for is_seen, start, end in sides if is_seen)
