from __future__ import annotations

from dataclasses import replace

import pytest

from templater.layout.model import Hanger, Surface
from templater.rules.fasteners.shopping import ToBuy, list_shopping
from tests.builders import inches
from tests.rules.fasteners.walls import POUND, by, hook, hung_at, wall_of


def test_things_of_a_kind_and_a_rating_are_added_up() -> None:
    plan = wall_of(
        hung_at(1000.0, by(Hanger.D_RINGS, apart=200), 8 * POUND, name="Fog bell"),
        hung_at(2000.0, by(Hanger.WIRE), 3 * POUND, name="Tide chart"),
        hung_at(3000.0, by(Hanger.SAWTOOTH), 4 * POUND, name="Kelp print"),
        surface=Surface.DRYWALL,
    )
    # 4 lb a ring, 3 lb, 4 lb; twice that 8, 6, 8: all are bought as 10 lb.
    names = ("Fog bell", "Tide chart", "Kelp print")
    assert list_shopping(plan) == (ToBuy("picture hook and nail", 4, "10 lb", names),)


def test_of_one_cleat_all_screws_are_as_strong_as_the_most_loaded() -> None:
    # 62 lb on a rail whose middle is 4 in right of the left of two studs 16 in apart: the shares are
    # 12/16 and 4/16, 46.5 and 15.5 lb; twice that 93 and 31 lb: 95 and 35 lb in steps of 5.
    hang = replace(by(Hanger.CLEAT), on_studs=True, width_mm=inches(30))
    plan = wall_of(
        hung_at(inches(100), hang, 62 * POUND),
        studs=(inches(96), inches(112)),
        surface=Surface.DRYWALL,
    )
    what = "wood screw into the stud, No. 8 (4.2 mm) or thicker, 1–1 1/4 in in the stud"
    assert list_shopping(plan) == (ToBuy(what, 2, "95 lb", ("Fog bell",)),)


@pytest.mark.parametrize("board", [12.7, None])
def test_a_screw_into_a_stud_is_told_by_how_deep_it_goes(board: float | None) -> None:
    # 1 in in the wood is counted on, more than 1 1/4 in is too deep (NEC 300.4(A)(1)), whatever is
    # before the stud; No. 8: 0.060 + 8 x 0.013 = 0.164 in = 4.17 mm (ANSI B18.6.1).
    hang = by(Hanger.KEYHOLES, apart=inches(16))
    piece = hung_at(inches(100), hang, 10 * POUND)
    plan = wall_of(piece, studs=(inches(92), inches(108)), surface=Surface.DRYWALL, board=board)
    (line,) = list_shopping(plan)
    assert line.what == "wood screw into the stud, No. 8 (4.2 mm) or thicker, 1–1 1/4 in in the stud"


def test_where_the_ground_may_shake_closed_hooks_are_bought() -> None:
    hung = [
        hung_at(1000.0, by(Hanger.WIRE), 6 * POUND, name="Tide chart"),
        hung_at(2000.0, by(Hanger.WIRE), None, name="Kelp print"),
        hung_at(3000.0, by(Hanger.KEYHOLES, apart=200), 4 * POUND, name="Fog bell"),
        hung_at(4000.0, by(Hanger.KEYHOLES, apart=200), None, name="Gull study"),
        hung_at(5000.0, replace(by(Hanger.RAIL), rail_mm=inches(90)), 4 * POUND, name="Ebb"),
    ]
    plan = replace(wall_of(*hung, surface=Surface.DRYWALL, studs=(0.0,)), is_earthquake=True)
    assert [(line.count, line.what) for line in list_shopping(plan)] == [
        (1, "closed picture hook and nail"),
        (1, "closed hook"),
        (2, "hollow-wall anchor"),
        (2, "screw"),
        (1, "closed hook for the picture rail"),
        (1, "cord of 22 in (559 mm), and more for its knots"),
    ]


def test_a_named_hook_is_listed_by_its_name_and_by_what_it_needs() -> None:
    named = hook(30 * POUND, needs="a nail")
    plan = wall_of(
        hung_at(1000.0, by(Hanger.D_RINGS, apart=200, hook=named), 8 * POUND, name="Fog bell"),
        hung_at(2000.0, by(Hanger.NAIL, hook=named), 16 * POUND, name="Tide chart"),
    )
    what = "brass hook, rated 30 lb, each with a nail"
    assert list_shopping(plan) == (
        ToBuy(what, 2, "", ("Fog bell",)),
        ToBuy(what, 1, "TOO WEAK: 32.0 lb asked for", ("Tide chart",)),
    )


def test_what_is_not_known_is_told() -> None:
    # What bears at its very hole takes no picture hook, however light it is.
    flush = replace(by(Hanger.D_RINGS, apart=200), rise_mm=0.0)
    for hang, what, count in (
        (by(Hanger.NAIL), "nail or screw", 1),
        (flush, "nail or screw", 2),
        (replace(by(Hanger.NAIL), rise_mm=9.0), "hook or screw", 1),
        (by(Hanger.WIRE), "hook or screw", 1),
    ):
        bare = wall_of(hung_at(1000.0, hang, None))
        unknown = ToBuy(what, count, "weight not given: not checked", ("Fog bell",))
        assert list_shopping(bare) == (unknown,)
    unrated = wall_of(hung_at(1000.0, by(Hanger.NAIL, hook=hook(None)), 5 * POUND))
    (line,) = list_shopping(unrated)
    assert line.rating == "10.0 lb; its own is not given: not checked"


def test_a_rail_takes_hooks_and_cords() -> None:
    hang = replace(by(Hanger.RAIL, apart=inches(10)), rail_mm=inches(90), cords=2)
    # The top edge is at 60 + 10 = 70 in, the cord tied 2 in below it: 90 - 68 = 22 in = 559 mm.
    plan = wall_of(hung_at(1000.0, hang, 9 * POUND))
    cord = "cord of 22 in (559 mm), and more for its knots"
    # 4.5 lb each, twice that 9: 10 lb.
    assert list_shopping(plan) == (
        ToBuy("hook for the picture rail", 2, "10 lb", ("Fog bell",)),
        ToBuy(cord, 2, "10 lb", ("Fog bell",)),
    )


def test_strips_are_bought_as_strong_as_they_were_counted() -> None:
    # 3 lb on strips of 12 oz, half of which is counted on: 3 / 0.375 = 8. Eight of 0.7 lb would not do.
    hang = replace(by(Hanger.STRIPS), drop_mm=None, strip_rating_kg=0.75 * POUND)
    plan = wall_of(hung_at(1000.0, hang, 3 * POUND))
    assert [(line.count, line.rating) for line in list_shopping(plan)] == [(8, "0.75 lb")]


def test_strips_are_counted_by_their_rating() -> None:
    hang = replace(by(Hanger.STRIPS), drop_mm=None, strip_rating_kg=4 * POUND)
    # 6 lb x 2 / 4 lb = 3.
    plan = wall_of(hung_at(1000.0, hang, 6 * POUND))
    assert list_shopping(plan) == (ToBuy("pair of adhesive strips", 3, "4 lb", ("Fog bell",)),)
    unknown = wall_of(hung_at(1000.0, hang, None))
    (line,) = list_shopping(unknown)
    assert (line.count, line.shown_count) == (None, "?")
    assert line.rating == "weight not given: not checked"


def test_what_is_bought_is_a_multiple_of_the_load_as_it_is_told() -> None:
    # 2.46 lb are told as 2.5 lb, twice that is 5.0 lb; 2.51 lb as 2.6 lb: 5.2, so 10 lb. On a cord too.
    rail = replace(by(Hanger.RAIL), rail_mm=inches(90))
    for hang in (by(Hanger.WIRE), rail):
        for pounds, rating in ((2.46, "5 lb"), (2.51, "10 lb")):
            plan = wall_of(hung_at(1000.0, hang, pounds * POUND), surface=Surface.DRYWALL)
            assert {line.rating for line in list_shopping(plan)} == {rating}
    # An anchor's is four times: 24.99 lb told as 25.0 lb; 26.24 lb as 26.3: 105.2, so 110 lb.
    for pounds, rating in ((24.99, "100 lb"), (26.24, "110 lb")):
        plan = wall_of(hung_at(1000.0, by(Hanger.WIRE), pounds * POUND), studs=(0.0,))
        plan = replace(plan, wall_surface=Surface.DRYWALL)
        assert {line.rating for line in list_shopping(plan)} == {rating}
