"""What hangs over people and heat, near water and vents, and in line with pipes."""

from __future__ import annotations

from dataclasses import replace

import pytest

from templater.geometry import Box
from templater.layout.kinds import FIXTURE_KINDS, FURNITURE_KINDS
from templater.layout.model import Hanger, Hanging, MadeOf, Material, Sheet
from templater.mounting.model import Strips
from templater.placement.model import PlacedFurniture, Plan
from templater.rules.cautions.check import CAUTIONS
from templater.rules.cautions.things import KNOWN, find_words
from tests.rules.cautions.drilled import brief, drilled, metric_wall, told
from tests.rules.fasteners.walls import by, hung_at, wall_of
from tests.rules.plans import box, hung, obstacle, wall

BELOW = Box(0, 0, 1000, 800)


def over(kind: str, *, name: str = "the long thing", at: Box = BELOW) -> Plan:
    """A piece from 0 to 400 mm along the wall and from 1000 to 1500 mm up, and furniture."""
    return metric_wall(drilled(), furniture=[PlacedFurniture(name, at, kind)])


@pytest.mark.parametrize("kind", ["bed", "seat", "boot bench", "Window seat", "two chairs", "headboard"])
def test_over_people(kind: str) -> None:
    (found,) = told(over(kind), "over-people")
    assert brief(found) == ("caution", "the long thing", "over the long thing")
    assert found.because == 'FEMA, "Mount framed pictures and mirrors securely", April 2008'
    assert found.mend == "take a light piece behind acrylic, on two closed hooks, or hang it elsewhere"


def test_over_people_nothing_is_stuck_on() -> None:
    plan = over("bed")
    stuck = replace(plan.pieces[0], supports=(Strips(4, "pair"),), marks=())
    (found,) = told(replace(plan, pieces=(stuck,)), "over-people")
    assert found.mend == (
        "hang nothing on adhesive strips there: take a light piece behind acrylic, on two closed hooks,"
        " or hang it elsewhere"
    )


@pytest.mark.parametrize(
    ("hang", "act"),
    [
        (by(Hanger.KEYHOLES, apart=200), "fixed so that it cannot lift off its screws"),
        (
            replace(by(Hanger.CLEAT), width_mm=200, every_mm=200),
            "fixed so that it cannot lift off its rail",
        ),
        (replace(by(Hanger.RAIL), rail_mm=2300.0), "on closed hooks and knotted cords"),
        (by(Hanger.D_RINGS, apart=200), "see that both hooks are closed"),
        (None, "on two closed hooks"),
    ],
)
def test_over_people_what_is_to_be_done_fits_what_holds_it(hang: Hanging | None, act: str) -> None:
    below = PlacedFurniture("bed", Box(500, 0, 1500, 500), "bed")
    plan = replace(wall_of(hung_at(1000.0, hang, 3.0)), furniture=(below,))
    (found,) = told(plan, "over-people")
    assert found.mend == f"take a light piece behind acrylic, {act}, or hang it elsewhere"


@pytest.mark.parametrize("glazing", [Material.ACRYLIC, Material.NONE])
def test_over_people_nobody_is_told_to_take_the_acrylic_that_it_has(glazing: Material) -> None:
    below = PlacedFurniture("bed", Box(500, 0, 1500, 500), "bed")
    made_of = MadeOf(Sheet(glazing))
    piece = replace(hung_at(1000.0, by(Hanger.NAIL), 3.0), made_of=made_of)
    (found,) = told(replace(wall_of(piece), furniture=(below,)), "over-people")
    assert found.mend == "take a light piece, on two closed hooks, or hang it elsewhere"


def test_over_a_cot_hangs_nothing() -> None:
    (found,) = told(over("cot"), "over-people")
    assert found.mend == "hang nothing over a cot"


@pytest.mark.parametrize("kind", ["table", "oil cabinet", "chart chest", "other"])
def test_over_what_is_harmless(kind: str) -> None:
    assert told(over(kind), "over-people") == told(over(kind), "over-heat") == []


def test_over_something_unknown_it_is_not_checked() -> None:
    for code in ("over-people", "over-heat"):
        (found,) = told(over("the long thing"), code)
        assert brief(found) == ("not checked", "the long thing", None)
        assert found.mend == "add 'kind' to 'the long thing'"


@pytest.mark.parametrize("at", [Box(400, 0, 1000, 800), Box(0, 1600, 1000, 1800)])
def test_beside_or_under_a_thing_is_not_over_it(at: Box) -> None:
    assert told(over("bed", at=at), "over-people") == []
    assert told(over("radiator", at=at), "over-heat") == []


@pytest.mark.parametrize("kind", ["heater", "radiator", "stove", "fireplace"])
def test_over_heat(kind: str) -> None:
    fixed = metric_wall(drilled(), obstacles=[obstacle("it", BELOW, kind=kind)])
    for plan in (over(kind, name="it"), fixed):
        (found,) = told(plan, "over-heat")
        assert brief(found) == ("caution", "it", "over it")
        assert found.because == "Canadian Conservation Institute, Notes 10/3"


@pytest.mark.parametrize(
    ("code", "kind", "away", "verdict", "figure"),
    [
        # 24 and 12 in; common practice, no source.
        ("near-water", "sink", 24, "kept", "24 in from it"),
        ("near-water", "tap", 23.9, "caution", "23 7/8 in from it"),
        ("near-water", "shower", 12, "caution", "12 in from it"),
        ("near-vent", "vent", 12, "kept", "12 in from it"),
        ("near-vent", "vent", 11.99, "caution", "11 15/16 in from it"),
    ],
)
def test_nearness(code: str, kind: str, away: float, verdict: str, figure: str) -> None:
    thing = obstacle("it", box(40 + away, 40, 10, 10), kind=kind)
    plan = wall([hung("A", box(20, 40, 20, 20))], obstacles=[thing])
    (found,) = told(plan, code)
    assert brief(found) == (verdict, "it", figure)


def test_of_several_taps_those_too_near_are_told_else_the_nearest() -> None:
    taps = [obstacle(f"tap {off}", box(40 + off, 40, 1, 1), kind="tap") for off in (30, 50, 10)]
    plan = wall([hung("A", box(20, 40, 20, 20))], obstacles=taps)
    assert [brief(each)[:2] for each in told(plan, "near-water")] == [("caution", "tap 10")]
    far = replace(plan, obstacles=plan.obstacles[:2])
    assert [brief(each)[:2] for each in told(far, "near-water")] == [("kept", "tap 30")]
    strange = replace(plan, obstacles=(obstacle("plaque", box(45, 40, 1, 1), kind="plaque"),))
    assert [brief(each)[:2] for each in told(strange, "near-water")] == [("not checked", "plaque")]


@pytest.mark.parametrize(
    ("x", "verdict"),
    [
        # A chase from 1000 to 1300 mm; 2 in aside is 50.8 mm; common practice, no source.
        (949.1, None),
        (949.3, "caution"),
        (1300, "caution"),
        (1350.7, "caution"),
        (1350.9, None),
    ],
)
def test_in_line_with_a_pipe_chase(x: float, verdict: str | None) -> None:
    chase = obstacle("pipe chase", Box(1000, 0, 1300, 2000), kind="pipe chase")
    found = told(metric_wall(drilled((x, 2200)), obstacles=[chase]), "pipe-zone")
    expected = [(verdict, "hole 1", "plumb over pipe chase")] if verdict else []
    assert [brief(each) for each in found] == expected


def test_in_line_with_a_basin_under_it_and_with_something_unknown() -> None:
    plan = metric_wall(
        drilled((500, 2200), (1500, 2200)),
        furniture=[PlacedFurniture("wash stand", Box(1400, 0, 1600, 800), "wash stand")],
        obstacles=[obstacle("the basin", Box(400, 800, 600, 900), kind="sink")],
    )
    assert [brief(each) for each in told(plan, "pipe-zone")] == [
        ("caution", "hole 1", "plumb over the basin"),
        ("not checked", "hole 2", None),
    ]


@pytest.mark.parametrize("kind", [*FURNITURE_KINDS, *FIXTURE_KINDS, "window", "door"])
def test_every_kind_that_a_layout_may_give_is_known(kind: str) -> None:
    assert not KNOWN.isdisjoint(find_words(kind))


def test_words_are_whole() -> None:
    assert find_words("Bedside table") == {"bedside", "table"}
    assert "bench" in find_words("boot-bench")
    assert {"switches", "switche"} <= find_words("switches")
    assert len({caution.code for caution in CAUTIONS}) == len(CAUTIONS)


@pytest.mark.parametrize(
    "name", ["smoke alarm", "Fire detector", "fuse box", "television", "extractor fan", "boiler"]
)
def test_cables_run_to_what_its_name_says_is_wired(name: str) -> None:
    thing = obstacle(name, Box(90, 200, 110, 300), kind=name)
    (found,) = told(metric_wall(drilled((100, 1400)), obstacles=[thing]), "cable-zone")
    assert brief(found) == ("caution", "hole 1", f"plumb over {name}")


def test_nothing_is_said_of_a_fire_extinguisher() -> None:
    thing = obstacle("fire extinguisher", Box(90, 200, 110, 300), kind="fire extinguisher")
    plan = metric_wall(drilled((100, 1400)), obstacles=[thing])
    assert [each.mend for each in told(plan, "pipe-zone")] == []
