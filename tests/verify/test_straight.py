"""Level and upright lines as they are told, and what a clip, or other lines, leave of them."""

from __future__ import annotations

import pytest

from templater.geometry import Box, Point
from templater.verify.model import Stroke
from templater.verify.straight import Straight, list_straight, measure_last_gap
from templater.verify.stretches import leave, measure
from tests.verify.near import near

CLIP = Box(20.0, 40.0, 80.0, 90.0)


def _stroke(x0: float, y0: float, x1: float, y1: float, clip: Box | None = None) -> Stroke:
    return Stroke(Point(x0, y0), Point(x1, y1), 0.35, (2.0, 1.0), clip)


@pytest.mark.parametrize("is_turned", [False, True])
def test_a_line_is_told_from_its_low_end_whichever_way_it_was_drawn(is_turned: bool) -> None:
    stroke = _stroke(70.0, 50.002, 10.0, 50.0) if is_turned else _stroke(10.0, 50.0, 70.0, 50.002)
    (line,), none = list_straight([stroke])
    assert none == []
    assert line == Straight(near(50.001), 10.0, 70.0, (10.0, 70.0), 0.35, 2)
    assert (line.length_mm, line.middle) == (60.0, 40.0)
    stroke = _stroke(50.002, 70.0, 50.0, 10.0) if is_turned else _stroke(50.0, 10.0, 50.002, 70.0)
    none, (line,) = list_straight([stroke])
    assert none == []
    assert line == Straight(near(50.001), 10.0, 70.0, (10.0, 70.0), 0.35, 2)


def test_what_leans_or_has_no_length_is_neither_level_nor_upright() -> None:
    strokes = [_stroke(0, 0, 60, 0.02), _stroke(0, 0, 0.02, 60), _stroke(30, 30, 30, 30)]
    assert list_straight(strokes) == ([], [])


@pytest.mark.parametrize(
    ("across", "low", "high", "seen"),
    [
        (50, 10, 100, (20, 80)),
        (50, 30, 60, (30, 60)),
        (50, 10, 60, (20, 60)),
        (50, 30, 100, (30, 80)),
        (50, 0, 19, None),
        (50, 81, 99, None),
        (40, 30, 60, (30, 60)),
        (39.99, 30, 60, (30, 60)),  # on the very edge it is half seen
        (90.01, 30, 60, (30, 60)),
        (39.97, 30, 60, None),
        (90.03, 30, 60, None),
    ],
)
def test_what_a_clip_leaves_of_a_line(
    across: float, low: float, high: float, seen: tuple[float, float] | None
) -> None:
    (level,), _ = list_straight([_stroke(low, across, high, across, CLIP)])
    assert level.seen == seen
    turned = Box(CLIP.y0, CLIP.x0, CLIP.y1, CLIP.x1)
    _, (upright,) = list_straight([_stroke(across, low, across, high, turned)])
    assert upright.seen == seen


@pytest.mark.parametrize(
    ("length", "dash", "phase", "gap"),
    [
        # Dashes of 3, gaps of 1: 10 is 2 into a dash, 11 ends with one, 11.5 is 0.5 into a gap.
        (10.0, (3.0, 1.0), 0.0, 0.0),
        (11.0, (3.0, 1.0), 0.0, 0.0),
        (11.5, (3.0, 1.0), 0.0, 0.5),
        (10.5, (3.0, 1.0), 1.0, 0.5),
        (12.5, (3.0, 1.0), 0.0, 0.0),
        # 6, a gap of 2, 1, a gap of 3: once 12, so that 23 is 11, or 2 into the second gap.
        (23.0, (6.0, 2.0, 1.0, 3.0), 0.0, 2.0),
        (19.0, (6.0, 2.0, 1.0, 3.0), 0.0, 1.0),
        (20.0, (6.0, 2.0, 1.0, 3.0), 0.0, 2.0),
        (20.5, (6.0, 2.0, 1.0, 3.0), 0.0, 0.0),
        (10.0, (3.0,), 0.0, 1.0),  # a dash of 3, a gap of 3
        (10.0, (0.0, 0.0), 0.0, 0.0),
        (10.0, (-3.0, 4.0), 0.0, 0.0),
    ],
)
def test_the_gap_that_a_dashed_line_ends_with(
    length: float, dash: tuple[float, ...], phase: float, gap: float
) -> None:
    assert measure_last_gap(length, dash, phase) == near(gap)


@pytest.mark.parametrize(
    ("start", "end", "seen"),
    [
        # Dashes of 2, gaps of 1, a clip from 20 to 80: 50.5 long, it ends 0.5 into its 17th gap.
        (29.9, 80.4, (29.9, 80.4)),  # 0.4 of the gap is hidden, and no ink
        (30.2, 80.7, (30.2, 80.0)),  # 0.2 of the dash before it is hidden too
        (70.1, 19.6, (19.6, 70.1)),  # the same the other way
        (69.8, 19.3, (20.0, 69.8)),
        (19.6, 70.1, (20.0, 70.1)),  # a line starts with a dash
        (25.0, 75.5, (25.0, 75.5)),
        (90.0, 140.5, None),
    ],
)
def test_a_clip_that_hides_but_a_gap_hides_nothing(
    start: float, end: float, seen: tuple[float, float] | None
) -> None:
    (level,), _ = list_straight([_stroke(start, 50, end, 50, CLIP)])
    assert level.seen == seen
    turned = Box(CLIP.y0, CLIP.x0, CLIP.y1, CLIP.x1)
    _, (upright,) = list_straight([_stroke(50, start, 50, end, turned)])
    assert upright.seen == seen
    (plain,), _ = list_straight([_stroke(start, 50, end, 50, CLIP)._replace(dash=())])
    assert plain.seen is None or (plain.seen[0] >= 20 and plain.seen[1] <= 80)


@pytest.mark.parametrize(
    ("taken", "left"),
    [
        ([], [(10, 90)]),
        ([(0, 20), (60, 70)], [(20, 60), (70, 90)]),
        ([(60, 70), (0, 20), (65, 80)], [(20, 60), (80, 90)]),
        ([(20, 60), (30, 40)], [(10, 20), (60, 90)]),
        ([(0, 100)], []),
        ([(95, 99)], [(10, 90)]),
        ([(10.4, 50), (50.4, 89.6)], []),  # half a millimetre is let be
        ([(10.6, 50), (50.6, 89.4)], [(10, 10.6), (50, 50.6), (89.4, 90)]),
        ([(89.6, 95)], [(10, 89.6)]),
        ([(0, 89.6), (95, 99)], []),
    ],
)
def test_what_others_leave_of_a_stretch(
    taken: list[tuple[float, float]], left: list[tuple[float, float]]
) -> None:
    assert list(leave((10, 90), taken, 0.5)) == left
    assert measure(left) == pytest.approx(sum(high for _, high in left) - sum(low for low, _ in left))
