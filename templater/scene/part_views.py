"""Which parts of the wall are drawn again at a larger scale, so that every piece can be told."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass

from templater.geometry import Box, Point, Size
from templater.placement.model import Plan
from templater.scene.elevation import LEAST_PIECE
from templater.scene.scales import Scale, choose_scale_for_detail

MOST_PARTS = 12
"""So many parts are drawn; what is left out then is said in words."""

CLEAR_PIECE = 8.0
"""How large the smallest piece of a part is drawn where that takes few enough pages, mm."""

_FIGURES = Size(72.0, 62.0)
_LEAST_WINDOW = 20.0


@dataclass(frozen=True, slots=True)
class PartViews:
    """Windows of the wall, wall mm, and how many small pieces none of them shows."""

    windows: tuple[Box, ...]
    left_out: int


def choose_parts(plan: Plan, scale: Scale, room: Size) -> PartViews:
    """The parts that show every piece that is too small at the wall's own scale.

    ``room`` is what a part's page has for it, mm; its figures take their share of that.
    """
    small = [piece.box for piece in plan.pieces if min(piece.size) < LEAST_PIECE * scale.ratio]
    for least in (CLEAR_PIECE, LEAST_PIECE):
        windows, left_out = _cover(plan, small, room, least)
        if not left_out:
            break
    return PartViews(tuple(windows), left_out)


def _cover(plan: Plan, small: Sequence[Box], room: Size, least: float) -> tuple[list[Box], int]:
    """Windows at the scales that draw the pieces so large, and how many they do not show."""
    by_ratio: dict[float, list[Box]] = defaultdict(list)
    for box in small:
        by_ratio[choose_scale_for_detail(min(box.size), least, plan.units).ratio].append(box)
    windows: list[Box] = []
    ratios: list[float] = []
    for ratio in sorted(by_ratio, reverse=True):
        paper = Size(
            max(room.width - _FIGURES.width, _LEAST_WINDOW),
            max(room.height - _FIGURES.height, _LEAST_WINDOW),
        )
        window = Size(paper.width * ratio, paper.height * ratio)
        done = list(zip(windows, ratios, strict=True))
        left = [
            box
            for box in by_ratio[ratio]
            if not any(
                min(box.size) >= LEAST_PIECE * larger and _is_shown(box, seen) for seen, larger in done
            )
        ]
        while left and len(windows) < MOST_PARTS:
            windows.append(_next_window(left, window, plan.wall))
            ratios.append(ratio)
            left = [box for box in left if not _is_shown(box, windows[-1])]
        by_ratio[ratio] = left
    return windows, sum(len(left) for left in by_ratio.values())


def _next_window(boxes: Sequence[Box], size: Size, wall: Size) -> Box:
    """A window that begins with the leftmost box and, of those abreast of it, the lowest."""
    air = 0.02 * min(size)
    first = min(boxes)
    x0 = max(0.0, first.x0 - air)
    abreast = [box for box in boxes if box.x1 <= x0 + size.width]
    y0 = min(box.y0 for box in (abreast or [first]))
    corner = Point(x0, max(0.0, y0 - air))
    return Box.of(corner, size).common(Box(0.0, 0.0, *wall))


def _is_shown(box: Box, window: Box) -> bool:
    """Whether a window shows all of a box, or as much of it as such a window can."""
    seen = box.common(window)
    whole = Size(min(box.width, window.width * 0.9), min(box.height, window.height * 0.9))
    return seen.width >= whole.width - 1e-6 and seen.height >= whole.height - 1e-6
