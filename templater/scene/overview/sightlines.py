"""Which parts of straight lines are seen: within a frame, and not behind what stands in front."""

from __future__ import annotations

from collections.abc import Sequence

from templater.drawing import Dash, Line
from templater.geometry import Box, Point
from templater.scene.spans import open_spans


def draw_seen(
    start: Point,
    end: Point,
    width_mm: float,
    frame: Box,
    fronts: Sequence[Box] = (),
    *,
    dash: Dash = (),
) -> list[Line]:
    """The parts of a line that lie within a frame and behind none of the boxes in front."""
    within = find_share(start, end, frame)
    if within is None:
        return []
    shares = [share for box in fronts if (share := find_share(start, end, box))]
    return [
        Line(point_along(start, end, low), point_along(start, end, high), width_mm, dash)
        for low, high in open_spans(shares, *within)
    ]


def find_share(start: Point, end: Point, box: Box) -> tuple[float, float] | None:
    """Where a line enters and leaves a box, as shares of its length; None where it does not.

    Cut against each side in turn (Liang and Barsky, 1984). A line along a side is in the box.
    """
    low, high = 0.0, 1.0
    for at, way, least, most in (
        (start.x, end.x - start.x, box.x0, box.x1),
        (start.y, end.y - start.y, box.y0, box.y1),
    ):
        if way == 0.0:
            if not least <= at <= most:
                return None
            continue
        enters, leaves = sorted(((least - at) / way, (most - at) / way))
        low, high = max(low, enters), min(high, leaves)
    return (low, high) if low < high else None


def point_along(start: Point, end: Point, share: float) -> Point:
    """The point at a share of the way; at 1 exactly the end."""
    if share == 1.0:
        return end
    return Point(start.x + (end.x - start.x) * share, start.y + (end.y - start.y) * share)
