"""Sheet names: courses by letter without I and O, places by number."""

from __future__ import annotations

import pytest

from templater.printing.sheet_names import name_course, name_sheet


# Counted by hand: 24 letters, so the 25th course (24) is AA and the 49th (48) is BA.
@pytest.mark.parametrize(
    ("course", "name"),
    [
        (0, "A"),
        (7, "H"),
        (8, "J"),
        (12, "N"),
        (13, "P"),
        (23, "Z"),
        (24, "AA"),
        (31, "AH"),
        (32, "AJ"),
        (47, "AZ"),
        (48, "BA"),
        (24 + 24 * 24 - 1, "ZZ"),
        (24 + 24 * 24, "AAA"),
    ],
)
def test_courses_are_lettered_without_i_and_o(course: int, name: str) -> None:
    assert name_course(course) == name


def test_places_count_from_one() -> None:
    assert name_sheet(0, 0) == "A1"
    assert name_sheet(8, 11) == "J12"


def test_no_two_courses_share_a_name() -> None:
    assert len({name_course(course) for course in range(700)}) == 700
