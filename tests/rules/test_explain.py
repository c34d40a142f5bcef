from __future__ import annotations

import re

import pytest

from templater.errors import ExitCode, UsageError
from templater.rules.cautions.caution import Caution
from templater.rules.cautions.check import CAUTIONS
from templater.rules.check import RULES
from templater.rules.explain import HEADINGS, explain_rule, list_rules
from templater.rules.rule import Rule


@pytest.mark.parametrize("rule", [*RULES, *CAUTIONS], ids=lambda rule: rule.code)
def test_every_page_has_the_fixed_form(rule: Rule | Caution) -> None:
    """One sentence; then each heading, at the margin, with an indented paragraph under it."""
    first, *rest = rule.page.strip().split("\n\n")
    assert re.fullmatch(r"[A-Z][^\n]*\.", first)
    assert [part.split("\n")[0] for part in rest] == [f"{heading}:" for heading in HEADINGS]
    for part in rest:
        lines = part.split("\n")[1:]
        assert lines
        assert all(line.startswith("    ") for line in lines)
        assert lines[-1].endswith(".")


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.code)
def test_every_page_says_where_its_band_comes_from_and_how_to_write_it(rule: Rule) -> None:
    page = " ".join(rule.page.split())
    assert "Common practice, no source." in page
    assert f"rules: {{{rule.code}:" in page
    assert "kept" in page
    assert "broken" in page


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.code)
def test_a_rule_is_a_file_of_its_own_named_after_its_code(rule: Rule) -> None:
    assert re.fullmatch("[a-z]+(-[a-z]+)*", rule.code)
    assert rule.check.__module__ == f"templater.rules.{rule.code.replace('-', '_')}"


def test_a_page_is_shown_under_its_code() -> None:
    shown = explain_rule("gap")
    assert shown.startswith("gap: Neighbouring pieces of a group")
    assert "\n\nWhy:\n    Closer than 2 in" in shown


def test_the_list_has_each_code_with_its_first_line() -> None:
    lines = list_rules().splitlines()
    assert len(lines) == 14 + len(CAUTIONS)
    assert lines[3] == (
        "gap                   Neighbouring pieces of a group stand close enough to be seen as one,"
        " and not closer."
    )


@pytest.mark.parametrize(
    ("code", "message"),
    [
        ("eyeline", "--explain: 'eyeline' is not the code of a rule (did you mean 'eye-line'?)"),
        ("colour", "--explain: 'colour' is not the code of a rule"),
    ],
)
def test_an_unknown_code(code: str, message: str) -> None:
    with pytest.raises(UsageError) as raised:
        explain_rule(code)
    (fault,) = raised.value.faults
    assert (fault.message, fault.hint) == (message, "'templater check --explain all' lists them")
    assert raised.value.exit_code is ExitCode.USAGE


def test_nothing_is_said_of_colour_or_taste() -> None:
    words = re.compile(r"\b(beautiful|ugly|tasteful|pretty|colou?r|red|blue|green)\b", re.IGNORECASE)
    allowed = {"balance": ["colour"]}  # says that it is never looked at
    found = {rule.code: words.findall(rule.page) for rule in RULES}
    assert {code: said for code, said in found.items() if said} == allowed
