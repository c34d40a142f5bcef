"""Guide lines drawn by hand: where each must lie, which a sheet shows, and where they are left out."""

from __future__ import annotations

import pytest

from templater.geometry import Box, Point, Size
from templater.verify.guides import (
    Guide,
    check_guides_drawn,
    check_guides_lie,
    check_guides_whole,
    list_guides,
)
from templater.verify.model import Chain, Ink, Run
from templater.verify.rulers import Ruler
from templater.verify.straight import Straight
from templater.verify.template_marks import TemplateMarks

DATUM, CENTRE = 6, 4  # dashes and gaps of their lines
MIDDLE = Box(-10.0, -10.0, 210.0, 310.0)


def _marks(datum: float | None = 180.0) -> TemplateMarks:
    """200 mm wide, 300 mm tall, its level line at 250 mm; its middles are at 100 and 150 mm."""
    hole = (Point(100.0, 250.0),)
    return TemplateMarks(Size(200.0, 300.0), hole, hole, (), (250.0,), datum, ())


def _line(across: float, low: float = 0.0, high: float = 200.0, dashes: int = 0) -> Straight:
    return Straight(across, low, high, (low, high), 0.18 if dashes else 0.25, dashes)


LEVEL = [_line(250.0), _line(180.0, dashes=DATUM), _line(150.0, dashes=CENTRE)]
UPRIGHT = [_line(100.0, high=300.0, dashes=CENTRE)]


def test_guide_lines_where_they_must_lie() -> None:
    assert list(check_guides_lie(LEVEL, UPRIGHT, _marks())) == []
    # What is as wide or as long as no level line, or too far away to be one that is a little off.
    others = [
        _line(250.5, 0.0, 25.0),
        _line(250.5)._replace(width_mm=0.35),
        _line(251.1),
        _line(248.9),
        _line(250.5, dashes=2),
    ]
    assert list(check_guides_lie([*LEVEL, *others], UPRIGHT, _marks())) == []


@pytest.mark.parametrize(
    ("level", "upright", "told"),
    [
        (_line(250.02), None, "the level line is 0.020 mm off"),
        (_line(249.02, 0.0, 25.1), None, "the level line is 0.980 mm off"),
        (_line(179.98, dashes=DATUM), None, "the datum is 0.020 mm off"),
        (_line(150.02, dashes=CENTRE), None, "the level centre line is 0.020 mm off"),
        (None, _line(99.98, dashes=CENTRE), "the upright centre line is 0.020 mm off"),
    ],
)
def test_a_guide_line_out_of_place(level: Straight | None, upright: Straight | None, told: str) -> None:
    lines = [*LEVEL, level] if level else LEVEL
    assert list(check_guides_lie(lines, [*UPRIGHT, upright] if upright else UPRIGHT, _marks())) == [told]


def test_a_datum_on_a_piece_that_it_does_not_cross() -> None:
    told = ["the datum is drawn where the plan has none"]
    assert list(check_guides_lie(LEVEL, UPRIGHT, _marks(None))) == told


def _listed(
    keep: Box, datum: float | None = 180.0
) -> list[tuple[str, bool, float, tuple[float, float]]]:
    guides = list_guides([], [], keep, _marks(datum))
    return [(name, is_level, place, span) for name, is_level, place, span, _, _ in guides]


def test_which_guide_lines_a_sheet_must_show() -> None:
    level, datum = ("the level line", True, 250.0), ("the datum", True, 180.0)
    centre, upright = ("the level centre line", True, 150.0), ("the upright centre line", False, 100.0)
    whole = (0.0, 200.0)
    assert _listed(MIDDLE) == [
        (*level, whole), (*datum, whole), (*centre, whole), (*upright, (0.0, 300.0)),
    ]  # fmt: skip
    # Not what runs along the very edge of what is kept, where the next sheet has it too.
    assert _listed(Box(-5.0, 150.0, 100.0, 250.0)) == [(*datum, (0.0, 100.0))]
    assert _listed(Box(80.0, 149.9, 320.0, 179.9)) == [
        (*centre, (80.0, 200.0)), (*upright, (149.9, 179.9)),
    ]  # fmt: skip
    assert _listed(Box(201.0, 0.0, 320.0, 300.0)) == []
    # A datum so near the middle stands for the centre line.
    assert [name for name, *_ in _listed(MIDDLE, 150.4)][1:3] == ["the datum", "the upright centre line"]
    assert [name for name, *_ in _listed(MIDDLE, 149.6)][1:3] == ["the datum", "the upright centre line"]
    assert [name for name, *_ in _listed(MIDDLE, 150.6)][1:3] == ["the datum", "the level centre line"]
    assert [name for name, *_ in _listed(MIDDLE, None)][1:3] == [centre[0], upright[0]]


def test_the_lines_that_draw_a_guide_line_are_those_at_its_place() -> None:
    guides = list_guides([*LEVEL, _line(180.02, dashes=DATUM)], UPRIGHT, MIDDLE, _marks())
    drawn = [(lines, is_strict) for _, _, _, _, lines, is_strict in guides]
    assert drawn == [
        ((LEVEL[0],), True), ((LEVEL[1],), True), ((LEVEL[2],), False), ((UPRIGHT[0],), False),
    ]  # fmt: skip


def _guide(*drawn: tuple[float, float], is_level: bool = True, is_strict: bool = True) -> Guide:
    """A line at 250 mm, 200 mm long, of which some is drawn."""
    lines = tuple(_line(250.0, *each) for each in drawn)
    return Guide("the line", is_level, 250.0, (0.0, 200.0), lines, is_strict)


def _whole(
    guide: Guide,
    *holes: Point,
    rulers: tuple[Ruler, ...] = (),
    ink: Ink | None = None,
    others: tuple[Box, ...] = (),
) -> list[str]:
    return list(check_guides_whole([guide], holes, rulers, ink or Ink(), others))


@pytest.mark.parametrize("is_level", [True, False])
def test_a_guide_line_is_left_out_at_holes(is_level: bool) -> None:
    # A hole 6.9 mm beside it takes 9.2 mm to both sides: 6.9^2 + 9.2^2 = 11.5^2.
    holes = [Point(100.0, 243.1), Point(100.0, 256.9), Point(100.0, 238.4)]
    if not is_level:
        holes = [Point(y, x) for x, y in holes]
    assert _whole(_guide((0.0, 90.8), (109.2, 200.0), is_level=is_level), holes[0]) == []
    assert _whole(_guide((0.0, 90.8), (109.2, 200.0), is_level=is_level), holes[1]) == []
    for drawn in (((0.0, 90.2), (109.2, 200.0)), ((0.0, 90.8), (109.8, 200.0))):
        assert len(_whole(_guide(*drawn, is_level=is_level), holes[0])) == 1
    assert _whole(_guide((0.0, 90.8), (109.2, 200.0), is_level=is_level), holes[2]) == [
        "the line is not drawn from 90.8 mm on"
    ]


def test_what_is_hidden_of_a_guide_line_is_not_drawn() -> None:
    hidden = _guide((0.0, 200.0))
    half = hidden._replace(lines=(_line(250.0)._replace(seen=(0.0, 100.0)),))
    none = hidden._replace(lines=(_line(250.0)._replace(seen=None),))
    assert _whole(hidden) == []
    assert _whole(half) == ["the line is not drawn from 100.0 mm on"]
    assert _whole(none) == ["the line is not drawn from 0.0 mm on"]
    assert list(check_guides_drawn([hidden, half], [])) == []
    assert list(check_guides_drawn([none], [])) == ["the line is not drawn"]


@pytest.mark.parametrize(
    ("across", "low", "high", "is_level", "gap"),
    [
        # Along the line, 9 mm of figures to its side, 2.5 mm before it and 3.5 mm behind it.
        (258.9, 30.0, 131.6, True, (27.5, 135.1)),
        (241.1, 30.0, 131.6, True, (27.5, 135.1)),
        (259.1, 30.0, 131.6, True, None),
        (240.9, 30.0, 131.6, True, None),
        # Across the line.
        (60.0, 200.0, 301.6, False, (51.0, 69.0)),
        (60.0, 252.4, 354.0, False, (51.0, 69.0)),
        (60.0, 252.6, 354.2, False, None),
        (60.0, 145.0, 246.6, False, (51.0, 69.0)),
        (60.0, 144.8, 246.4, False, None),
    ],
)
def test_a_guide_line_is_left_out_at_rulers(
    across: float, low: float, high: float, is_level: bool, gap: tuple[float, float] | None
) -> None:
    rulers = (Ruler(_line(across, low, high), (), (), is_level),)
    first, last = gap or (55.0, 65.0)
    assert bool(_whole(_guide((0.0, first), (last, 200.0)), rulers=rulers)) is (gap is None)
    if gap is not None:
        assert _whole(_guide((0.0, first - 0.6), (last, 200.0)), rulers=rulers)
        assert _whole(_guide((0.0, first), (last + 0.6, 200.0)), rulers=rulers)


def _frame(x0: float, y0: float, x1: float, y1: float) -> Chain:
    corners = Point(x0, y0), Point(x1, y0), Point(x1, y1), Point(x0, y1)
    return Chain((*corners, corners[0]))


@pytest.mark.parametrize(
    ("low", "high", "is_left_out"),
    [(247, 253, True), (252.4, 260, True), (252.6, 260, False), (240, 247.6, True), (240, 247.4, False)],
)
def test_a_guide_line_is_left_out_at_framed_blocks(low: float, high: float, is_left_out: bool) -> None:
    guide = _guide((0.0, 37.5), (82.5, 200.0))  # 2.5 mm round 40 to 80
    level, upright = _frame(40.0, low, 80.0, high), _frame(low, 40.0, high, 80.0)
    assert bool(_whole(guide, ink=Ink(chains=[level]))) is not is_left_out
    assert bool(_whole(guide._replace(is_level=False), ink=Ink(chains=[upright]))) is not is_left_out
    assert _whole(_guide((0.0, 36.9), (82.5, 200.0)), ink=Ink(chains=[level]))
    assert _whole(_guide((0.0, 37.5), (83.1, 200.0)), ink=Ink(chains=[level]))
    assert _whole(guide, ink=Ink(chains=[Chain(level.points[:4])]))


def _words(x: float, y: float, *, is_level: bool, letters: int = 10) -> Run:
    """Small letters of 3.5 mm, at most 0.62 em wide: ten are 21.7 mm."""
    right, up = Point(1.0, 0.0), Point(0.0, 1.0)
    axes = (right, up) if is_level else (up, Point(-1.0, 0.0))
    return Run("o" * letters, Point(x, y), *axes, 3.5)


@pytest.mark.parametrize(
    ("runs", "gap"),
    [
        ([_words(50, 258.9, is_level=True)], (47.0, 74.7)),  # 3 mm of room at both ends
        ([_words(50, 241.1, is_level=True)], (47.0, 74.7)),
        ([_words(50, 259.1, is_level=True)], None),
        ([_words(50, 240.9, is_level=True)], None),
        ([_words(60, 240, is_level=False)], (53.5, 66.5)),  # across: an em and 3 mm of room
        ([_words(60, 252.9, is_level=False)], (53.5, 66.5)),
        ([_words(60, 253.1, is_level=False)], None),
        ([_words(60, 225.4, is_level=False)], (53.5, 66.5)),  # 225.4 + 21.7 + 3 = 250.1
        ([_words(60, 225.2, is_level=False)], None),
        # A row is taken as long as the longest under the same edge: 20 letters are 43.4 mm.
        ([_words(50, 255, is_level=True), _words(50, 280, is_level=True, letters=20)], (47.0, 96.4)),
        ([_words(50, 280, is_level=True, letters=20), _words(50, 255, is_level=True)], (47.0, 96.4)),
        ([_words(50, 255, is_level=True), _words(50.04, 280, is_level=True, letters=20)], (47.0, 96.4)),
        (
            [_words(60, 210.04, is_level=False), _words(80, 210, is_level=False, letters=20)],
            (53.5, 86.5),
        ),
        ([_words(60, 210, is_level=False), _words(80, 210, is_level=False, letters=20)], (53.5, 86.5)),
    ],
)
def test_a_centre_line_is_left_out_at_words(runs: list[Run], gap: tuple[float, float] | None) -> None:
    first, last = gap or (50.0, 60.1)
    for is_level in (True, False):
        ink = Ink(runs=runs if is_level else [_turned(run) for run in runs])
        centre = _guide((0.0, first), (last, 200.0), is_level=is_level, is_strict=False)
        told = [] if gap else ["the line is not drawn"]
        assert _whole(centre, ink=ink) == told
        # 10 mm may be wanting anywhere, but no more; of other guide lines nothing may.
        if gap is not None:
            for less, more in ((10.1, 0.0), (0.0, 10.1)):
                short = ((0.0, first - less), (last + more, 200.0))
                assert _whole(_guide(*short, is_level=is_level, is_strict=False), ink=ink)
            for less, more in ((9.9, 0.0), (0.0, 9.9)):
                short = ((0.0, first - less), (last + more, 200.0))
                assert not _whole(_guide(*short, is_level=is_level, is_strict=False), ink=ink)
        assert _whole(centre._replace(is_strict=True), ink=ink)


def _turned(run: Run) -> Run:
    """The same words, along a line that runs up what they are along one that runs across."""
    return run._replace(
        at=Point(run.at.y, run.at.x),
        right=Point(run.right.y, run.right.x),
        up=Point(run.up.y, run.up.x),
    )


def test_a_centre_line_is_left_out_where_another_sheet_shows_it() -> None:
    centre = _guide((0.0, 60.0), (90.0, 200.0), is_strict=False)
    assert _whole(centre) == ["the line is not drawn"]
    assert _whole(centre, others=(Box(60.0, 200.0, 90.0, 250.0),)) == []
    assert _whole(centre, others=(Box(60.0, 250.0, 90.0, 300.0),)) == []
    assert _whole(centre, others=(Box(60.0, 250.1, 90.0, 300.0),))
    assert _whole(centre, others=(Box(60.0, 200.0, 90.0, 249.9),))
    assert _whole(centre._replace(is_level=False), others=(Box(200.0, 60.0, 250.0, 90.0),)) == []
    assert _whole(centre._replace(is_strict=True), others=(Box(60.0, 200.0, 90.0, 250.0),))


def test_how_much_of_a_guide_line_a_drawing_must_show() -> None:
    # 0.3 of 200 mm of a level line or datum, 0.01 of a centre line.
    assert list(check_guides_drawn([_guide((0.0, 30.0), (150.0, 180.1))], [])) == []
    assert list(check_guides_drawn([_guide((0.0, 30.0), (150.0, 179.9))], [])) == [
        "the line is not drawn"
    ]
    assert list(check_guides_drawn([_guide((10.0, 12.1), is_strict=False)], [])) == []
    assert list(check_guides_drawn([_guide((10.0, 11.9), is_strict=False)], [])) == [
        "the line is not drawn"
    ]


def test_a_line_that_holes_leave_no_room_for_is_not_missing() -> None:
    # The line runs from 0 to 200 mm at 250; it is left out within 11.5 mm of a hole. Holes every 20 mm
    # from 10 to 190 leave nothing of it; with none between 50 and 150 a stretch is left.
    bare = [_guide()]
    crowded = [Point(float(along), 250.0) for along in range(10, 200, 20)]
    assert list(check_guides_drawn(bare, crowded)) == []
    parted = [hole for hole in crowded if not 50 < hole.x < 150]
    assert list(check_guides_drawn(bare, parted)) == ["the line is not drawn"]
