"""The loads in ``hooks.csv`` of the shipped layout that has one of each hanger."""

from __future__ import annotations

import csv
from io import StringIO

import pytest

from templater.pipeline import read_wall
from templater.to_files.hooks_csv import hooks_csv
from tests.kits import LAYOUTS

POUND_FORCE = 0.45359237 * 9.80665

LOADS = {
    # Pounds, shared by hand: two rings 22 each of 44; one hook all 8; two screws of a cleat 7.5 each
    # of 15; two keyholes 1 each of 2; two rings 3 each of 6 and a lock that bears none; a nail all 1.
    "lantern-mirror": [22.0, 22.0],
    "tide-chart": [8.0],
    "brass-barometer": [7.5, 7.5],
    "shelf-print": [1.0, 1.0],
    "founder-s-portrait": [3.0, 3.0, 0.0],
    "signal-flag": [1.0],
}


@pytest.fixture(scope="module")
def loads() -> dict[str, list[str]]:
    """The loads of each piece's holes as they are written."""
    plan = read_wall(LAYOUTS / "hardware-sampler.yaml").plan
    found: dict[str, list[str]] = {}
    for row in csv.DictReader(StringIO(hooks_csv(plan))):
        found.setdefault(row["piece"], []).append(row["load_n"])
    return found


@pytest.mark.parametrize("slug", LOADS)
def test_each_hole_has_its_share_of_the_weight(slug: str, loads: dict[str, list[str]]) -> None:
    expected = [pounds * POUND_FORCE for pounds in LOADS[slug]]
    assert [float(load) for load in loads[slug]] == pytest.approx(expected, abs=0.0006)


def test_a_weight_that_is_not_given_leaves_the_cell_empty(loads: dict[str, list[str]]) -> None:
    assert loads["lamp-oil-label"] == [""]


def test_two_hooks_of_a_wire_share_an_estimated_weight(loads: dict[str, list[str]]) -> None:
    left, right = map(float, loads["wreck-of-the-halcyon"])
    assert left == right > 0


def test_what_hangs_without_a_hole_has_no_row(loads: dict[str, list[str]]) -> None:
    assert {"survey-of-the-sound", "tide-table"}.isdisjoint(loads)
