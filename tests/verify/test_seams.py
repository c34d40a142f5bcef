"""What is demanded of seams and edges: each line and mark whole and at its place, where it has room."""

from __future__ import annotations

import pytest

from templater.geometry import Box, Point, Size
from templater.printing.model import Seam
from templater.verify.guides import Guide, check_guides_whole
from templater.verify.lines import check_edges, list_edges
from templater.verify.model import Chain, Ink, Run, Stroke
from templater.verify.seams import check_seam_line, find_joins, must_join
from templater.verify.straight import Straight, list_straight
from templater.verify.template_marks import TemplateMarks

SEAM = Seam("A1", "B1", Point(0.0, 100.0), Point(200.0, 100.0))
UPRIGHT = Seam("A1", "A2", Point(100.0, 0.0), Point(100.0, 200.0))
SIZE = Size(200.0, 300.0)


def _marks(*holes: Point, levels: tuple[float, ...] = (), datum: float | None = None) -> TemplateMarks:
    return TemplateMarks(SIZE, holes, holes, (), levels, datum, (SEAM,))


def _line(x0: float, y0: float, x1: float, y1: float, *, width: float = 0.25) -> Stroke:
    return Stroke(Point(x0, y0), Point(x1, y1), width, (), None)


def _half(x: float, y: float, *, tip: tuple[float, float]) -> Chain:
    return Chain((Point(x - 2.5, y), Point(*tip), Point(x + 2.5, y)))


def test_a_sheet_shows_its_half_of_a_join_mark_on_its_own_side() -> None:
    above, below = _half(40, 100, tip=(40, 102.5)), _half(40, 100, tip=(40, 97.5))
    up, down = _line(40, 100, 40, 107), _line(40, 100, 40, 93)
    assert find_joins(SEAM, "A1", [above], [up]) == [Point(40, 100)]
    assert find_joins(SEAM, "B1", [below], [down]) == [Point(40, 100)]
    assert find_joins(SEAM, "A1", [below], [down]) == []
    left = Chain((Point(100, 47.5), Point(97.5, 50), Point(100, 52.5)))
    assert find_joins(UPRIGHT, "A1", [left], [_line(100, 50, 93, 50)]) == [Point(100, 50)]
    assert find_joins(UPRIGHT, "A2", [left], [_line(100, 50, 93, 50)]) == []


@pytest.mark.parametrize(
    ("tip", "end"), [((40.05, 102.5), (40.0, 107.0)), ((40.0, 102.5), (40.2, 107.0))]
)
def test_half_a_join_mark_that_leans_is_none(tip: tuple[float, float], end: tuple[float, float]) -> None:
    assert find_joins(SEAM, "A1", [_half(40, 100, tip=tip)], [_line(40, 100, *end)]) == []


def test_a_seam_is_dashed_on_the_sheet_below_and_unbroken_on_the_one_that_is_cut() -> None:
    solid = _line(0, 100, 200, 100)
    dashed = solid._replace(dash=(2.2, 0.5))
    assert not list(check_seam_line(SEAM, "A1", [dashed]))
    assert not list(check_seam_line(SEAM, "B1", [solid]))
    assert list(check_seam_line(SEAM, "A1", [solid])) == ["the line of its seam with B1 is unbroken"]
    assert list(check_seam_line(SEAM, "B1", [dashed])) == ["the line of its seam with A1 is dashed"]


@pytest.mark.parametrize("off", [-6.0, 0.0, 3.0])
def test_a_seam_along_the_datum_or_a_level_line_must_have_join_marks(off: float) -> None:
    assert must_join(SEAM, _marks(datum=100.0 + off))
    assert must_join(SEAM, _marks(levels=(100.0 + off,)))


def test_join_marks_are_not_demanded_where_there_is_no_room_for_them() -> None:
    along_the_lower_edge = Seam("A1", "B1", Point(0.0, 8.5), Point(200.0, 8.5))
    assert not must_join(along_the_lower_edge, _marks())
    short = Seam("A1", "B1", Point(0.0, 100.0), Point(60.0, 100.0))
    assert must_join(short, _marks())
    assert not must_join(short, _marks(Point(30.0, 105.0)))  # 5 mm are left on both sides
    assert must_join(SEAM, _marks(Point(100.0, 105.0)))  # 75 mm are left on both sides
    assert must_join(short, _marks(Point(30.0, 150.0)))


def test_an_edge_that_runs_past_its_corner() -> None:
    clip = Box(-20.0, -20.0, 220.0, 320.0)
    for end, told in ((200.0, []), (201.0, ["the outline's upper edge runs 1.000 mm past its corner"])):
        level, upright = list_straight([_line(0.0, 300.0, end, 300.0, width=0.35)])
        assert list(check_edges(list_edges(level, upright, clip, _marks()))) == told


def _guide(*drawn: tuple[float, float]) -> Guide:
    lines = tuple(Straight(100.0, low, high, (low, high), 0.18, 4) for low, high in drawn)
    return Guide("the upright centre line", False, 100.0, (0.0, 300.0), lines, False)


def test_a_centre_line_is_wanting_where_nothing_stands() -> None:
    hole = Point(100.0, 250.0)  # it is left out to 238.5 and from 261.5 on
    whole, broken = _guide((0.0, 238.5), (261.5, 300.0)), _guide((0.0, 200.0), (261.5, 300.0))
    assert not list(check_guides_whole([whole], [hole], (), Ink(), ()))
    told = ["the upright centre line is not drawn"]
    assert list(check_guides_whole([broken], [hole], (), Ink(), ())) == told
    # 60 letters of 0.62 em, 3.5 mm each: 130 mm of words that run up the line, from 190 mm on.
    words = Run("o" * 60, Point(98.0, 190.0), Point(0.0, 1.0), Point(-1.0, 0.0), 3.5)
    assert not list(check_guides_whole([broken], [hole], (), Ink(runs=[words]), ()))
    # What another sheet shows too may be left out for words that stand there.
    lap = Box(0.0, 195.0, 200.0, 240.0)
    assert not list(check_guides_whole([broken], [hole], (), Ink(), [lap]))
