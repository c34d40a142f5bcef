"""Shows the pages on which each rule and each caution says what it checks, and why."""

from __future__ import annotations

from templater.errors import Fault, UsageError
from templater.quoting import find_nearest, quote, suggest
from templater.rules.cautions.check import CAUTIONS
from templater.rules.check import RULES

HEADINGS = ("What it checks", "Why", "Example", "What to write instead")
"""What every page says, in this order, after its first line."""


_PAGES = {
    **{rule.code: rule.page for rule in RULES},
    **{caution.code: caution.page for caution in CAUTIONS},
}


def list_rules() -> str:
    """Every code, the rules' before the cautions', with the first line of its page."""
    width = max(map(len, _PAGES))
    return "\n".join(f"{code:<{width}}  {page.splitlines()[0]}" for code, page in _PAGES.items())


def explain_rule(code: str) -> str:
    """The page under a code. Raises UsageError for a code that there is not."""
    if code in _PAGES:
        return f"{code}: {_PAGES[code].strip()}"
    nearest = find_nearest(code, _PAGES)
    message = f"--explain: {quote(code)} is not the code of a rule{suggest(nearest)}"
    raise UsageError([Fault(message, "'templater check --explain all' lists them")])
