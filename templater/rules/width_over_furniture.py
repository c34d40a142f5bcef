"""What hangs over furniture is about two thirds of its width.

What it checks:
    The width of the piece or group over furniture: 60 to 75 % of the furniture's. Over furniture
    is what the layout hangs ``above`` it, and what in fact hangs no more than 12 in above its top
    and shares half the width of the narrower of the two.

Why:
    Narrower, it is lost over the furniture; as wide, the two make one heavy block. Two thirds,
    with some room on both sides of it, looks at rest. Common practice, no source.

Example:
    A bench is 80 in wide. Three pieces of 16 in, 3 in apart, make 54 in, 68 % of it: kept. One
    piece of 46 in is 57 %: broken, and "widen by 2 in, to 48 in" mends it.

What to write instead:
    Another piece, one more or one less in the group, or another ``gap`` within its own band.
    Another band: ``rules: {width-over-furniture: {from: 50 %, to: 80 %}}``.

"""

from __future__ import annotations

from templater.placement.model import Plan
from templater.rules.band import Band
from templater.rules.judge import judge_share
from templater.rules.model import Finding
from templater.rules.rule import Rule
from templater.rules.settings import find_band
from templater.rules.subject import Subject

CODE = "width-over-furniture"

PERCENT = Band(60.0, 75.0)
"""Of the furniture's width; common practice, no source."""


def check_width_over_furniture(subject: Subject, plan: Plan) -> tuple[Finding, ...]:
    """Hold the width of a piece or group against that of the furniture under it."""
    below = subject.over
    if below is None:
        return ()
    band = find_band(plan, CODE, PERCENT)
    width, of = subject.box.width, below.box.width
    return (judge_share(CODE, subject.name, width, band, plan, of=of, other=below.name),)


RULE = Rule(CODE, check_width_over_furniture, str(__doc__))
