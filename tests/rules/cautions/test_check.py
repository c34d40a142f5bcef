"""All cautions together: their pages, their form, what is told once."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.geometry import Box
from templater.layout.model import LeftRight, Region
from templater.placement.model import PlacedFurniture, Plan
from templater.rules.cautions.caution import Caution
from templater.rules.cautions.check import CAUTIONS, check_cautions
from templater.rules.cautions.together import split_findings, tell_together
from templater.rules.check import RULES, check_all
from templater.rules.explain import explain_rule
from templater.rules.hole_notes import describe_holes, describe_pieces
from templater.rules.holes import HoleWall
from templater.rules.model import Verdict
from tests.rules.cautions.drilled import drilled, metric_wall
from tests.rules.plans import obstacle
from tests.rules.random_plans import plans


@pytest.mark.parametrize("caution", CAUTIONS, ids=lambda caution: caution.code)
def test_a_caution_is_a_file_of_its_own_named_after_its_code(caution: Caution) -> None:
    assert re.fullmatch("[a-z]+(-[a-z]+)*", caution.code)
    assert caution.check.__module__ == f"templater.rules.cautions.{caution.code.replace('-', '_')}"
    assert explain_rule(caution.code).startswith(f"{caution.code}: {caution.page.strip()[:20]}")


def test_no_caution_has_the_code_of_a_rule() -> None:
    assert not {caution.code for caution in CAUTIONS} & {rule.code for rule in RULES}


def rich(plan: Plan, *, is_told: bool) -> Plan:
    """A plan on which something is to be said by most cautions, or not known."""
    fixtures = (
        obstacle("socket", plan.pieces[0].box.moved(0, -5000), kind="socket"),
        *plan.obstacles,
    )
    drilled_ones = (replace(piece, marks=drilled((*piece.box.centre,)).marks) for piece in plan.pieces)
    return replace(
        plan,
        obstacles=fixtures,
        pieces=tuple(drilled_ones),
        studs=(0.0, 400.0, 800.0) if is_told else (),
        is_walkway=is_told or None,
        is_earthquake=is_told or None,
        is_outside=is_told or None,
        region=Region.UK,
    )


@given(plans(), st.booleans())
def test_every_finding_has_the_form_of_the_rules(plan: Plan, is_told: bool) -> None:
    plan = rich(plan, is_told=is_told)
    names = {piece.name for piece in plan.pieces}
    for found in check_cautions(plan):
        assert found.subject in names
        match found.verdict:
            case Verdict.CAUTION:
                assert found.mend
                assert found.because
            case Verdict.NOT_CHECKED:
                assert found.mend is not None
                assert found.mend.startswith("add ")
                assert (found.figure, found.band) == (None, None)
            case Verdict.KEPT:
                assert found.figure
                assert found.band
                assert found.mend is None
            case verdict:
                assert verdict is Verdict.NOT_APPLICABLE
                assert (found.figure, found.band, found.mend, found.because) == (None,) * 4


@given(plans(), st.booleans())
def test_what_is_told_together_is_all_that_is_told(plan: Plan, is_told: bool) -> None:
    found = check_cautions(rich(plan, is_told=is_told))
    together = tell_together(found)
    assert len(together) <= len(found)
    said = {(each.finding.rule, each.finding.verdict, each.finding.mend) for each in together}
    assert said == {(each.rule, each.verdict, each.mend) for each in found}


def test_the_same_of_many_is_told_once() -> None:
    several = [drilled((100, 1400), (300, 1400), name=name) for name in ("Ebb", "Flow", "Neap")]
    plan = replace(metric_wall(*several), is_outside=True, studs=(120.0, 320.0))
    shown = [(each.parties, each.finding.rule) for each in tell_together(check_cautions(plan))]
    assert ("Ebb; Flow; Neap", "outside-wall") in shown
    assert ("Ebb / hole 1, hole 2", "stud-edge") in shown
    more = replace(plan, pieces=(*plan.pieces, drilled(name="Slack")))
    shown = [(each.parties, each.finding.rule) for each in tell_together(check_cautions(more))]
    assert ("4 pieces", "outside-wall") in shown


def test_pieces_over_different_things_are_told_apart() -> None:
    bed = PlacedFurniture("bed", drilled().box.moved(0, -900), "bed")
    cot = PlacedFurniture("bench", drilled().box.moved(1000, -900), "bench")
    right = drilled(name="Flow", at=drilled().box.moved(1000, 0))
    plan = metric_wall(drilled(name="Ebb"), right, furniture=[bed, cot])
    found = [each for each in check_cautions(plan) if each.rule == "over-people"]
    assert [each.parties for each in tell_together(found)] == ["Ebb / bed", "Flow / bench"]


def test_rules_come_first_and_are_split_from_the_cautions() -> None:
    plan = metric_wall(drilled((100, 1400)))
    rules, cautions = split_findings(check_all(plan))
    assert {found.rule for found in rules} == {rule.code for rule in RULES}
    assert tuple(cautions) == check_cautions(plan)
    assert {found.rule for found in cautions} == {caution.code for caution in CAUTIONS}


def test_what_is_to_be_said_at_each_hole() -> None:
    switch = obstacle("hall switch", drilled().box.moved(90, -900)._replace(x1=110), kind="switch")
    piece = drilled((100, 1400), (121, 1400), (200, 1400), length=80.0)
    plan = replace(
        metric_wall(piece, obstacles=[switch]), studs=(100.0,), board_mm=12.7, is_outside=True
    )
    notes = describe_holes(plan)
    assert list(notes) == [("tide chart", 1), ("tide chart", 2), ("tide chart", 3)]
    first, second, third = notes.values()
    cable = "look for a cable with a detector first; if in doubt, do not drill"
    deep = "67 mm deep in a stud: use a fastener no longer than 44 mm"  # 80 - 12.7; 31.75 + 12.7
    assert first.wall is HoleWall.STUD
    assert first.cautions == (f"plumb over hall switch: {cable}", deep)
    assert second.wall is HoleWall.DOUBTFUL
    assert second.cautions == ("21 mm from a stud's centre: probe with a thin nail first", deep)
    assert (third.wall, third.cautions) == (HoleWall.HOLLOW, ())
    # The air behind it concerns the piece, not a hole.
    (of_piece,) = describe_pieces(plan).values()
    assert "let air pass behind it: spacers at its lower corners" in of_piece


def test_a_thing_is_named_in_what_is_said_of_a_piece() -> None:
    bench = PlacedFurniture("boot bench", drilled().box.moved(0, -900), "boot bench")
    plan = metric_wall(drilled(), furniture=[bench])
    assert describe_pieces(plan)["tide chart"] == (
        "over boot bench: take a light piece behind acrylic, on two closed hooks, or hang it elsewhere",
    )


def test_the_swing_of_a_door_is_no_thing() -> None:
    door = obstacle("yard door", drilled().box.moved(1000, -900), kind="door", swing=LeftRight.LEFT)
    found = check_cautions(metric_wall(drilled(), obstacles=[door]))
    assert not [each for each in found if each.verdict is Verdict.CAUTION]


def test_what_is_not_known_at_holes_of_several_pieces_is_told_once_with_their_holes() -> None:
    sign = obstacle("brass sign, old", Box(80, 200, 320, 300), kind="brass sign")
    pieces = [
        drilled((100, 1400), (300, 1400), name="Ebb, early"),
        drilled((200, 1400), name="Flow"),
        drilled((1000, 1400), name="Neap"),
    ]
    plan = metric_wall(*pieces, obstacles=[sign])
    found = [each for each in check_cautions(plan) if each.rule == "pipe-zone"]
    (told,) = tell_together(each for each in found if each.verdict is Verdict.NOT_CHECKED)
    assert told.parties == "Ebb, early / hole 1, hole 2; Flow / hole 1"
    assert told.finding.mend == "add 'kind' to 'brass sign, old'"
