"""What the search hands on: for each group that leaves something open, the best ways to settle it."""

from __future__ import annotations

from dataclasses import dataclass

from templater.geometry import Point
from templater.layout.model import Arrangement, Group
from templater.placement.model import PlacedGroup, Plan
from templater.rules.model import Finding


@dataclass(frozen=True, slots=True)
class Figures:
    """A group as it would hang, mm.

    ``over_mm`` is the width of the furniture below and ``clearance_mm`` the distance above it
    (both None without furniture); ``middle_mm`` the height of the group's centre above the floor;
    ``weight_off`` how far the middle of all its pieces' areas lies right of and above that centre.
    """

    width_mm: float
    over_mm: float | None
    clearance_mm: float | None
    gap_mm: float
    middle_mm: float
    weight_off: Point

    @property
    def imbalance_mm(self) -> float:
        """How far off its centre the group's weight lies to the eye."""
        x, y = self.weight_off
        return float((x * x + y * y) ** 0.5)


@dataclass(frozen=True, slots=True)
class Proposal:
    """One way to settle a group; ``plan`` is the wall with it and with all that was settled before.

    ``broken`` are the rules that it breaks and that the layout does not accept.
    """

    group: Group
    plan: Plan
    broken: tuple[Finding, ...]
    figures: Figures

    @property
    def placed(self) -> PlacedGroup:
        """The group as it hangs."""
        return next(group for group in self.plan.groups if group.name == self.group.name)

    @property
    def composition(self) -> tuple[Arrangement, int | None]:
        """What kind of composition it is: its arrangement and a grid's columns."""
        return self.group.arrange, self.group.columns

    @property
    def broken_rules(self) -> tuple[str, ...]:
        """The codes of the rules that it breaks, each once."""
        return tuple(dict.fromkeys(finding.rule for finding in self.broken))


@dataclass(frozen=True, slots=True)
class Settlement:
    """The best ways to settle one group, the best first, and which of them was taken (from 1).

    ``advice`` says what would be needed where none keeps the rule of width over furniture.
    """

    proposals: tuple[Proposal, ...]
    taken: int
    advice: str | None

    @property
    def name(self) -> str:
        """The group's name."""
        return self.proposals[0].group.name

    @property
    def choice(self) -> Proposal:
        """The proposal that was taken."""
        return self.proposals[self.taken - 1]
