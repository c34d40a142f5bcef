"""The tables of what is there besides the pieces: furniture, openings and fixtures, the ceiling."""

from __future__ import annotations

from dataclasses import replace

from templater.errors import Place
from templater.geometry import Box, Point, Size
from templater.layout.model import Obstacle
from templater.scene.overview.chapters import Chapter
from templater.scene.overview.wall_tables import list_ceiling, list_furniture, list_obstacles
from tests.scene.walls import bench_wall, make_wall

WIDE = 250.0
ATTIC = (Point(0, 1500), Point(1000, 2600), Point(2500, 2600), Point(4000, 1000))
BARE = make_wall([], Size(4000, 2600))


def headings(chapter: Chapter) -> list[str]:
    return [column.heading.replace("\n", " ") for column in chapter.columns]


def test_furniture_is_told_by_its_left_edge_and_its_middle() -> None:
    (chapter,) = list_furniture(bench_wall(), WIDE)
    assert chapter.heading == "Furniture"
    assert headings(chapter) == [
        "Key",
        "Furniture",
        "Width × height",
        "Left edge, from the left end",
        "Middle, from the left end",
    ]
    # By hand: from 30 to 110 in, 34 in high; 80 in = 2032 mm, 34 in = 863.6 mm, 30 in = 762 mm, and
    # its middle is at 70 in = 1778 mm.
    size = "80 × 34 in (2032 × 864 mm)"
    assert chapter.rows == (("F1", "boot bench", size, "30 in (762 mm)", "70 in (1778 mm)"),)


def test_an_opening_is_told_by_its_left_edge_and_its_lower_edge() -> None:
    window = Obstacle("sash window", "window", Box(300, 800, 1300, 2000), None, Place("hall.yaml", 1, 1))
    (chapter,) = list_obstacles(replace(BARE, obstacles=(window,)), WIDE)
    assert chapter.heading == "Openings and fixtures"
    assert headings(chapter) == [
        "Key",
        "Opening or fixture",
        "Width × height",
        "Left edge, from the left end",
        "Lower edge, above the floor",
    ]
    # 1000 mm = 39 3/8 in, 1200 mm = 47 1/4 in, 300 mm = 11 13/16 in, 800 mm = 31 1/2 in.
    size = "1000 × 1200 mm (39 3/8 × 47 1/4 in)"
    assert chapter.rows == (("X1", "sash window", size, "300 mm (11 13/16 in)", "800 mm (31 1/2 in)"),)


def test_the_ceiling_s_points_stand_in_a_table() -> None:
    (chapter,) = list_ceiling(replace(BARE, ceiling=ATTIC), WIDE)
    # 1500 mm = 59 1/16 in, 1000 mm = 39 3/8 in, 2600 mm = 102 3/8 in.
    assert chapter.rows[0][1] == "1500 mm (59 1/16 in)"
    assert chapter.rows[1] == ("1000 mm (39 3/8 in)", "2600 mm (102 3/8 in)")


def test_what_is_not_there_has_no_table() -> None:
    assert list_ceiling(BARE, WIDE) == list_obstacles(BARE, WIDE) == list_furniture(BARE, WIDE) == []
