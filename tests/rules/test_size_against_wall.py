from __future__ import annotations

import pytest

from templater.placement.model import PlacedFurniture
from tests.rules.plans import box, findings_of, hung, row, told, wall

CODE = "size-against-wall"


@pytest.mark.parametrize(
    ("width", "verdict", "figure", "mend"),
    [
        # A bare wall of 120 in: 25 % is 30 in, 75 % is 90 in; common practice, no source.
        (48, "kept", "40 % of 120 in", None),
        (30, "kept", "25 % of 120 in", None),
        (90, "kept", "75 % of 120 in", None),
        (20, "broken", "17 % of 120 in", "widen by 10 in (254 mm), to 30 in"),  # 16.7 %
        (100, "broken", "83 % of 120 in", "narrow by 10 in (254 mm), to 90 in"),  # 83.3 %
    ],
)
def test_alone_on_a_bare_wall(width: float, verdict: str, figure: str, mend: str | None) -> None:
    (found,) = findings_of(wall([hung("A", box(10, 50, width, 20))], width=120), CODE)
    assert told(found) == ("A", verdict, figure, mend)
    assert (found.other, found.band) == (None, "25–75 %")


def test_in_company_a_piece_may_be_small() -> None:
    small = hung("A", box(10, 50, 12, 12))
    bench = PlacedFurniture("boot bench", box(40, 0, 60, 34))
    for plan in (
        wall([small, hung("B", box(60, 50, 12, 12))], width=120),
        wall([small], width=120, furniture=[bench]),
    ):
        assert {(found.verdict.value, found.band) for found in findings_of(plan, CODE)} == {
            ("kept", "at most 75 %")
        }


def test_a_group_counts_as_one_piece() -> None:
    (found,) = findings_of(wall(groups=[row("trio", 20, 50, (3, 3))], width=120), CODE)
    assert told(found) == ("trio", "kept", "35 % of 120 in", None)  # 42 in


def test_furniture_sets_a_width_of_its_own() -> None:
    bench = PlacedFurniture("boot bench", box(40, 0, 60, 34))
    over = hung("A", box(60, 41, 12, 12), over=bench)
    assert findings_of(wall([over], width=120, furniture=[bench]), CODE) == []
