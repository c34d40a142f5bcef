"""Loads, fasteners and ratings in words, the same on every page and in ``check``."""

from __future__ import annotations

from math import ceil

from templater.lengths import Unit
from templater.mounting.amounts import SLACK_MM, round_down, round_up
from templater.rules.cautions.weights import (
    POUND_KG,
    choose_weight_unit,
    round_down_weight,
    round_up_weight,
)
from templater.rules.fasteners.choose import Fastener
from templater.rules.fasteners.load import Load, to_kg

NO_WEIGHT = "weight not given: not checked"
"""What stands where a load would."""

_STEP_KG = {True: 5 * POUND_KG, False: 2.0}
_SHOWN_N = 0.1


def format_at_least_kg(kg: float, units: Unit) -> str:
    """``14.2 lb``, ``6.4 kg``: to a tenth, never less than it is, as loads and demands are told."""
    unit, name = choose_weight_unit(units)
    return f"{round_up_weight(kg, units) / unit:.1f} {name}"


def _format_at_most_kg(kg: float, units: Unit) -> str:
    """The same, never more than it is, as is told of what holds."""
    unit, name = choose_weight_unit(units)
    return f"{round_down_weight(kg, units) / unit:.1f} {name}"


def format_rating(kg: float, units: Unit) -> str:
    """A maker's rating, as it is written on the packet: ``30 lb``, ``6.8 kg``; never more than it is."""
    unit, name = choose_weight_unit(units)
    return f"{round_down_weight(kg, units) / unit:g} {name}"


def round_up_rating(kg: float, units: Unit) -> float:
    """The next rating that is looked for in a shop, kg: in steps of 5 lb or 2 kg."""
    step = _STEP_KG[units.is_imperial]
    return max(ceil(kg / step - SLACK_MM), 1) * step


def format_force(force_n: float, units: Unit) -> str:
    """What pulls: ``7.1 lb (31.6 N)``, rounded up."""
    return f"{format_at_least_kg(to_kg(force_n), units)} ({round_up(force_n, _SHOWN_N):.1f} N)"


def format_hold(force_n: float, units: Unit) -> str:
    """What withstands a pull, in the same form, rounded down."""
    return f"{_format_at_most_kg(to_kg(force_n), units)} ({round_down(force_n, _SHOWN_N):.1f} N)"


def format_load(load: Load | None, units: Unit) -> str:
    """What pulls on a hole, with its range where it is an estimate."""
    if load is None:
        return NO_WEIGHT
    if not load.down_n and not load.sideways_n:
        return "bears no weight"
    text = format_force(load.down_n, units)
    if load.told_sideways_n:
        text += f" down, {format_force(load.told_sideways_n, units)} sideways"
    if load.is_estimate:
        low = _format_at_most_kg(to_kg(load.down_n * load.low), units).split()[0]
        text += f" (estimate: {low} to {format_at_least_kg(to_kg(load.most_down_n), units)})"
    return text


def name_fastener(fastener: Fastener, units: Unit) -> str:
    """``brass hook, rated 30 lb``, or ``hollow-wall anchor``; what cannot be chosen is not checked."""
    if fastener.hook is None:
        return fastener.kind.value if fastener.kind else "not checked"
    rating = fastener.hook.rating_kg
    rated = f", rated {format_rating(rating, units)}" if rating is not None else ""
    return f"{fastener.hook.name}{rated}"


def format_least(fastener: Fastener, units: Unit) -> str:
    """The least rating: ``15 lb``, or of a named hook the very figure; empty where there is none."""
    least = fastener.least_kg
    if least is None:
        return ""
    if fastener.hook is not None:
        return format_at_least_kg(least, units)
    return format_rating(round_up_rating(least, units), units)


def format_asked(fastener: Fastener, units: Unit) -> str:
    """The least rating, and how many times the load that is: ``15 lb (2 × load, rounded up)``."""
    least = format_least(fastener, units)
    rounded = "" if fastener.hook else ", rounded up"
    return f"{least} ({fastener.factor:g} × load{rounded})" if least else ""


def judge_fastener(fastener: Fastener, units: Unit) -> str:
    """What goes into a hole and, of a named hook, whether it is strong enough."""
    name = name_fastener(fastener, units)
    if fastener.hook is None:
        return name
    if fastener.load is None:
        return f"{name}: not checked"
    if fastener.hook.rating_kg is None:
        return f"{name}: its rating is not given: not checked"
    if fastener.is_too_weak:
        return f"{name}: TOO WEAK"
    return f"{name}: enough" + (f", with a {fastener.beside.value}" if fastener.beside else "")


def format_beside(fastener: Fastener, units: Unit) -> str:
    """What a hook's screw needs beside it: ``hollow-wall anchor, rated 40 lb or more``."""
    if fastener.beside is None:
        return ""
    kg = fastener.beside_kg
    rated = f", rated {format_rating(round_up_rating(kg, units), units)} or more" if kg else ""
    return f"{fastener.beside.value}{rated}"
