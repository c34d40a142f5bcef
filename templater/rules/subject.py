"""What the rules are held against: stand-alone pieces, and groups as if each were one piece."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeAlias

from templater.geometry import Box
from templater.placement.model import PlacedFurniture, PlacedPiece, Plan
from templater.rules.model import Finding, Verdict


@dataclass(frozen=True, slots=True)
class Subject:
    """A stand-alone piece or a group, with its box on the wall; ``pieces`` are those of a group."""

    name: str
    box: Box
    over: PlacedFurniture | None
    pieces: tuple[PlacedPiece, ...]


Rule: TypeAlias = Callable[[Subject, Plan], tuple[Finding, ...]]
"""A rule of the trade held against one subject; at least one finding."""


def find_subjects(plan: Plan) -> tuple[Subject, ...]:
    """All subjects of a plan: stand-alone pieces, then groups, each in the plan's order."""
    pieces = {piece.name: piece for piece in plan.pieces}
    alone = (Subject(each.name, each.box, each.over, ()) for each in plan.pieces if each.group is None)
    grouped = (
        Subject(group.name, group.box, group.over, tuple(pieces[name] for name in group.pieces))
        for group in plan.groups
    )
    return (*alone, *grouped)


def not_applicable(rule: str, subject: Subject) -> tuple[Finding, ...]:
    """The finding of a rule that has nothing to say of a subject."""
    return (Finding(rule, subject.name, None, Verdict.NOT_APPLICABLE, None, None, None),)
