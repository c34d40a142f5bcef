"""The overview's tables of what is there besides the pieces.

Furniture, openings, fixtures, a sloping ceiling.
"""

from __future__ import annotations

from collections.abc import Sequence

from templater.drawing import Anchor
from templater.layout.model import Obstacle
from templater.lengths import format_both
from templater.placement.model import PlacedFurniture, Plan
from templater.scene.overview.chapters import Chapter, fit_chapter
from templater.scene.overview.named_things import furniture_key, obstacle_key
from templater.scene.tables import Column, Fit
from templater.scene.wording import format_size_both, from_left_end


def list_furniture(plan: Plan, width_mm: float) -> list[Chapter]:
    """Where each piece of furniture stands."""
    rows = [
        (*_row(furniture_key(number), thing, plan), from_left_end(plan, thing.box.centre.x))
        for number, thing in enumerate(plan.furniture, start=1)
    ]
    return _fit("Furniture", ("Furniture", "Middle, from the left end"), rows, width_mm)


def list_obstacles(plan: Plan, width_mm: float) -> list[Chapter]:
    """Where each opening and fixture is."""
    rows = [
        (*_row(obstacle_key(number), thing, plan), format_both(thing.box.y0, plan.units))
        for number, thing in enumerate(plan.obstacles, start=1)
    ]
    names = ("Opening or fixture", "Lower edge, above the floor")
    return _fit("Openings and fixtures", names, rows, width_mm)


def _row(key: str, thing: PlacedFurniture | Obstacle, plan: Plan) -> tuple[str, str, str, str]:
    """What is told of each alike: its key, what it is, its size, and where it begins."""
    size = format_size_both(thing.box.size, plan.units)
    return key, thing.name, size, from_left_end(plan, thing.box.x0)


def _fit(
    heading: str, names: tuple[str, str], rows: Sequence[tuple[str, ...]], width_mm: float
) -> list[Chapter]:
    """The table of such rows; the names are those of the things and of the last column."""
    thing, last = names
    columns = (
        Column("Key", anchor=Anchor.MIDDLE),
        Column(thing, Fit.WRAPPED),
        Column("Width × height", Fit.WRAPPED),
        Column("Left edge, from the left end", Fit.WRAPPED, Anchor.END),
        Column(last, Fit.WRAPPED, Anchor.END),
    )
    return [fit_chapter(heading, columns, rows, width_mm)] if rows else []


def list_ceiling(plan: Plan, width_mm: float) -> list[Chapter]:
    """How high a sloping ceiling is, and where."""
    columns = (
        Column("From the left end", Fit.WRAPPED, Anchor.END),
        Column("Ceiling, above the floor", Fit.WRAPPED, Anchor.END),
    )
    rows = tuple((from_left_end(plan, x), format_both(y, plan.units)) for x, y in plan.ceiling)
    return [fit_chapter("Sloping ceiling", columns, rows, width_mm)] if rows else []
