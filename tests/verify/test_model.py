"""Ink in a box and from another origin, how long words are, and which texts a layout brings."""

from __future__ import annotations

from dataclasses import replace

import pytest

from templater.geometry import Box, Point
from templater.verify.model import Chain, Findings, Ink, Ring, Run, Stroke
from tests.verify import gull

BOX = Box(10.0, 20.0, 110.0, 70.0)


def _ink(x: float, y: float, clip: Box | None = None) -> Ink:
    """A line of 5 mm, a ring, a chain, words and an area from or about a point."""
    at = Point(x, y)
    chain = () if clip else (Chain((at, at.moved(5, 0), at.moved(5, 5))),)
    return Ink(
        [Stroke(at, at.moved(5, 0), 0.25, (2.0, 1.0), clip)],
        [Ring(at, 30.0, clip)],
        list(chain),
        [Run("UP", at, Point(1, 0), Point(0, 1), 3.5)],
        [Box(x - 1, y - 1, x + 1, y + 1)],
    )


def _count(ink: Ink) -> tuple[int, ...]:
    return len(ink.strokes), len(ink.rings), len(ink.chains), len(ink.runs), len(ink.areas)


@pytest.mark.parametrize(
    ("x", "y", "count"),
    [
        (40, 40, (1, 1, 1, 1, 1)),
        (9.995, 40, (1, 1, 1, 1, 1)),
        (9.98, 40, (0, 0, 0, 0, 1)),
        (106, 40, (0, 1, 0, 1, 1)),
        (40, 66, (1, 1, 0, 1, 1)),
        (40, 70.5, (0, 0, 0, 0, 1)),
        (8.9, 40, (0, 0, 0, 0, 0)),
        (40, 71.1, (0, 0, 0, 0, 0)),
    ],
)
def test_what_of_ink_lies_in_a_box(x: float, y: float, count: tuple[int, ...]) -> None:
    assert _count(_ink(x, y).within(BOX)) == count


@pytest.mark.parametrize(
    ("clip", "is_in"),
    [
        (Box(20, 30, 60, 60), True),
        (BOX.grown(0.005), True),
        (BOX.grown(0.02), False),
        (Box(0, 30, 60, 60), False),
    ],
)
def test_what_is_clipped_to_a_box_lies_in_it(clip: Box, is_in: bool) -> None:
    for x in (0.0, 40.0):
        assert _count(_ink(x, 40.0, clip).within(BOX))[:2] == (is_in, is_in)


def test_ink_from_another_origin() -> None:
    clip = Box(0, 0, 90, 90)
    assert _ink(10, 20, clip).moved(3, -4) == _ink(13, 16, Box(3, -4, 93, 86))
    assert _ink(10, 20).moved(3, -4) == _ink(13, 16)


@pytest.mark.parametrize(
    ("text", "ems"),
    [("ooo", 1.86), ("OOO", 3.15), ("moW", 2.72), ("Ωw", 2.1), ("", 0.0), ("\u024f\u0250", 1.67)],
)  # 0.62 or 1.05 em a letter
def test_how_long_words_are_at_most(text: str, ems: float) -> None:
    run = Run(text, Point(0, 0), Point(2, 0), Point(0, 2), 4.0)
    assert run.longest_mm == pytest.approx(4.0 * ems)
    assert run.is_level
    assert not run._replace(right=Point(0, -2)).is_level


def test_findings_are_gathered_in_their_order() -> None:
    found = Findings.gather([Findings(("a",), (0.1,)), Findings(), Findings(("b", "c"), (0.2, 0.3))])
    assert found == Findings(("a", "b", "c"), (0.1, 0.2, 0.3))


def test_the_texts_that_a_layout_brings() -> None:
    assert "Gull" in gull.expected().given.splitlines()
    named = replace(gull.plan(), for_whom="The \t keeper")
    assert "The keeper" in replace(gull.expected(), plan=named).given.splitlines()
