"""What is told of a hook that nobody has measured, at its hole and in the list of cautions."""

from __future__ import annotations

from dataclasses import replace

import pytest

from templater.layout.model import Hanger, Hanging, Surface
from templater.rules.cautions.hook_rise import check_hook_rise
from templater.rules.cautions.together import tell_together
from templater.rules.hole_notes import describe_holes
from tests.rules.fasteners.walls import by, hook, hung_at, only, wall_of

ON_PAPER = "rise not given: let the hook bear at the cross, its nail or screw above"
SAID = f"{ON_PAPER}; or add 'rise'"
UNMEASURED = replace(hook(50.0), rise_mm=None)
LOCKED = replace(by(Hanger.D_RINGS, apart=200), lock_below_mm=400.0)


@pytest.mark.parametrize(
    ("hang", "kg", "said"),
    [
        (by(Hanger.SAWTOOTH), 3.0, [True]),
        (by(Hanger.SAWTOOTH), None, [True]),
        (replace(by(Hanger.SAWTOOTH), rise_mm=12.7), 3.0, [False]),
        (replace(by(Hanger.SAWTOOTH), rise_mm=0.0), 3.0, [False]),
        (by(Hanger.NAIL, hook=UNMEASURED), 3.0, [True]),
        (by(Hanger.NAIL), 3.0, [False]),
        # 12 kg on one hole take an anchor, whose screw goes in at the cross.
        (by(Hanger.WIRE), 12.0, [False]),
        # A lock bears nothing.
        (LOCKED, 6.0, [True, True, False]),
    ],
)
def test_where_a_hook_goes_is_told_at_its_hole(
    hang: Hanging, kg: float | None, said: list[bool]
) -> None:
    notes = describe_holes(wall_of(hung_at(1000.0, hang, kg), surface=Surface.DRYWALL, studs=(0.0,)))
    assert [ON_PAPER in each.cautions for each in notes.values()] == said


def test_of_several_pieces_it_is_told_once() -> None:
    pieces = [
        hung_at(1000.0 * at, LOCKED if at == 4 else by(Hanger.WIRE), 3.0, name=f"Print {at}")
        for at in (1, 2, 3, 4)
    ]
    plan = wall_of(*pieces)
    told = tell_together(each for piece in plan.pieces for each in check_hook_rise(piece, plan))
    assert [each.parties for each in told] == ["Print 1; Print 2; Print 3", "Print 4 / hole 1, hole 2"]
    assert {f"{each.finding.figure}: {each.finding.mend}" for each in told} == {SAID}


@pytest.mark.parametrize(
    ("hang", "kg", "is_told"),
    [
        (by(Hanger.NAIL), 3.0, True),
        (by(Hanger.NAIL), None, True),
        (replace(by(Hanger.NAIL), rise_mm=0.0), 3.0, True),
        (replace(by(Hanger.SAWTOOTH), rise_mm=0.0), 3.0, True),
        (replace(by(Hanger.SAWTOOTH), rise_mm=12.7), 3.0, False),
        # A named hook's own rise is taken at its word, and keyholes take none.
        (by(Hanger.NAIL, hook=hook(50.0)), 3.0, False),
        (by(Hanger.KEYHOLES, apart=200), 3.0, False),
    ],
)
def test_a_closed_hook_in_place_of_a_nail_has_a_rise(
    hang: Hanging, kg: float | None, *, is_told: bool
) -> None:
    plan = replace(wall_of(hung_at(1000.0, hang, kg)), is_earthquake=True)
    found = list(check_hook_rise(only(plan), plan))
    figure = "rise of its closed hook not given"
    assert [(each.other, each.figure) for each in found] == ([(None, figure)] if is_told else [])
