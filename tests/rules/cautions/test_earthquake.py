"""What is said where the ground may shake goes with how a piece hangs and with what is bought for it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from templater.layout.model import (
    Arrangement,
    Group,
    Hanger,
    Hanging,
    Hardware,
    Ledge,
    Surface,
)
from templater.lengths import Unit
from templater.placement.model import Plan
from templater.rules.cautions.earthquake import check_earthquake
from templater.rules.fasteners.shopping import list_shopping
from templater.rules.model import Finding, Verdict
from tests.builders import group, hanging, inches, layout, piece, plan_of
from tests.rules.fasteners.walls import POUND, by, hook, hung_at, only, wall_of

ALLIANCE = 'Earthquake Country Alliance; FEMA, "Mount framed pictures and mirrors securely", April 2008'
PUTTY = "with putty at the lower corners"
STUD = inches(40)


def shaken(hang: Hanging | None, pounds: float | None, *, surface: Surface = Surface.DRYWALL) -> Plan:
    """A piece of 16 x 20 in whose middle is at a stud, where the ground may shake."""
    kg = None if pounds is None else pounds * POUND
    plan = wall_of(hung_at(STUD, hang, kg), studs=(STUD,), surface=surface)
    return replace(plan, is_earthquake=True)


def told(plan: Plan) -> Finding:
    (found,) = check_earthquake(only(plan), plan)
    assert found.verdict is Verdict.CAUTION
    return found


@pytest.mark.parametrize(
    ("pounds", "figure", "words"),
    [
        # Earthquake Country Alliance, "Hanging objects": lighter than 20 lb, to 50 lb, above.
        (6, "under 20 lb", f"hang it on a closed hook, {PUTTY}"),
        (19.99, "under 20 lb", f"hang it on a closed hook, {PUTTY}"),
        (20, "20 lb or more", f"hang it on a closed hook in a stud, {PUTTY}"),
        (50, "20 lb or more", f"hang it on a closed hook in a stud, {PUTTY}"),
        (50.01, "over 50 lb", "leave it to a licensed installer"),
        (None, "weight not given", f"hang it on a closed hook in a stud, {PUTTY}"),
    ],
)
@pytest.mark.parametrize("hang", [by(Hanger.WIRE), by(Hanger.NAIL), None])
def test_what_hangs_on_hooks(hang: Hanging, pounds: float | None, figure: str, words: str) -> None:
    found = told(shaken(hang, pounds))
    assert (found.figure, found.mend, found.because) == (figure, words, ALLIANCE)


def test_a_limit_is_never_shown_as_more_than_it_is() -> None:
    # 50 lb is 22.68 kg: 22.7 kg is over it, but not over 23 kg.
    plan = replace(shaken(by(Hanger.WIRE), 22.7 / POUND), units=Unit.CENTIMETRE)
    assert told(plan).figure == "over 22 kg"


def strips() -> Hanging:
    return replace(by(Hanger.STRIPS), drop_mm=None, strip_rating_kg=2.0)


def rail() -> Hanging:
    return replace(by(Hanger.RAIL), rail_mm=inches(90))


def locked() -> Hanging:
    return replace(by(Hanger.KEYHOLES, apart=200), lock_below_mm=400.0)


def cleat() -> Hanging:
    return replace(by(Hanger.CLEAT), on_studs=True, width_mm=inches(12))


@pytest.mark.parametrize(
    ("hang", "light", "heavy"),
    [
        (
            by(Hanger.WIRE, hook=hook(50.0)),
            f"see that brass hook is a closed hook, {PUTTY}",
            f"see that brass hook is a closed hook in a stud, {PUTTY}",
        ),
        (
            strips(),
            f"hang it on a closed hook in place of adhesive strips, {PUTTY}",
            f"hang it on a closed hook in a stud in place of adhesive strips, {PUTTY}",
        ),
        (
            rail(),
            f"hang it by closed hooks and knotted cords, {PUTTY}",
            f"hang it by closed hooks and knotted cords, {PUTTY}; the rail's screws in a stud",
        ),
        (
            cleat(),
            "hold its lower corners with putty, so that it cannot lift off its rail",
            "hold its lower corners with putty, so that it cannot lift off its rail;"
            " the rail's screws in a stud",
        ),
        (
            locked(),
            "set its security lock, so that it cannot lift off its screws",
            "set its security lock, so that it cannot lift off its screws; the screws in a stud;"
            " not every hole is at a stud: move it",
        ),
    ],
)
def test_what_hangs_by_something_else(hang: Hanging, light: str, heavy: str) -> None:
    assert told(shaken(hang, 6)).mend == light
    assert told(shaken(hang, 24)).mend == heavy
    by_rail = hang.by is Hanger.RAIL
    assert any("closed" in line.what for line in list_shopping(shaken(hang, 6))) is by_rail


def test_in_a_wall_without_studs_none_is_asked_for() -> None:
    found = told(shaken(by(Hanger.WIRE), 24, surface=Surface.MASONRY))
    assert found.mend == f"hang it on a closed hook in the solid wall, {PUTTY}"
    assert (told(shaken(rail(), 24, surface=Surface.WOOD)).mend or "").endswith("screws in the wood")


@pytest.mark.parametrize("pounds", [6, 24])
def test_where_a_closed_hook_is_asked_for_one_is_bought(pounds: float) -> None:
    plan = shaken(by(Hanger.SAWTOOTH), pounds)
    (line,) = list_shopping(plan)
    assert "closed hook" in (told(plan).mend or "")
    assert line.what.startswith("closed ")
    assert ("stud" in line.what) is ("in a stud" in (told(plan).mend or ""))


def on_ledge(pounds: float | None) -> Plan:
    """One print on a ledge of 24 in, which is screwed to the wall."""
    kg = None if pounds is None else pounds * POUND
    ledge = piece(
        "shelf",
        inches(24),
        inches(1.5),
        hang=hanging(Hanger.CLEAT, inches(0.75), rise=0.0, width=inches(24), every=inches(16)),
    )
    shelved: Group = replace(
        group("ledge show", ["Tide chart"], arrange=Arrangement.LEDGE),
        ledge=Ledge("shelf", inches(50)),
    )
    plan = plan_of(layout([piece("Tide chart", weight_kg=kg), ledge], groups=[shelved]))
    return replace(plan, is_earthquake=True)


@pytest.mark.parametrize(("pounds", "end"), [(6, ""), (24, "; the ledge's screws in a stud")])
def test_what_stands_on_a_ledge_is_hung_on_nothing(pounds: float, end: str) -> None:
    plan = on_ledge(pounds)
    mends = {each.name: [found.mend for found in check_earthquake(each, plan)] for each in plan.pieces}
    assert mends["Tide chart"] == [f"hold it with putty, behind a lip along the ledge{end}"]
    assert mends["shelf"] == ["set its screws in a stud"]


@pytest.mark.parametrize(
    ("pounds", "mend"),
    [
        (6, "set every screw where it holds firmly"),
        (24, "set its screws in a stud; not every hole is at a stud: move it"),
    ],
)
def test_a_ledge_is_told_of_a_stud_only_where_its_load_asks_for_one(pounds: float, mend: str) -> None:
    # The shelf weighs 2 lb itself; for less than 20 lb the shopping list has hollow-wall anchors.
    plan = on_ledge(pounds)
    plan = replace(
        plan,
        wall_surface=Surface.DRYWALL,
        studs=(20.0,),
        pieces=tuple(
            replace(each, weight_kg=2 * POUND) if each.name == "shelf" else each for each in plan.pieces
        ),
    )
    (shelf,) = [each for each in plan.pieces if each.name == "shelf"]
    assert [found.mend for found in check_earthquake(shelf, plan)] == [mend]


@pytest.mark.parametrize(
    ("named", "act"),
    [
        (None, "hang it on a closed hook, and set its security lock"),
        (hook(20.0), "see that brass hook is a closed hook, and set its security lock"),
    ],
)
def test_a_security_lock_takes_the_place_of_putty(named: Hardware | None, act: str) -> None:
    hang = replace(by(Hanger.D_RINGS, apart=200, hook=named), lock_below_mm=400.0)
    assert told(shaken(hang, 6)).mend == act
