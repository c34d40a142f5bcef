"""Hangs frames along a flight of stairs: plumb, their centres on a line parallel to the nosings."""

from __future__ import annotations

from collections.abc import Sequence
from math import atan2, cos, sin

from templater.geometry import Box, Point, Size
from templater.layout.model import LeftRight, Stair


def arrange_along_stairs(sizes: Sequence[Size], gap_mm: float, stair: Stair) -> tuple[Box, ...]:
    """Frames from left to right; the first one's centre lies at the origin.

    The gap is measured along the slope: so far could a frame slide toward the first, its centre on
    the line of the centres, before it touches another. So none ever overlap, whatever their sizes.
    """
    pitch = atan2(stair.rise_mm, stair.run_mm)
    along: list[float] = []
    for size in sizes:
        along.append(_find_next(along, sizes, size, gap_mm, pitch))
    across, up = cos(pitch), sin(pitch) * _turn(stair)
    return tuple(
        Box.of(Point(at * across - size.width / 2, at * up - size.height / 2), size)
        for at, size in zip(along, sizes, strict=True)
    )


def find_nosing_height(stair: Stair, x_mm: float) -> float:
    """How high above the floor the line through the nosings is at a place along the wall."""
    return stair.start.y + (x_mm - stair.start.x) * _turn(stair) * stair.rise_mm / stair.run_mm


def _find_next(
    along: Sequence[float], sizes: Sequence[Size], size: Size, gap_mm: float, pitch: float
) -> float:
    """Where along the slope the next frame's centre goes, given those of the frames before it."""
    tallest = Size(max(each.width for each in sizes), max(each.height for each in sizes))
    place = 0.0
    for at, other in zip(reversed(along), reversed(sizes[: len(along)]), strict=True):
        if at + _touching(tallest, size, pitch) + gap_mm <= place:
            break
        place = max(place, at + _touching(other, size, pitch) + gap_mm)
    return place


def _turn(stair: Stair) -> float:
    """1 where the stairs go up to the right, -1 where they go up to the left."""
    return 1.0 if stair.up is LeftRight.RIGHT else -1.0


def _touching(a: Size, b: Size, pitch: float) -> float:
    """How far apart along the slope two centres are when the frames just touch."""
    return min((a.width + b.width) / 2 / cos(pitch), (a.height + b.height) / 2 / sin(pitch))
