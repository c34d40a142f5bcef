"""What is to be said at each hole, and of each piece, before the drill starts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from templater.placement.model import Plan
from templater.rules.cautions.caution import name_hole
from templater.rules.cautions.check import CAUTIONS, check_cautions
from templater.rules.holes import HoleWall, find_hole_wall
from templater.rules.model import Finding, Verdict

_OF_HOLES = {caution.code for caution in CAUTIONS if caution.is_of_holes}


@dataclass(frozen=True, slots=True)
class HoleNotes:
    """What a hole meets, and the cautions that concern it alone, each in a short phrase."""

    wall: HoleWall
    cautions: tuple[str, ...]


def describe_holes(plan: Plan) -> Mapping[tuple[str, int], HoleNotes]:
    """The notes of every hole, by its piece's slug and its number, from 1.

    What a caution about holes says of a piece without naming a hole concerns all of them.
    """
    phrases: dict[tuple[str, str | None], list[str]] = {}
    for finding in check_cautions(plan):
        if finding.verdict is Verdict.CAUTION and finding.rule in _OF_HOLES:
            phrases.setdefault((finding.subject, finding.other), []).append(_phrase(finding))
    return {
        (piece.slug, number): HoleNotes(
            find_hole_wall(mark.hole.x, plan),
            tuple(
                phrase
                for other in (None, name_hole(number))
                for phrase in phrases.get((piece.name, other), ())
            ),
        )
        for piece in plan.pieces
        for number, mark in enumerate(piece.marks, start=1)
    }


def describe_pieces(plan: Plan) -> Mapping[str, tuple[str, ...]]:
    """The cautions that concern each piece as a whole, each in a short phrase, by its slug."""
    phrases: dict[str, list[str]] = {}
    for finding in check_cautions(plan):
        if finding.verdict is Verdict.CAUTION and finding.rule not in _OF_HOLES:
            phrases.setdefault(finding.subject, []).append(_phrase(finding))
    return {piece.slug: tuple(phrases.get(piece.name, ())) for piece in plan.pieces}


def _phrase(finding: Finding) -> str:
    """``plumb over hall switch: look for a cable with a detector first``."""
    return ": ".join(part for part in (finding.figure, finding.act) if part)
