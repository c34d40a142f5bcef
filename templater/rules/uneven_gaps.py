"""The gaps within one group are equal.

What it checks:
    The largest and the smallest gap within a group: they differ by no more than 1/4 in. Measured
    are the gaps that the gap rule measures; in a grid those between its columns and between its
    rows. It does not apply where a gap breaks the gap rule, which then tells more.

Why:
    The eye sees a gap that is a little wider than the others before it sees the pictures, and
    takes it for a mistake. Common practice, no source.

Example:
    Gaps of 3, 3 and 3 1/8 in: kept. Gaps of 3, 3 and 3 1/2 in differ by 1/2 in: broken, and "make
    every gap 3 in" mends it.

What to write instead:
    Arrange the pieces as a ``row`` or ``column`` with one ``gap``, or mend the ``corners`` of a
    ``placed`` group. More may differ with ``rules: {uneven-gaps: {to: 1/2 in}}``.

"""

from __future__ import annotations

from templater.layout.model import Arrangement
from templater.lengths import format_both
from templater.mounting.amounts import step_mm
from templater.placement.model import Plan
from templater.rules.band import Band
from templater.rules.gap import find_gap_band
from templater.rules.model import Finding, Verdict
from templater.rules.rule import Rule
from templater.rules.settings import find_band
from templater.rules.spacing import find_gaps, measure_grid
from templater.rules.subject import Subject

CODE = "uneven-gaps"

DIFFERENCE = Band(0.0, 25.4 / 4)
"""Between the largest and the smallest gap of a group, mm; common practice, no source."""


def check_uneven_gaps(subject: Subject, plan: Plan) -> tuple[Finding, ...]:
    """Hold the difference between a group's gaps against what the eye lets pass."""
    if len(subject.parts) < 2:
        return ()
    usual = find_gap_band(plan)
    gaps = sorted(_measure_gaps(subject, plan, usual))
    if len(gaps) < 2 or any(usual.change(gap) for gap in gaps):
        return ()
    differ = gaps[-1] - gaps[0]
    band = Band(0.0, find_band(plan, CODE, DIFFERENCE).high)
    verdict = band.verdict(differ)
    middle = usual.rounded(gaps[(len(gaps) - 1) // 2], step_mm(plan.units))
    finding = Finding(
        rule=CODE,
        subject=subject.name,
        other=None,
        verdict=verdict,
        figure=f"differ by {band.format_value(differ, plan.units)}",
        band=band.format_range(plan.units),
        mend=f"make every gap {format_both(middle, plan.units)}" if verdict is Verdict.BROKEN else None,
    )
    return (finding,)


def _measure_gaps(subject: Subject, plan: Plan, usual: Band) -> list[float]:
    if subject.arrange is Arrangement.GRID:
        return measure_grid([box for _, box in subject.parts])
    return [gap.mm for gap in find_gaps(subject, plan, low_mm=usual.low)]


RULE = Rule(CODE, check_uneven_gaps, str(__doc__), judges_insides=True)
