"""The overview's tables of what is there besides the pieces: openings, fixtures, a sloping ceiling."""

from __future__ import annotations

from templater.drawing import Anchor
from templater.lengths import format_both
from templater.placement.model import Plan
from templater.scene.overview.chapters import Chapter, fit_chapter
from templater.scene.overview.named_things import obstacle_key
from templater.scene.tables import Column, Fit
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
    return [fit_chapter("Openings and fixtures", columns, rows, width_mm)] if rows else []


def list_ceiling(plan: Plan, width_mm: float) -> list[Chapter]:
    """How high a sloping ceiling is, and where."""
    columns = (
        Column("From the left end", Fit.WRAPPED, Anchor.END),
        Column("Ceiling, above the floor", Fit.WRAPPED, Anchor.END),
    )
    rows = tuple((from_left_end(plan, x), format_both(y, plan.units)) for x, y in plan.ceiling)
    return [fit_chapter("Sloping ceiling", columns, rows, width_mm)] if rows else []
