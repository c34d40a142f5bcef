"""Walls in mm or inches with pieces whose holes are where a test puts them."""

from __future__ import annotations

from collections.abc import Iterable

from templater.geometry import Box, Point
from templater.layout.model import Hanger, Hanging, Hardware, Obstacle
from templater.lengths import Unit
from templater.mounting.model import Mark
from templater.placement.model import PlacedFurniture, PlacedPiece, Plan
from templater.rules.cautions.check import check_cautions
from templater.rules.model import Finding, Verdict
from tests.builders import HERE
from tests.rules.plans import wall

_PIECE = Box(0.0, 1000.0, 400.0, 1500.0)


def drilled(
    *holes: tuple[float, float], name: str = "Tide chart", at: Box = _PIECE, length: float | None = None
) -> PlacedPiece:
    """A piece with holes in wall mm; ``length`` is that of its nails."""
    marks = tuple(Mark(Point(*hole), Point(*hole), None) for hole in holes)
    hook = Hardware("brass hook", None, None, 1, None, HERE, length)
    hang = Hanging(Hanger.NAIL, 10.0, 0.0, None, 0.0, None, None, HERE, hook=hook)
    return PlacedPiece(name, name.lower(), at, marks, (), hang, None, None, None, ())


def metric_wall(
    *pieces: PlacedPiece,
    obstacles: Iterable[Obstacle] = (),
    furniture: Iterable[PlacedFurniture] = (),
    side: float = 2400.0,
) -> Plan:
    """A square wall of 2400 mm, or another."""
    return wall(
        pieces,
        width=side / 25.4,
        height=side / 25.4,
        units=Unit.MILLIMETRE,
        obstacles=obstacles,
        furniture=furniture,
    )


def told(plan: Plan, code: str) -> list[Finding]:
    """What a caution says of a plan, but for where it does not apply."""
    found = [each for each in check_cautions(plan) if each.rule == code]
    return [each for each in found if each.verdict is not Verdict.NOT_APPLICABLE]


def brief(found: Finding) -> tuple[str, str | None, str | None]:
    """The verdict, the other party and the figure of a finding."""
    return found.verdict.value, found.other, found.figure
