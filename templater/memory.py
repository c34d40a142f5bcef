"""Remembers what was worked out last, for what is asked again and again of the same things."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import Any, TypeVar

Result = TypeVar("Result")


def remember_last(function: Callable[..., Result]) -> Callable[..., Result]:
    """A pure function that gives its last result again if it is asked of the very same objects.

    Nothing is compared or hashed, so that large things cost nothing; positional arguments only.
    """
    last: tuple[tuple[Any, ...], Result] | None = None

    @wraps(function)
    def ask(*asked: Any) -> Result:
        nonlocal last
        known = last
        if known is None or any(one is not other for one, other in zip(known[0], asked, strict=True)):
            known = last = asked, function(*asked)
        return known[1]

    return ask
