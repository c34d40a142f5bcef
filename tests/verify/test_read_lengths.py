"""Lengths that people are told, read back from words."""

from __future__ import annotations

import pytest

from templater.verify.read_lengths import read_lengths, tells


def test_lengths_are_read_from_words() -> None:
    # 23 5/8 in are 23.625 x 25.4 = 600.075 mm; a sixteenth of an inch is 1.5875 mm, half of it 0.79375.
    assert read_lengths("23 5/8 in (600 mm)") == [pytest.approx((600.075, 0.79375)), (600.0, 0.5)]
    assert read_lengths("−1/2 in, +3 mm") == [pytest.approx((-12.7, 0.79375)), (3.0, 0.5)]


@pytest.mark.parametrize(
    ("text", "length", "is_told"),
    [
        ("600 mm", 600.5, True),
        ("600 mm", 600.51, False),
        ("600 mm", 599.5, True),
        ("600 mm", 599.49, False),
        ("1 in", 26.19, True),
        ("1 in", 26.2, False),
        ("1 in (26 mm)", 25.4, False),
        ("1 in (25 mm)", 25.4, True),
        ("none", 0.0, False),
    ],
)
def test_which_lengths_words_tell(text: str, length: float, is_told: bool) -> None:
    assert tells(text, length) is is_told
