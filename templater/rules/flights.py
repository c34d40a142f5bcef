"""Where the steps of a flight of stairs are under what hangs, as far as the layout tells."""

from __future__ import annotations

from templater.geometry import Box, Point
from templater.layout.model import Stair
from templater.mounting.amounts import SLACK_MM
from templater.placement.model import Plan
from templater.placement.stairs import find_nosing_height


def is_above_steps(point: Point, plan: Plan) -> bool:
    """Whether a place is above the edges of the steps of a flight, where these are above the floor."""
    return any(SLACK_MM < find_nosing_height(stair, point.x) < point.y for stair in _list(plan))


def find_lower_heights(box: Box, plan: Plan) -> tuple[float, float]:
    """How high a lower edge is above what is walked on, least and most, mm: the floor or the steps."""
    if not is_above_steps(Point(box.centre.x, box.y0), plan):
        return box.y0, box.y0
    lines = [find_nosing_height(stair, x) for stair in _list(plan) for x in (box.x0, box.x1)]
    under = [max(line, 0.0) for line in lines if line < box.y0]
    return box.y0 - max(under), box.y0 - min(under)


def _list(plan: Plan) -> list[Stair]:
    return [group.stair for group in plan.groups if group.stair is not None]
