"""Numbers within what floats lose, as a part of what a test compares with."""

from __future__ import annotations

from typing import TypeVar, cast

import pytest

Value = TypeVar("Value")


def near(value: Value) -> Value:
    """What is equal to the value and to all that differs from it by a trace."""
    return cast(Value, pytest.approx(value))
