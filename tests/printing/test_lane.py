"""One axis of a template laid on pages: what each part shows and keeps, worked by hand."""

from __future__ import annotations

from templater.printing.lane import Lane
from templater.printing.pages import Side

A4 = Side(page=210, reach=190, room=190, outer=190)
ROLL = Side(page=5080, reach=5061, room=115, outer=115)


def test_a_single_sheet_shares_its_spare_between_both_sides() -> None:
    lane = Lane(60, 10, (A4,), ())
    assert lane.shown == lane.kept == [(-65, 125)]  # (190 - 60) / 2 = 65


def test_outer_sheets_spend_their_spare_outside_and_inner_ones_none() -> None:
    lane = Lane(460, 10, (A4,) * 3, (150, 300))
    assert lane.shown == [(-30, 160), (150, 310), (300, 490)]
    assert lane.kept == [(-30, 150), (150, 300), (300, 490)]
    assert lane.pages == [210, 210, 210]


def test_courses_of_two_kinds_show_as_much_as_their_own_pages() -> None:
    lane = Lane(400, 10, (Side(297, 277, 277, 277), A4), (230,))
    assert lane.shown == [(-37, 240), (230, 420)]  # 230 + 10 - 277, 230 + 190
    assert lane.pages == [297, 210]


def test_a_roll_is_cut_to_what_is_shown_and_never_shorter_than_the_marks_need() -> None:
    assert Lane(400, 10, (ROLL,), ()).pages == [419]  # 400 + 19 of margins
    assert Lane(60, 10, (ROLL,), ()).pages == [134]  # 115 + 19
    long = Lane(6000, 10, (ROLL,) * 2, (2995,))
    assert long.shown == [(0, 3005), (2995, 6000)]
    assert long.pages == [3024, 3024]


def test_parts_narrower_than_a_scale_bar_needs_are_counted() -> None:
    lane = Lane(460, 10, (A4,) * 4, (114, 229, 400))
    assert lane.spans == [114, 115, 171, 60]
    assert lane.narrow == 2
