"""Which parts of the wall are drawn again at a larger scale, so that every piece can be told."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from templater.geometry import Box, Point, Size
from templater.placement.model import Plan
from templater.scene.overview.elevation import fit_elevation
from templater.scene.overview.named_things import LEAST_PIECE
from templater.scene.overview.scales import Scale, choose_scale_for_detail

MOST_PARTS = 12
"""So many parts are drawn; what is left out then is said in words."""

CLEAR_PIECE = 8.0
"""How large the smallest piece of a part is drawn where that takes few enough pages, mm."""

_FIGURES = Size(72.0, 62.0)
_LEAST_WINDOW = 20.0
_AIR = 1.1
"""How much larger than a long thin piece its part is."""


@dataclass(frozen=True, slots=True)
class PartViews:
    """Windows of the wall, wall mm, and how many small pieces none of them shows."""

    windows: tuple[Box, ...]
    left_out: int


class _Part(NamedTuple):
    """A window, the ratio of the scale at which it is drawn, and the pieces it is made for."""

    window: Box
    ratio: float
    shows: list[Box]


def choose_parts(plan: Plan, scale: Scale, room: Size, unnamed: Collection[str] = ()) -> PartViews:
    """The parts that show every piece that is too small at the wall's own scale, or has no number.

    ``room`` is what a part's page has for it, mm; its figures take their share of that. ``unnamed``
    are the slugs of the pieces whose number found no room.
    """
    small = [
        piece.box
        for piece in plan.pieces
        if min(piece.size) < LEAST_PIECE * scale.ratio or piece.slug in unnamed
    ]
    for least in (CLEAR_PIECE, LEAST_PIECE):
        windows, left_out = _cover(plan, small, room, least, scale.ratio / 2)
        if not left_out:
            break
    return PartViews(tuple(windows), left_out)


def _cover(
    plan: Plan, small: Sequence[Box], room: Size, least: float, most_ratio: float
) -> tuple[list[Box], int]:
    """Windows at the scales that draw the pieces so large, and how many they do not show."""
    all_boxes = [piece.box for piece in plan.pieces]
    paper = Size(
        max(room.width - _FIGURES.width, _LEAST_WINDOW),
        max(room.height - _FIGURES.height, _LEAST_WINDOW),
    )
    by_ratio: dict[float, list[Box]] = defaultdict(list)
    for box in small:
        detailed = choose_scale_for_detail(min(box.size), least, plan.units).ratio
        whole = _AIR * max(box.width / paper.width, box.height / paper.height)
        by_ratio[min(max(detailed, whole), most_ratio)].append(box)
    parts: list[_Part] = []
    for ratio in sorted(by_ratio, reverse=True):
        window = Size(paper.width * ratio, paper.height * ratio)
        done = tuple(parts)
        left = [
            box
            for box in by_ratio[ratio]
            if not any(
                min(box.size) >= LEAST_PIECE * part.ratio and _is_shown(box, part.window)
                for part in done
            )
        ]
        while left and len(parts) < MOST_PARTS:
            first = _next_window(left, window, plan.wall)
            shown = [box for box in left if _is_shown(box, first)]
            drawn = _trim(_slide(first, shown, all_boxes, plan.wall), shown, all_boxes)
            parts.append(_Part(drawn, fit_elevation(plan, [room], drawn).scale.ratio, shown))
            left = [box for box in left if not _is_shown(box, drawn)]
        by_ratio[ratio] = left
    return _leave_out_repeats(parts), sum(len(left) for left in by_ratio.values())


def _leave_out_repeats(parts: Sequence[_Part]) -> list[Box]:
    """The windows without those that show nothing but what others show as large."""
    kept = list(parts)
    for part in parts:
        others = [each for each in kept if each is not part and each.ratio <= part.ratio]
        if all(any(_is_shown(box, each.window) for each in others) for box in part.shows):
            kept.remove(part)
    return [part.window for part in kept]


def _next_window(boxes: Sequence[Box], size: Size, wall: Size) -> Box:
    """A window that begins with the leftmost box and, of those abreast of it, the lowest."""
    air = 0.02 * min(size)
    first = min(boxes)
    x0 = max(0.0, first.x0 - air)
    abreast = [box for box in boxes if box.x1 <= x0 + size.width]
    y0 = min(box.y0 for box in (abreast or [first]))
    corner = Point(x0, max(0.0, y0 - air))
    return Box.of(corner, size).common(Box(0.0, 0.0, *wall))


def _slide(window: Box, shown: Sequence[Box], boxes: Sequence[Box], wall: Size) -> Box:
    """The window moved, down or up and then along, to where it cuts the fewest pieces.

    It still shows what it is made for.
    """
    width, height = window.size
    air = 0.02 * min(width, height)
    abreast = window._replace(y0=window.y0 - height, y1=window.y1 + height)
    near = [box for box in boxes if box.meets(abreast)]
    ups = [y for box in near for y in (box.y0 - air, box.y1 + air - height)]
    window = _choose_place(
        [window, *(window._replace(y0=y, y1=y + height) for y in ups)], shown, near, wall
    )
    beside = window._replace(x0=window.x0 - width, x1=window.x1 + width)
    near = [box for box in boxes if box.meets(beside)]
    acrosses = [x for box in near for x in (box.x0 - air, box.x1 + air - width)]
    window = _choose_place(
        [window, *(window._replace(x0=x, x1=x + width) for x in acrosses)], shown, near, wall
    )
    near = [box for box in boxes if box.meets(window.grown(max(width, height)))]
    whole = [box for box in near if window.holds(box)]
    middle = Box.around(whole or [window]).centre
    corner = Point(
        min(max(middle.x - width / 2, 0.0), wall.width - width),
        min(max(middle.y - height / 2, 0.0), wall.height - height),
    )
    return _choose_place([Box.of(corner, window.size), window], shown, near, wall)


def _choose_place(places: Sequence[Box], shown: Sequence[Box], near: Sequence[Box], wall: Size) -> Box:
    """The place on the wall with the fewest cut pieces, then with the most whole ones."""
    whole_wall = Box(0.0, 0.0, *wall)
    return min(
        (place for place in dict.fromkeys(places) if whole_wall.holds(place, slack=1e-6)),
        key=lambda place: (
            not all(_is_shown(box, place) for box in shown),
            len(_list_cut(place, near)),
            -sum(place.holds(box) for box in near),
        ),
        default=places[0],
    )


def _trim(window: Box, shown: Sequence[Box], boxes: Sequence[Box]) -> Box:
    """The window less the sides that cut pieces, as far as it still shows what it is made for."""
    cut = _list_cut(window, boxes)
    while cut:
        closer = [
            each
            for box in cut
            for each in (
                window._replace(x1=min(window.x1, box.x0)),
                window._replace(x0=max(window.x0, box.x1)),
                window._replace(y1=min(window.y1, box.y0)),
                window._replace(y0=max(window.y0, box.y1)),
            )
            if min(each.size) > 0.0 and all(_is_shown(other, each) for other in shown)
        ]
        best = min(closer, key=lambda each: len(_list_cut(each, boxes)), default=window)
        if len(left := _list_cut(best, boxes)) >= len(cut):
            break
        window, cut = best, left
    return window


def _list_cut(window: Box, boxes: Sequence[Box]) -> list[Box]:
    """The pieces of which the window shows a part only."""
    return [box for box in boxes if box.meets(window) and not window.holds(box)]


def _is_shown(box: Box, window: Box) -> bool:
    """Whether a window shows all of a box, or as much of it as such a window can."""
    seen = box.common(window)
    whole = Size(min(box.width, window.width * 0.9), min(box.height, window.height * 0.9))
    return seen.width >= whole.width - 1e-6 and seen.height >= whole.height - 1e-6
