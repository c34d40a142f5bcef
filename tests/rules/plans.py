"""Plans made by hand, in inches, to hold the rules against; no layout is read or placed for them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from templater.geometry import Box, Point, Size
from templater.layout.model import (
    Acceptance,
    Arrangement,
    Datum,
    LeftRight,
    Obstacle,
    RuleSetting,
)
from templater.lengths import Unit
from templater.placement.model import PlacedFurniture, PlacedGroup, PlacedPiece, Plan
from templater.rules.check import check_rules
from templater.rules.model import Finding
from tests.builders import HERE, inches


def box(left: float, bottom: float, width: float, height: float) -> Box:
    """A box by its bottom-left corner and its size, inches."""
    return Box(inches(left), inches(bottom), inches(left + width), inches(bottom + height))


def hung(
    name: str, at: Box, *, group: str | None = None, over: PlacedFurniture | None = None
) -> PlacedPiece:
    """A piece without hardware."""
    return PlacedPiece(name, name.lower(), at, (), (), None, None, group, over, ())


def grouped(
    name: str,
    parts: Iterable[tuple[str, Box]],
    *,
    arrange: Arrangement = Arrangement.ROW,
    over: PlacedFurniture | None = None,
) -> tuple[PlacedGroup, list[PlacedPiece]]:
    """A group of pieces and the pieces."""
    members = tuple(parts)
    whole = Box.around(at for _, at in members)
    names = tuple(each for each, _ in members)
    placed = PlacedGroup(name, whole, names, arrange, over, parts=members)
    return placed, [hung(each, at, group=name, over=over) for each, at in members]


def row(
    name: str, left: float, bottom: float, gaps: Sequence[float], side: float = 12
) -> tuple[PlacedGroup, list[PlacedPiece]]:
    """Squares A, B, C … in a row with these gaps between them."""
    parts, x = [], left
    for letter, gap in zip("ABCDEFGHIJ", (*gaps, 0), strict=False):
        parts.append((letter, box(x, bottom, side, side)))
        x += side + gap
    return grouped(name, parts)


def wall(
    pieces: Iterable[PlacedPiece] = (),
    groups: Iterable[tuple[PlacedGroup, Sequence[PlacedPiece]]] = (),
    *,
    width: float = 200,
    height: float = 96,
    units: Unit = Unit.INCH,
    furniture: Iterable[PlacedFurniture] = (),
    obstacles: Iterable[Obstacle] = (),
    ceiling: Iterable[tuple[float, float]] = (),
    rules: Iterable[RuleSetting] = (),
    accepted: Iterable[Acceptance] = (),
) -> Plan:
    """Everything on a wall of so many inches with its eye line at 60 in."""
    groups = list(groups)
    return Plan(
        title="Keeper's cottage, stair hall",
        units=units,
        wall=Size(inches(width), inches(height)),
        eye_line_mm=inches(60),
        datum=Datum(inches(60), None),
        furniture=tuple(furniture),
        pieces=(*pieces, *(piece for _, members in groups for piece in members)),
        groups=tuple(group for group, _ in groups),
        for_whom=None,
        from_whom=None,
        contact=None,
        issue=None,
        ceiling=tuple(Point(inches(x), inches(y)) for x, y in ceiling),
        obstacles=tuple(obstacles),
        rules=tuple(rules),
        accepted=tuple(accepted),
    )


def obstacle(name: str, at: Box, *, kind: str = "window", swing: LeftRight | None = None) -> Obstacle:
    """Something in the way."""
    return Obstacle(name, kind, at, swing, HERE)


def setting(
    rule: str, low: float | None = None, high: float | None = None, *, is_on: bool = True
) -> RuleSetting:
    """A rule's band, in mm or percent."""
    return RuleSetting(rule, is_on, low, high, HERE)


def acceptance(rule: str, subject: str, because: str = "the keeper wants it so") -> Acceptance:
    """A rule broken on purpose."""
    return Acceptance(rule, subject, because, HERE)


def with_rules(plan: Plan, *settings: RuleSetting) -> Plan:
    """The plan with bands of its own."""
    return replace(plan, rules=settings)


def findings_of(plan: Plan, rule: str) -> list[Finding]:
    """What one rule says of a plan, but for where it does not apply."""
    return [each for each in check_rules(plan) if each.rule == rule and each.figure is not None]


def told(found: Finding) -> tuple[str, str, str | None, str | None]:
    """For whom, the verdict, the figure and the mend of a finding."""
    return found.subject, found.verdict.value, found.figure, found.mend
