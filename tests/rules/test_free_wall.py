"""The move that frees something is the shortest of all moves, tried inch by inch."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templater.geometry import Box
from templater.rules.free_wall import find_free_move
from tests.builders import INCH
from tests.rules.plans import box, hung, wall

WIDTH, HEIGHT = 30, 16
Square = tuple[int, int, int, int]
"""Left, bottom, width and height, inches."""

SQUARES = st.tuples(st.integers(0, 24), st.integers(0, 11), st.integers(2, 6), st.integers(2, 5))


def are_free(moved: Iterable[Square], taken: Sequence[Square], dx: int, dy: int) -> bool:
    """Whether all are on the wall and over nothing, after a move of whole inches."""
    places = [(x + dx, y + dy, x + dx + width, y + dy + height) for x, y, width, height in moved]
    return all(
        x0 >= 0
        and y0 >= 0
        and x1 <= WIDTH
        and y1 <= HEIGHT
        and all(
            x1 <= left or left + width <= x0 or y1 <= bottom or bottom + height <= y0
            for left, bottom, width, height in taken
        )
        for x0, y0, x1, y1 in places
    )


@settings(max_examples=200, deadline=None)
@given(st.lists(SQUARES, min_size=1, max_size=2), st.lists(SQUARES, max_size=14), SQUARES)
def test_the_shortest_move_is_found(moved: list[Square], others: list[Square], zone: Square) -> None:
    pieces = [hung(f"moved {number}", box(*each)) for number, each in enumerate(moved)]
    rest = [hung(f"other {number}", box(*each)) for number, each in enumerate(others)]
    plan = wall([*pieces, *rest], width=WIDTH, height=HEIGHT)
    found = find_free_move(pieces, [Box(*box(*zone))], plan, lambda _: 0)
    tried = product(range(-WIDTH, WIDTH + 1), range(-HEIGHT, HEIGHT + 1))
    free = [move for move in tried if are_free(moved, [*others, zone], *move)]
    along = [abs(dx) + abs(dy) for dx, dy in free if 0 in (dx, dy)]
    shortest = min(along or [abs(dx) + abs(dy) for dx, dy in free], default=None)
    if shortest is None or found is None:
        assert found is None
        assert shortest is None
    else:
        assert abs(found.x) + abs(found.y) == pytest.approx(shortest * INCH)
        assert along == [] or 0.0 in found
