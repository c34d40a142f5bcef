"""How wide a group should be, and which gaps come into question."""

from __future__ import annotations

from templater.layout.model import Group
from templater.lengths import Unit
from templater.placement.model import PlacedFurniture, Plan
from templater.rules.settings import find_band
from templater.rules.width_over_furniture import CODE, PERCENT

SHARE = 2 / 3
"""Of the furniture's width; common practice, no source."""

USUAL_GAP_MM = 3 * 25.4
"""In the middle of the usual 2 to 4 in; common practice, no source."""


def find_target(group: Group, plan: Plan) -> float | None:
    """The width that a group should come near, mm; None where nothing asks for one.

    Two thirds of the furniture below, or as near to that as the layout's own band lets it be; else
    the width that the group itself asks for; else, if its pieces are to be chosen, two thirds of
    the wall.
    """
    below = find_below(group, plan)
    if below is not None:
        return below.box.width * find_share(plan)
    if group.target is not None:
        return group.target.width
    has_pool = group.open_choice is not None and group.open_choice.pool is not None
    return plan.wall.width * SHARE if has_pool else None


def find_below(group: Group, plan: Plan) -> PlacedFurniture | None:
    """The furniture that a group hangs above, if any."""
    above = group.position.above if group.position else None
    return next((item for item in plan.furniture if item.name == above), None)


def find_share(plan: Plan) -> float:
    """Two thirds, or the share nearest to it that the layout's own band allows."""
    band = find_band(plan, CODE, PERCENT)
    return min(max(SHARE, band.low / 100), band.high / 100)


def list_gaps(group: Group, units: Unit) -> tuple[float, ...]:
    """The gaps to try, mm: 2 to 4 in by quarter inches, 55 to 100 mm by fives; or the group's own.

    50 mm is a little less than the 2 in of the rule.
    """
    choice = group.open_choice
    if choice is None or not choice.gap:
        return (group.gap_mm,)
    if units.is_imperial:
        return tuple(25.4 * quarters / 4 for quarters in range(8, 17))
    return tuple(float(gap) for gap in range(55, 101, 5))
