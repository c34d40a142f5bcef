"""What hangs by itself has its centre on the eye line.

What it checks:
    The height above the floor of the centre of a stand-alone piece or a group: no more than 1 in
    above or below the eye line. It does not apply to what the layout hangs ``above`` furniture,
    which sets a height of its own, nor along or over stairs, where the eye line rises with the steps.

Why:
    Pictures of many sizes hang quietly on one wall when their centres are at one height, that of
    a standing person's eyes: 60 in unless the layout says otherwise. Common practice, no source.

Example:
    The eye line is at 60 in. A piece with its centre at 60 1/2 in: kept. At 57 in: broken, and
    "raise by 2 in" mends it.

What to write instead:
    Leave out ``bottom`` and ``top``: the centre is then on the eye line. For the whole wall set
    ``eye_line: 58 in``. Another band, of heights above the floor:
    ``rules: {eye-line: {from: 57 in, to: 62 in}}``.

"""

from __future__ import annotations

from templater.layout.model import Arrangement
from templater.placement.model import Plan
from templater.rules.band import Band
from templater.rules.flights import is_above_steps
from templater.rules.heights import judge_height
from templater.rules.model import Finding
from templater.rules.rule import Rule
from templater.rules.settings import find_band
from templater.rules.subject import Subject

CODE = "eye-line"

TOLERANCE_MM = 25.4
"""How far off the eye line a centre may be, one inch; common practice, no source."""


def check_eye_line(subject: Subject, plan: Plan) -> tuple[Finding, ...]:
    """Hold the centre's height against the eye line; ``above`` furniture sets a height of its own."""
    is_asked_over = subject.over is not None and not subject.is_over_unasked
    is_on_stairs = subject.arrange is Arrangement.STAIR or is_above_steps(subject.box.centre, plan)
    if is_asked_over or is_on_stairs:
        return ()
    usual = Band(plan.eye_line_mm - TOLERANCE_MM, plan.eye_line_mm + TOLERANCE_MM)
    band = find_band(plan, CODE, usual)
    height = subject.box.centre.y
    return (judge_height(CODE, subject, height, band, plan, upward=True),)


RULE = Rule(CODE, check_eye_line, str(__doc__))
