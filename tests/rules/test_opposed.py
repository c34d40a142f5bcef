"""Mends that fight say so."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from templater.layout.model import Acceptance
from templater.placement.model import PlacedFurniture, Plan
from templater.rules.check import check_all, check_rules
from templater.rules.model import Verdict
from templater.rules.opposed import tell_opposed
from tests.builders import HERE
from tests.rules.changes import mend
from tests.rules.plans import box, hung, wall


def over_stand(foot: float, height: float, *, accepted: tuple[Acceptance, ...] = ()) -> Plan:
    """A mirror so many inches high over a stand of 32 in, under a ceiling of 96 in."""
    stand = PlacedFurniture("stand", box(80, 0, 40, 32), "table")
    piece = replace(hung("Mirror", box(86, foot, 28, height), over=stand), is_over_unasked=True)
    return wall([piece], furniture=[stand], accepted=accepted)


def mends(plan: Plan) -> dict[str, str | None]:
    return {each.rule: each.mend for each in check_all(plan) if each.verdict is Verdict.BROKEN}


def test_a_mend_names_the_rules_that_ask_the_opposite() -> None:
    # 3 in over the stand: raise by 3; its centre at 63 in: lower by 2; 5 in of wall above: lower by 1.
    assert mends(over_stand(35, 56)) == {
        "clearance": "raise by 3 in (76 mm); then still broken: eye-line, near-ceiling",
        "eye-line": "lower by 2 in (51 mm); then still broken: clearance",
        "near-ceiling": "lower by 1 in (25 mm); then still broken: clearance",
    }


def test_what_is_accepted_does_not_stand_against_a_mend() -> None:
    kept = tuple(Acceptance(rule, "Mirror", "it is so", HERE) for rule in ("eye-line", "near-ceiling"))
    assert mends(over_stand(35, 56, accepted=kept)) == {"clearance": "raise by 3 in (76 mm)"}


def broken(plan: Plan) -> set[str]:
    return {each.rule for each in check_rules(plan) if each.verdict is Verdict.BROKEN}


def test_what_is_named_stays_broken_once_the_mend_is_done() -> None:
    tried: Counter[str] = Counter()

    @settings(max_examples=100, deadline=None, derandomize=True, database=None)
    @given(st.integers(32 * 16, 45 * 16), st.integers(10 * 16, 55 * 16))
    def check(foot: int, height: int) -> None:
        plan = over_stand(foot / 16, height / 16)
        for found in tell_opposed(check_rules(plan)):
            _, _, named = (found.mend or "").partition("; then still broken: ")
            if named:
                tried[found.rule] += 1
                assert set(named.split(", ")) <= broken(mend(plan, found))

    check()
    assert set(tried) == {"clearance", "eye-line", "near-ceiling"}
