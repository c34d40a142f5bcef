from __future__ import annotations

import pytest

from templater.geometry import Size
from templater.layout.model import Arrangement, Cells
from templater.search.ways import Way, list_ways
from tests.search.walls import read, wall_text

ROW, GRID = Arrangement.ROW, Arrangement.GRID
CLUSTER, COLUMN = Arrangement.CLUSTER, Arrangement.COLUMN


def _ways(keys: str, count: int) -> list[tuple[Arrangement, int | None]]:
    (group,) = read(wall_text(["16 x 20"] * 6, f"name: bench set, {keys}")).groups
    return list(dict.fromkeys((way.arrange, way.columns) for way in list_ways(group, count)))


OPEN = "pieces: [A, B, C, D, E, F], arrange: any"


@pytest.mark.parametrize(
    ("count", "ways"),
    [
        (1, [(ROW, None)]),
        (2, [(ROW, None), (COLUMN, None)]),
        (5, [(ROW, None), (CLUSTER, None), (COLUMN, None)]),
        (6, [(ROW, None), (GRID, 2), (GRID, 3), (CLUSTER, None), (COLUMN, None)]),
        (9, [(ROW, None), (GRID, 3), (CLUSTER, None), (COLUMN, None)]),
    ],
)
def test_an_open_arrangement_may_be_any_of_whole_rows(
    count: int, ways: list[tuple[Arrangement, int | None]]
) -> None:
    assert _ways(OPEN, count) == ways


@pytest.mark.parametrize(
    ("keys", "counts"),
    [
        ("choose: {from: [A, B, C, D, E, F], count: any}, arrange: row", [1, 2, 3, 4, 5, 6]),
        ("choose: {from: [A, B, C, D, E, F], count: any}, arrange: grid, columns: 2", [2, 4, 6]),
        ("choose: {from: [A, B, C, D, E, F], count: 5}, arrange: grid, columns: 2", [1, 2, 3, 4, 5, 6]),
        ("choose: {from: [A], count: any}, arrange: grid, columns: 2", [1, 2, 3, 4, 5, 6]),
        ("choose: {from: [A, B, C, D, E, F], count: any}, arrange: cluster", [3, 4, 5, 6]),
    ],
)
def test_a_number_that_does_not_become_the_arrangement_is_left_out(keys: str, counts: list[int]) -> None:
    assert [count for count in range(1, 7) if _ways(keys, count)] == counts


@pytest.mark.parametrize(
    ("way", "width", "gaps"),
    [
        # 10, 20, 30 and 16 wide; rows of two: columns of 30 and 20.
        (Way(ROW), 76.0, 3),
        (Way(COLUMN), 30.0, 0),
        (Way(GRID, 2, Cells.TRUE), 50.0, 1),
        (Way(GRID, 2, Cells.EQUAL), 60.0, 1),
        (Way(GRID, 9, Cells.TRUE), 76.0, 3),
    ],
)
def test_widths_are_told_before_anything_is_hung(way: Way, width: float, gaps: int) -> None:
    sizes = [Size(each, 12.0) for each in (10.0, 20.0, 30.0, 16.0)]
    assert way.estimate_width(sizes) == (width, gaps)
