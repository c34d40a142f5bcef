"""Courses of two kinds, held against every cover of small pieces in whole millimetres."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache

from hypothesis import given, settings
from hypothesis import strategies as st

from templater.geometry import Box, Point, Size
from templater.layout.model import Margins
from templater.paper import Paper
from templater.printing.course_maker import CourseMaker
from templater.printing.model import PrintSetup
from templater.printing.pages import list_pages
from templater.printing.prices import HOLE, SHEET
from templater.printing.tile import tile_template
from tests.printing.brute_force import fewest_spans, least_cost

LAP = 2
KEEP = LAP + 10
"""What every sheet keeps, the last one of a course or the last course without its lap."""

Cost = tuple[int, int]
"""How often a hole is near a seam, then sheets."""

Holes = tuple[tuple[int, int], ...]
"""How far each hole lies along the courses and across them."""


def least_course(length: int, reach: int, places: Sequence[int]) -> Cost:
    """The least cost of one course: with as few sheets as can be, or with one more."""
    fewest = fewest_spans(length, reach, LAP)
    if fewest == 1:
        return 0, 1
    return min(
        (least_cost(length, reach, LAP, count=count, holes=places, hang_points=[])[0], count)
        for count in (fewest, fewest + 1)
    )


def least_courses(length: int, depth: int, reaches: Sequence[tuple[int, int]], holes: Holes) -> Cost:
    """The least cost of any courses; ``reaches`` tell how far a page of each kind reaches along, across.

    Cuts stand on whole millimetres. All bounds are whole numbers, and bounds on single cuts and on
    differences of cuts have a whole solution whenever they have any.
    """
    end = depth - LAP
    course = cache(least_course)

    def cost(reach: int, start: int, stop: int) -> Cost:
        """A course from one cut to the next; a hole near it counts as well as one in it."""
        low = start - 12 if start else -1
        high = stop + LAP + 12 if stop < end else depth + 1
        return course(length, reach, tuple(x for x, y in holes if low < y < high))

    best: dict[int, Cost] = {0: (0, 0)}
    found: list[Cost] = []
    for _ in range(1 + max(fewest_spans(depth, reach, LAP) for _, reach in reaches)):
        reached: dict[int, Cost] = {}
        for start, (near, sheets) in best.items():
            for along, across in reaches:
                steps = range(start + KEEP, min(start + across - LAP, end - 1) + 1)
                for stop in (*steps, *([end] if start + 10 <= end <= start + across - LAP else [])):
                    more_near, more_sheets = cost(along, start, stop)
                    if stop < end:
                        more_near += sum(stop - 12 < y < stop + LAP + 12 for _, y in holes)
                    total = near + more_near, sheets + more_sheets
                    reached[stop] = min(reached.get(stop, total), total)
        found += [reached.pop(end)] if end in reached else []
        best = reached
    return min(found)


@settings(max_examples=60, deadline=None)
@given(
    st.tuples(st.integers(40, 55), st.integers(40, 75)),
    st.integers(40, 150),
    st.integers(40, 150),
    st.lists(st.tuples(st.integers(0, 40), st.integers(0, 40)), max_size=5),
)
def test_no_courses_of_any_kind_cost_less(
    paper: tuple[int, int], width: int, height: int, shares: list[tuple[int, int]]
) -> None:
    short, long = sorted(paper)
    setup = PrintSetup(Paper("small", Size(short, long)), Margins(0, 0, 0, 0), LAP)
    extent = Box(0, 0, width, height)
    places = [(x * width // 40, y * height // 40) for x, y in shares]
    holes = [Point(x, height - y) for x, y in places]
    pages = {(short, long), (long, short)}
    rows = least_courses(width, height, sorted(pages), tuple(places))
    turned = tuple((y, x) for x, y in places)
    columns = least_courses(height, width, sorted(pages), turned)
    for are_columns, (near, sheets) in ((False, rows), (True, columns)):
        price = CourseMaker(extent, LAP, list_pages(setup), are_columns).cut(holes, []).price
        assert (price // HOLE, price % HOLE // SHEET) == (near, sheets)
    tiling = tile_template(extent, holes, [], setup)
    assert len(tiling.tiles) == min(rows, columns)[1]
    assert bool(tiling.near_seam) == (min(rows, columns)[0] > 0)
