"""The bands that rules ask for in one layout: the trade's, unless the layout sets its own."""

from __future__ import annotations

from math import inf

from templater.layout.model import RuleSetting
from templater.placement.model import Plan
from templater.rules.band import Band


def find_band(plan: Plan, code: str, usual: Band) -> Band:
    """The band that a rule asks for; an end that the layout does not set is as ever.

    Where the end that it sets passes the other usual one, that one asks for nothing.
    """
    setting = find_setting(plan, code)
    if setting is None:
        return usual
    low = usual.low if setting.low is None else setting.low
    high = usual.high if setting.high is None else setting.high
    if low > high:
        return Band(low, inf) if setting.high is None else Band(-inf, high)
    return Band(low, high)


def is_on(plan: Plan, code: str) -> bool:
    """Whether the layout has not turned a rule off."""
    setting = find_setting(plan, code)
    return setting is None or setting.is_on


def find_setting(plan: Plan, code: str) -> RuleSetting | None:
    """What the layout sets for a rule, if anything."""
    return next((setting for setting in plan.rules if setting.rule == code), None)
