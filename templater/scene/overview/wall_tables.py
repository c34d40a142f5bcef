"""The overview's tables of what is there besides the pieces: openings, fixtures, a sloping ceiling."""

from __future__ import annotations

from templater.drawing import Anchor
from templater.lengths import format_both
from templater.placement.model import Plan
from templater.scene.overview.chapters import Chapter
from templater.scene.overview.surroundings import obstacle_key
from templater.scene.tables import Column, Fit, fit_columns
from templater.scene.wording import format_size_both, from_left_end


def list_obstacles(plan: Plan, width_mm: float) -> list[Chapter]:
    """Where each opening and fixture is."""
    columns = (
        Column("Key", anchor=Anchor.MIDDLE),
        Column("Opening or fixture", Fit.WRAPPED),
        Column("Width × height", Fit.WRAPPED),
        Column("Left edge, from the left end", Fit.WRAPPED, Anchor.END),
        Column("Lower edge, above the floor", Fit.WRAPPED, Anchor.END),
    )
    rows = tuple(
        (
            obstacle_key(number),
            thing.name,
            format_size_both(thing.box.size, plan.units),
            from_left_end(plan, thing.box.x0),
            format_both(thing.box.y0, plan.units),
        )
        for number, thing in enumerate(plan.obstacles, start=1)
    )
    if not rows:
        return []
    return [Chapter("Openings and fixtures", fit_columns(columns, rows, width_mm), rows)]


def list_ceiling(plan: Plan, width_mm: float) -> list[Chapter]:
    """How high a sloping ceiling is, and where."""
    columns = (
        Column("From the left end", Fit.WRAPPED, Anchor.END),
        Column("Ceiling, above the floor", Fit.WRAPPED, Anchor.END),
    )
    rows = tuple((from_left_end(plan, x), format_both(y, plan.units)) for x, y in plan.ceiling)
    return [Chapter("Sloping ceiling", fit_columns(columns, rows, width_mm), rows)] if rows else []
