"""What is demanded of seams and edges: each line and mark whole and at its place, where it has room."""

from __future__ import annotations

import pytest

from templater.geometry import Box, Point, Size
from templater.printing.model import Seam
from templater.verify.guides import Guide, check_guides_whole
from templater.verify.lines import check_edges, list_edges
from templater.verify.model import Chain, Ink, Run, Stroke
from templater.verify.seams import check_joins, check_seam_line, find_joins, must_join
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


@pytest.mark.parametrize(
    ("line", "told"),
    [
        (_line(0, 100, 200, 100), []),
        (_line(200, 100, 0, 100), []),
        (_line(0, 100.02, 200, 100.02), ["the line of its seam with A1 is 0.020 mm off"]),
        (_line(0, 100, 199.98, 100), ["the line of its seam with A1 is 0.020 mm off"]),
        (_line(0.02, 100, 200, 100), ["the line of its seam with A1 is 0.020 mm off"]),
        (_line(0, 101.9, 200, 101.9), ["the line of its seam with A1 is 1.900 mm off"]),
        (_line(0, 102.1, 200, 102.1), ["the line of its seam with A1 is not drawn"]),
        (_line(2.1, 100, 200, 100), ["the line of its seam with A1 is not drawn"]),
        (_line(0, 100, 197.9, 100), ["the line of its seam with A1 is not drawn"]),
    ],
)
def test_where_the_line_of_a_seam_lies(line: Stroke, told: list[str]) -> None:
    assert list(check_seam_line(SEAM, "B1", [line])) == told
    further = _line(0, 101, 200, 101)
    assert list(check_seam_line(SEAM, "B1", [further, line, further])) == (
        told if not told or "0.020" in told[0] else ["the line of its seam with A1 is 1.000 mm off"]
    )


def test_a_seam_without_length_has_no_line() -> None:
    """It runs beside the outline and the crosses, and is shortened to nothing."""
    assert not list(check_seam_line(Seam("A1", "B1", Point(200, 100), Point(200, 100)), "A1", []))
    assert list(check_seam_line(Seam("A1", "B1", Point(199.98, 100), Point(200, 100)), "A1", []))


@pytest.mark.parametrize(
    ("seam", "place"),
    [
        (SEAM, (-1.9, 100)), (SEAM, (201.9, 100)), (SEAM, (40, 98.1)), (SEAM, (40, 101.9)),
        (UPRIGHT, (100, -1.9)), (UPRIGHT, (100, 201.9)), (UPRIGHT, (98.1, 40)), (UPRIGHT, (101.9, 40)),
    ],
)  # fmt: skip
def test_a_join_mark_a_little_off_its_seam_is_found_and_one_further_off_is_not(
    seam: Seam, place: tuple[float, float]
) -> None:
    """Of half a diamond both ends of its long side count, 2.5 mm to both sides of its middle."""
    x, y = place
    along = 2.4 if x < 0 or y < 0 else -2.4 if max(x, y) > 200 else 0.0
    for far in (0.0, 0.2):
        if seam is SEAM:
            away = far if y > 100 else -far if y < 100 else 0.0
            at = Point(x + along + (far if x > 200 else -far if x < 0 else 0.0), y + away)
            half = Chain((at.moved(-2.5, 0), at.moved(0, 2.5), at.moved(2.5, 0)))
            line = _line(*at, at.x, at.y + 7)
        else:
            away = far if x > 100 else -far if x < 100 else 0.0
            at = Point(x + away, y + along + (far if y > 200 else -far if y < 0 else 0.0))
            half = Chain((at.moved(0, -2.5), at.moved(-2.5, 0), at.moved(0, 2.5)))
            line = _line(*at, at.x - 7, at.y)
        assert bool(find_joins(seam, "A1", [half], [line])) is (far == 0.0)


def test_what_is_no_join_mark() -> None:
    half, line = _half(40, 100, tip=(40, 102.5)), _line(40, 100, 40, 107)
    assert find_joins(SEAM, "A1", [half], [line]) == [Point(40, 100)]
    assert find_joins(SEAM, "A1", [half], []) == []
    assert find_joins(SEAM, "A1", [half], [_line(40, 100, 40, 107.02)]) == []
    assert find_joins(SEAM, "A1", [half], [_line(40.02, 100, 40.02, 107)]) == []
    assert find_joins(SEAM, "A1", [Chain((*half.points, Point(60, 100)))], [line]) == []
    wider = Chain((Point(37.48, 100), Point(40, 102.5), Point(42.5, 100)))
    assert find_joins(SEAM, "A1", [wider], [line]) == []
    others = [_half(90, 100, tip=(90, 102.5)), half]
    lines = [_line(90, 100, 90, 107), line]
    assert find_joins(SEAM, "A1", others, lines) == [Point(40, 100), Point(90, 100)]


A, B = Point(40, 100), Point(90, 100)


@pytest.mark.parametrize(
    ("under", "over", "told"),
    [
        ([], [], None),
        ([A, B], [A, B], None),
        ([A], [A, B], "differ in number: 1 and 2"),
        ([A, B], [A], "differ in number: 2 and 1"),
        ([A, B], [A, B.moved(0.02, 0)], "do not meet: they are 0.020 mm apart"),
        ([A, B.moved(0, 0.02)], [A, B.moved(0, 0.02)], "are 0.020 mm off their seam"),
        ([A.moved(0.02, 0), B], [A.moved(0.02, 0), B], None),  # along it
    ],
)
def test_join_marks_meet_on_their_seam(under: list[Point], over: list[Point], told: str | None) -> None:
    wanted = [] if told is None else [f"the join marks of A1 and B1 {told}"]
    assert list(check_joins(SEAM, under, over)) == wanted
    turned = Seam("A1", "B1", Point(100, 0), Point(100, 200))
    under, over = ([Point(y, x) for x, y in points] for points in (under, over))
    assert list(check_joins(turned, under, over)) == wanted


@pytest.mark.parametrize(
    ("seam", "holes", "is_demanded"),
    [
        # 9 mm beside an edge; the piece is 200 wide and 300 tall.
        (Seam("A1", "B1", Point(0, 9.1), Point(200, 9.1)), [], True),
        (Seam("A1", "B1", Point(0, 8.9), Point(200, 8.9)), [], False),
        (Seam("A1", "B1", Point(0, -8.9), Point(200, -8.9)), [], False),
        (Seam("A1", "B1", Point(0, 290.9), Point(200, 290.9)), [], True),
        (Seam("A1", "B1", Point(0, 291.1), Point(200, 291.1)), [], False),
        (Seam("A1", "A2", Point(190.9, 0), Point(190.9, 200)), [], True),
        (Seam("A1", "A2", Point(191.1, 0), Point(191.1, 200)), [], False),
        (Seam("A1", "A2", Point(8.9, 0), Point(8.9, 200)), [], False),
        # 40 mm in one stretch.
        (Seam("A1", "B1", Point(0, 100), Point(40.1, 100)), [], True),
        (Seam("A1", "B1", Point(0, 100), Point(39.9, 100)), [], False),
        # A hole takes 25 mm to both sides, if it lies as near: 90 - 50.1 or 49.9 are left.
        (Seam("A1", "B1", Point(0, 100), Point(90, 100)), [Point(24.9, 124.9)], True),
        (Seam("A1", "B1", Point(0, 100), Point(90, 100)), [Point(25.1, 75.1)], False),
        (Seam("A1", "B1", Point(0, 100), Point(90, 100)), [Point(25.1, 125.1)], True),
        (Seam("A1", "A2", Point(100, 0), Point(100, 90)), [Point(75.1, 25.1)], False),
        (Seam("A1", "A2", Point(100, 0), Point(100, 90)), [Point(74.9, 25.1)], True),
        # A quarter of it in one stretch: of 172 mm 43, of which 42.9 or 43.1 are left.
        (Seam("A1", "B1", Point(0, 100), Point(172, 100)), [Point(67.9, 100), Point(104.1, 100)], False),
        (Seam("A1", "B1", Point(0, 100), Point(172, 100)), [Point(68.1, 100), Point(103.9, 100)], True),
        (Seam("A1", "B1", Point(28, 100), Point(200, 100)), [Point(96.1, 100), Point(131.9, 100)], True),
    ],
)
def test_which_seams_have_room_for_join_marks(seam: Seam, holes: list[Point], is_demanded: bool) -> None:
    assert must_join(seam, _marks(*holes)) is is_demanded
    turned = Seam(seam.under, seam.over, seam.end, seam.start)
    assert must_join(turned, _marks(*holes)) is is_demanded


def test_a_hang_point_takes_as_much_room_as_a_hole() -> None:
    short = Seam("A1", "B1", Point(0.0, 100.0), Point(60.0, 100.0))
    marks = TemplateMarks(SIZE, (Point(30.0, 150.0),), (Point(30.0, 110.0),), (), (), None, ())
    assert not must_join(short, marks)


def test_the_tenth_sheet_is_laid_over_the_ninth() -> None:
    seam = Seam("A9", "A10", Point(100, 0), Point(100, 200))
    solid = _line(100, 0, 100, 200)
    dashed = solid._replace(dash=(2.0, 1.0))
    assert not list(check_seam_line(seam, "A9", [dashed]))
    assert not list(check_seam_line(seam, "A10", [solid]))
    assert list(check_seam_line(seam, "A10", [dashed])) == ["the line of its seam with A9 is dashed"]
    right = Chain((Point(100, 47.5), Point(102.5, 50), Point(100, 52.5)))
    assert find_joins(seam, "A10", [right], [_line(100, 50, 107, 50)]) == [Point(100, 50)]
    assert find_joins(seam, "A9", [right], [_line(100, 50, 107, 50)]) == []
