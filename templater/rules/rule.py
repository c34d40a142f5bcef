"""What every rule is made of: its code, its check and its page of documentation."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeAlias

from templater.placement.model import Plan
from templater.rules.model import Finding
from templater.rules.subject import Subject

Check: TypeAlias = Callable[[Subject, Plan], tuple[Finding, ...]]
"""A rule held against one subject; no finding where the rule has nothing to say of it."""


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule of the trade; ``page`` is its module's docstring.

    ``judges_insides``: whether it is also held against a group inside a group, whose own place on
    the wall is nothing to judge.
    """

    code: str
    check: Check
    page: str
    judges_insides: bool = False
