from __future__ import annotations

import pytest

from templater.layout.model import Arrangement
from templater.lengths import Unit
from tests.builders import inches
from tests.rules.plans import box, findings_of, grouped, hung, row, setting, told, wall, with_rules

CODE = "near-miss"


@pytest.mark.parametrize(
    ("off", "verdict", "figure", "mend"),
    [
        # More than 1/8 in and no more than 1/2 in off; common practice, no source.
        (0, "kept", "0 in out of line", None),
        (0.125, "kept", "1/8 in out of line", None),
        (0.25, "broken", "1/4 in out of line", "raise by 1/4 in (6 mm)"),
        (0.5, "broken", "1/2 in out of line", "raise by 1/2 in (13 mm)"),
        (0.5625, "kept", "9/16 in out of line", None),
        (-0.25, "broken", "1/4 in out of line", "lower by 1/4 in (6 mm)"),
    ],
)
def test_pieces_side_by_side(off: float, verdict: str, figure: str, mend: str | None) -> None:
    """Tops so far apart; bottoms and middles are far from one line."""
    low, high = hung("Low", box(20, 50, 10, 20)), hung("High", box(35, 60 + off, 10, 10))
    (found,) = findings_of(wall([low, high]), CODE)
    assert told(found) == ("Low", verdict, figure, mend)
    assert (found.other, found.band) == ("High", "at most 1/8 in, or over 1/2 in")


def test_pieces_one_above_the_other_are_held_against_upright_lines() -> None:
    # Left edges 1/4 in off, middles 2 1/4, right edges 4 1/4.
    parts = [("A", box(20, 60, 12, 8)), ("B", box(20.25, 48, 16, 8))]
    (found,) = findings_of(wall(groups=[grouped("pair", parts, arrange=Arrangement.COLUMN)]), CODE)
    assert told(found) == ("A", "broken", "1/4 in out of line", "move right by 1/4 in (6 mm)")


def test_one_line_is_enough() -> None:
    # Left edges in line; middles 1/4 in and right edges 1/2 in apart.
    parts = [("A", box(20, 60, 12, 8)), ("B", box(20, 48, 12.5, 8))]
    (found,) = findings_of(wall(groups=[grouped("pair", parts, arrange=Arrangement.COLUMN)]), CODE)
    assert told(found)[1:3] == ("kept", "0 in out of line")


def test_a_group_is_one_piece_beside_what_hangs_alone() -> None:
    bell = hung("Fog bell", box(95, 54.25, 12, 20))
    found = [
        each for each in findings_of(wall([bell], [row("trio", 50, 54, (3, 3))]), CODE) if each.mend
    ]
    assert [told(each) for each in found] == [
        ("Fog bell", "broken", "1/4 in out of line", "lower by 1/4 in (6 mm)")
    ]
    assert found[0].other == "trio"


def test_stairs_are_meant_to_be_out_of_line() -> None:
    parts = [("A", box(20, 50, 12, 12)), ("B", box(35, 50.25, 12, 12))]
    assert findings_of(wall(groups=[grouped("flight", parts, arrange=Arrangement.STAIR)]), CODE) == []


def test_what_is_not_near_is_not_compared() -> None:
    # 2 ft is as far as a neighbour hangs: 600 mm.
    far = [hung("A", box(20, 50, 10, 20)), hung("B", box(60, 50.25, 10, 20))]
    assert findings_of(wall(far), CODE) == []


def test_metric_words_agree_with_the_verdict() -> None:
    # 3.175 and 12.7 mm: 12.65 mm is a near-miss, and is not shown as 13.
    off = 12.65 / 25.4
    low, high = hung("Low", box(20, 50, 10, 20)), hung("High", box(35, 60 + off, 10, 10))
    (found,) = findings_of(wall([low, high], units=Unit.MILLIMETRE), CODE)
    assert told(found)[1:3] == ("broken", "12 mm out of line")
    assert found.band == "at most 3 mm, or over 12 mm"


def test_a_band_of_ones_own() -> None:
    low, high = hung("Low", box(20, 50, 10, 20)), hung("High", box(35, 60.75, 10, 10))
    plan = wall([low, high])
    assert findings_of(plan, CODE)[0].verdict.value == "kept"
    wide = with_rules(plan, setting(CODE, high=inches(1)))
    assert told(findings_of(wide, CODE)[0])[1:] == (
        "broken",
        "3/4 in out of line",
        "raise by 3/4 in (19 mm)",
    )
    nothing = with_rules(plan, setting(CODE, low=inches(2)))
    assert findings_of(nothing, CODE)[0].verdict.value == "kept"
