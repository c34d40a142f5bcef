from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations
from math import log

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templater.geometry import Box, Size
from templater.placement.cluster import arrange_cluster
from templater.placement.cluster_score import Cell, Task, in_steps, is_joined
from tests.benchmarks.clusters import INSTANCES, Instance, cost_of, pack_shelves
from tests.placement.every_cluster import costs, least_cost

SLACK_MM = 1e-6
LENGTHS = st.integers(60, 1200).map(lambda half_mm: half_mm / 2) | st.integers(4, 40).map(
    lambda inches: inches * 25.4
)
SIZES = st.builds(Size, LENGTHS, LENGTHS)
TARGETS = st.none() | st.builds(Size, st.floats(200, 3000), st.floats(200, 3000))


def cost(boxes: Sequence[Box], gap: float, target: Size | None) -> float:
    """The objective, by the tests' own sums."""
    x0, y0, x1, y1 = np.array(boxes).T
    return float(costs(x0[None], y0[None], x1 - x0, y1 - y0, gap=gap, target=target)[0])


def check_gaps(boxes: Sequence[Box], gap: float) -> None:
    """None nearer than the gap; all joined by neighbours at exactly the gap."""
    joints: dict[int, set[int]] = {piece: set() for piece in range(len(boxes))}
    for one, other in combinations(range(len(boxes)), 2):
        across, up = boxes[one].overlap(boxes[other])
        assert min(across, up) <= -gap + SLACK_MM
        shorter = min(
            (boxes[one].height, boxes[other].height)
            if across < up
            else (boxes[one].width, boxes[other].width)
        )
        is_true = min(across, up) == pytest.approx(-gap, abs=SLACK_MM)
        if is_true and max(across, up) > min(20.0, shorter / 3) - SLACK_MM:
            joints[one].add(other)
            joints[other].add(one)
    reached, fresh = {0}, {0}
    while fresh:
        fresh = set().union(*(joints[piece] for piece in fresh)) - reached
        reached |= fresh
    assert reached == set(joints)


@pytest.mark.parametrize("instance", INSTANCES, ids=lambda instance: instance.name)
def test_a_cluster_keeps_true_gaps_and_beats_shelves(instance: Instance) -> None:
    sizes, gap, target = instance.sizes_mm, instance.gap_mm, instance.target_mm
    boxes = arrange_cluster(sizes, gap, target)
    assert [box.size for box in boxes] == [pytest.approx(size) for size in sizes]
    assert Box.around(boxes).corner == pytest.approx((0, 0), abs=SLACK_MM)
    check_gaps(boxes, gap)
    ours, shelves = cost(boxes, gap, target), cost(pack_shelves(sizes, gap, target), gap, target)
    assert cost_of(instance, boxes) == pytest.approx(ours)
    # Equal frames may stand on shelves as well as they can.
    assert ours < shelves - SLACK_MM or (len(set(sizes)) == 1 and ours <= shelves + SLACK_MM)


@pytest.mark.parametrize(
    ("sizes", "gap", "target"),
    [
        ([Size(300, 400)], 50, None),
        ([Size(610, 762), Size(406, 508)], 63.5, Size(1200, 600)),
        ([Size(610, 762), Size(406, 508), Size(279, 356)], 0, None),
        ([Size(610, 762), Size(406, 508), Size(406, 508), Size(279, 356)], 63.5, None),
        ([Size(787, 1016), Size(584, 432), Size(279, 330), Size(229, 178)], 50.8, Size(1524, 1016)),
        ([Size(210, 297), Size(297, 210), Size(210, 297), Size(305, 305)], 40, Size(500, 900)),
        ([Size(1200, 80), Size(80, 900), Size(15, 15), Size(500.5, 30)], 25, None),
    ],
)
def test_a_few_pieces_hang_as_well_as_they_can(
    sizes: list[Size], gap: float, target: Size | None
) -> None:
    boxes = arrange_cluster(sizes, gap, target)
    check_gaps(boxes, gap)
    assert cost(boxes, gap, target) == pytest.approx(least_cost(sizes, gap, target), abs=1e-9)


@settings(max_examples=30, deadline=None)
@given(st.lists(SIZES, min_size=1, max_size=3), st.integers(0, 200), TARGETS)
def test_up_to_three_pieces_of_any_size_hang_as_well_as_they_can(
    sizes: list[Size], gap: float, target: Size | None
) -> None:
    boxes = arrange_cluster(sizes, gap, target)
    check_gaps(boxes, gap)
    assert cost(boxes, gap, target) == pytest.approx(least_cost(sizes, gap, target), abs=1e-9)


@settings(max_examples=4, deadline=None)
@given(st.lists(SIZES, min_size=5, max_size=6), st.floats(0, 200), TARGETS)
def test_the_order_of_pieces_makes_no_difference(
    sizes: list[Size], gap: float, target: Size | None
) -> None:
    boxes = arrange_cluster(sizes, gap, target)
    check_gaps(boxes, gap)
    assert sorted(arrange_cluster(sizes[::-1], gap, target)) == sorted(boxes)


def test_more_than_sixteen_pieces_still_hang_together() -> None:
    sizes = [Size(200 + 37 * (number % 7), 180 + 53 * (number % 5)) for number in range(24)]
    check_gaps(arrange_cluster(sizes, 50, Size(2400, 1600)), 50)


@pytest.mark.parametrize(
    ("side", "shared", "joined"),
    [
        # Neighbours face each other along 20 mm, or a third of the shorter edge: 10 of 30.
        (30, 11, True),
        (30, 9, False),
        (100, 21, True),
        (100, 19, False),
    ],
)
def test_neighbours_face_each_other_along_enough_of_their_edges(
    side: float, shared: float, joined: bool
) -> None:
    task = Task.of([Size(side, side)] * 2, 5.0, None)
    cell, up = in_steps(side + 5.0), in_steps(side - shared)
    low, high = Cell(0, 0, cell, cell), Cell(cell, up, 2 * cell, up + cell)
    assert is_joined(task, [low, high]) is joined
    assert is_joined(task, [Cell(y0, x0, y1, x1) for x0, y0, x1, y1 in (low, high)]) is joined


def test_nine_equal_pieces_make_a_square_of_three_by_three() -> None:
    boxes = arrange_cluster([Size(300, 400)] * 9, 50, None)
    assert sorted({box.x0 for box in boxes}) == pytest.approx([0, 350, 700])
    assert sorted({box.y0 for box in boxes}) == pytest.approx([0, 450, 900])


def test_a_large_piece_hangs_in_the_middle_of_small_ones() -> None:
    sizes = [Size(200, 250)] * 3 + [Size(750, 1000)] + [Size(200, 250)] * 3
    boxes = arrange_cluster(sizes, 50, None)
    whole = Box.around(boxes)
    assert boxes[3].centre == pytest.approx(whole.centre)


def test_the_weight_hangs_low_and_left() -> None:
    boxes = arrange_cluster([Size(300, 400), Size(600, 400), Size(200, 250)], 50, None)
    whole = Box.around(boxes)
    area = sum(box.width * box.height for box in boxes)
    x = sum(box.width * box.height * box.centre.x for box in boxes) / area
    y = sum(box.width * box.height * box.centre.y for box in boxes) / area
    assert x <= whole.centre.x
    assert y <= whole.centre.y


def test_the_terms_of_a_pair_worked_by_hand() -> None:
    # 400 x 300 and 200 x 300 side by side, 100 apart, bottoms and tops in line: the whole is
    # 700 x 300. With gaps: cells 500 x 400 and 300 x 400 fill 800 x 400; no waste, outline as long
    # as that of the whole, one joint in line, no mistake.
    boxes = (Box(0, 0, 400, 300), Box(500, 0, 700, 300))
    misfit = log(700 / 300 / 1.9)
    # Centres 200 and 600 are 150 left and 250 right of 350; areas 5 : 3, so the centroid is on 350.
    imbalance = (5 * -150 + 3 * 250) / 8
    # Squares of areas 25 : 9. Against areas: (25 x 150² + 9 x 250²) / 34 over (5 x 150² + 3 x 250²) / 8.
    eye = (25 * 22500 + 9 * 62500) / 34 / ((5 * 22500 + 3 * 62500) / 8)
    instance = Instance("pair", f"{400 / 25.4}x{300 / 25.4} {200 / 25.4}x{300 / 25.4}", 100 / 25.4)
    assert imbalance == 0
    assert cost_of(instance, boxes) == pytest.approx(misfit + 0.3 * eye)
    assert cost(boxes, 100, None) == pytest.approx(misfit + 0.3 * eye)


def test_the_terms_of_a_ragged_pair_worked_by_hand() -> None:
    # 300 x 300 at the origin, 100 x 100 to its right, 100 apart, its bottom 10 higher; the target
    # is the whole, 500 x 300. With gaps: cells 400 x 400 (16) and 200 x 200 (4) in 600 x 400 (24).
    boxes = (Box(0, 0, 300, 300), Box(400, 10, 500, 110))
    instance = Instance(
        "ragged",
        f"{300 / 25.4}x{300 / 25.4} {100 / 25.4}x{100 / 25.4}",
        100 / 25.4,
        f"{500 / 25.4}x{300 / 25.4}",
    )
    waste = 1 - 20 / 24
    # Half outlines: 800 + 400 less 200 shared, against 1000.
    outline = (800 + 400 - 200) / 1000 - 1
    # Centres of cells from that of the whole: (-100, 0) and (200, -90), weights 4 : 1; halves of
    # the whole 300 and 200.
    imbalance = abs(-4 * 100 + 200) / 5 / 300 + 90 / 5 / 200
    first, second = (100 / 300) ** 2, (200 / 300) ** 2 + (90 / 200) ** 2
    eye = (16 * first + second) / 17 / ((4 * first + second) / 5)
    # One joint, not in line; the bottoms are 10 off: 1 - 10/50, over two pieces.
    worked = waste + 0.4 * outline + 0.6 * imbalance + 0.3 * 1 + 0.3 * 0.8 / 2 + 0.3 * eye
    assert cost_of(instance, boxes) == pytest.approx(worked)
    assert cost(boxes, 100, Size(500, 300)) == pytest.approx(worked)
