"""The long rulers of the print test, drawn by hand: as long as is told, or not."""

from __future__ import annotations

import pytest

from templater.geometry import Point
from templater.verify.long_rulers import LongRulers, check_long_rulers, read_long_rulers
from templater.verify.model import Ink, Ring, Run, Stroke


def _run(text: str) -> Run:
    return Run(text, Point(10, 10), Point(1, 0), Point(0, 1), 3.5)


SAID = [_run("The long ruler across must be 180 mm,"), _run("The long ruler up must be 240 mm.")]


def _page(
    across: float = 180.0, up: float = 240.0, *, ring: float = 1.0, words: list[Run] = SAID
) -> Ink:
    """Two lines that end in small rings, one of them drawn from its end to its start."""
    x, y = 20.0 + across, 25.0 + up
    strokes = [
        Stroke(Point(x, 20), Point(20, 20), 0.35, (), None),
        Stroke(Point(15, 25), Point(15, y), 0.35, (), None),
        Stroke(Point(20, 50), Point(201, 50), 0.35, (), None),  # it ends in no ring
    ]
    return Ink(strokes, [Ring(Point(x, 20), ring, None), Ring(Point(15, y), ring, None)], runs=words)


def _judge(*pages: Ink, given: str = "") -> list[str]:
    return list(check_long_rulers([read_long_rulers(page, given) for page in pages]))


def test_long_rulers_that_are_true() -> None:
    assert read_long_rulers(_page(), "") == LongRulers(
        [("across", 180.0), ("up", 240.0)], {"across": [180.0], "up": [240.0]}
    )
    assert _judge(_page()) == []
    assert _judge(Ink(runs=SAID), _page(words=[])) == []
    assert (
        _judge(
            _page(words=[*SAID, _run("The long ruler up must be 9 mm")]),
            given="The long ruler up must be 9 mm",
        )
        == []
    )


@pytest.mark.parametrize(
    ("page", "told"),
    [
        (_page(180.02), ["the long ruler across measures 180.020 mm, not 180 mm"]),
        (_page(179.98), ["the long ruler across measures 179.980 mm, not 180 mm"]),
        (_page(up=239.98), ["the long ruler up measures 239.980 mm, not 240 mm"]),
        (_page(180.0 * 0.96), ["the long ruler across measures 172.800 mm, not 180 mm"]),
        (_page(180.0 * 0.94), ["the long ruler across is not drawn"]),
        (_page(ring=1.2), ["the long ruler across is not drawn", "the long ruler up is not drawn"]),
        (_page(words=SAID[:1]), ["it does not tell how long its rulers must be"]),
        (_page(words=[]), ["it does not tell how long its rulers must be"]),
    ],
)
def test_long_rulers_that_are_not(page: Ink, told: list[str]) -> None:
    assert _judge(page) == told


def test_other_lines_that_end_in_a_ring_are_no_rulers() -> None:
    page = _page()
    page.rings.append(Ring(Point(195, 60), 1.0, None))
    page.strokes.append(Stroke(Point(20, 60), Point(195, 60), 0.35, (), None))
    assert _judge(page) == []
