"""What hangs over furniture leaves some wall free above it.

What it checks:
    The clear distance from the top of the furniture to the lowest edge of the piece or group over
    it: 6 to 8 in.

Why:
    Closer than that, heads and lamps meet the frame; farther away, furniture and picture come
    apart and the picture floats. Common practice, no source.

Example:
    A bench is 34 in high. A group whose lowest edge is 41 in above the floor has a clearance of
    7 in: kept. At 39 in it has 5 in: broken, and "raise by 1 in" mends it.

What to write instead:
    Set ``clearance`` beside ``above``, for example ``clearance: 7 in``. Another band:
    ``rules: {clearance: {from: 5 in, to: 10 in}}``.

"""

from __future__ import annotations

from templater.placement.model import Plan
from templater.rules.band import Band
from templater.rules.heights import judge_height
from templater.rules.model import Finding
from templater.rules.rule import Rule
from templater.rules.settings import find_band
from templater.rules.subject import Subject

CODE = "clearance"

CLEARANCE = Band(6 * 25.4, 8 * 25.4)
"""From the furniture's top to the lowest edge above it, mm; common practice, no source."""


def check_clearance(subject: Subject, plan: Plan) -> tuple[Finding, ...]:
    """Hold the clear distance between furniture and what hangs over it against the usual one."""
    if subject.over is None:
        return ()
    clear = subject.box.y0 - subject.over.box.y1
    band = find_band(plan, CODE, CLEARANCE)
    return (judge_height(CODE, subject, clear, band, plan, upward=True, other=subject.over.name),)


RULE = Rule(CODE, check_clearance, str(__doc__))
