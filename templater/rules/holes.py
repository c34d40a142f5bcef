"""What is behind each hole: a stud, the hollow between two, or a wall that is solid throughout."""

from __future__ import annotations

from enum import Enum

from templater.mounting.amounts import SLACK_MM
from templater.placement.model import Plan

STUD_HALF_MM = 19.05
"""Half of a stud's face: a 2 x 4 is 1 1/2 in thick (PS 20, American Softwood Lumber Standard)."""

IN_STUD_MM = 10.0
"""So near to a stud's centre a hole is in it, whatever the ruler missed; common practice, no source."""

DOUBTFUL_MM = 30.0
"""Farther away it is beside the stud for certain; common practice, no source."""


class HoleWall(Enum):
    """What a hole meets, in the words that are shown."""

    STUD = "stud"
    DOUBTFUL = "doubtful: probe first"
    HOLLOW = "hollow"
    SOLID = "solid"
    NOT_CHECKED = "not checked"


def find_hole_wall(x: float, plan: Plan) -> HoleWall:
    """What a hole at so many mm from the wall's left end meets."""
    if plan.wall_surface is not None and plan.wall_surface.is_solid:
        return HoleWall.SOLID
    off = measure_off_stud(x, plan)
    if off is None:
        return HoleWall.NOT_CHECKED
    if off <= IN_STUD_MM + SLACK_MM:
        return HoleWall.STUD
    return HoleWall.DOUBTFUL if off <= DOUBTFUL_MM + SLACK_MM else HoleWall.HOLLOW


def measure_off_stud(x: float, plan: Plan) -> float | None:
    """How far a hole is from the centre of the nearest stud, mm; None where no stud is known."""
    return min((abs(stud - x) for stud in plan.studs), default=None)
