"""Outside walls, large glass and heavy pieces, and what a wall does not tell."""

from __future__ import annotations

from dataclasses import replace

import pytest

from templater.geometry import Box
from templater.layout.model import MadeOf, Material, Sheet
from templater.mounting.model import WeightEstimate
from templater.placement.model import Plan
from tests.rules.cautions.drilled import brief, drilled, metric_wall, told


def weighing(kg: float | None, *, estimate: WeightEstimate | None = None) -> Plan:
    return metric_wall(replace(drilled(), hang=None, weight_kg=kg, estimate=estimate))


@pytest.mark.parametrize(
    ("code", "field", "missing"),
    [
        ("earthquake", "is_earthquake", "add 'earthquake: yes' or 'earthquake: no' to 'wall'"),
        ("outside-wall", "is_outside", "add 'outside: yes' or 'outside: no' to 'wall'"),
    ],
)
def test_what_the_wall_does_not_tell_is_not_checked(code: str, field: str, missing: str) -> None:
    (found,) = told(weighing(3.0), code)
    assert (found.verdict.value, found.mend) == ("not checked", missing)
    no, yes = ({field: answer} for answer in (False, True))
    assert told(replace(weighing(3.0), **no), code) == []  # type: ignore[arg-type]
    (found,) = told(replace(weighing(3.0), **yes), code)  # type: ignore[arg-type]
    assert found.verdict.value == "caution"


def test_of_an_estimate_the_most_counts() -> None:
    # 25 lb is 11.34 kg; common practice, no source.
    estimate = WeightEstimate(10.0, 8.0, 12.0)
    (found,) = told(weighing(10.0, estimate=estimate), "two-persons")
    assert brief(found) == ("caution", None, "heavier than 11 kg")
    (found,) = told(weighing(10.0), "two-persons")
    assert brief(found) == ("kept", None, "10 kg, 500 mm long")


@pytest.mark.parametrize(
    ("side", "kg", "verdict"),
    [
        # 25 lb and 48 in (1219.2 mm); common practice, no source.
        (1219.2, 11.339, "kept"),
        (1219.2, 11.341, "caution"),
        (1219.3, 1.0, "caution"),
        (1219.3, None, "caution"),
        (500.0, None, "not checked"),
    ],
)
def test_what_two_lift(side: float, kg: float | None, verdict: str) -> None:
    at = Box(0, 1000, 400, 1000 + side)
    plan = metric_wall(replace(drilled(at=at), weight_kg=kg))
    (found,) = told(plan, "two-persons")
    assert found.verdict.value == verdict


def behind(glazing: Sheet | None, side: float) -> Plan:
    made_of = None if glazing is None else MadeOf(glazing=glazing)
    return metric_wall(replace(drilled(at=Box(0, 1000, side, 1400)), made_of=made_of))


@pytest.mark.parametrize(
    ("glazing", "side", "verdict"),
    [
        # 2 mm, and 3 mm when wider than 1 m: a framer's page on glazing (picture.gb.com).
        (Sheet(Material.GLASS, 2.0), 1000.0, None),
        (Sheet(Material.GLASS, 2.0), 1000.1, "caution"),
        (Sheet(Material.GLASS, 2.99), 1200.0, "caution"),
        (Sheet(Material.GLASS, 3.0), 1200.0, "kept"),
        (Sheet(Material.GLASS, None), 1200.0, "caution"),
        (Sheet(Material.ACRYLIC, 2.0), 1200.0, None),
        (Sheet(Material.NONE), 1200.0, None),
        (None, 1000.0, None),
        (None, 1200.0, "not checked"),
    ],
)
def test_large_glass(glazing: Sheet | None, side: float, verdict: str | None) -> None:
    found = told(behind(glazing, side), "glass-size")
    assert [each.verdict.value for each in found] == ([verdict] if verdict else [])


def test_what_is_said_of_large_glass() -> None:
    (found,) = told(behind(Sheet(Material.GLASS, 2.0), 1200.0), "glass-size")
    assert brief(found) == ("caution", None, "glass 1200 mm long, 2 mm thick")
    assert (found.band, found.mend) == ("3 mm or more", "use acrylic, or glass of 3 mm")
