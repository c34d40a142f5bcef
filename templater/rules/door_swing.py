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

from collections.abc import Iterator

from templater.geometry import Box
from templater.layout.model import LeftRight, Obstacle
from templater.placement.model import Plan, Side
from templater.rules.band import Band
from templater.rules.model import Finding
from templater.rules.moves import format_moves
from templater.rules.rule import Rule
from templater.rules.subject import Subject
from templater.rules.way_out import find_movers, find_way_out, measure_free

CODE = "door-swing"

CLEAR = Band(0.0)
"""Clear distance to the leaf, mm; common practice, no source."""


def check_door_swing(subject: Subject, plan: Plan) -> tuple[Finding, ...]:
    """Hold what hangs against the place that each open door takes on the wall."""
    doors = [(thing, thing.swing) for thing in plan.obstacles if thing.swing]
    return tuple(
        found for door, swing in doors for found in _judge(subject, door, find_leaf(door, swing), plan)
    )


def find_leaf(door: Obstacle, swing: LeftRight) -> Box:
    """What a door's leaf covers of the wall when it is folded back."""
    way = door.box.width if swing is LeftRight.RIGHT else -door.box.width
    return door.box.moved(way, 0.0)


def _judge(subject: Subject, door: Obstacle, leaf: Box, plan: Plan) -> Iterator[Finding]:
    away = Side.RIGHT if leaf.x0 > door.box.x0 else Side.LEFT
    for name, boxes in find_movers(subject, door):
        free = measure_free(boxes, leaf)
        shown = CLEAR.format_value(free, plan.units).removeprefix("−")
        mend = None
        if CLEAR.change(free):
            way = find_way_out(boxes, leaf, plan.wall, (away, Side.ABOVE))
            mend = format_moves(way.x, way.y, plan.units)
        yield Finding(
            rule=CODE,
            subject=name,
            other=door.name,
            verdict=CLEAR.verdict(free),
            figure=f"{shown} behind the leaf" if mend else f"{shown} clear of the leaf",
            band=f"{CLEAR.format_range(plan.units)} clear",
            mend=mend,
        )


RULE = Rule(CODE, check_door_swing, str(__doc__))
