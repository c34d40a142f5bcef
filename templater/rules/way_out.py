"""What hangs in or near parts of the wall that are to be kept free, and its shortest way out."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from typing import TypeAlias

from templater.geometry import Box, Point
from templater.layout.model import Obstacle
from templater.mounting.amounts import SLACK_MM
from templater.placement.model import PlacedPiece, Plan
from templater.rules import clearance, eye_line, near_ceiling, near_corner, past_the_ends
from templater.rules.free_wall import find_free_move
from templater.rules.model import Verdict
from templater.rules.moves import format_moves
from templater.rules.settings import is_on
from templater.rules.spacing import measure_gap
from templater.rules.subject import Subject

_OF_PLACE = (past_the_ends.RULE, clearance.RULE, eye_line.RULE, near_ceiling.RULE, near_corner.RULE)
"""The rules that are about a subject's place alone."""

ListBroken: TypeAlias = Callable[[Subject, Plan], Iterable[tuple[str, str | None]]]
"""Which rules a subject breaks, each with its second party."""

NO_ROOM = "no free place found near: make room for it, or hang it elsewhere"
"""What is said where no move mends it."""


@dataclass(frozen=True, slots=True)
class Closeness:
    """How far what is moved as one is from a part of the wall kept free because of some obstacle.

    ``free_mm`` is the clear distance from the nearest of ``pieces``; negative if they reach into it.
    ``pieces`` are those of ``subject``, or one of them.
    """

    subject: Subject
    name: str
    pieces: Sequence[PlacedPiece]
    obstacle: Obstacle
    zone: Box
    free_mm: float


def find_closest(
    subject: Subject, zones: Iterable[tuple[Obstacle, Box]], low_mm: float
) -> tuple[Closeness, ...]:
    """All that are nearer to a zone than so many mm, or else the nearest, if there is any zone.

    A group is moved as one, but for one that hangs around the obstacle: there each piece by itself.
    """
    found = [
        Closeness(
            subject, name, pieces, obstacle, zone, min(measure_gap(each.box, zone) for each in pieces)
        )
        for obstacle, zone in zones
        for name, pieces in _find_movers(subject, obstacle)
    ]
    found.sort(key=lambda each: each.free_mm)
    near = tuple(each for each in found if each.free_mm < low_mm - SLACK_MM)
    return near or tuple(found[:1])


def _find_movers(subject: Subject, obstacle: Obstacle) -> list[tuple[str, Sequence[PlacedPiece]]]:
    """What is moved as one."""
    if subject.arrange is None or not subject.box.meets(obstacle.box):
        return [(subject.name, subject.pieces)]
    return [(piece.name, [piece]) for piece in subject.pieces]


def format_way_out(
    each: Closeness, zones: Iterable[Box], plan: Plan, list_more: ListBroken = lambda *_: ()
) -> str:
    """The shortest move that frees it of all zones and lands it on nothing else, in words.

    One that breaks fewer other rules of place goes first; those that it breaks all the same are named.
    ``list_more`` tells what else must not be broken there, be it broken already or not.
    """
    is_whole = len(each.pieces) == len(each.subject.pieces)
    before = _list_broken(each.subject, plan)

    def list_newly_broken(move: Point) -> list[str]:
        """The rules that a move of a whole subject breaks; of one of its pieces nothing is told."""
        if not is_whole:
            return []
        moved = _move(each.subject, move)
        new = [broken for broken in _list_broken(moved, plan) if broken not in before]
        return list(dict.fromkeys(code for code, _ in (*new, *list_more(moved, plan))))

    move = find_free_move(each.pieces, zones, plan, lambda by: len(list_newly_broken(by)))
    if move is None:
        return NO_ROOM
    told, broken = format_moves(move.x, move.y, plan.units), ", ".join(list_newly_broken(move))
    return f"{told}; then broken: {broken}" if broken else told


def _list_broken(subject: Subject, plan: Plan) -> list[tuple[str, str | None]]:
    """Each rule that is broken, with what it is broken with, such as one of the wall's ends."""
    return [
        (rule.code, found.other)
        for rule in _OF_PLACE
        if is_on(plan, rule.code)
        for found in rule.check(subject, plan)
        if found.verdict is Verdict.BROKEN
    ]


def _move(subject: Subject, by: Point) -> Subject:
    pieces = tuple(replace(piece, box=piece.box.moved(*by)) for piece in subject.pieces)
    return replace(subject, box=subject.box.moved(*by), pieces=pieces)
