"""A group weighs as much to the eye on its left as on its right.

What it checks:
    How far the middle of all the areas of a group's pieces, each counted by its width times its
    height, lies left or right of the middle of the group's box: no more than 10 % of the group's
    width. Only sizes are compared: never what is shown, and never colour.

Why:
    A group is centred by its box. If most of its area is on one side, it looks as if it hung off
    centre. Common practice, no source.

Example:
    Squares of 10, 20 and 40 in in a row, 3 in apart, are 76 in wide, with the middle at 38 in. The
    areas 100, 400 and 1600 with middles at 5, 23 and 56 in have theirs at 47 1/4 in, 12 % to the
    right: broken. With the largest between the other two it is at 38 in: kept.

What to write instead:
    Change the order in ``pieces`` so that the large pieces stand near the middle, or one at each
    side. More is let pass with ``rules: {balance: {to: 15 %}}``.

"""

from __future__ import annotations

from collections.abc import Sequence

from templater.geometry import Box, Point
from templater.lengths import Unit, format_both
from templater.mounting.amounts import SLACK_MM, round_up, step_mm
from templater.placement.model import Plan
from templater.rules.band import Band
from templater.rules.model import Finding
from templater.rules.rule import Rule
from templater.rules.settings import find_band
from templater.rules.subject import Subject

CODE = "balance"

PERCENT = Band(0.0, 10.0)
"""Of the group's width; common practice, no source."""


def check_balance(subject: Subject, plan: Plan) -> tuple[Finding, ...]:
    """Hold the middle of a group's areas against the middle of its box."""
    if len(subject.parts) < 2:
        return ()
    band = Band(0.0, find_band(plan, CODE, PERCENT).high)
    width = subject.box.width
    aside = find_middle_of_area([piece.box for piece in subject.pieces]).x - subject.box.centre.x
    percent = abs(aside) / width * 100
    too_far = max(0.0, percent - band.high) * width / 100
    finding = Finding(
        rule=CODE,
        subject=subject.name,
        other=None,
        verdict=band.verdict(percent),
        figure=f"{band.format_percent(percent)} of its width{_side(aside)}",
        band=band.format_percents(),
        mend=_bring_back(too_far, aside, plan.units) if band.change(percent) else None,
    )
    return (finding,)


def find_middle_of_area(boxes: Sequence[Box]) -> Point:
    """The centroid of the areas of some pieces, on the wall."""
    areas = [box.width * box.height for box in boxes]
    x, y = (
        sum(area * box.centre[axis] for area, box in zip(areas, boxes, strict=True)) / sum(areas)
        for axis in (0, 1)
    )
    return Point(x, y)


def _side(aside: float) -> str:
    """On which side the larger area is."""
    if abs(aside) <= SLACK_MM:
        return ""
    return " to the right" if aside > 0 else " to the left"


def _bring_back(by: float, aside: float, units: Unit) -> str:
    shown = format_both(round_up(by, step_mm(units)), units)
    return f"bring the middle of its area {'left' if aside > 0 else 'right'} by {shown}"


RULE = Rule(CODE, check_balance, str(__doc__))
