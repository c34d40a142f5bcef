from __future__ import annotations

import re
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templater.layout.model import Arrangement, Group
from templater.lengths import parse_length
from templater.rules.model import Finding, Verdict
from tests.builders import group, inches, layout, piece, plan_of, position
from tests.rules.plans import (
    box,
    findings_of,
    grouped,
    hung,
    obstacle,
    row,
    setting,
    told,
    wall,
    with_rules,
)

CODE = "group-as-one"
HIGH = position(eye_line=inches(200))
SIDES = st.integers(64, 160)  # of a frame, eighths of an inch


@pytest.mark.parametrize(
    ("gap", "expected"),
    [
        # At most 4 in, the widest gap of the gap rule; common practice, no source.
        (3, ("trio", "kept", "one piece of 42 in × 12 in", None)),  # 3 x 12 + 2 x 3
        (4, ("trio", "kept", "one piece of 44 in × 12 in", None)),
    ],
)
def test_a_group_that_holds_together_is_one_piece(
    gap: float, expected: tuple[str, str, str, str | None]
) -> None:
    (found,) = findings_of(wall(groups=[row("trio", 50, 54, (gap, gap))]), CODE)
    assert told(found) == expected
    assert (found.other, found.band) == (None, "gaps of at most 4 in")


def test_a_piece_that_hangs_apart_is_named_with_the_move_that_brings_it_back() -> None:
    (found,) = findings_of(wall(groups=[row("trio", 50, 54, (3, 10))]), CODE)
    assert told(found) == ("trio", "broken", "10 in apart", "C: move left by 6 in (152 mm)")
    assert found.other == "C"


def test_pieces_that_hang_apart_together_are_moved_together() -> None:
    (found,) = findings_of(wall(groups=[row("five", 20, 54, (3, 3, 9, 3))]), CODE)
    assert told(found) == ("five", "broken", "9 in apart", "D and 1 more: move left by 5 in (127 mm)")


def test_of_several_that_hang_apart_the_nearest_comes_first() -> None:
    # A and B hold together; C is 9 in from B, D 7 in from C.
    (found,) = findings_of(wall(groups=[row("four", 20, 54, (3, 9, 7))]), CODE)
    assert told(found) == (
        "four",
        "broken",
        "in 3 parts, the nearest 9 in apart",
        "C: move left by 5 in (127 mm); D: move left by 8 in (203 mm)",  # 5, and 7 - 4 more
    )


@pytest.mark.parametrize("gaps", [(10, 10), (10, 12, 5)])
def test_where_every_gap_is_too_wide_all_are_closed(gaps: tuple[float, ...]) -> None:
    (found,) = findings_of(wall(groups=[row("trio", 20, 54, gaps)]), CODE)
    assert found.mend == "close the gaps to 4 in (102 mm)"


def test_in_a_grid_what_is_small_in_its_cell_counts() -> None:
    # Cells of 12 in, 8 in apart; D is 10 in, in the middle of its cell: 9 in from its neighbours.
    # All others are 8 in apart. So that 9 in become 4, the gaps become 3.
    parts = [
        ("A", box(20, 60, 12, 12)),
        ("B", box(40, 60, 12, 12)),
        ("C", box(20, 40, 12, 12)),
        ("D", box(41, 41, 10, 10)),
    ]
    four = grouped("four", parts, arrange=Arrangement.GRID)
    (found,) = findings_of(wall(groups=[four]), CODE)
    assert found.mend == "close the gaps to 3 in (76 mm)"


def test_a_part_is_not_brought_onto_something_else() -> None:
    # B would come to 4 in from A, over the clock that hangs between the two, below their middles.
    parts = [("A", box(20, 50, 20, 20)), ("B", box(70, 50, 20, 20))]
    clock = obstacle("clock", box(50, 52, 8, 6))
    pair = grouped("pair", parts, arrange=Arrangement.PLACED)
    (found,) = findings_of(wall(groups=[pair], obstacles=[clock]), CODE)
    assert found.mend == "hang its parts no more than 4 in (102 mm) apart"


@pytest.mark.parametrize("arrange", [Arrangement.ROW, Arrangement.COLUMN, Arrangement.GRID])
@settings(max_examples=40, deadline=None, derandomize=True)
@given(st.lists(st.tuples(SIDES, SIDES), min_size=3, max_size=6), st.integers(66, 200), st.booleans())
def test_closing_the_gaps_in_the_layout_mends(
    arrange: Arrangement, sizes: list[tuple[int, int]], sixteenths: int, is_spread: bool
) -> None:
    pieces = [
        piece(letter, inches(width / 8), inches(height / 8))
        for letter, (width, height) in zip("ABCDEF", sizes, strict=False)
    ]
    names, gap = [each.name for each in pieces], inches(sixteenths / 16)
    before = group("all", names, arrange=arrange, gap=gap, place=HIGH)
    before = replace(before, columns=2 if arrange is Arrangement.GRID else None)
    if is_spread and arrange is not Arrangement.GRID:
        along = 1 if arrange is Arrangement.COLUMN else 0
        length = sum(each.size[along] for each in pieces) + (len(pieces) + 1) * gap
        before = replace(before, spread_mm=length)

    def judge(settled: Group) -> Finding:
        plan = plan_of(layout(pieces, groups=[settled], width=inches(400), height=inches(400)))
        return findings_of(plan, CODE)[0]

    found = judge(before)
    assert found.verdict is Verdict.BROKEN
    assert found.mend is not None
    if shown := re.fullmatch(r"close the gaps to (.+) \(.+\)", found.mend):
        after = replace(before, gap_mm=float(parse_length(shown.group(1))), spread_mm=None)
        assert judge(after).verdict is Verdict.KEPT
    else:
        assert arrange is Arrangement.GRID  # its cells leave more than a usual gap


def test_across_and_up_are_both_closed() -> None:
    # B starts 10 in right of A and 7 in above it: 6 in and 3 in too far.
    parts = [("A", box(50, 40, 20, 20)), ("B", box(80, 67, 8, 8))]
    (found,) = findings_of(wall(groups=[grouped("pair", parts, arrange=Arrangement.PLACED)]), CODE)
    assert told(found)[2:] == ("10 in apart", "B: move left by 6 in (152 mm) and lower by 3 in (76 mm)")


def test_what_a_group_hangs_around_holds_it_together() -> None:
    parts = [("A", box(30, 50, 16, 20)), ("B", box(82, 50, 16, 20))]  # 3 in from the window each
    plan = wall(
        groups=[grouped("pair", parts)], obstacles=[obstacle("sash window", box(49, 40, 30, 40))]
    )
    assert [told(found)[1] for found in findings_of(plan, CODE)] == ["kept"]
    assert findings_of(plan, "gap") == []  # and the gap is not measured across the window


def test_a_thing_below_does_not_hold_pieces_together() -> None:
    parts = [("A", box(30, 50, 16, 20)), ("B", box(66, 58, 16, 12))]  # 20 in apart
    plan = wall(groups=[grouped("pair", parts)], obstacles=[obstacle("thermostat", box(72, 50, 3, 4))])
    assert [told(found)[1:3] for found in findings_of(plan, CODE)] == [("broken", "20 in apart")]
    assert [told(found)[1:3] for found in findings_of(plan, "gap")] == [("broken", "20 in")]


def test_a_ledge_holds_together_what_stands_on_it() -> None:
    parts = [("A", box(30, 56, 10, 12)), ("B", box(60, 56, 10, 12))]
    ledge = hung("Ledge", box(26, 54, 48, 2), group="shelf")
    shelf, pieces = grouped("shelf", parts, arrange=Arrangement.LEDGE)
    whole = replace(shelf, pieces=(*shelf.pieces, "Ledge"), box=box(26, 54, 48, 14))
    plan = wall(groups=[(whole, [*pieces, ledge])])
    assert [told(each)[1] for each in findings_of(plan, CODE)] == ["kept"]
    assert [told(each)[1:3] for each in findings_of(plan, "gap")] == [("broken", "20 in")]


def test_the_gap_rule_sets_the_band() -> None:
    plan = wall(groups=[row("trio", 50, 54, (3, 10))])
    (found,) = findings_of(with_rules(plan, setting("gap", high=inches(10))), CODE)
    assert (found.verdict.value, found.band) == ("kept", "gaps of at most 10 in")


def test_a_piece_alone_is_no_group() -> None:
    assert findings_of(wall([hung("A", box(50, 50, 12, 12))]), CODE) == []
