"""What ``check`` and ``arrange`` tell other programs: the same as people see, as JSON, names plain."""

from __future__ import annotations

import json
from collections.abc import Sequence

from templater.rules.model import Finding
from templater.search.model import Proposal, Settlement


def format_findings(findings: Sequence[Finding]) -> str:
    """All findings as a JSON list for other programs; null stands for what does not apply."""
    rows = [
        {
            "rule": finding.rule,
            "for": finding.subject,
            "with": finding.other,
            "verdict": finding.verdict.value,
            "figure": finding.figure,
            "band": finding.band,
            "mend": finding.mend,
            "because": finding.because,
        }
        for finding in findings
    ]
    return json.dumps(rows, indent=2)


def format_proposals(settlements: Sequence[Settlement]) -> str:
    """The ways to hang each open group as JSON for other programs, lengths in mm."""
    groups = [
        {
            "group": settlement.name,
            "proposals": [_proposal(way) for way in settlement.proposals],
            "taken": settlement.taken,
            "advice": settlement.advice,
        }
        for settlement in settlements
    ]
    return json.dumps(groups, indent=2)


def _proposal(way: Proposal) -> dict[str, object]:
    """One way; ``balance_mm`` is how far the weight lies right of and above the centre."""
    figures = way.figures
    return {
        "arrange": way.group.arrange.value,
        "columns": way.group.columns,
        "pieces": list(way.group.members),
        "width_mm": round(figures.width_mm, 3),
        "furniture_mm": figures.over_mm and round(figures.over_mm, 3),
        "clearance_mm": None if figures.clearance_mm is None else round(figures.clearance_mm, 3),
        "gap_mm": round(figures.gap_mm, 3),
        "centre_mm": round(figures.middle_mm, 3),
        "balance_mm": [round(off, 3) for off in figures.weight_off],
        "broken": list(way.broken_rules),
    }
