from __future__ import annotations

from dataclasses import replace

import pytest

from templater.rules.accept import find_idle_acceptances
from templater.rules.check import check_rules
from templater.rules.model import Verdict
from tests.builders import HERE
from tests.rules.plans import acceptance, box, findings_of, grouped, hung, row, setting, wall

WHY = "the stairs put the eye higher here"
HIGH = wall([hung("Fog bell", box(150, 70, 12, 12))])
"""The centre is at 76 in."""


def test_a_rule_broken_on_purpose_is_accepted_and_never_kept() -> None:
    (before,) = findings_of(HIGH, "eye-line")
    plan = replace(HIGH, accepted=(acceptance("eye-line", "Fog bell", WHY),))
    (found,) = findings_of(plan, "eye-line")
    assert before.verdict is Verdict.BROKEN
    assert found == replace(before, verdict=Verdict.ACCEPTED, because=WHY)
    assert found.mend == "lower by 15 in (381 mm)"
    assert find_idle_acceptances(plan, check_rules(plan)) == ()


@pytest.mark.parametrize(("rule", "name"), [("near-corner", "Fog bell"), ("eye-line", "Tide chart")])
def test_another_rule_or_another_name_is_not_accepted(rule: str, name: str) -> None:
    other = hung("Tide chart", box(20, 54, 12, 12))
    plan = replace(HIGH, pieces=(*HIGH.pieces, other), accepted=(acceptance(rule, name),))
    verdicts = {found.subject: found.verdict for found in findings_of(plan, "eye-line")}
    assert verdicts == {"Fog bell": Verdict.BROKEN, "Tide chart": Verdict.KEPT}


def test_one_acceptance_covers_all_findings_of_a_rule_and_a_name() -> None:
    parts = [("A", box(50, 50, 10, 10)), ("B", box(61, 50, 10, 10)), ("C", box(72, 50, 10, 10))]
    plan = wall(groups=[grouped("trio", parts)], accepted=[acceptance("gap", "trio", WHY)])
    found = findings_of(plan, "gap")
    assert [(each.subject, each.other) for each in found] == [("A", "B"), ("B", "C")]
    assert {(each.verdict, each.because) for each in found} == {(Verdict.ACCEPTED, WHY)}


def test_of_a_group_and_a_piece_in_it_the_piece_has_its_own_reason() -> None:
    accepted = [acceptance("gap", "B", "it is thin"), acceptance("gap", "trio", WHY)]
    plan = wall(groups=[row("trio", 50, 50, (1, 1))], accepted=accepted)
    assert [each.because for each in findings_of(plan, "gap")] == [WHY, "it is thin"]


def test_an_acceptance_reaches_into_a_group_in_a_group() -> None:
    pair, members = row("pair", 30, 50, (1,))
    inner = replace(pair, within="all")
    outer = replace(
        pair, name="all", parts=(("pair", pair.box), ("D", box(58, 50, 12, 12))), pieces=("A", "B", "D")
    )
    outer = replace(outer, box=box(30, 50, 40, 12))
    plan = wall(
        groups=[(outer, [*members, hung("D", box(58, 50, 12, 12), group="all")]), (inner, [])],
        accepted=[acceptance("gap", "all", WHY)],
    )
    broken = [each for each in findings_of(plan, "gap") if each.verdict is not Verdict.KEPT]
    assert [(each.subject, each.other, each.because) for each in broken] == [("A", "B", WHY)]


def test_an_acceptance_that_no_longer_applies_is_told_and_changes_nothing() -> None:
    plan = wall([hung("Fog bell", box(150, 54, 12, 12))], accepted=[acceptance("eye-line", "Fog bell")])
    assert [each.verdict for each in findings_of(plan, "eye-line")] == [Verdict.KEPT]
    (told,) = find_idle_acceptances(plan, check_rules(plan))
    assert told.message == "'accept' no longer applies: eye-line is not broken for 'Fog bell'"
    assert (told.hint, told.place) == ("remove it from 'accept'", HERE)


def test_an_acceptance_of_a_rule_that_is_turned_off_is_told() -> None:
    plan = replace(
        HIGH,
        rules=(setting("eye-line", is_on=False),),
        accepted=(acceptance("eye-line", "Fog bell"),),
    )
    (told,) = find_idle_acceptances(plan, check_rules(plan))
    assert told.message == "'accept' no longer applies: eye-line is turned off for 'Fog bell'"
