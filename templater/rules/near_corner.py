"""What hangs keeps away from the ends of the wall.

What it checks:
    The clear distance from a stand-alone piece or a group to the nearer end of the wall: at least
    3 in. It does not apply on a wall that is no wider than twice that.

Why:
    Nearer to a corner than pieces usually hang to each other, a piece seems to belong to the next
    wall, and a shoulder rubs against it. Common practice, no source.

Example:
    A piece 12 in from the left end: kept. At 1 in: broken, and "move right by 2 in" mends it.

What to write instead:
    A larger ``left`` or ``right``, or another ``centre``. Another band:
    ``rules: {near-corner: {from: 2 in}}``.

"""

from __future__ import annotations

from dataclasses import replace

from templater.lengths import format_length
from templater.mounting.amounts import SLACK_MM, format_at_least, round_up, step_mm
from templater.placement.model import Plan
from templater.placement.things import LEFT_END, RIGHT_END
from templater.rules.band import Band
from templater.rules.judge import judge_length
from templater.rules.model import Finding
from templater.rules.rule import Rule
from templater.rules.settings import find_band
from templater.rules.subject import Subject

CODE = "near-corner"

FREE = Band(3 * 25.4)
"""Clear distance to the wall's end, mm; common practice, no source."""


def check_near_corner(subject: Subject, plan: Plan) -> tuple[Finding, ...]:
    """Hold the distance to the nearer end of the wall against what keeps a piece on its wall."""
    band = find_band(plan, CODE, FREE)
    if plan.wall.width < 2 * band.low + step_mm(plan.units):
        return ()
    left, right = subject.box.x0, plan.wall.width - subject.box.x1
    end, free = (LEFT_END, left) if left <= right + SLACK_MM else (RIGHT_END, right)
    found = judge_length(
        CODE,
        subject.name,
        free,
        band,
        plan,
        other=end,
        more=f"move {'right' if end == LEFT_END else 'left'}",
        less=f"move {'left' if end == LEFT_END else 'right'}",
    )
    too_wide = 2 * band.low - left - right
    if found.mend is None or too_wide <= -step_mm(plan.units):
        return (found,)
    return (replace(found, mend=_narrow(subject.box.width, max(too_wide, SLACK_MM), plan)),)


def _narrow(width: float, by: float, plan: Plan) -> str:
    """What mends a piece that is too wide for the wall, wherever it hangs."""
    left = format_length(width - round_up(by, step_mm(plan.units)), plan.units)
    return f"narrow by {format_at_least(by, plan.units)}, to {left}, in the middle of the wall"


RULE = Rule(CODE, check_near_corner, str(__doc__))
