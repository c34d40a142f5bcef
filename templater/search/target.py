"""How wide a group should be, and which gaps come into question."""

from __future__ import annotations

from templater.layout.model import Group, Layout
from templater.lengths import Unit

SHARE = 2 / 3
"""Of the furniture's width; common practice, no source."""

USUAL_GAP_MM = 3 * 25.4
"""In the middle of the usual 2 to 4 in; common practice, no source."""

_WIDTH_RULE = "width-over-furniture"


def find_target(group: Group, layout: Layout) -> float | None:
    """The width that a group should come near, mm; None where nothing asks for one.

    Two thirds of the furniture below, or as near to that as the layout's own band lets it be; else
    the width that the group itself asks for; else, if its pieces are to be chosen, two thirds of
    the wall.
    """
    below = find_width_below(group, layout)
    if below is not None:
        return below * _find_share(layout)
    if group.target is not None:
        return group.target.width
    has_pool = group.open_choice is not None and group.open_choice.pool is not None
    return layout.wall.size.width * SHARE if has_pool else None


def find_width_below(group: Group, layout: Layout) -> float | None:
    """The width of the furniture that a group hangs above, if any, mm."""
    above = group.position.above if group.position else None
    return next((item.size.width for item in layout.furniture if item.name == above), None)


def _find_share(layout: Layout) -> float:
    """Two thirds, or the nearest to it that the layout's own band allows."""
    setting = next((each for each in layout.rules if each.rule == _WIDTH_RULE), None)
    low = setting.low / 100 if setting and setting.low is not None else 0.0
    high = setting.high / 100 if setting and setting.high is not None else max(low, SHARE)
    return min(max(SHARE, low), high)


def list_gaps(group: Group, units: Unit) -> tuple[float, ...]:
    """The gaps to try, mm: 2 to 4 in by quarter inches, 50 to 100 mm by fives; or the group's own."""
    choice = group.open_choice
    if choice is None or not choice.gap:
        return (group.gap_mm,)
    if units.is_imperial:
        return tuple(25.4 * quarters / 4 for quarters in range(8, 17))
    return tuple(float(gap) for gap in range(50, 101, 5))
