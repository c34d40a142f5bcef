"""Nothing hangs where an open door's leaf would strike it.

What it checks:
    Whether a piece reaches behind the leaf of a door that is folded back against the wall: on the
    side to which it swings, as far as the door is wide, from its bottom to its top.

Why:
    A door that is thrown open breaks the glass, or the frame's corner dents the door. Common
    practice, no source.

Example:
    A door from 150 to 182 in swings to the right: its leaf reaches to 214 in. A piece that starts
    at 214 in: kept. One that starts at 209 in is 5 in behind the leaf: broken, and "move right by
    5 in" mends it.

What to write instead:
    Hang it beyond the leaf or above the door, or leave out ``swing`` where a stop keeps the leaf
    off the wall. ``rules: {door-swing: off}`` turns the rule off.

"""

from __future__ import annotations

from templater.geometry import Box
from templater.layout.model import LeftRight, Obstacle
from templater.placement.model import Plan, Side
from templater.rules.band import Band
from templater.rules.model import Finding
from templater.rules.moves import format_moves
from templater.rules.rule import Rule
from templater.rules.subject import Subject
from templater.rules.way_out import Closeness, find_closest, find_way_out

CODE = "door-swing"

CLEAR = Band(0.0)
"""Clear distance to the leaf, mm; common practice, no source."""


def check_door_swing(subject: Subject, plan: Plan) -> tuple[Finding, ...]:
    """Hold what hangs against the place that each open door takes on the wall."""
    leaves = [(thing, find_leaf(thing, thing.swing)) for thing in plan.obstacles if thing.swing]
    return tuple(_judge(each, plan) for each in find_closest(subject, leaves, CLEAR.low))


def find_leaf(door: Obstacle, swing: LeftRight) -> Box:
    """What a door's leaf covers of the wall when it is folded back."""
    way = door.box.width if swing is LeftRight.RIGHT else -door.box.width
    return door.box.moved(way, 0.0)


def _judge(each: Closeness, plan: Plan) -> Finding:
    """What is said of one door, with the shortest way out from behind its leaf."""
    shown = CLEAR.format_value(each.free_mm, plan.units).removeprefix("−")
    mend = None
    if CLEAR.change(each.free_mm):
        away = Side.RIGHT if each.obstacle.swing is LeftRight.RIGHT else Side.LEFT
        way = find_way_out(each.boxes, each.zone, plan.wall, (away, Side.ABOVE))
        mend = format_moves(way.x, way.y, plan.units)
    return Finding(
        rule=CODE,
        subject=each.name,
        other=each.obstacle.name,
        verdict=CLEAR.verdict(each.free_mm),
        figure=f"{shown} {'behind' if mend else 'clear of'} the leaf",
        band=f"{CLEAR.format_range(plan.units)} clear",
        mend=mend,
    )


RULE = Rule(CODE, check_door_swing, str(__doc__))
