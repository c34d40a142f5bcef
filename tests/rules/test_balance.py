from __future__ import annotations

import pytest

from templater.layout.model import Arrangement
from tests.rules.plans import box, findings_of, grouped, setting, told, wall, with_rules

CODE = "balance"


@pytest.mark.parametrize(
    ("sides", "verdict", "figure", "mend"),
    [
        # No more than 10 % of the width; common practice, no source.
        ((20, 20, 20), "kept", "0 % of its width", None),
        # 76 in wide, middle 38; (100 x 5 + 400 x 23 + 1600 x 56) / 2100 = 47.29: 9.29 in off,
        # 12.2 %; 7.6 in are allowed, so 1.69 in too far.
        (
            (10, 20, 40),
            "broken",
            "12 % of its width to the right",
            "bring the middle of its area left by 1 11/16 in (43 mm)",
        ),
        (
            (40, 20, 10),
            "broken",
            "12 % of its width to the left",
            "bring the middle of its area right by 1 11/16 in (43 mm)",
        ),
        # (100 x 5 + 1600 x 33 + 400 x 66) / 2100 = 37.95: 0.05 in off.
        ((10, 40, 20), "kept", "0 % of its width to the left", None),
    ],
)
def test_areas_on_both_sides(
    sides: tuple[int, ...], verdict: str, figure: str, mend: str | None
) -> None:
    parts, x = [], 50
    for letter, side in zip("ABC", sides, strict=True):
        parts.append((letter, box(x, 40, side, side)))
        x += side + 3
    (found,) = findings_of(wall(groups=[grouped("trio", parts)]), CODE)
    assert told(found) == ("trio", verdict, figure, mend)
    assert (found.other, found.band) == (None, "at most 10 %")


@pytest.mark.parametrize(("left", "verdict"), [(15, "kept"), (14, "broken")])
def test_a_tenth_of_the_width_is_still_balanced(left: float, verdict: str) -> None:
    # Squares of 10 in with their middles at 5, left + 5 and 95 in: (105 + left) / 3 is 40 in, a
    # tenth of 100 in off the middle, for left = 15.
    parts = [("A", box(0, 40, 10, 10)), ("B", box(left, 40, 10, 10)), ("C", box(90, 40, 10, 10))]
    plan = wall(groups=[grouped("trio", parts, arrange=Arrangement.PLACED)])
    assert findings_of(plan, CODE)[0].verdict.value == verdict


def test_a_band_of_ones_own() -> None:
    parts = [("A", box(0, 40, 10, 10)), ("B", box(14, 40, 10, 10)), ("C", box(90, 40, 10, 10))]
    plan = wall(groups=[grouped("trio", parts, arrange=Arrangement.PLACED)])
    (found,) = findings_of(with_rules(plan, setting(CODE, high=15.0)), CODE)
    assert (found.verdict.value, found.band) == ("kept", "at most 15 %")
