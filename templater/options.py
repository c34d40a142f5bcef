"""Values of the command line's options, read as people write them."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from templater.errors import Fault, UsageError
from templater.lengths import LengthError, MissingUnitError, parse_length

MOST_SHORT_MM = 50.0


def read_option(name: str, text: str | None, parse: Callable[[str], Any]) -> Any:
    """What an option's text means; None where it is not given. Raises UsageError."""
    if text is None:
        return None
    try:
        return parse(text)
    except LengthError as error:
        raise UsageError([Fault(f"{name}: {error}", error.hint)]) from error


def parse_short(text: str) -> float:
    """A margin or a lap, mm, if it leaves something of the paper. Raises LengthError."""
    hint = "give for example 10 mm or 3/8 in"
    try:
        length_mm = float(parse_length(text))
    except MissingUnitError as error:  # a layout's 'units:' means nothing here
        raise LengthError(str(error), hint) from error
    if not 0 <= length_mm <= MOST_SHORT_MM:
        raise LengthError(f"the length must be from 0 to {MOST_SHORT_MM:.0f} mm", hint)
    return length_mm
