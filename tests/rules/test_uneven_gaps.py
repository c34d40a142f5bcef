from __future__ import annotations

import pytest

from templater.geometry import Box
from templater.layout.model import Arrangement
from templater.lengths import Unit
from tests.builders import inches
from tests.rules.plans import box, findings_of, grouped, row, setting, told, wall, with_rules

CODE = "uneven-gaps"


@pytest.mark.parametrize(
    ("gaps", "verdict", "figure", "mend"),
    [
        # No more than 1/4 in between the largest and the smallest; common practice, no source.
        ((3, 3, 3), "kept", "differ by 0 in", None),
        ((3, 3.25, 3), "kept", "differ by 1/4 in", None),
        ((3, 3, 3.5), "broken", "differ by 1/2 in", "make every gap 3 in (76 mm)"),
        ((2, 4, 4), "broken", "differ by 2 in", "make every gap 4 in (102 mm)"),
    ],
)
def test_gaps_of_a_row(gaps: tuple[float, ...], verdict: str, figure: str, mend: str | None) -> None:
    (found,) = findings_of(wall(groups=[row("four", 50, 54, gaps)]), CODE)
    assert told(found) == ("four", verdict, figure, mend)
    assert (found.other, found.band) == (None, "at most 1/4 in")


def test_the_mend_is_within_the_gaps_asked_for_in_metric_too() -> None:
    # 2 in is 50.8 mm; the nearest whole mm that is not less is 51.
    plan = wall(groups=[row("trio", 50, 54, (2, 3))], units=Unit.CENTIMETRE)
    assert findings_of(plan, CODE)[0].mend == "make every gap 51 mm (2 in)"


def test_one_gap_or_one_that_breaks_the_gap_rule_is_left_to_it() -> None:
    assert findings_of(wall(groups=[row("pair", 50, 54, (3,))]), CODE) == []
    assert findings_of(wall(groups=[row("trio", 50, 54, (3, 6))]), CODE) == []


def grid(row_gap: float) -> list[tuple[str, Box]]:
    """Two rows of three; the middle column's pieces are narrow and stand in the middle of theirs."""
    parts = []
    for row_number, y in enumerate((40 + 12 + row_gap, 40)):
        for column, (x, side) in enumerate(((20, 12), (37, 8), (50, 12))):
            parts.append((f"{row_number}{column}", box(x, y + (12 - side) / 2, side, side)))
    return parts


@pytest.mark.parametrize(
    ("row_gap", "expected"),
    [
        # Columns at 20-32, 37-45 and 50-62: gaps of 5 and 5 in.
        (5, ("six", "kept", "differ by 0 in", None)),
        (4, ("six", "broken", "differ by 1 in", "make every gap 5 in (127 mm)")),
    ],
)
def test_a_grid_is_measured_by_its_columns_and_rows(
    row_gap: float, expected: tuple[str, str, str, str | None]
) -> None:
    plan = wall(groups=[grouped("six", grid(row_gap), arrange=Arrangement.GRID)])
    (found,) = findings_of(with_rules(plan, setting("gap", high=inches(6))), CODE)
    assert told(found) == expected


def test_a_band_of_ones_own() -> None:
    plan = wall(groups=[row("trio", 50, 54, (3, 3.5))])
    (found,) = findings_of(with_rules(plan, setting(CODE, high=inches(0.5))), CODE)
    assert (found.verdict.value, found.band) == ("kept", "at most 1/2 in")
