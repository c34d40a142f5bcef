from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.geometry import Size
from templater.layout.model import Align, Arrangement
from templater.placement.arrange import arrange_group
from tests.builders import group

SIZES = st.lists(st.builds(Size, st.floats(10, 3000), st.floats(10, 3000)), min_size=1, max_size=8)


@given(SIZES, st.floats(0, 500), st.sampled_from([Align.TOP, Align.CENTRE, Align.BOTTOM]))
def test_a_row_stands_gap_by_gap_from_its_corner(sizes: list[Size], gap: float, align: Align) -> None:
    boxes = arrange_group(group("row", "", gap=gap, align=align), sizes)
    assert boxes[0].x0 == 0
    assert min(box.y0 for box in boxes) == pytest.approx(0, abs=1e-9)
    assert [box.size for box in boxes] == [pytest.approx(size) for size in sizes]
    for left, right in pairwise(boxes):
        assert right.x0 - left.x1 == pytest.approx(gap, abs=1e-9)


@given(SIZES, st.floats(0, 500), st.sampled_from([Align.LEFT, Align.CENTRE, Align.RIGHT]))
def test_a_column_stands_gap_by_gap_down_to_its_corner(
    sizes: list[Size], gap: float, align: Align
) -> None:
    column = group("column", "", arrange=Arrangement.COLUMN, gap=gap, align=align)
    boxes = arrange_group(column, sizes)
    assert boxes[-1].y0 == 0
    assert min(box.x0 for box in boxes) == pytest.approx(0, abs=1e-9)
    assert [box.size for box in boxes] == [pytest.approx(size) for size in sizes]
    for upper, lower in pairwise(boxes):
        assert upper.y0 - lower.y1 == pytest.approx(gap, abs=1e-9)
