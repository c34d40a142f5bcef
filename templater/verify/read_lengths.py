"""Reads lengths back from words, as people are told them: ``23 5/8 in (600 mm)``."""

from __future__ import annotations

import re

_ONE = r"[+−]?(?:\d+ )?\d+(?:/[1-9]\d*)? (?:in|mm)"
LENGTH = rf"{_ONE}(?: \({_ONE}\))?"
"""A length in words, in one system of units or in both."""

_PART = re.compile(r"([+−]?)((?:\d+ )?\d+(?:/[1-9]\d*)?) (in|mm)")
_UNIT_MM = {"mm": 1.0, "in": 25.4}
_ROUNDED_MM = {"mm": 0.5, "in": 25.4 / 32}
"""Words tell whole millimetres and sixteenths of an inch: half of that is lost."""

_TRACE_MM = 1e-6


def read_lengths(text: str) -> list[tuple[float, float]]:
    """Every length in a text, mm, and how far it may be rounded."""
    return [
        ((-1 if sign == "−" else 1) * _read_number(number) * _UNIT_MM[unit], _ROUNDED_MM[unit])
        for sign, number, unit in _PART.findall(text)
    ]


def tells(text: str, length_mm: float) -> bool:
    """Whether every length in a text is this one, as far as words tell it; there must be one."""
    found = read_lengths(text)
    return bool(found) and all(abs(told - length_mm) <= rounded + _TRACE_MM for told, rounded in found)


def plain(text: str) -> str:
    """A text with plain spaces."""
    return " ".join(text.split())


def _read_number(text: str) -> float:
    *whole, last = text.split()
    top, _, bottom = last.partition("/")
    return sum(map(int, whole)) + int(top) / int(bottom or 1)
