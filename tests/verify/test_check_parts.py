"""Parts of a wall drawn by hand: what each says that it shows, and the holes on it."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from templater.geometry import Box, Point
from templater.verify.check_parts import Part, check_part, read_part
from templater.verify.model import Chain, Ink, Run, Stroke
from tests.verify import gull
from tests.verify.near import near

NOT_THERE = "gull hole 1 is not marked at its place"
TOO_MANY = "a hole is marked where the plan has none, at {} mm of the wall"


def _line(x0: float, y0: float, x1: float, y1: float, width: float = 0.25) -> Stroke:
    return Stroke(Point(x0, y0), Point(x1, y1), width, (), None)


def _cross(x: float, y: float) -> Iterator[Stroke]:
    yield _line(x - 1, y, x + 1, y)
    yield _line(x, y - 1, x, y + 1)


def _heading(*rows: str) -> Ink:
    return Ink(runs=[Run(row, Point(0, 0), Point(1, 0), Point(0, 1), 3.5) for row in rows])


def test_a_part_says_its_scale_and_its_window() -> None:
    told = (
        "Part 1 of 2. Scale 1:5. From 200 mm (7 7/8 in) to 600 mm (23 5/8 in) from the left end,",
        "from 1300 mm (51 3/16 in) to 1600 mm (63 in) above the floor.",
    )
    assert read_part(_heading(*told)) == Part(5.0, Box(200.0, 1300.0, 600.0, 1600.0))
    inches = (
        "Part 2 of 2. Scale 1 in to 1 ft (1:2 1/2). From 10 in to 20 in from the left end, from 1 in to"
        " 2 in above the floor."
    )
    assert read_part(_heading(inches)) == Part(2.5, near(Box(254.0, 25.4, 508.0, 50.8)))
    assert read_part(_heading(told[0])) is None


PART = Part(5.0, Box(200.0, 1300.0, 600.0, 1600.0))


def _rectangle(x: float, y: float, width: float = 40.0, height: float = 20.0) -> Chain:
    """The piece, 200 x 100 mm, at 1:5."""
    corners = Point(x, y), Point(x + width, y), Point(x + width, y + height), Point(x, y + height)
    return Chain((*corners, corners[0]))


def _part(*strokes: Stroke, chains: tuple[Chain, ...] = (), part: Part = PART) -> list[str]:
    return list(check_part(Ink(list(strokes), chains=list(chains)), part, gull.plan()))


# The piece's corner stands at 70, 90; its hole 100 / 5 to the right and 80 / 5 up.
PLACE = (90.0, 106.0)


@pytest.mark.parametrize(
    ("strokes", "chains", "told"),
    [
        ([*_cross(*PLACE)], [_rectangle(70.0, 90.0)], []),
        # The place is that of which most rectangles as large as the piece tell.
        ([*_cross(*PLACE)], [_rectangle(10.0, 10.0), *[_rectangle(70.0, 90.0)] * 2], []),
        ([*_cross(*PLACE)], [_rectangle(10.0, 90.0), *[_rectangle(70.0, 90.0)] * 2], []),
        ([*_cross(*PLACE)], [_rectangle(70.0, 10.0), *[_rectangle(70.0, 90.0)] * 2], []),
        ([*_cross(*PLACE)], [_rectangle(10.0, 10.0, 40.02), _rectangle(70.0, 90.0)], []),
        ([*_cross(*PLACE)], [_rectangle(10.0, 10.0, 40.0, 20.02), _rectangle(70.0, 90.0)], []),
        ([*_cross(*PLACE)], [Chain(_rectangle(10, 10).points[:4]), _rectangle(70.0, 90.0)], []),
        ([], [_rectangle(70.0, 90.0)], [NOT_THERE]),
        (
            [*_cross(90.02, 106.0)],
            [Chain(_rectangle(10, 10).points[:4]), _rectangle(70.0, 90.0)],
            [NOT_THERE, TOO_MANY.format("400, 1480")],
        ),
        (
            [*_cross(90.02, 106.0)],
            [_rectangle(70.0, 90.0)],
            [NOT_THERE, TOO_MANY.format("400, 1480")],
        ),
        (
            [*_cross(*PLACE), *_cross(80.0, 100.0)],
            [_rectangle(70.0, 90.0)],
            [TOO_MANY.format("350, 1450")],  # 300 + 10 x 5, 1400 + 10 x 5
        ),
        ([*_cross(33.0, 44.0)], [], []),  # without a rectangle the one cross tells where it is
        ([], [], [NOT_THERE]),
    ],
)
def test_a_part_of_the_wall(strokes: list[Stroke], chains: list[Chain], told: list[str]) -> None:
    assert _part(*strokes, chains=tuple(chains)) == told


@pytest.mark.parametrize(
    ("window", "is_demanded", "is_allowed"),
    [
        (Box(403.0, 1300.0, 600.0, 1600.0), False, False),
        (Box(401.0, 1300.0, 600.0, 1600.0), False, True),  # what a window tells is rounded
        (Box(399.0, 1300.0, 600.0, 1600.0), False, True),
        (Box(397.0, 1300.0, 600.0, 1600.0), True, True),
        (Box(200.0, 1300.0, 403.0, 1600.0), True, True),
        (Box(200.0, 1300.0, 401.0, 1600.0), False, True),
        (Box(200.0, 1300.0, 600.0, 1481.0), False, True),
        (Box(200.0, 1300.0, 600.0, 1477.0), False, False),
    ],
)
def test_a_hole_on_the_edge_of_a_part(window: Box, is_demanded: bool, is_allowed: bool) -> None:
    part = Part(5.0, window)
    assert bool(_part(part=part)) is is_demanded
    assert bool(_part(*_cross(*PLACE), part=part)) is not is_allowed
