"""Rectangles on one page: worked cases, and what must hold of any packing."""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templater.geometry import Box, Point, Size
from templater.printing.nest import nest


@pytest.mark.parametrize(
    ("sizes", "area", "fits"),
    [
        # Two cards of 108 x 159 stand beside each other on 254 x 203.2 (216 <= 254), three do not.
        ([Size(108, 159)] * 2, Size(254, 203.2), True),
        ([Size(108, 159)] * 3, Size(254, 203.2), False),
        # Four fill 216 x 318 to the last; a thousandth of a mm less is too little.
        ([Size(108, 159)] * 4, Size(216, 318), True),
        ([Size(108, 159)] * 4, Size(215.999, 318), False),
        # Turned it would fit.
        ([Size(100, 50)], Size(60, 120), False),
        ([], Size(60, 120), True),
    ],
)
def test_what_fits_is_found(sizes: list[Size], area: Size, fits: bool) -> None:
    assert bool(list(nest(sizes, area))) == fits


def test_a_packing_begins_at_the_top_left() -> None:
    assert next(nest([Size(30, 40)], Size(100, 100))) == (Point(0, 0),)


SIDES = st.floats(20, 200)


@settings(max_examples=60, deadline=None)
@given(st.lists(st.builds(Size, SIDES, SIDES), min_size=1, max_size=8), st.builds(Size, SIDES, SIDES))
def test_nothing_overlaps_or_sticks_out(sizes: list[Size], area: Size) -> None:
    area = Size(area.width * 2, area.height * 3)
    for corners in nest(sizes, area):
        boxes = [Box.of(corner, size) for corner, size in zip(corners, sizes, strict=True)]
        assert all(Box(0, 0, *area).holds(box, slack=0.002) for box in boxes)
        assert not any(
            one.grown(-0.002).meets(other.grown(-0.002)) for one, other in combinations(boxes, 2)
        )
