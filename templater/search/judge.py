"""Hangs a candidate on the wall and holds the rules against it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from templater.errors import Fault
from templater.layout.model import Group, Layout
from templater.mounting.model import Mount
from templater.placement.model import PlacedGroup, Plan
from templater.placement.place import place_pieces
from templater.rules.balance import find_middle_of_area
from templater.rules.check import check_rules
from templater.rules.model import Finding, Verdict
from templater.search.model import Figures, Proposal


class Judge:
    """Judges candidates on one wall on which all else is settled or left away."""

    def __init__(self, layout: Layout, mounts: Mapping[str, Mount]) -> None:
        self._layout, self._mounts = layout, mounts

    def judge(self, group: Group) -> tuple[Proposal | None, tuple[Fault, ...]]:
        """The wall with a group settled so; without a proposal where it cannot be placed."""
        groups = tuple(group if each.name == group.name else each for each in self._layout.groups)
        placement = place_pieces(replace(self._layout, groups=groups), self._mounts)
        if placement.faults:
            return None, placement.faults
        plan = placement.plan
        placed = next(each for each in plan.groups if each.name == group.name)
        return Proposal(group, plan, _find_broken(placed, plan), _measure(placed, plan)), ()


def _find_broken(placed: PlacedGroup, plan: Plan) -> tuple[Finding, ...]:
    """Every rule broken by the group, by what is in it or by what it is part of."""
    concerned = {placed.name, *placed.pieces, *_list_outer(placed, plan)}
    concerned.update(each.name for each in plan.groups if set(each.pieces) <= set(placed.pieces))
    return tuple(
        finding
        for finding in check_rules(plan, concerned)
        if finding.verdict is Verdict.BROKEN and {finding.subject, finding.other} & concerned
    )


def _list_outer(placed: PlacedGroup, plan: Plan) -> Iterator[str]:
    """The groups that it is part of, from the nearest outward."""
    within = {group.name: group.within for group in plan.groups}
    name = placed.within
    while name is not None:
        yield name
        name = within[name]


def _measure(placed: PlacedGroup, plan: Plan) -> Figures:
    """The group's figures."""
    over, box = placed.over, placed.box
    boxes = [piece.box for piece in plan.pieces if piece.name in placed.pieces]
    return Figures(
        width_mm=box.width,
        over_mm=over.box.width if over else None,
        clearance_mm=box.y0 - over.box.y1 if over else None,
        gap_mm=placed.gap_mm,
        middle_mm=box.centre.y,
        weight_off=find_middle_of_area(boxes).moved(-box.centre.x, -box.centre.y),
    )
