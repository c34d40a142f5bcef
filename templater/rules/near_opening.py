"""What hangs keeps away from windows, doors and fixtures.

What it checks:
    The clear distance, across or up, from a stand-alone piece or a group to each opening and
    fixture: at least 3 in. What hangs around one is measured piece by piece.

Why:
    A window has its casing and curtain, a door its frame, a switch or a clock the hand that
    reaches for it; a picture that crowds them looks squeezed in. Common practice, no source.

Example:
    A window ends 76 in from the wall's left end. A piece that starts at 79 in: kept. One that
    starts at 77 in is 1 in away: broken, and "move right by 2 in" mends it, unless it would then
    hang on something else: what is told is the shortest move to where it is free, if it can be one
    that breaks no other rule of its place; else those that it breaks are named.

What to write instead:
    ``beside: sash window``, ``side: right``, ``clearance: 3 in``, or a larger ``gap`` of a row
    that hangs ``around`` it. Another band: ``rules: {near-opening: {from: 2 in}}``.

"""

from __future__ import annotations

from dataclasses import replace
from math import inf

from templater.mounting.amounts import SLACK_MM
from templater.placement.model import Plan
from templater.rules.band import Band
from templater.rules.judge import judge_length
from templater.rules.model import Finding
from templater.rules.rule import Rule
from templater.rules.settings import find_band, is_on
from templater.rules.subject import Subject
from templater.rules.way_out import Closeness, find_closest, format_way_out

CODE = "near-opening"

FREE = Band(3 * 25.4)
"""Clear distance to an opening or a fixture, mm; common practice, no source."""


def check_near_opening(subject: Subject, plan: Plan) -> tuple[Finding, ...]:
    """Hold the distance to each opening; if all are far enough, only the nearest is told."""
    band = find_band(plan, CODE, FREE)
    zones = [(thing, thing.box) for thing in plan.obstacles]
    return tuple(_judge(each, band, plan) for each in find_closest(subject, zones, band.low))


def list_too_near(subject: Subject, plan: Plan) -> list[tuple[str, str | None]]:
    """The openings and fixtures that a subject is too near to, as the rules it breaks."""
    low = find_band(plan, CODE, FREE).low if is_on(plan, CODE) else -inf
    zones = [(thing, thing.box) for thing in plan.obstacles]
    near = [each for each in find_closest(subject, zones, low) if each.free_mm < low - SLACK_MM]
    return [(CODE, each.obstacle.name) for each in near]


def _judge(each: Closeness, band: Band, plan: Plan) -> Finding:
    """What is said of one opening, with the shortest way to be far enough from all."""
    away, nearer = "move away", "move nearer"
    other = each.obstacle.name
    found = judge_length(CODE, each.name, each.free_mm, band, plan, more=away, less=nearer, other=other)
    if band.change(each.free_mm) <= 0:
        return found
    zones = [thing.box.grown(band.low) for thing in plan.obstacles]
    return replace(found, mend=format_way_out(each, zones, plan))


RULE = Rule(CODE, check_near_opening, str(__doc__))
