"""Shows the pages on which each rule says what it checks, and why."""

from __future__ import annotations

from templater.errors import Fault, UsageError
from templater.quoting import find_nearest, quote, suggest
from templater.rules.check import RULES

HEADINGS = ("What it checks", "Why", "Example", "What to write instead")
"""What every page says, in this order, after its first line."""


def list_rules() -> str:
    """Every code with the first line of its page."""
    width = max(len(rule.code) for rule in RULES)
    return "\n".join(f"{rule.code:<{width}}  {rule.page.splitlines()[0]}" for rule in RULES)


def explain_rule(code: str) -> str:
    """A rule's page under its code. Raises UsageError for a code that there is not."""
    for rule in RULES:
        if rule.code == code:
            return f"{code}: {rule.page.strip()}"
    nearest = find_nearest(code, [rule.code for rule in RULES])
    message = f"--explain: {quote(code)} is not the code of a rule{suggest(nearest)}"
    raise UsageError([Fault(message, "'templater check --explain all' lists them")])
