"""A group hangs as one piece: nothing in it hangs apart.

What it checks:
    That the pieces of a group hold together: each is no farther from the rest than the gap rule
    allows, side by side, one above the other or around a thing that the group hangs around. A
    ledge holds together what stands on it. All rules of place then measure the box around the
    whole group, and none of its pieces alone. A group inside a group counts as one piece of it.

Why:
    The eye reads what hangs close together as one large piece, with one width and one centre. A
    piece that hangs apart is read alone, and the group's figures no longer say what is seen.
    Common practice, no source.

Example:
    Three pieces of 16 in over a bench, 3 in apart, are one piece 54 in wide: kept. With the third
    10 in from the second it hangs apart: broken, and "move left by 6 in" mends it, because 10 in
    less 6 in is 4 in, the widest usual gap. With both gaps 10 in "close the gaps to 4 in" mends it.

What to write instead:
    Set the group's ``gap`` within the band of the gap rule, or take the piece out of the group
    and give it a ``place`` of its own. The band is the gap rule's: ``rules: {gap: {to: 5 in}}``.
    ``rules: {group-as-one: off}`` turns the rule off.

"""

from __future__ import annotations

from collections.abc import Sequence
from math import inf

from templater.layout.model import Arrangement
from templater.lengths import format_length
from templater.mounting.amounts import SLACK_MM
from templater.placement.model import Plan
from templater.rules.band import Band
from templater.rules.bring_together import find_link, tell_how
from templater.rules.clearance import CLEARANCE
from templater.rules.gap import find_gap_band
from templater.rules.model import Finding, Verdict
from templater.rules.rule import Rule
from templater.rules.spacing import (
    find_close_pairs,
    find_things_within,
    measure_gap,
)
from templater.rules.subject import Subject

CODE = "group-as-one"


def check_group_as_one(subject: Subject, plan: Plan) -> tuple[Finding, ...]:
    """Hold every part of a group that hangs apart from the rest against the widest gap."""
    if len(subject.parts) < 2:
        return ()
    band = find_gap_band(plan)
    clusters = _find_clusters(subject, plan, band.high)
    if len(set(clusters)) > 1:
        return (_tell_apart(subject, plan, clusters, band),)
    width, height = (format_length(side, plan.units) for side in subject.box.size)
    whole = Finding(
        rule=CODE,
        subject=subject.name,
        other=None,
        verdict=Verdict.KEPT,
        figure=f"one piece of {width} × {height}",
        band=_tell_band(band, plan),
        mend=None,
    )
    return (whole,)


def _tell_band(band: Band, plan: Plan) -> str:
    return f"gaps of {Band(0.0, band.high).format_range(plan.units)}"


def _find_clusters(subject: Subject, plan: Plan, reach_mm: float) -> list[int]:
    """For each part the first part that it hangs together with, directly or by others."""
    boxes = [box for _, box in subject.parts]
    if reach_mm == inf or subject.arrange is Arrangement.LEDGE:
        return [0] * len(boxes)
    leaders = _Leaders(len(boxes))
    for first, second in find_close_pairs(boxes, reach_mm):
        leaders.join(first, second)
    for thing in find_things_within(subject, plan):
        near = [
            index
            for index, box in enumerate(boxes)
            if measure_gap(box, thing) <= max(reach_mm, CLEARANCE.high) + SLACK_MM
        ]
        for other in near[1:]:
            leaders.join(near[0], other)
    return [leaders.find(index) for index in range(len(boxes))]


class _Leaders:
    """Sets that grow by being joined, each named by its lowest number."""

    def __init__(self, count: int) -> None:
        self._leaders = list(range(count))

    def find(self, index: int) -> int:
        """The lowest number of the set."""
        while self._leaders[index] != index:
            self._leaders[index] = self._leaders[self._leaders[index]]
            index = self._leaders[index]
        return index

    def join(self, first: int, second: int) -> None:
        """Make one set of two."""
        low, high = sorted((self.find(first), self.find(second)))
        self._leaders[high] = low


def _tell_apart(subject: Subject, plan: Plan, clusters: Sequence[int], band: Band) -> Finding:
    """Of all that hangs apart what is nearest to the main part, with what makes all of it one again."""
    boxes = [box for _, box in subject.parts]
    stray, near = find_link(boxes, clusters)
    apart = f"{band.format_value(measure_gap(boxes[stray], boxes[near]), plan.units)} apart"
    count = len(set(clusters))
    return Finding(
        rule=CODE,
        subject=subject.name,
        other=subject.parts[stray][0],
        verdict=Verdict.BROKEN,
        figure=apart if count == 2 else f"in {count} parts, the nearest {apart}",
        band=_tell_band(band, plan),
        mend=tell_how(subject, plan, clusters, band),
    )


RULE = Rule(CODE, check_group_as_one, str(__doc__), judges_insides=True)
