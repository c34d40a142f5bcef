"""Rulers drawn by hand: what is wrong with each is told, and which sheets must have them."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import pytest

from templater.geometry import Point, Size
from templater.verify.model import Stroke
from templater.verify.rulers import check_rulers, find_rulers
from templater.verify.straight import list_straight

A4 = Size(210.0, 297.0)
TENS = tuple(10.0 * number for number in range(11))
HALVES = (0.0, 12.7, 25.4, 38.1, 50.8, 63.5, 76.2, 88.9, 101.6)  # half inches of 12.7 mm
LINE = (0.0, 101.6)
X, Y = 30.0, 20.0


def _turn(point: Point) -> Point:
    return Point(point.y, point.x)


def _line(x0: float, y0: float, x1: float, y1: float) -> Stroke:
    return Stroke(Point(x0, y0), Point(x1, y1), 0.25, (), None)


def _ruler(
    tens: tuple[float, ...] = TENS,
    halves: tuple[float, ...] = HALVES,
    line: tuple[float, float] = LINE,
) -> Iterator[Stroke]:
    """A ruler that runs across: tens of millimetres above its line, half inches below."""
    yield _line(X + line[0], Y, X + line[1], Y)
    yield from (_line(X + tick, Y, X + tick, Y + 2.5) for tick in tens)
    yield from (_line(X + tick, Y - 2.5, X + tick, Y) for tick in halves)


def _up(ruler: Iterator[Stroke]) -> Iterator[Stroke]:
    return (each._replace(start=_turn(each.start), end=_turn(each.end)) for each in ruler)


def _turned_over(ruler: Iterator[Stroke]) -> Iterator[Stroke]:
    """The same with its half inches above."""
    return (
        each._replace(start=Point(each.start.x, -each.start.y), end=Point(each.end.x, -each.end.y))
        for each in ruler
    )


def _told(*strokes: Stroke, shown: Size = A4) -> list[str]:
    return list(check_rulers(find_rulers(*list_straight(strokes)), shown))


def test_true_rulers_long_and_short() -> None:
    assert _told(*_ruler(), *_up(_ruler())) == []
    short = _ruler(TENS[:6], HALVES[:5], (0.0, 50.8))
    assert _told(*short, *_up(_ruler())) == []


@pytest.mark.parametrize(
    ("ruler", "told"),
    [
        (lambda: _ruler(TENS[1:]), "a ruler {} is not whole: 10 and 9 ticks"),
        (lambda: _ruler(TENS, HALVES[:-1]), "a ruler {} is not whole: 11 and 8 ticks"),
        # 100 x 0.9998 and 4 in x 0.9998: 0.02 mm too short
        (
            lambda: _ruler(tuple(0.9998 * tick for tick in TENS)),
            "the ruler {} is not true: its 100 mm measure 99.980 mm, its 4 in 4.0000 in",
        ),
        (
            lambda: _ruler(TENS, tuple(0.9998 * tick for tick in HALVES)),
            "the ruler {} is not true: its 100 mm measure 100.000 mm, its 4 in 3.9992 in",
        ),
        (
            lambda: _ruler((*TENS[:5], 50.02, *TENS[6:])),
            "the ticks of the ruler {} are not where they must be",
        ),
        (
            lambda: _ruler(TENS, (*HALVES[:3], 38.08, *HALVES[4:])),
            "the ticks of the ruler {} are not where they must be",
        ),
        (
            lambda: _ruler(tuple(tick + 0.02 for tick in TENS), tuple(tick + 0.02 for tick in HALVES)),
            "the ticks of the ruler {} are not where they must be",
        ),
        (lambda: _ruler(line=(0.0, 101.62)), "the line of the ruler {} does not end at its last tick"),
        (lambda: _ruler(line=(0.0, 101.58)), "the line of the ruler {} does not end at its last tick"),
    ],
)
def test_what_is_wrong_with_a_ruler(ruler: Callable[[], Iterator[Stroke]], told: str) -> None:
    assert _told(*ruler(), *_up(_ruler())) == [told.format("across")]
    assert _told(*_turned_over(ruler()), *_up(_ruler())) == [told.format("across")]
    assert _told(*_ruler(), *_up(ruler())) == [told.format("up")]


def test_a_ruler_whose_ticks_stand_off_its_line_is_none() -> None:
    line, *ticks = _ruler()
    lifted = [
        each._replace(start=each.start.moved(0.0, 0.1), end=each.end.moved(0.0, 0.1)) for each in ticks
    ]
    assert _told(line, *lifted, *_up(_ruler())) == ["it has no ruler across"]


@pytest.mark.parametrize(
    ("strokes", "told"),
    [
        ([_line(X + 15.0, Y, X + 15.0, Y + 3.9)], ["a ruler across is not whole: 12 and 9 ticks"]),
        ([_line(X + 15.0, Y, X + 15.0, Y + 4.1)], []),  # a line of something else
        ([_line(X - 1.1, Y, X - 1.1, Y + 2.5), _line(X + 102.7, Y, X + 102.7, Y + 2.5)], []),
        # Lines with ticks, too long or too short for a ruler, or dashed.
        (list(_ruler(TENS[:5], HALVES[:5], (0.0, 112.0))), []),  # 101.6 and a tenth are 111.8
        (
            list(_ruler(TENS[:5], HALVES[:5], (0.0, 111.5))),
            ["a ruler across is not whole: 5 and 5 ticks"],
        ),
        (list(_ruler(TENS[:5], HALVES[:5], (0.0, 45.0))), []),  # 50.8 less a tenth are 45.7
        ([each._replace(dash=(2.0, 1.0)) for each in _ruler(TENS[:5])], []),
        # Lines with few ticks.
        (list(_ruler(TENS[:3], HALVES[:5])), []),
        (list(_ruler(TENS[:4], HALVES[:4])), ["a ruler across is not whole: 4 and 4 ticks"]),
    ],
)
def test_lines_that_may_be_taken_for_rulers_and_ticks(strokes: list[Stroke], told: list[str]) -> None:
    if len(strokes) > 2:  # in another place
        strokes = [
            each._replace(start=each.start.moved(0.0, 50.0), end=each.end.moved(0.0, 50.0))
            for each in strokes
        ]
    assert _told(*_ruler(), *_up(_ruler()), *strokes) == told


def test_a_line_with_ticks_alone() -> None:
    assert _told(*_ruler(TENS[:4], HALVES[:4]), shown=Size(50.0, 50.0)) == [
        "a ruler across is not whole: 4 and 4 ticks"
    ]


@pytest.mark.parametrize(
    ("shown", "is_demanded"),
    [
        (Size(75.0, 187.0), True),  # 14,025 mm2: half of A5, 148 x 210 / 2 = 15,540, and some less
        (Size(74.9, 297.0), False),
        (Size(297.0, 74.9), False),
        (Size(75.0, 186.0), False),  # 13,950 mm2
    ],
)
def test_which_sheets_must_have_rulers(shown: Size, is_demanded: bool) -> None:
    assert bool(_told(shown=shown)) is is_demanded
    assert bool(_told(*_ruler(), shown=shown)) is is_demanded
    assert bool(_told(*_up(_ruler()), shown=shown)) is is_demanded
