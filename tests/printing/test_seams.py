"""Where one axis is cut: counts worked by hand, and every choice against brute force."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from templater.printing.prices import Mark, is_near
from templater.printing.seams import Axis, choose_cuts
from tests.printing.brute_force import count_near, fewest_spans, least_cost


def cut(
    axis: Axis, holes: Sequence[float], hang_points: Sequence[float], reference: float | None = None
) -> tuple[float, ...]:
    """The cuts for marks at these places."""
    marks = [Mark(place, 0.0, is_hole=True) for place in holes]
    marks += [Mark(place, 0.0, is_hole=False) for place in hang_points]
    return choose_cuts(axis, marks, reference).cuts


# n = ceil((L - lap) / (reach - lap)), each worked by hand; reach = page - 2 x margin.
@pytest.mark.parametrize(
    ("length", "reach", "lap", "count"),
    [
        (2400, 190, 0, 13),  # A4 portrait, margin 10: 2400 / 190 = 12.6
        (1200, 277, 0, 5),  # 1200 / 277 = 4.3
        (2400, 190, 10, 14),  # 2390 / 180 = 13.3
        (1200, 277, 10, 5),  # 1190 / 267 = 4.5
        (2400, 277, 0, 9),  # A4 landscape: 2400 / 277 = 8.7
        (1200, 190, 0, 7),  # 1200 / 190 = 6.3
        (2400, 277, 10, 9),  # 2390 / 267 = 8.95
        (1200, 190, 10, 7),  # 1190 / 180 = 6.6
        (2400, 203.2, 0, 12),  # Letter portrait, margin 6.35: 2400 / 203.2 = 11.8
        (1200, 266.7, 0, 5),  # 1200 / 266.7 = 4.5
        (2400, 203.2, 10, 13),  # 2390 / 193.2 = 12.4
        (1200, 266.7, 10, 5),  # 1190 / 256.7 = 4.6
        (2400, 201.54, 0, 12),  # A4 portrait, margin 4.23: 2400 / 201.54 = 11.9
        (1200, 288.54, 0, 5),  # 1200 / 288.54 = 4.2
        (2400, 201.54, 10, 13),  # 2390 / 191.54 = 12.5
        (1200, 288.54, 10, 5),  # 1190 / 278.54 = 4.3
        (570, 190, 0, 3),  # exactly 3 x 190
        (570.01, 190, 0, 4),
        (550, 190, 10, 3),  # exactly 10 + 3 x 180
        (550.01, 190, 10, 4),
        (914, 190, 10, 6),  # 904 / 180 = 5.02
        (2400, 904.4, 0, 3),  # a 914.4 roll, margin 5: 2400 / 904.4 = 2.7
        (203.2, 8.5 * 25.4 - 12.7, 10, 1),  # an 8 in frame on Letter, exactly the printable width
        (0.1 + 0.2, 0.3, 0, 1),  # 0.30000000000000004 is rounding
        (7 * 0.7, 0.7, 0, 7),
        (5, 190, 10, 1),  # shorter than the lap
    ],
)
def test_count_is_the_fewest_that_cover(length: float, reach: float, lap: float, count: int) -> None:
    axis = Axis(length, reach, lap)
    assert axis.count == count
    cuts = cut(axis, [], [])
    assert len(cuts) == count - 1
    assert all(
        after - before <= reach - lap + 1e-5 for before, after in pairwise((0.0, *cuts, length - lap))
    )


# length, reach, holes, hang points -> cuts; lap 10. A hole h forbids the cuts in (h - 22, h + 12).
@pytest.mark.parametrize(
    ("length", "reach", "holes", "hang_points", "cuts"),
    [
        (190, 190, [95], [], ()),  # one sheet: no seam, wherever the hole is
        (310, 200, [], [], (150,)),  # even: (310 - 10) / 2
        (610, 210, [], [], (200, 400)),  # exact multiple: 10 + 3 x 200
        (310, 200, [140], [], (152,)),  # not in (118, 152); from 150 that is 2 up, 32 down
        (310, 200, [170], [], (148,)),  # not in (148, 182)
        (310, 200, [], [140], (152,)),  # hang points push a seam away in the same way
        (310, 200, [140], [174], (152,)),  # (118, 152) and (152, 186) leave just one place
        (400, 205, [200], [], (130, 260)),  # two sheets only with 195, in (178, 212): so three sheets
        (400, 205, [], [200], (195,)),  # for a hang point alone no sheet is added
        (400, 205, [205], [], (130, 260)),  # 195 is in (183, 217)
        (240, 200, [], [], (115,)),  # even is 115, which leaves 115 and 125: bars fit on both
        (232, 200, [], [], (115,)),  # even is 111; room for the bars on both wants 115 to 117
        (220, 200, [], [], (135,)),  # no room for both: the last keeps 200 - 115 = 85
        (240, 200, [125], [], (103,)),  # not in (103, 137): a hole counts for more than room for bars
    ],
)
def test_cuts_worked_by_hand(
    length: float, reach: float, holes: list[float], hang_points: list[float], cuts: tuple[float, ...]
) -> None:
    assert cut(Axis(length, reach, 10), holes, hang_points) == pytest.approx(cuts)


def test_two_holes_near_stay_when_another_sheet_would_not_help() -> None:
    """Screws every 20 mm: each cut has at least one in its 34 mm, so three sheets have two near, too."""
    cuts = cut(Axis(390, 200, 10), [20 * number for number in range(1, 20)], [])
    assert cuts == pytest.approx((190,))


def test_no_sheet_is_a_sliver_for_the_sake_of_a_hole() -> None:
    """Screws every 20 mm from 37 on leave cuts up to 15 free, where a sheet kept 5 mm beside its lap.

    Least there is 20; from there on each cut has a screw near. Up to 35 that is the first screw alone,
    and no seam parts two screws.
    """
    cuts = cut(Axis(310, 300, 10), [37 + 20 * number for number in range(14)], [])
    assert cuts == pytest.approx((35,))


# 400 mm on sheets of 250, lap 10: one cut in [150, 240], even at 195.
@pytest.mark.parametrize(
    ("holes", "reference", "at"),
    [
        ([203], None, 181),  # not in (181, 215): 14 down or 20 up
        ([60, 203], None, 215),  # at 181 the seam would lie between the holes
        ([203], 60, 215),  # ... between the hole and the middle of the piece
        ([203], 340, 181),
        ([60, 340], 200, 195),  # it lies between the holes anywhere
    ],
)
def test_seams_stay_out_from_between_holes_and_their_reference(
    holes: list[float], reference: float | None, at: float
) -> None:
    assert cut(Axis(400, 250, 10), holes, [], reference) == pytest.approx((at,))


def test_near_means_in_the_lap_or_within_twelve_millimetres_of_it() -> None:
    assert not is_near(88, 100, 10)
    assert is_near(88.01, 100, 10)
    assert is_near(105, 100, 10)
    assert is_near(121.99, 100, 10)
    assert not is_near(122, 100, 10)


@st.composite
def whole_axes(draw: st.DrawFn) -> tuple[int, int, int]:
    """Length, reach and lap in whole mm, where 10 mm beside the laps can always be kept."""
    lap = draw(st.integers(0, 12))
    reach = draw(st.integers(max(30, 3 * lap + 30), 90))
    length = draw(st.integers(10, 5 * reach))
    return length, reach, lap


@settings(max_examples=150, deadline=None)
@given(whole_axes(), st.data())
def test_no_placing_is_cheaper_than_the_one_chosen(
    whole: tuple[int, int, int], data: st.DataObject
) -> None:
    length, reach, lap = whole
    places = st.lists(st.integers(0, length), max_size=16)
    holes, hang_points = data.draw(places), data.draw(places)
    count = fewest_spans(length, reach, lap)
    assume(count == 1 or (length - lap) // (count + 1) >= lap + 10)
    cuts = cut(Axis(length, reach, lap), holes, hang_points)
    got = count_near(cuts, holes, lap), count_near(cuts, hang_points, lap)
    if count == 1:
        assert cuts == ()
        return
    costs = [
        least_cost(length, reach, lap, count=sheets, holes=holes, hang_points=hang_points)
        for sheets in (count, count + 1)
    ]
    wanted = count + 1 if costs[1][0] < costs[0][0] else count
    assert len(cuts) == wanted - 1
    assert got == costs[wanted - count]


@settings(max_examples=150, deadline=None)
@given(
    st.floats(60, 3000),
    st.floats(60, 1200),
    st.floats(0, 20),
    st.lists(st.floats(0, 1), max_size=6),
)
def test_every_step_is_within_reach_and_laps_never_meet(
    length: float, reach: float, lap: float, shares: list[float]
) -> None:
    axis = Axis(length, reach, lap)
    cuts = cut(axis, [share * length for share in shares], [])
    assert len(cuts) + 1 in (axis.count, axis.count + 1)
    for before, after in pairwise((0.0, *cuts, length - lap)):
        assert after - before <= reach - lap + 2e-6
    # Even shares of the most sheets that may be taken, where these are too small to be kept.
    least = min(lap + 10, (length - lap) / (axis.count + 1))
    for before, after in pairwise((0.0, *cuts)):
        assert after - before >= least - 1e-6


@settings(max_examples=60, deadline=None)
@given(st.floats(60, 3000), st.floats(130, 1200), st.floats(0, 15))
def test_without_holes_every_sheet_has_room_for_its_bars_where_the_length_allows(
    length: float, reach: float, lap: float
) -> None:
    axis = Axis(length, reach, lap)
    cuts = cut(axis, [], [])
    kept = [after - before for before, after in pairwise((0.0, *cuts, length))]
    assume(reach - lap >= 115 and length >= 115 * len(kept))
    assert min(kept) >= 115 - 1e-6
