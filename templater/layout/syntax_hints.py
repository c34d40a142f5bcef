"""What mends a text that is no YAML, told by the line at which its reader stopped."""

from __future__ import annotations

import re

_SYNTAX = "check colons, indents and brackets here and above; quote a text with ': ' or ' #' in it"
_TAB = "indent with spaces instead of tabs"
_INCH_MARK = (
    "an inch mark ends a text in double quotes: write for example 2 in, or '2\"' in single quotes"
)

_ENDED_BY_INCHES = re.compile(r'"[^"]*\d" *[^\s,\]}#:]')
"""A text in double quotes that ends after a digit, and something that cannot follow it."""


def hint_at(text: str, index: int | None) -> str:
    """What to do where the reader stopped at a character of a text; None is its end."""
    if index is None:
        return _SYNTAX
    if text[index : index + 1] == "\t":
        return _TAB
    start = text.rfind("\n", 0, index) + 1
    line, _, _ = text[start:].partition("\n")
    return _INCH_MARK if _ENDED_BY_INCHES.search(line) else _SYNTAX
