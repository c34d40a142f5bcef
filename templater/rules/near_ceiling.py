"""What hangs leaves some wall free under the ceiling.

What it checks:
    The clear distance from the top edge of a piece, or of each piece of a group, up to the
    ceiling, a sloping one at its lowest over the piece: at least 6 in.

Why:
    Above a picture the eye wants at least as much wall as below it over furniture; nearer to the
    ceiling it looks pushed up. Common practice, no source.

Example:
    The wall is 96 in high. A top edge at 84 in leaves 12 in: kept. At 92 in it leaves 4 in:
    broken, and "lower by 2 in" mends it.

What to write instead:
    A lower ``top``, ``bottom`` or ``eye_line``, or for a tall group a row instead of a column.
    Another band: ``rules: {near-ceiling: {from: 4 in}}``.

"""

from __future__ import annotations

from templater.geometry import Box
from templater.placement.ceiling import find_headroom
from templater.placement.model import Plan
from templater.rules.band import Band
from templater.rules.heights import judge_height
from templater.rules.judge import judge_length
from templater.rules.model import Finding
from templater.rules.rule import Rule
from templater.rules.settings import find_band
from templater.rules.subject import Subject

CODE = "near-ceiling"

FREE = Band(6 * 25.4)
"""Clear distance from a top edge to the ceiling, mm; common practice, no source."""


def check_near_ceiling(subject: Subject, plan: Plan) -> tuple[Finding, ...]:
    """Hold the wall left free above a piece or group against what the eye asks for."""
    free = min(_measure_free(piece.box, plan) for piece in subject.pieces)
    band = find_band(plan, CODE, FREE)
    stands_low = subject.box.y0 < band.change(free)
    if stands_low:
        return (judge_length(CODE, subject.name, free, band, plan, more="shorten", less="raise"),)
    return (judge_height(CODE, subject, free, band, plan, upward=False),)


def _measure_free(box: Box, plan: Plan) -> float:
    """From a box's top edge to the lowest point of the ceiling above it, mm."""
    return find_headroom(plan.ceiling, plan.wall.height, box.x0, box.x1) - box.y1


RULE = Rule(CODE, check_near_ceiling, str(__doc__))
