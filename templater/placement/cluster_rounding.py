"""Sums and logarithms that every machine, and every version of Python, rounds alike."""

from __future__ import annotations

from collections.abc import Iterable
from math import frexp

_LOG_2 = 0.6931471805599453
_ODD = tuple(1 / odd for odd in range(17, 0, -2))


def add_up(numbers: Iterable[float]) -> float:
    """The sum, rounded after each number; from one version of Python to another ``sum`` is not."""
    total = 0.0
    for number in numbers:
        total += number
    return total


def find_logarithm(ratio: float) -> float:
    """The natural logarithm, to some 15 digits.

    By its series 2 artanh((x - 1) / (x + 1)) from 3/4 to 3/2, with nothing but sums, products and
    quotients: it is the same everywhere, while machines' own logarithms differ in the last digit.
    """
    rest, power = frexp(ratio)
    if rest < 0.75:
        rest, power = rest * 2, power - 1
    part = (rest - 1) / (rest + 1)
    square = part * part
    series = 0.0
    for factor in _ODD:
        series = series * square + factor
    return power * _LOG_2 + 2 * part * series
