"""What hangs free is neither lost on its wall nor too wide for it.

What it checks:
    The width of a stand-alone piece or a group beside that of the wall: no more than 75 %. If it
    is alone on a bare wall, without furniture, also no less than 25 %. It does not apply over
    furniture, which sets a width of its own.

Why:
    A wall frames what hangs on it as furniture does from below: with the same three quarters as
    the most. A small piece alone on a wide wall looks lost. Common practice, no source.

Example:
    A wall of 120 in. A piece of 48 in alone on it takes 40 %: kept. One of 20 in takes 17 %:
    broken, and "widen by 10 in, to 30 in" mends it.

What to write instead:
    A larger piece, or a group: ``choose`` finds one in a pool. Over furniture write ``above``.
    Another band: ``rules: {size-against-wall: {from: 15 %, to: 90 %}}``.

"""

from __future__ import annotations

from templater.placement.model import Plan
from templater.rules.band import Band
from templater.rules.judge import judge_share
from templater.rules.model import Finding
from templater.rules.rule import Rule
from templater.rules.settings import find_band
from templater.rules.subject import Subject

CODE = "size-against-wall"

PERCENT = Band(25.0, 75.0)
"""Of the wall's width; common practice, no source."""


def check_size_against_wall(subject: Subject, plan: Plan) -> tuple[Finding, ...]:
    """Hold the width of a piece or group against that of the wall."""
    if subject.over is not None:
        return ()
    band = find_band(plan, CODE, PERCENT)
    if not _is_alone(subject, plan):
        band = Band(0.0, band.high)
    wall = plan.wall.width
    return (judge_share(CODE, subject.name, subject.box.width, band, plan, of=wall),)


def _is_alone(subject: Subject, plan: Plan) -> bool:
    return len(subject.pieces) == len(plan.pieces) and not plan.furniture


RULE = Rule(CODE, check_size_against_wall, str(__doc__))
