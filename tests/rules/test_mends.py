"""What a finding says would mend it, carried out by the numbers shown, does mend it."""

from __future__ import annotations

from collections import Counter

from hypothesis import given, settings

from templater.layout.rule_codes import RULE_CODES
from templater.placement.model import Plan
from templater.rules.check import check_rules
from templater.rules.model import Finding, Verdict
from tests.rules.changes import mend
from tests.rules.random_plans import plans


def broken(plan: Plan) -> list[Finding]:
    return [each for each in check_rules(plan) if each.verdict is Verdict.BROKEN]


def test_every_mend_of_every_rule_mends() -> None:
    tried: Counter[str] = Counter()

    @settings(max_examples=200, deadline=None, derandomize=True, database=None)
    @given(plans())
    def check_mends(plan: Plan) -> None:
        for found in broken(plan):
            tried[found.rule] += 1
            after = broken(mend(plan, found))
            same = [each for each in after if (each.rule, each.other) == (found.rule, found.other)]
            assert found.subject not in {each.subject for each in same}, found

    check_mends()
    assert {rule for rule in RULE_CODES if not tried[rule]} == set()
