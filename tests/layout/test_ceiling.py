"""Faults in the points of a sloping ceiling, and in a wall's height beside or without one."""

import pytest

from tests.layout.files import WIDE, change, check_faults, check_wide, read_sound

CHECK = "check the number and its unit"
POINTS = "[[0, 9 ft], [16 ft, 6 ft]]"
CEILING = "ceiling: [[0, 9 ft], [40 ft, 9 ft], [50 ft, 6 ft]]"


@pytest.mark.parametrize(
    ("points", "fault"),
    [
        (
            "¦[[0, 9 ft]]",
            f"'ceiling' needs at least two points, but has 1 => write for example {POINTS}",
        ),
        (
            "¦[[0, 9 ft], [10, 8 ft], [10, 7 ft], [50 ft, 9 ft]]",
            "'ceiling' has a point 3 that is not right of point 2"
            " => list the points from the wall's left end to its right end",
        ),
        (
            "¦[[1, 9 ft], [50 ft, 8 ft]]",
            "'ceiling' does not start at the wall's left end => give the first point the distance 0",
        ),
        (
            "¦[[0, 9 ft], [49 ft, 8 ft]]",
            "'ceiling' does not end at the wall's right end"
            " => give the last point the wall's 'width' as its distance",
        ),
        (
            "[[0, 9 ft], ¦[50 ft]]",
            "'ceiling' needs points of a distance and a height each, but is a list of 1"
            f" => write for example {POINTS}",
        ),
        (
            "[[0, 9 ft], ¦50 ft]",
            "'ceiling' needs points of a distance and a height each, but is '50 ft'"
            f" => write for example {POINTS}",
        ),
        ("[[0, 9 ft], ¦[50 ft, 0]]", f"'ceiling' must be more than 0, but is '0' => {CHECK}"),
        ("¦9 ft", f"'ceiling' needs a list, but is '9 ft' => write for example 'ceiling: {POINTS}'"),
    ],
)
def test_ceilings(points: str, fault: str) -> None:
    check_wide(CEILING, f"ceiling: {points}", fault)


def test_a_height_beside_a_ceiling_must_be_its_highest_point() -> None:
    assert read_sound(change(CEILING, f"{CEILING}, height: 108", WIDE)).wall.size.height == 108 * 25.4
    check_wide(
        CEILING,
        f"{CEILING}, height: ¦9 ft 1 in",
        "'height' is '9 ft 1 in', but the ceiling's highest point is not"
        " => remove 'height', or mend the ceiling",
    )


def test_a_wall_without_ceiling_needs_a_height() -> None:
    check_faults(
        change("{width: 12 ft, height: 8 ft}", "¦{width: 12 ft}"),
        "'wall' needs 'height' => add for example 'height: 34 in'",
    )
    check_faults(
        change("height: 8 ft", "¦heigth: 8 ft"),
        "'heigth' is not a key of 'wall' (did you mean 'height'?) => use width, ceiling, height,"
        " surface, board, studs, walkway, earthquake or outside",
    )
