"""What must not change when a wall is moved, mirrored, or a group on it is moved as one."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable
from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from templater.geometry import Box
from templater.layout.model import LeftRight
from templater.placement.model import PlacedFurniture, Plan
from templater.rules.check import RULES, check_rules
from tests.builders import inches
from tests.rules.changes import move, reshape
from tests.rules.random_plans import plans

INSIDES = {"gap", "group-as-one", "uneven-gaps", "balance"}
TO_THE_ENDS = {"near-corner", "size-against-wall"}
OTHER_SIDE = {"left": "right", "right": "left"}


def verdicts(plan: Plan, *, but: Iterable[str] = (), turned: bool = False) -> Counter[tuple[str, ...]]:
    """Which rule says what of whom, with the figure; ``turned``: with left and right exchanged.

    In metric without the figure: eighths of an inch may lie at half a millimetre, where the noise of
    floats decides to which side it is rounded.
    """

    def shown(figure: str | None) -> str:
        if not plan.units.is_imperial:
            return ""
        return turn(str(figure)) if turned else str(figure)

    return Counter(
        (each.rule, each.subject, each.verdict.value, shown(each.figure))
        for each in check_rules(plan)
        if each.rule not in but
    )


def turn(text: str) -> str:
    return " ".join(OTHER_SIDE.get(word, word) for word in text.split(" "))


def change_all(plan: Plan, change: Callable[[Box], Box]) -> Plan:
    """Every piece, group, piece of furniture and thing in the way changed."""
    furniture = {each.name: PlacedFurniture(each.name, change(each.box)) for each in plan.furniture}
    changed = reshape(plan, lambda _, box: change(box))
    return replace(
        changed,
        furniture=tuple(furniture.values()),
        obstacles=tuple(replace(each, box=change(each.box)) for each in plan.obstacles),
        pieces=tuple(
            replace(each, over=furniture[each.over.name] if each.over else None)
            for each in changed.pieces
        ),
        groups=tuple(
            replace(each, over=furniture[each.over.name] if each.over else None)
            for each in changed.groups
        ),
    )


def mirror(plan: Plan) -> Plan:
    width = plan.wall.width
    turned = change_all(plan, lambda box: Box(width - box.x1, box.y0, width - box.x0, box.y1))
    sides = {LeftRight.LEFT: LeftRight.RIGHT, LeftRight.RIGHT: LeftRight.LEFT, None: None}
    return replace(
        turned, obstacles=tuple(replace(each, swing=sides[each.swing]) for each in turned.obstacles)
    )


@settings(max_examples=80, deadline=None)
@given(plans())
def test_a_mirrored_wall_is_judged_alike(plan: Plan) -> None:
    assert verdicts(mirror(plan), turned=True) == verdicts(plan)


@settings(max_examples=80, deadline=None)
@given(plans(), st.integers(1, 300))
def test_only_the_walls_ends_know_where_along_the_wall_things_are(plan: Plan, far: int) -> None:
    by = inches(far) / 8
    shifted = change_all(plan, lambda box: box.moved(by, 0.0))
    wider = replace(shifted, wall=plan.wall._replace(width=plan.wall.width + by))
    assert verdicts(wider, but=TO_THE_ENDS) == verdicts(plan, but=TO_THE_ENDS)


@settings(max_examples=80, deadline=None)
@given(plans(), st.integers(-80, 80), st.integers(-80, 80))
def test_a_group_moved_as_one_keeps_its_insides(plan: Plan, across: int, up: int) -> None:
    bare = replace(plan, obstacles=(), furniture=())
    moved = move(bare, [group.name for group in plan.groups], inches(across) / 8, inches(up) / 8)
    places = {each.code for each in RULES} - INSIDES
    assert verdicts(moved, but=places) == verdicts(bare, but=places)
