from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templater.errors import LayoutError, UsageError
from templater.layout.model import Arrangement
from templater.search.model import Proposal
from tests.search.walls import INCH, settle, wall_text

OVER = "above: bench"
POOL = "choose: {from: [A, B, C, D, E, F], count: any}"


def _gap(proposal: Proposal) -> float:
    return proposal.group.gap_mm / INCH


def test_a_wall_with_nothing_open_is_settled_already() -> None:
    assert (
        settle(wall_text(["16 x 20"] * 3, f"name: bench set, pieces: [A, B, C], arrange: row, {OVER}"))
        == ()
    )


def test_an_open_gap_brings_the_row_nearest_to_two_thirds_of_the_bench() -> None:
    # Two thirds of 80 in are 53 1/3; 48 + 2 gaps: with 2 3/4 in 53 1/2, with 2 1/2 in 53.
    (found,) = settle(
        wall_text(["16 x 20"] * 3, f"name: bench set, pieces: [A, B, C], arrange: row, gap: any, {OVER}")
    )
    best = found.proposals[0]
    assert _gap(best) == pytest.approx(2.75)
    assert best.figures.width_mm == pytest.approx(53.5 * INCH)
    assert best.figures.clearance_mm == pytest.approx(7 * INCH)
    assert best.figures.middle_mm == pytest.approx((34 + 7 + 10) * INCH)
    assert best.broken == ()
    # Clearly different: half an inch apart at least, of those that are left the nearest.
    assert [_gap(each) for each in found.proposals] == pytest.approx([2.75, 2.25, 3.25])


def test_a_metric_wall_is_tried_by_fives() -> None:
    # Two thirds of 2000 mm are 1333 1/3; 1200 + 2 gaps: with 65 mm 1330, with 70 mm 1340.
    text = wall_text(
        ["400 x 500"] * 3,
        f"name: bench set, pieces: [A, B, C], arrange: row, gap: any, {OVER}",
        units="mm",
        furniture="2000 x 850",
    )
    assert settle(text)[0].choice.group.gap_mm == 65.0


def test_without_furniture_the_gap_is_three_inches() -> None:
    text = wall_text(
        ["16 x 20"] * 3, "name: bench set, pieces: [A, B, C], arrange: row, gap: any", furniture=""
    )
    assert _gap(settle(text)[0].choice) == pytest.approx(3)


def test_the_best_row_of_a_pool_is_the_nearest_of_all() -> None:
    # All of one height, so that widths alone decide; two thirds of 80 in, 53 1/3 in.
    widths = [10, 13, 17, 21, 25, 30]
    text = wall_text(
        [f"{width} x 20" for width in widths], f"name: bench set, {POOL}, arrange: row, gap: any, {OVER}"
    )
    quarters = [quarter / 4 for quarter in range(8, 17)]
    nearest = min(
        abs(sum(chosen) + (count - 1) * gap - 160 / 3)
        for count in range(1, 7)
        for chosen in combinations(widths, count)
        for gap in quarters
    )
    best = settle(text)[0].choice
    assert best.broken == ()
    assert abs(best.figures.width_mm / INCH - 160 / 3) == pytest.approx(nearest)


@settings(max_examples=15, deadline=None)
@given(
    widths=st.lists(st.integers(6, 40), min_size=2, max_size=7, unique=True),
    bench=st.integers(60, 110),
    count=st.integers(1, 3),
)
def test_no_row_of_so_many_is_nearer_than_the_one_found(
    widths: list[int], bench: int, count: int
) -> None:
    count = min(count, len(widths))
    names = ", ".join("ABCDEFG"[: len(widths)])
    off = "balance: off, near-miss: off, past-the-ends: off, width-over-furniture: off"
    text = wall_text(
        [f"{width} x 20" for width in widths],
        f"name: bench set, choose: {{from: [{names}], count: {count}}}, arrange: row, gap: any, {OVER}",
        furniture=f"{bench} x 34",
        more=f"rules: {{{off}, near-corner: off, size-against-wall: off}}\n",
    )
    nearest = min(
        abs(sum(chosen) + (count - 1) * quarter / 4 - bench * 2 / 3)
        for chosen in combinations(widths, count)
        for quarter in range(8, 17)
    )
    best = settle(text)[0].choice
    assert len(best.group.members) == count
    assert abs(best.figures.width_mm / INCH - bench * 2 / 3) == pytest.approx(nearest, abs=1e-5)


def test_an_open_arrangement_is_a_row_where_a_row_alone_keeps_the_rules() -> None:
    # A column is 16 in, 20 % of 80 in; a row of three with 3 in is 54 in, 67.5 %.
    (found,) = settle(
        wall_text(["16 x 20"] * 3, f"name: bench set, pieces: [A, B, C], arrange: any, {OVER}")
    )
    best = found.choice
    assert (best.group.arrange, best.broken) == (Arrangement.ROW, ())
    assert found.advice is None
    assert all(each.group.arrange is not Arrangement.COLUMN for each in found.proposals)


def test_grids_of_whole_rows_are_among_the_ways() -> None:
    # Six of 16 x 12 in: in 3 columns 54 in over a bench of 80 in; a row would be 111 in, past its ends.
    text = wall_text(
        ["16 x 12"] * 6, f"name: bench set, pieces: [A, B, C, D, E, F], arrange: any, {OVER}"
    )
    best = settle(text)[0].choice
    assert best.composition in ((Arrangement.GRID, 3), (Arrangement.CLUSTER, None))
    assert best.figures.width_mm == pytest.approx(54 * INCH)
    assert best.broken == ()


def test_the_proposals_are_clearly_different() -> None:
    text = wall_text(
        ["16 x 12"] * 6, f"name: bench set, pieces: [A, B, C, D, E, F], arrange: any, {OVER}"
    )
    proposals = settle(text)[0].proposals
    assert len({each.composition for each in proposals}) == len(proposals) == 3


def test_the_same_layout_gives_the_same_proposals() -> None:
    text = wall_text(
        ["16 x 20", "11 x 14", "20 x 16", "8 x 10", "24 x 18", "12 x 12"],
        f"name: bench set, {POOL}, arrange: any, gap: any, {OVER}",
    )
    assert settle(text) == settle(text)


# --- what is missing ------------------------------------------------------------------------------


def test_too_small_a_pool_is_told_what_is_missing() -> None:
    # The nearest row, two of 16 in and 4 in between, is 36 in. With another gap of 4 in there
    # is room for 53 1/3 - 40 = 13 1/3 in; 36 in are two thirds of 54 in.
    text = wall_text(
        ["16 x 20"] * 2,
        f"name: bench set, choose: {{from: [A, B], count: any}}, arrange: row, gap: any, {OVER}",
    )
    assert settle(text)[0].advice == (
        "no way to hang 'bench set' suits the width of 'bench': a piece 13 5/16 in (339 mm) wide is"
        " missing in a row with 'A' and 'B', gap 4 in (102 mm); or the first way would suit"
        " furniture 54 in (1372 mm) wide"
    )


def test_a_fixed_number_lacks_a_wider_piece_in_place_of_the_narrowest() -> None:
    # 10 + 4 + 16 = 30 in; beside the 16 in and a gap of 4 in there is room for 33 1/3 in; 30 x 3/2 = 45.
    text = wall_text(
        ["16 x 20", "10 x 20"],
        f"name: bench set, choose: {{from: [A, B], count: 2}}, arrange: row, gap: any, {OVER}",
    )
    assert settle(text)[0].advice == (
        "no way to hang 'bench set' suits the width of 'bench': a piece 33 5/16 in (847 mm) wide is"
        " missing in a row with 'A', gap 4 in (102 mm); or the first way would suit"
        " furniture 45 in (1143 mm) wide"
    )


def test_pieces_that_are_all_too_wide_suit_wider_furniture() -> None:
    # 70 in of 80 in are 87.5 %; 70 in are two thirds of 105 in.
    text = wall_text(
        ["70 x 20"], f"name: bench set, choose: {{from: [A], count: any}}, arrange: row, {OVER}"
    )
    assert settle(text)[0].advice == (
        "no way to hang 'bench set' suits the width of 'bench':"
        " the first way would suit furniture 105 in (2667 mm) wide"
    )


# --- several groups -------------------------------------------------------------------------------

TWO = (
    f"name: first, choose: {{from: [A, B, C, D], count: 2}}, arrange: row, gap: 4 in, {OVER}",
    "name: second, choose: {from: [A, B, C, D], count: 2}, arrange: row, left: 130 in",
)


def test_what_one_group_takes_is_gone_for_the_next() -> None:
    # 24.5 + 4 + 24.5 = 53 in is the nearest to 53 1/3 in of all pairs.
    first, second = settle(wall_text(["24 1/2 x 20", "10 x 20", "24 1/2 x 20", "10 x 20"], *TWO))
    assert first.choice.group.members == ("A", "C")
    assert second.choice.group.members == ("B", "D")
    assert {group.name for group in second.choice.plan.groups} == {"first", "second"}


def test_later_groups_see_the_proposal_that_is_taken() -> None:
    text = wall_text(["24 1/2 x 20", "10 x 20", "24 1/2 x 20", "10 x 20"], *TWO)
    first, second = settle(text, 2)
    assert first.taken == 2
    assert first.choice == first.proposals[1]
    assert set(second.choice.group.members).isdisjoint(first.choice.group.members)


def test_proposals_are_told_on_the_wall_as_it_is_in_the_end() -> None:
    # Alone, 16 + 3 + 16 = 35 in take 17.5 % of a wall of 200 in, less than a quarter; with another
    # group beside it that rule asks for nothing.
    text = wall_text(
        ["16 x 20"] * 4,
        "name: left pair, pieces: [A, B], arrange: row, gap: any, left: 20",
        "name: right pair, pieces: [C, D], arrange: row, gap: any, right: 20",
        furniture="",
    )
    for settlement in settle(text):
        assert settlement.choice.broken == ()
        assert len(settlement.choice.plan.pieces) == 4


def test_a_pool_that_was_emptied_is_a_fault() -> None:
    with pytest.raises(LayoutError) as raised:
        settle(wall_text(["24 1/2 x 20"] * 3, *(each.replace(", D", "") for each in TWO)))
    assert str(raised.value) == (
        "wall.yaml:12:5: 'second' is to choose 2, but earlier groups leave 1 of its pool\n"
        "  add pieces to choose from, or lower a 'count'"
    )


def test_a_group_is_settled_before_the_one_that_it_is_part_of() -> None:
    text = wall_text(
        ["24 x 30", "12 x 13", "12 x 13"],
        f"name: whole, pieces: [A, pair], arrange: any, gap: 4 in, {OVER}",
        "name: pair, pieces: [B, C], arrange: any, gap: 4 in",
    )
    settlements = settle(text)
    assert [each.name for each in settlements] == ["pair", "whole"]
    # As a row the pair makes the whole 24 + 4 + (12 + 4 + 12) = 56 in wide, 70 % of the bench; as a
    # column 24 + 4 + 12 = 40 in, half of it.
    assert settlements[0].choice.group.arrange is Arrangement.ROW
    whole = settlements[1].choice
    assert whole.figures.width_mm == pytest.approx(56 * INCH)
    assert "width-over-furniture" in settlements[0].proposals[1].broken_rules
    assert {piece.name for piece in whole.plan.pieces} == {"A", "B", "C"}


# --- what cannot be -------------------------------------------------------------------------------


def test_a_group_that_fits_in_no_way_is_a_fault() -> None:
    text = wall_text(
        ["16 x 20"], f"name: bench set, pieces: [A], arrange: row, gap: any, {OVER}, clearance: 60"
    )
    with pytest.raises(LayoutError) as raised:
        settle(text)
    assert str(raised.value).splitlines()[:3] == [
        "wall.yaml:9:5: 'bench set' can be hung in no way that fits; of the nearest one it is said:",
        "  mend the faults that follow",
        # 34 + 60 + 20 = 114 in on a wall of 100 in.
        "wall.yaml:9:5: group 'bench set' reaches 14 in (356 mm) above the ceiling",
    ]


def test_narrower_sets_are_tried_where_the_wide_ones_hit_something() -> None:
    # A window from 96 in on leaves 2 x (96 - 70) = 52 in about the bench's middle, 70 in.
    text = wall_text(
        ["30 x 20", "20 x 20", "53 x 20", "54 x 20"],
        f"name: bench set, choose: {{from: [C, D, A, B], count: 1}}, arrange: row, {OVER}",
        more="openings:\n  - {name: sash, kind: window, left: 96, bottom: 40, width: 30, height: 40}\n",
    )
    assert settle(text)[0].choice.group.members == ("A",)


def test_a_choice_that_there_is_not_is_refused() -> None:
    text = wall_text(
        ["16 x 20"] * 3, f"name: bench set, pieces: [A, B, C], arrange: row, gap: any, {OVER}"
    )
    with pytest.raises(UsageError, match="proposal 4 of 'bench set' is chosen, but it has 3 proposals"):
        settle(text, 4)
    with pytest.raises(UsageError, match="2 proposals are chosen, but 1 group leaves something open"):
        settle(text, 1, 1)


def test_of_twenty_pieces_sixteen_are_searched() -> None:
    names = "ABCDEFGHIJKLMNOPQRST"
    text = wall_text(
        [f"{width} x 20" for width in range(5, 25)],
        f"name: bench set, choose: {{from: [{', '.join(names)}], count: any}}, arrange: row, gap: any,"
        f" {OVER}",
    )
    # Whole inches and quarters come to 53 1/4 in at best beside 53 1/3: 45 in and three gaps of 2 3/4.
    assert settle(text)[0].choice.figures.width_mm == pytest.approx(53.25 * INCH)
