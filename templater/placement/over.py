"""Finds the furniture over which something hangs, whether the layout asks for it or not."""

from __future__ import annotations

from collections.abc import Iterable

from templater.geometry import Box
from templater.mounting.amounts import SLACK_MM
from templater.placement.model import PlacedFurniture

REACH_MM = 12 * 25.4
"""So far above furniture the eye still takes the two together, mm; common practice, no source."""


def find_furniture_below(box: Box, furniture: Iterable[PlacedFurniture]) -> PlacedFurniture | None:
    """The furniture over which a box hangs in fact: the nearest one below, if there is any.

    That is one whose top is no more than 12 in under the box's lower edge, and with which the box
    shares at least half the width of the narrower of the two. Of furniture equally near it is the
    one that shares more, then the first.
    """
    below = [item for item in furniture if _hangs_over(box, item.box)]
    return min(below, key=lambda item: (-item.box.y1, -box.overlap(item.box).width), default=None)


def _hangs_over(box: Box, below: Box) -> bool:
    clear = box.y0 - below.y1
    shared = box.overlap(below).width
    is_near = -SLACK_MM <= clear <= REACH_MM + SLACK_MM
    return is_near and shared >= min(box.width, below.width) / 2 - SLACK_MM
