from __future__ import annotations

import re
from dataclasses import replace
from math import hypot

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.layout.model import Hanger, Hardware, Surface
from templater.lengths import Unit
from templater.rules.fasteners.choose import Fastener, choose_fasteners
from templater.rules.fasteners.load import Load
from templater.rules.fasteners.wording import (
    format_asked,
    format_at_least_kg,
    format_hold,
    format_least,
    format_load,
    format_rating,
    judge_fastener,
    round_up_rating,
)
from templater.rules.holes import HoleWall
from tests.rules.fasteners.walls import POUND, by, hook, hung_at, only, wall_of

G = 9.80665


def chosen(kg: float | None, named: Hardware | None = None) -> Fastener:
    plan = wall_of(
        hung_at(1000.0, by(Hanger.NAIL, hook=named), kg), studs=(1000.0,), surface=Surface.DRYWALL
    )
    (found,) = choose_fasteners(only(plan), plan)
    return found


@pytest.mark.parametrize(
    ("load", "units", "text"),
    [
        # 31.58 N / 9.80665 = 3.220 kg = 7.099 lb; a load is never told as less than it is.
        (Load(31.58), Unit.INCH, "7.1 lb (31.6 N)"),
        (Load(31.58), Unit.CENTIMETRE, "3.3 kg (31.6 N)"),
        # Half of 12.5 kg: 6.25 kg x 9.80665 = 61.2916 N.
        (Load(61.2916), Unit.CENTIMETRE, "6.3 kg (61.3 N)"),
        # 49.03 N = 4.9997 kg, 16.34 N = 1.6662 kg.
        (Load(49.03, 16.34), Unit.MILLIMETRE, "5.0 kg (49.1 N) down, 1.7 kg (16.4 N) sideways"),
        # Times 0.81 and 1.21: 4.0497 and 6.0496 kg.
        (Load(49.03, 0.0, 0.81, 1.21), Unit.MILLIMETRE, "5.0 kg (49.1 N) (estimate: 4.0 to 6.1 kg)"),
        (None, Unit.INCH, "weight not given: not checked"),
    ],
)
def test_a_load_is_told_with_its_range(load: Load | None, units: Unit, text: str) -> None:
    assert format_load(load, units) == text


@pytest.mark.parametrize(
    ("kg", "units", "rounded"),
    [
        (10 * POUND, Unit.INCH, 10 * POUND),
        (10.01 * POUND, Unit.INCH, 15 * POUND),
        (4.0, Unit.CENTIMETRE, 4.0),
        (4.01, Unit.CENTIMETRE, 6.0),
        (0.0, Unit.INCH, 5 * POUND),
    ],
)
def test_a_rating_to_buy_is_rounded_up(kg: float, units: Unit, rounded: float) -> None:
    assert round_up_rating(kg, units) == pytest.approx(rounded)


def test_a_lock_bears_no_weight_and_no_figure_says_otherwise() -> None:
    assert format_load(Load(0.0), Unit.INCH) == "bears no weight"


def test_what_withstands_a_pull_is_never_shown_as_more() -> None:
    # 254.68 N / 9.80665 = 25.970 kg = 57.255 lb.
    assert format_hold(254.68, Unit.MILLIMETRE) == "25.9 kg (254.6 N)"
    assert format_hold(254.68, Unit.INCH) == "57.2 lb (254.6 N)"


def test_what_is_asked_for_is_never_shown_as_less() -> None:
    assert format_at_least_kg(6.01, Unit.MILLIMETRE) == "6.1 kg"
    assert format_at_least_kg(6.0, Unit.MILLIMETRE) == "6.0 kg"
    assert format_rating(30 * POUND, Unit.INCH) == "30 lb"


@pytest.mark.parametrize(
    ("kg", "named", "told", "asked"),
    [
        (None, None, "not checked", ""),
        (5 * POUND, None, "nail or screw", "10 lb (2 × load, rounded up)"),
        (15 * POUND, hook(30 * POUND), "brass hook, rated 30 lb: enough", "30.0 lb (2 × load)"),
        (16 * POUND, hook(30 * POUND), "brass hook, rated 30 lb: TOO WEAK", "32.0 lb (2 × load)"),
        (
            5 * POUND,
            hook(None),
            "brass hook: its rating is not given: not checked",
            "10.0 lb (2 × load)",
        ),
        (None, hook(30 * POUND), "brass hook, rated 30 lb: not checked", ""),
    ],
)
def test_a_fastener_is_never_passed_in_silence(
    kg: float | None, named: Hardware | None, told: str, asked: str
) -> None:
    found = chosen(kg, named)
    assert judge_fastener(found, Unit.INCH) == told
    assert format_asked(found, Unit.INCH) == asked


def test_a_sideways_pull_too_small_to_show_is_not_told() -> None:
    found = replace(chosen(5.0), load=Load(49.03, 0.01))
    assert format_load(found.load, Unit.MILLIMETRE) == "5.0 kg (49.1 N)"


def test_what_is_asked_for_is_a_multiple_of_the_load_as_it_is_told() -> None:
    # 2.63 lb are told as 2.7 lb: twice that is 5.4 lb, while twice 2.63 lb would be told as 5.3 lb.
    for pounds, load, asked in ((5.3, "5.3 lb", "10.6 lb"), (2.63, "2.7 lb", "5.4 lb")):
        found = chosen(pounds * POUND, hook(30 * POUND))
        assert format_load(found.load, Unit.INCH).startswith(f"{load} (")
        assert format_asked(found, Unit.INCH) == f"{asked} (2 × load)"


@given(st.floats(0.01, 60.0), st.floats(0.0, 60.0), st.floats(1.0, 1.5), st.sampled_from(Unit))
def test_what_is_asked_for_never_contradicts_what_is_told(
    down_kg: float, sideways_kg: float, high: float, units: Unit
) -> None:
    load = Load(down_kg * G, sideways_kg * G, 2 - high, high)
    fastener = Fastener(HoleWall.STUD, load, hook(None), None, units)
    asked = float(format_least(fastener, units).split()[0])
    shown = [float(each) for each in re.findall(r"([\d.]+) (?:lb|kg)", format_load(load, units))]
    assert asked >= 2 * max(shown) - 1e-9
    pound = POUND if units.is_imperial else 1.0
    # A sideways pull of less than 0.05 N, 0.0051 kg, is not told; it adds less than that.
    assert asked * pound >= 2 * hypot(down_kg, sideways_kg) * high - 2 * 0.0052 * 1.5


def test_a_rating_is_never_shown_as_more() -> None:
    # 2.43 kg = 5.357 lb: shown as 5.4 lb it would look strong enough where 5.4 lb are asked for.
    assert format_rating(2.43, Unit.INCH) == "5.3 lb"
    found = chosen(2.63 * POUND, hook(2.43))
    assert judge_fastener(found, Unit.INCH) == "brass hook, rated 5.3 lb: TOO WEAK"
