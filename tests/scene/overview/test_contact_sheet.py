from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest

from templater.drawing import Item, Line, Polyline
from templater.geometry import Box, Point, Size
from templater.layout.model import LeftRight, Obstacle
from templater.lettering import words_box
from templater.placement.model import Plan
from templater.scene.lines import SMALL, THICK, THIN
from templater.scene.model import PageDrawing
from templater.scene.overview.contact_sheet import Entry, draw_contact_sheet
from tests.builders import HERE, INCH, furniture, group, layout, piece, plan_of, position
from tests.scene.pages import (
    assert_inside,
    assert_words_apart,
    text_of,
    words_of,
)
from tests.scene.walls import ink_box, landscape_form

PAPERS = ("a4", "letter")
LONG = "Great-grandmother's oilskin coat, framed behind acrylic with its original brass buttons"
FIGURES = ("width: 54 in (1372 mm), 68 % of the furniture", "gap: 3 in (76 mm)", "rules broken: none")


def _plan(names: tuple[str, ...] = ("Tide chart", "Kelp print", LONG), width: float = 16) -> Plan:
    """A row over a bench of 80 in on a wall of 200 x 96 in, and a piece by itself."""
    pieces = [piece(name, width * INCH) for name in names]
    alone = piece("Fog bell", 12 * INCH, 9 * INCH, place=position(centre=160 * INCH))
    return plan_of(
        layout(
            [*pieces, alone],
            groups=[group("bench trio", names, place=position(above="boot bench"))],
            furniture=[furniture("boot bench", 30 * INCH)],
        )
    )


def _entries(count: int, plan: Plan | None = None, name: str = "bench trio") -> list[Entry]:
    plan = plan or _plan()
    return [Entry(f"{number}  row of 3", plan, name, FIGURES) for number in range(1, count + 1)]


def _assert_sound(page: PageDrawing, inner: Box) -> None:
    """Everything on the page, and no words smaller than allowed, over one another or over a line."""
    assert_inside(page.items, inner.grown(0.5))
    assert_words_apart(page)
    assert min(words.height_mm for words in words_of(page)) >= SMALL
    crossed = [
        (words.text, item)
        for words in words_of(page)
        for item in page.items
        if _is_crossed(ink_box(words), item)
    ]
    assert crossed == []


def _is_crossed(ink: Box, item: Item) -> bool:
    """Whether a rectangle's outline or a level or upright line runs through words."""
    if isinstance(item, Polyline) and item.closed:
        return item.box.meets(ink) and not item.box.holds(ink)
    return isinstance(item, Line) and min(item.box.size) == 0.0 and ink.meets(item.box.grown(0.01))


def _outlines(page: PageDrawing) -> list[Box]:
    """The boxes of the group's pieces, which are drawn thick."""
    return [item.box for item in page.items if isinstance(item, Polyline) and item.width_mm == THICK]


@pytest.mark.parametrize("paper", PAPERS)
def test_three_ways_stand_on_a_page_with_their_figures(paper: str) -> None:
    form = landscape_form(paper)
    pages = draw_contact_sheet(_entries(4), form)
    assert [len(_outlines(page)) for page in pages] == [9, 3]
    for page in pages:
        _assert_sound(page, form.inner)
    told = text_of(pages[:1])
    assert told.count("rules broken: none") == 3
    assert told.count("1 Tide chart · 2 Kelp print · 3 Great-grandmother's") == 3


def test_each_group_has_pages_of_its_own() -> None:
    form = landscape_form("a4")
    other = plan_of(layout([piece("Gull study")], groups=[group("single", ["Gull study"])]))
    pages = draw_contact_sheet([*_entries(2), *_entries(1, other, "single")], form)
    assert [page.title for page in pages] == ["Ways to hang bench trio", "Ways to hang single"]


def test_pieces_are_drawn_to_the_scale_that_is_named() -> None:
    # 1:48: 16 x 20 in are 8.467 x 10.583 mm; gaps of 3 in 1.5875 mm.
    (page,) = draw_contact_sheet(_entries(1), landscape_form("letter"))
    assert "SCALE 1/4 in = 1 ft (1:48)" in text_of([page])
    boxes = _outlines(page)
    assert [box.size for box in boxes] == [pytest.approx(Size(8.4667, 10.5833), abs=1e-3)] * 3
    assert [b.x0 - a.x1 for a, b in pairwise(boxes)] == pytest.approx([1.5875, 1.5875], abs=1e-3)


def test_every_piece_of_the_group_bears_its_number() -> None:
    (page,) = draw_contact_sheet(_entries(1), landscape_form("a4"))
    for number, box in enumerate(_outlines(page), 1):
        inside = [words.text for words in words_of(page) if box.holds(words_box(words), slack=0.5)]
        assert inside == [str(number)]


@pytest.mark.parametrize("paper", PAPERS)
def test_small_pieces_on_a_high_wall_and_many_names_stay_legible(paper: str) -> None:
    names = tuple(f"Signal flag {number}" for number in range(1, 13))
    form = landscape_form(paper)
    plan = replace(_plan(names, width=3), wall=Size(5000.0, 6000.0))
    (page,) = draw_contact_sheet(_entries(3, plan), form)
    _assert_sound(page, form.inner)
    assert len(_outlines(page)) == 36


def test_a_sloping_ceiling_a_window_and_a_door_are_drawn() -> None:
    window = Obstacle("sash window", "window", Box(2900, 900, 3800, 2000), None, HERE)
    clock = Obstacle("clock", "clock", Box(500, 1700, 560, 1760), None, HERE)
    door = Obstacle("landing door", "door", Box(100, 0, 700, 1600), LeftRight.RIGHT, HERE)
    plan = replace(
        _plan(),
        ceiling=(Point(0, 2438.4), Point(3000, 2438.4), Point(5080, 1700)),
        obstacles=(window, clock, door),
    )
    form = landscape_form("a4")
    (page,) = draw_contact_sheet(_entries(3, plan), form)
    _assert_sound(page, form.inner)
    assert "sash window" in text_of([page])
    assert "door" in text_of([page])


def test_the_eye_line_ends_at_a_sloping_ceiling() -> None:
    # From 1624 mm at 3000 to 1424 mm at 4000: the eye line, at 1524 mm, meets it half way.
    slope = (Point(0, 2438.4), Point(3000, 1624), Point(4000, 1424), Point(5080, 1424))
    (page,) = draw_contact_sheet(_entries(1, replace(_plan(), ceiling=slope)), landscape_form("a4"))
    lines = [item for item in page.items if isinstance(item, Line)]
    _, falling, _ = sorted((i for i in lines if i.width_mm == THICK and i.start.x != i.end.x), key=_left)
    eye_line = [line for line in lines if line.width_mm == THIN and line.start.y == line.end.y]
    middle = falling.box.centre
    assert all(line.start.y == pytest.approx(middle.y) for line in eye_line)
    # It may end short of the ceiling by two gaps and a dot: 1.2 + 0.6 + 1.2 = 3 mm.
    assert middle.x - 3.0 - 1e-6 <= max(line.end.x for line in eye_line) <= middle.x + 1e-6


def _left(line: Line) -> float:
    return line.box.x0


def test_a_sheet_without_room_for_all_words_shortens_the_list() -> None:
    plan = _plan(tuple(f"{LONG[:70]} {number}" for number in range(1, 14)), width=1)
    form = landscape_form("letter")
    (page,) = draw_contact_sheet(_entries(3, plan), form)
    _assert_sound(page, form.inner)
    assert FIGURES[2] in text_of([page])
    assert [words.text[-1] for words in words_of(page)].count("…") == 3
