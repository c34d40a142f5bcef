from __future__ import annotations

from math import inf, log
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.geometry import Size
from templater.placement import cluster_places, cluster_search
from templater.placement.cluster_places import hang_best
from templater.placement.cluster_rounding import find_logarithm
from templater.placement.cluster_score import (
    Cell,
    Cluster,
    Task,
    in_steps,
    is_joined,
    total_cost,
)
from templater.placement.cluster_search import search_cluster


def hang_all(task: Task) -> list[tuple[float, Cell]]:
    """Each piece's objective and cell when all are hung one after another."""
    cluster = Cluster(task)
    return [(hang_best(cluster, piece), cluster.cells[piece]) for piece in range(len(task.widths))]


def make_task(seed: int) -> Task:
    """Ten pieces of whole inches or centimetres, among them equal ones and very small ones."""
    chances = Random(seed)
    unit = chances.choice([25.4, 10.0])
    sizes = [Size(chances.randint(3, 40) * unit, chances.randint(3, 40) * unit) for _ in range(6)]
    sizes += chances.choices(sizes, k=2) + [Size(3 * unit, 3 * unit)] * 2
    return Task.of(sizes, chances.choice([0, 2, 3]) * unit, Size(1500, 900) if seed % 2 else None)


@pytest.mark.parametrize("seed", range(12))
def test_places_that_are_not_looked_at_are_no_better(seed: int, monkeypatch: pytest.MonkeyPatch) -> None:
    task = make_task(seed)
    hung = hang_all(task)
    # Without end to what a bound may err, every place is looked at.
    monkeypatch.setattr(cluster_places, "_SLACK", inf)
    assert hang_all(task) == hung


def test_what_is_known_of_earlier_rounds_is_what_a_round_would_find(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    chances = Random(5)
    sizes = [Size(chances.randint(100, 500), chances.randint(100, 500)) for _ in range(5)]
    task = Task.of(sorted(sizes, reverse=True), 50, None)
    found = search_cluster(task)
    hang_again = cluster_search._hang_again
    monkeypatch.setattr(
        cluster_search, "_hang_again", lambda task, cells, taken, _: hang_again(task, cells, taken, {})
    )
    assert search_cluster(task) == found


@pytest.mark.parametrize("seed", range(12))
def test_the_objective_of_a_place_is_that_of_the_whole(seed: int) -> None:
    task = make_task(seed)
    hung = hang_all(task)
    cells = [cell for _, cell in hung]
    assert is_joined(task, cells)
    assert hung[-1][0] == pytest.approx(total_cost(task, cells), abs=1e-9)


def test_a_piece_hangs_at_the_best_of_the_places_beside_another() -> None:
    # Two squares of 300, 100 apart. The target is both side by side: any other place is worse.
    task = Task.of([Size(300, 300)] * 2, 100, Size(700, 300))
    cost, cell = hang_all(task)[1]
    side = in_steps(400)
    assert cell in {Cell(-side, 0, 0, side), Cell(side, 0, 2 * side, side)}
    # Nothing is amiss but the eye's term, 0.3, which compares equal pieces with themselves.
    assert cost == pytest.approx(0.3)


@given(st.floats(1e-6, 1e6))
def test_the_logarithm_is_the_natural_one(ratio: float) -> None:
    assert find_logarithm(ratio) == pytest.approx(log(ratio), rel=1e-14, abs=1e-15)
