"""A proposal in words: what it is called and its figures, the same on the screen and on paper."""

from __future__ import annotations

from collections.abc import Mapping

from templater.layout.model import Arrangement, Cells
from templater.lengths import Unit, format_both, format_length
from templater.mounting.amounts import step_mm
from templater.search.model import Proposal


def name_way(proposal: Proposal) -> str:
    """What a way is called: ``row of 3``, ``grid of 6 in 3 columns``."""
    group = proposal.group
    words = f"{group.arrange.value} of {len(group.members)}"
    if group.arrange is Arrangement.GRID and group.columns:
        words += f" in {group.columns} columns"
        words += ", true gaps" if group.cells is Cells.TRUE else ""
    return words


def list_figures(proposal: Proposal) -> Mapping[str, str]:
    """A way's figures in words by what they are of; without furniture two of them are missing."""
    figures, units = proposal.figures, proposal.plan.units
    width = format_both(figures.width_mm, units)
    shown = {"width": width}
    if figures.over_mm is not None and figures.clearance_mm is not None:
        share = figures.width_mm / figures.over_mm * 100
        shown["width"] = f"{width}, {share:.0f} % of the furniture"
        shown["clearance"] = format_both(figures.clearance_mm, units)
    shown["gap"] = format_both(figures.gap_mm, units) if len(proposal.group.members) > 1 else "none"
    shown["centre"] = f"{format_both(figures.middle_mm, units)} above the floor"
    shown["balance"] = describe_balance(proposal, units)
    shown["rules broken"] = ", ".join(proposal.broken_rules) or "none"
    return shown


def describe_balance(proposal: Proposal, units: Unit) -> str:
    """Where the weight lies to the eye, beside the centre: ``1 in left, 1/2 in low``."""
    x, y = proposal.figures.weight_off
    parts = [
        f"{format_length(abs(off), units)} {less if off < 0 else more}"
        for off, more, less in ((x, "right", "left"), (y, "high", "low"))
        if abs(off) >= step_mm(units) / 2
    ]
    return ", ".join(parts) or "even"
