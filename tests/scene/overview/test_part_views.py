"""Larger views of parts of the wall: every piece has its number somewhere, and none is cut."""

from __future__ import annotations

import pytest

from templater.drawing import Words
from templater.geometry import Box, Point, Size
from templater.placement.model import Plan
from templater.scene.overview.draw import draw_overview
from templater.scene.overview.elevation import fit_elevation
from templater.scene.overview.part_views import choose_parts
from templater.scene.overview.scales import Scale
from tests.scene.pages import text_of
from tests.scene.walls import grid_wall, hung, landscape_form, make_wall

ROOM = Size(250.0, 170.0)


def salon() -> Plan:
    """A small piece over a larger one, and others staggered below and beside them."""
    boxes = (
        Box(1800, 1500, 1950, 1850),
        Box(2000, 1500, 2300, 1850),
        Box(1800, 1100, 2000, 1440),
        Box(2060, 1050, 2360, 1440),
        Box(3000, 1700, 3180, 1830),
        Box(2900, 1380, 3200, 1640),
    )
    pieces = [
        hung(f"Print {number}", box, [(box.centre.x, box.y1 - 20)])
        for number, box in enumerate(boxes, 1)
    ]
    return make_wall(pieces, Size(5500, 2700))


@pytest.mark.parametrize(
    "plan", [salon(), grid_wall(10, 4, 250, 330), grid_wall(12, 8, 100, 110)], ids=["salon", "40", "96"]
)
@pytest.mark.parametrize("ratio", [32.0, 50.0, 100.0])
def test_no_part_cuts_a_piece(plan: Plan, ratio: float) -> None:
    parts = choose_parts(plan, Scale(ratio, f"1:{ratio:.0f}"), ROOM)
    cut = [
        (piece.name, window)
        for window in parts.windows
        for piece in plan.pieces
        if piece.box.meets(window) and not window.holds(piece.box)
    ]
    assert cut == []
    small = [piece.box for piece in plan.pieces if min(piece.size) < 5.0 * ratio]
    assert all(any(window.holds(box) for window in parts.windows) for box in small)


def test_no_part_repeats_what_another_shows() -> None:
    # At 1:128 all six are small; one page of A5 shows them all, the smallest larger than 5 mm.
    form = landscape_form("a5")
    (window,) = choose_parts(salon(), Scale(128.0, "1:128"), form.inner.size).windows
    assert all(window.holds(piece.box) for piece in salon().pieces)


def test_a_part_that_shows_less_than_another_and_no_larger_is_left_out() -> None:
    # What stands on a ledge is to be drawn larger than the ledge is high, and that larger still: the
    # part for it shows all four.
    boxes = (
        Box(1675, 1400, 1925, 1700),
        Box(1985, 1400, 2165, 1640),
        Box(2225, 1400, 2525, 1700),
        Box(1500, 1360, 2700, 1400),
    )
    pieces = [
        hung(f"Print {number}", box, [(box.centre.x, box.centre.y)])
        for number, box in enumerate(boxes, 1)
    ]
    parts = choose_parts(make_wall(pieces, Size(4200, 2500)), Scale(50.0, "1:50"), ROOM)
    (window,) = parts.windows
    assert all(window.holds(box) for box in boxes)


def test_a_piece_whose_number_found_no_room_is_drawn_again() -> None:
    plan = salon()
    scale = Scale(10.0, "1:10")
    assert choose_parts(plan, scale, ROOM).windows == ()
    (window,) = choose_parts(plan, scale, ROOM, {"print-5"}).windows
    assert window.holds(plan.pieces[4].box)


def test_a_long_thin_piece_is_drawn_again_with_both_its_ends() -> None:
    # A ledge of 914 x 38 mm: to be 8 mm high it would be drawn at 1:4, where it is 229 mm long, and a
    # part has 250 - 72 = 178 mm for it.
    ledge = Box(6000, 1240, 6914, 1278)
    holes = [(6050, 1260), (6457, 1260), (6864, 1260)]
    plan = make_wall([hung("Ledge", ledge, holes)], Size(7900, 4200))
    (window,) = choose_parts(plan, Scale(64.0, "1:64"), ROOM).windows
    assert window.holds(ledge)


@pytest.mark.parametrize("paper", ["a5", "letter", "a4"])
def test_every_piece_has_its_number_in_a_view(paper: str) -> None:
    plan = grid_wall(12, 8, 100, 110)
    text = text_of(draw_overview(plan, (), landscape_form(paper), revision="K7M3QA", piece_targets={}))
    words = text.split("Holes")[0].split()
    assert all(str(number) in words for number in range(1, 97))


def test_a_view_tells_which_pieces_it_numbers() -> None:
    plan = salon()
    drawn = fit_elevation(plan, [ROOM]).draw(plan, Point(0.0, ROOM.height))
    words = {item.text.split()[0] for item in drawn.items if isinstance(item, Words)}
    assert "print-1" not in drawn.named  # its number finds no room beside its neighbours
    assert drawn.named == {f"print-{number}" for number in range(1, 7) if str(number) in words}
    pages = draw_overview(plan, (), landscape_form("letter"), revision="K7M3QA", piece_targets={})
    assert "1" in text_of(pages[:2]).split()
