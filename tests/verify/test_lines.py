"""An outline drawn by hand: where its edges lie, how far they run, and where they may be left out."""

from __future__ import annotations

import pytest

from templater.geometry import Box, Point, Size
from templater.verify.lines import check_edges, check_edges_whole, list_edges
from templater.verify.straight import Straight
from templater.verify.template_marks import TemplateMarks

WHOLE = Box(-10.0, -10.0, 210.0, 310.0)


def _marks(*holes: Point) -> TemplateMarks:
    """200 mm wide, 300 mm tall."""
    return TemplateMarks(Size(200.0, 300.0), holes, holes, (), (), None, ())


def _line(across: float, low: float, high: float, width: float = 0.35) -> Straight:
    return Straight(across, low, high, (low, high), width, 0)


LEVEL = (_line(0.0, 0.0, 200.0), _line(300.0, 0.0, 200.0))
UPRIGHT = (_line(0.0, 0.0, 300.0), _line(200.0, 0.0, 300.0))


def _told(
    level: tuple[Straight, ...], upright: tuple[Straight, ...], *holes: Point, clip: Box = WHOLE
) -> list[str]:
    edges = list_edges(level, upright, clip, _marks(*holes))
    return [*check_edges(edges), *check_edges_whole(edges)]


def test_which_edges_a_sheet_shows() -> None:
    def shown(clip: Box) -> list[tuple[str, float, tuple[float, float]]]:
        edges = list_edges(LEVEL, UPRIGHT, clip, _marks())
        return [(edge.name.removeprefix("the outline's "), edge.length, edge.span) for edge in edges]

    left, right = ("left edge", 300.0, (0.0, 300.0)), ("right edge", 300.0, (0.0, 300.0))
    lower, upper = ("lower edge", 200.0, (0.0, 200.0)), ("upper edge", 200.0, (0.0, 200.0))
    assert shown(WHOLE) == [left, right, lower, upper]
    assert shown(Box(0.0, 0.0, 200.0, 300.0)) == [left, right, lower, upper]
    assert shown(Box(0.1, 0.1, 199.9, 299.9)) == []
    assert shown(Box(-10.0, 100.0, 150.0, 310.0)) == [
        ("left edge", 300.0, (100.0, 300.0)), ("upper edge", 200.0, (0.0, 150.0)),
    ]  # fmt: skip
    assert shown(Box(50.0, -10.0, 210.0, 120.0)) == [
        ("right edge", 300.0, (0.0, 120.0)), ("lower edge", 200.0, (50.0, 200.0)),
    ]  # fmt: skip
    assert shown(Box(-10.0, 300.0, 210.0, 310.0)) == [upper]
    assert shown(Box(-10.0, -10.0, 0.0, 310.0)) == [left]
    assert shown(Box(-10.0, 301.0, 210.0, 310.0)) == []
    assert shown(Box(-10.0, -10.0, -1.0, 310.0)) == []


def test_a_whole_outline() -> None:
    assert _told(LEVEL, UPRIGHT) == []


@pytest.mark.parametrize(
    ("line", "told"),
    [
        (_line(300.02, 0.0, 200.0), ["the outline's upper edge is 0.020 mm off"]),
        (_line(298.1, 0.0, 200.0), ["the outline's upper edge is 1.900 mm off"]),
        (_line(297.9, 0.0, 200.0), []),  # something else
        (_line(298.1, 0.0, 200.0, width=0.31), []),
        (_line(298.1, 0.0, 200.0, width=0.39), []),
        (_line(300.0, -0.02, 200.0), ["the outline's upper edge runs 0.020 mm past its corner"]),
        (_line(300.0, 0.0, 200.02), ["the outline's upper edge runs 0.020 mm past its corner"]),
        (_line(298.1, 200.0, 210.0), []),  # beside it
        (_line(298.1, -10.0, 0.0), []),
        (_line(298.1, 201.0, 210.0), []),
        (_line(298.1, -10.0, -1.0), []),
        (_line(298.1, 0.0, 200.0)._replace(seen=None), []),
    ],
)
def test_a_line_near_an_edge(line: Straight, told: list[str]) -> None:
    assert _told((*LEVEL, line), UPRIGHT) == told


@pytest.mark.parametrize(
    ("lines", "told"),
    [
        ([], ["from 0.0 mm"]),
        ([(0.0, 80.0), (80.01, 200.0)], []),
        ([(0.0, 80.0), (80.03, 200.0)], ["from 80.0 mm"]),
        ([(0.0, 80.0), (90.0, 120.0), (150.0, 200.0)], ["from 80.0 mm"]),  # told once
        ([(0.03, 200.0)], ["from 0.0 mm"]),
        ([(0.0, 199.97)], ["from 200.0 mm"]),
    ],
)
def test_an_edge_that_is_not_whole(lines: list[tuple[float, float]], told: list[str]) -> None:
    told = [f"the outline's lower edge is not drawn {place} on" for place in told]
    assert _told((LEVEL[1], *(_line(0.0, *line) for line in lines)), UPRIGHT) == told


def test_an_edge_is_left_out_at_a_hole_that_is_near() -> None:
    # The ring of 5 mm and 2 mm more to both sides of a hole that is nearer than that.
    for x, y in ((100.0, 293.1), (100.0, 306.9), (100.0, 300.0)):
        broken = (LEVEL[0], _line(300.0, 0.0, 93.0), _line(300.0, 107.0, 200.0))
        assert _told(broken, UPRIGHT, Point(x, y)) == []
        shorter = (LEVEL[0], _line(300.0, 0.0, 92.9), _line(300.0, 107.0, 200.0))
        assert len(_told(shorter, UPRIGHT, Point(x, y))) == 1
        later = (LEVEL[0], _line(300.0, 0.0, 93.0), _line(300.0, 107.1, 200.0))
        assert len(_told(later, UPRIGHT, Point(x, y))) == 1
        assert len(_told(broken, UPRIGHT, Point(x, y - 10.0 if y < 300 else y + 10.0))) == 1
    left = (_line(0.0, 0.0, 143.0), _line(0.0, 157.0, 300.0), UPRIGHT[1])
    assert _told(LEVEL, left, Point(6.9, 150.0)) == []
    assert len(_told(LEVEL, left, Point(7.1, 150.0))) == 1
