from __future__ import annotations

import pytest

from templater.placement.model import PlacedFurniture
from tests.builders import inches
from tests.rules.plans import box, findings_of, hung, setting, told, wall, with_rules

CODE = "past-the-ends"
BENCH = PlacedFurniture("boot bench", box(40, 0, 80, 34))  # 40 to 120 in


@pytest.mark.parametrize(
    ("left", "width", "figure", "mend"),
    [
        # Never past the ends; common practice, no source.
        (38, 60, "2 in past", "move right by 2 in (51 mm)"),
        (70, 60, "10 in past", "move left by 10 in (254 mm)"),
        (37, 86, "3 in past", "narrow by 6 in (152 mm), to 80 in"),  # centred: 37 to 123 in
        (30, 86, "10 in past", "narrow by 6 in (152 mm), to 80 in, in the middle over it"),
    ],
)
def test_off_its_middle_it_is_moved_and_narrowed_only_if_too_wide(
    left: float, width: float, figure: str, mend: str
) -> None:
    plan = wall([hung("A", box(left, 41, width, 20), over=BENCH)], furniture=[BENCH])
    assert told(findings_of(plan, CODE)[0]) == ("A", "broken", figure, mend)


def test_a_band_of_ones_own() -> None:
    # Centred, 4 in inside on both sides: 6 in are asked for, so 2 in less on each.
    plan = wall([hung("A", box(44, 41, 72, 20), over=BENCH)], furniture=[BENCH])
    (found,) = findings_of(with_rules(plan, setting(CODE, inches(6))), CODE)
    assert told(found) == ("A", "broken", "4 in inside", "narrow by 4 in (102 mm), to 68 in")
    assert found.band == "6 in or more inside"
