"""What a finding says would mend it, carried out by the numbers shown, does mend it."""

from __future__ import annotations

from collections import Counter

from hypothesis import given, settings

from templater.geometry import Box
from templater.layout.model import LeftRight
from templater.layout.rule_codes import RULE_CODES
from templater.placement.model import Plan
from templater.rules.check import check_rules
from templater.rules.model import Finding, Verdict
from tests.rules.changes import mend
from tests.rules.random_plans import plans

NOT_DONE_BY_NUMBERS = ("no free place found", "hang its parts no more than")
WHOLE = {"group-as-one", "near-opening", "door-swing"}
"""Rules of which nothing may be broken any more, not only what was told of the same other thing."""


def broken(plan: Plan) -> list[Finding]:
    return [each for each in check_rules(plan) if each.verdict is Verdict.BROKEN]


def find_other_pieces(plan: Plan, found: Finding) -> tuple[list[Box], list[Box]]:
    """The boxes of what a finding's mend moves, and of all other pieces."""
    inside = {name for group in plan.groups if group.name == found.subject for name in group.pieces}
    moved = inside | {found.subject}
    return (
        [piece.box for piece in plan.pieces if piece.name in moved],
        [piece.box for piece in plan.pieces if piece.name not in moved],
    )


def check_it_hangs_free(plan: Plan, found: Finding) -> None:
    """What was moved is on the wall, and over no piece, furniture, opening or open door."""
    moved, others = find_other_pieces(plan, found)
    things = [*(each.box for each in plan.furniture), *(each.box for each in plan.obstacles)]
    for door in plan.obstacles:
        if door.swing is not None:
            way = door.box.width * (1 if door.swing is LeftRight.RIGHT else -1)
            things.append(door.box.moved(way, 0.0))
    wall = Box(0.0, 0.0, *plan.wall)
    for box in moved:
        assert wall.holds(box, 1e-6), found
        for each in (*others, *things):
            assert min(box.overlap(each)) <= 1e-5, found


def test_every_mend_of_every_rule_mends() -> None:
    tried: Counter[str] = Counter()
    without: Counter[str] = Counter()

    @settings(max_examples=150, deadline=None, derandomize=True, database=None)
    @given(plans())
    def check_mends(plan: Plan) -> None:
        for found in broken(plan):
            tried[found.rule] += 1
            if str(found.mend).startswith(NOT_DONE_BY_NUMBERS):
                without[found.rule] += 1
                continue
            mended = mend(plan, found)
            after = broken(mended)
            other = None if found.rule in WHOLE else found.other
            same = [each for each in after if each.rule == found.rule and other in (None, each.other)]
            assert found.subject not in {each.subject for each in same}, found
            if found.rule in ("near-opening", "door-swing"):
                check_it_hangs_free(mended, found)

    check_mends()
    assert {rule for rule in RULE_CODES if not tried[rule]} == set()
    # Some walls are too full; but most that is broken can be mended by a move, and by one that is told.
    assert set(without) <= {"group-as-one", "near-opening", "door-swing"}
    assert all(without[rule] <= tried[rule] / 2 for rule in without), (without, tried)
