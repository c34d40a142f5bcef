from __future__ import annotations

import pytest

from tests.rules.plans import box, findings_of, grouped, hung, told, wall

CODE = "near-ceiling"


@pytest.mark.parametrize(
    ("bottom", "verdict", "figure", "mend"),
    [
        # A wall of 96 in, a piece of 20 in: at least 6 in; common practice, no source.
        (50, "kept", "26 in", None),
        (70, "kept", "6 in", None),
        (72, "broken", "4 in", "lower by 2 in (51 mm)"),
    ],
)
def test_a_level_ceiling(bottom: float, verdict: str, figure: str, mend: str | None) -> None:
    (found,) = findings_of(wall([hung("A", box(50, bottom, 16, 20))]), CODE)
    assert told(found) == ("A", verdict, figure, mend)
    assert (found.other, found.band) == (None, "6 in or more")


def test_a_sloping_ceiling_is_lowest_where_the_piece_is() -> None:
    # From 96 in at 100 in down to 46 in at 200 in: over 110 to 130 in it is 81 in at the lowest.
    slope = [(0, 96), (100, 96), (200, 46)]
    (found,) = findings_of(wall([hung("A", box(110, 60, 20, 18))], ceiling=slope), CODE)
    assert told(found) == ("A", "broken", "3 in", "lower by 3 in (76 mm)")


def test_a_group_under_a_slope_is_measured_piece_by_piece() -> None:
    # 86 in over A's right end at 120, 66 in over B's at 160; each 8 in below. The box is not.
    slope = [(0, 96), (100, 96), (200, 46)]
    parts = [("A", box(100, 66, 20, 12)), ("B", box(140, 46, 20, 12))]
    (found,) = findings_of(wall(groups=[grouped("pair", parts)], ceiling=slope), CODE)
    assert told(found) == ("pair", "kept", "8 in", None)


def test_what_stands_on_the_floor_can_only_be_shortened() -> None:
    (found,) = findings_of(wall([hung("Mirror", box(50, 1, 30, 91))]), CODE)
    assert told(found) == ("Mirror", "broken", "4 in", "shorten by 2 in (51 mm)")
