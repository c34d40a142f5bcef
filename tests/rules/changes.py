"""Carries out on a plan what a finding's mend asks for, by the numbers that it shows."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import replace

from templater.geometry import Box
from templater.layout.model import Arrangement
from templater.lengths import parse_length
from templater.placement.model import PlacedGroup, Plan
from templater.rules.model import Finding

_MOVES = {"move left": (-1, 0), "move right": (1, 0), "lower": (0, -1), "raise": (0, 1)}
_AMOUNT = r"by ([^()]+?) \("


def move(plan: Plan, names: Iterable[str], dx: float, dy: float) -> Plan:
    """The plan with these pieces, and all pieces of these groups, moved."""
    wanted = set(names)
    for group in plan.groups:
        wanted |= set(group.pieces) if group.name in wanted else set()
    return reshape(plan, lambda name, box: box.moved(dx, dy) if name in wanted else box)


def reshape(plan: Plan, change: Callable[[str, Box], Box]) -> Plan:
    """The plan with every piece's box changed, and the groups' boxes around them."""
    boxes = {piece.name: change(piece.name, piece.box) for piece in plan.pieces}
    return replace(
        plan,
        pieces=tuple(replace(piece, box=boxes[piece.name]) for piece in plan.pieces),
        groups=tuple(_refit(group, boxes) for group in plan.groups),
    )


def _refit(group: PlacedGroup, boxes: dict[str, Box]) -> PlacedGroup:
    parts = tuple((name, boxes[name]) for name, _ in group.parts)
    return replace(group, parts=parts, box=Box.around(box for _, box in parts))


def mend(plan: Plan, found: Finding) -> Plan:
    """The plan with a finding's mend carried out."""
    text = found.mend or ""
    if even := re.match(r"(?:close the gaps to|make every gap) (.+?) \(", text):
        return _make_even(plan, found, float(parse_length(even.group(1))))
    if " the gap by " in text:
        return _change_gap(plan, found, _amount(text) * (1 if text.startswith("open") else -1))
    if text.startswith(("widen", "narrow")):
        return _change_width(plan, found, _amount(text) * (1 if text.startswith("widen") else -1))
    if text.startswith("bring the middle"):
        return _shift_area(plan, found, _amount(text) * (1 if " right " in text else -1))
    if found.rule == "group-as-one":
        return _bring_back(plan, found)
    return move(plan, [found.subject], *_read_moves(text))


def _amount(text: str) -> float:
    match = re.search(_AMOUNT, text)
    assert match is not None, text
    return float(parse_length(match.group(1)))


def _read_moves(text: str) -> tuple[float, float]:
    found = re.findall(rf"(move left|move right|raise|lower) {_AMOUNT}", text)
    assert found, text
    dx = sum(_MOVES[way][0] * float(parse_length(by)) for way, by in found)
    dy = sum(_MOVES[way][1] * float(parse_length(by)) for way, by in found)
    return dx, dy


def _group_of(plan: Plan, name: str) -> PlacedGroup:
    return next(group for group in plan.groups if name in (group.name, *group.pieces))


def _make_even(plan: Plan, found: Finding, gap: float) -> Plan:
    """A row from the left, or a column from the bottom up, with one gap."""
    group = _group_of(plan, found.subject)
    for (first, _), (second, _) in zip(group.parts, group.parts[1:], strict=False):
        boxes = {piece.name: piece.box for piece in plan.pieces}
        is_column = group.arrange is Arrangement.COLUMN
        a, b = boxes[first], boxes[second]
        dx, dy = (0.0, a.y1 + gap - b.y0) if is_column else (a.x1 + gap - b.x0, 0.0)
        plan = move(plan, [second], dx, dy)
    return plan


def _change_gap(plan: Plan, found: Finding, by: float) -> Plan:
    """The second piece of the pair, and all that follow it, moved away along the group."""
    group = _group_of(plan, found.subject)
    names = [name for name, _ in group.parts]
    along = names[max(names.index(found.subject), names.index(str(found.other))) :]
    return move(plan, along, *((0.0, by) if group.arrange is Arrangement.COLUMN else (by, 0.0)))


def _change_width(plan: Plan, found: Finding, by: float) -> Plan:
    """The box made wider or narrower on both sides; in the middle of the wall, if so asked."""

    def change(box: Box) -> Box:
        wider = Box(box.x0 - by / 2, box.y0, box.x1 + by / 2, box.y1)
        middle = wider.centre.x
        if "in the middle of the wall" in str(found.mend):
            middle = plan.wall.width / 2
        if "in the middle over it" in str(found.mend):
            middle = next(each for each in plan.furniture if each.name == found.other).box.centre.x
        return wider.moved(middle - wider.centre.x, 0.0)

    return replace(
        plan,
        pieces=tuple(
            replace(each, box=change(each.box)) if each.name == found.subject else each
            for each in plan.pieces
        ),
        groups=tuple(
            replace(each, box=change(each.box)) if each.name == found.subject else each
            for each in plan.groups
        ),
    )


def _shift_area(plan: Plan, found: Finding, by: float) -> Plan:
    """All pieces moved within the group's box, which stays."""
    group = _group_of(plan, found.subject)
    moved = move(plan, [group.name], by, 0.0)
    return replace(moved, groups=plan.groups)


def _bring_back(plan: Plan, found: Finding) -> Plan:
    """Each named part, and those within 4 in of it or of each other before any is moved, moved."""
    group = _group_of(plan, found.subject)
    boxes = dict(group.parts)
    for part in str(found.mend).split("; "):
        named, words = part.split(": ")
        together = {re.sub(r" and \d+ more$", "", named)}
        for _ in boxes:
            together |= {
                name
                for name, box in boxes.items()
                if any(-min(box.overlap(boxes[near])) <= 4 * 25.4 + 1e-6 for near in together)
            }
        plan = move(plan, together, *_read_moves(words))
    return plan
