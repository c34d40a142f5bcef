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
    5 in" mends it, unless it would then hang on something else: what is told is the shortest move
    to where it is free, if it can be one that breaks no other rule of its place; else those that it
    breaks are named.

What to write instead:
    Hang it beyond the leaf or above the door, or leave out ``swing`` where a stop keeps the leaf
    off the wall. ``rules: {door-swing: off}`` turns the rule off.

"""

from __future__ import annotations

from templater.placement.model import Plan
from templater.rules.band import Band
from templater.rules.free_wall import list_leaves
from templater.rules.model import Finding
from templater.rules.near_opening import list_too_near
from templater.rules.rule import Rule
from templater.rules.subject import Subject
from templater.rules.way_out import Closeness, find_closest, format_way_out

CODE = "door-swing"

CLEAR = Band(0.0)
"""Clear distance to the leaf, mm; common practice, no source."""


def check_door_swing(subject: Subject, plan: Plan) -> tuple[Finding, ...]:
    """Hold what hangs against the place that each open door takes on the wall."""
    found = find_closest(subject, list_leaves(plan), CLEAR.low)
    return tuple(_judge(each, plan) for each in found)


def _judge(each: Closeness, plan: Plan) -> Finding:
    """What is said of one door, with the shortest way out from behind its leaf."""
    shown = CLEAR.format_value(each.free_mm, plan.units).removeprefix("−")
    mend = format_way_out(each, (), plan, list_too_near) if CLEAR.change(each.free_mm) else None
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
