"""Circles of four curves, and how round they must be."""

from __future__ import annotations

import pytest

from templater.geometry import Point
from templater.verify.ink.rings import read_ring
from templater.verify.model import UnreadableError
from tests.verify.near import near

# How far the handles of four curves lie from their ends, in radii: 4 (sqrt 2 - 1) / 3.
HANDLE = 0.5522847498


def _circle(radius: float, off: float = 0.0) -> list[Point]:
    """A circle about 40, 30 from its right on; its uppermost point is drawn too far out."""
    k, top = HANDLE * radius, radius + off
    r = radius
    ends = [
        (r, 0), (r, k), (k, top), (0, top), (-k, top), (-r, k), (-r, 0),
        (-r, -k), (-k, -r), (0, -r), (k, -r), (r, -k), (r, 0),
    ]  # fmt: skip
    return [Point(40 + x, 30 + y) for x, y in ends]


def test_a_circle_is_told_by_its_middle_and_radius() -> None:
    centre, radius, clip = read_ring(_circle(5.0), None)
    assert (near(centre.x), near(centre.y), near(radius), clip) == (40.0, 30.0, 5.0, None)


@pytest.mark.parametrize(
    ("radius", "off", "is_round"),
    [
        # The middle, a quarter of what the point is off away, takes part: 3/4 of it are left.
        (5.0, 0.012, True),  # 0.009 mm of 0.2 % of 5 mm, 0.01 mm
        (5.0, 0.015, False),
        (0.8, 0.006, True),  # 0.0045 mm of 0.005 mm, the least that is let be
        (0.8, 0.008, False),
        (0.8, -0.006, True),
        (0.8, -0.008, False),
    ],
)
def test_how_round_a_circle_must_be(radius: float, off: float, is_round: bool) -> None:
    if is_round:
        ring = read_ring(_circle(radius, off), None)
        # Its right end lies a quarter of the way above or under its middle.
        assert ring.radius_mm == near((radius**2 + (off / 4) ** 2) ** 0.5)
        return
    with pytest.raises(UnreadableError, match="a circle that is not round"):
        read_ring(_circle(radius, off), None)
