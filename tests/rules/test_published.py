"""Figures that museums and gallery guides give, held against the rules."""

from __future__ import annotations

import pytest

from templater.layout.model import Arrangement
from templater.placement.model import PlacedFurniture
from tests.builders import inches
from tests.rules.plans import box, findings_of, grouped, hung, row, setting, told, wall, with_rules


def test_a_midline_of_sixty_inches() -> None:
    # "60 in midline", Hilliard Art Museum's blog, "How does the artwork get on the wall?"
    (found,) = findings_of(wall([hung("A", box(50, 52, 20, 16))]), "eye-line")
    assert told(found) == ("A", "kept", "60 in", None)


@pytest.mark.parametrize(
    ("centre", "verdict"),
    [
        # 57 in: Apartment Therapy, "How to hang your artwork properly"; 58 in: Outdoor
        # Photographer, "The art of exhibition"; 66 in: US Navy training manual 14065, page 4-4.
        (57, "broken"),
        (58, "broken"),
        (66, "broken"),
    ],
)
def test_other_houses_have_other_eye_lines_and_bands(centre: float, verdict: str) -> None:
    plan = wall([hung("A", box(50, centre - 8, 20, 16))])
    assert findings_of(plan, "eye-line")[0].verdict.value == verdict
    wide = with_rules(plan, setting("eye-line", inches(57), inches(66)))
    assert findings_of(wide, "eye-line")[0].verdict.value == "kept"


@pytest.mark.parametrize(
    ("gap", "usual", "theirs"),
    [
        # 3 to 6 in between pieces, and at least 8 in above furniture: Jitka Vesela, "Displaying
        # your painting", quoting a printed guide.
        (2, "kept", "broken"),
        (3, "kept", "kept"),
        (4, "kept", "kept"),
        (6, "broken", "kept"),
        (7, "broken", "broken"),
    ],
)
def test_a_guide_with_wider_gaps(gap: float, usual: str, theirs: str) -> None:
    plan = wall(groups=[row("pair", 50, 54, (gap,))])
    assert findings_of(plan, "gap")[0].verdict.value == usual
    set_so = with_rules(plan, setting("gap", inches(3), inches(6)))
    assert findings_of(set_so, "gap")[0].verdict.value == theirs


def test_the_clearance_of_that_guide_is_the_most_of_the_usual() -> None:
    bench = PlacedFurniture("boot bench", box(40, 0, 80, 34))
    plan = wall([hung("A", box(55, 42, 50, 20), over=bench)], furniture=[bench])
    assert told(findings_of(plan, "clearance")[0]) == ("A", "kept", "8 in", None)


def test_three_frames_spread_over_a_wall_of_a_hundred_inches() -> None:
    # Even spacing, the usual gallery sum: (100 - 3 x 20) / (3 + 1) = 10 in; left edges 10, 40, 70.
    parts = [(name, box(left, 50, 20, 20)) for name, left in (("A", 10), ("B", 40), ("C", 70))]
    plan = wall(groups=[grouped("trio", parts)], width=100)
    assert {told(each)[1:3] for each in findings_of(plan, "gap")} == {("broken", "10 in")}
    assert told(findings_of(plan, "near-corner")[0])[1:3] == ("kept", "10 in")
    spread = with_rules(plan, setting("gap", inches(2), inches(10)))
    for rule in ("gap", "uneven-gaps", "group-as-one", "balance"):
        assert {each.verdict.value for each in findings_of(spread, rule)} == {"kept"}, rule


def test_gaps_along_a_flight_of_stairs() -> None:
    # Rise 7 3/4 in, run 10 in (the steepest of the International Residential Code): the slope is
    # (100 + 60.0625) ** 0.5 = 12.6516 in a step. Frames of 12 in touch when 12 in apart across,
    # 15.1819 in along the slope; 3 in more is 18.1819 in: 14.3713 in across and 11.1377 in up.
    parts = [("A", box(20, 40, 12, 12)), ("B", box(34.3713, 51.1377, 12, 12))]
    plan = wall(groups=[grouped("flight", parts, arrange=Arrangement.STAIR)])
    assert told(findings_of(plan, "gap")[0]) == ("A", "kept", "3 in along the stairs", None)
    assert findings_of(plan, "eye-line") == []  # it rises with the steps


def test_a_pair_over_a_headboard() -> None:
    # Two thirds of the furniture, 6 to 8 in above it, 2 to 4 in between, never past its ends;
    # common practice, no source. 2 x 18 + 4 = 40 in of 60 in.
    bed = PlacedFurniture("headboard", box(40, 0, 60, 48))
    parts = [("Ebb", box(50, 55, 18, 24)), ("Flow", box(72, 55, 18, 24))]
    plan = wall(groups=[grouped("tides", parts, over=bed)], furniture=[bed])
    shown = {
        rule: told(findings_of(plan, rule)[0])[1:3]
        for rule in ("width-over-furniture", "past-the-ends", "clearance", "gap", "group-as-one")
    }
    assert shown == {
        "width-over-furniture": ("kept", "67 % of 60 in"),
        "past-the-ends": ("kept", "10 in inside"),
        "clearance": ("kept", "7 in"),
        "gap": ("kept", "4 in"),
        "group-as-one": ("kept", "one piece of 40 in × 24 in"),
    }
