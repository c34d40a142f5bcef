"""What is said of a ledge and of what stands on it: acts that can be followed there."""

from __future__ import annotations

import pytest

from templater.pipeline import plan_wall
from templater.placement.model import PlacedPiece, Plan
from templater.rules.fasteners.load import find_loads
from templater.rules.fasteners.shopping import list_shopping
from templater.scene.template.safety_words import SafetyWords
from tests.rules.cautions.drilled import brief, told

LEDGE = "shelf ledge"

HALL = """\
title: Keeper's cottage, reading corner
units: cm
wall:
  {width: 600, height: 260, surface: drywall, board: 13 mm, studs: {first: 20, every: 60}, walkway: yes}
furniture:
  - {name: reading bench, kind: seat, left: 200, width: 150, height: 45}
pieces:
  - {name: Lens drawing, size: 21 x 30 cm, weight: 1 kg}
  - {name: Wick study, size: 15 x 20 cm, weight: 1.55 kg}
groups:
  - name: shelf
    pieces: [Lens drawing, Wick study]
    arrange: ledge
    gap: 6
    ledge: {height: 120, width: 110, thick: 4, drop: 2, every: 30}
    above: reading bench
"""


def plan_of(*changes: tuple[str, str]) -> Plan:
    """The wall of the reading corner, with changes to its text."""
    text = HALL
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    return plan_wall(text.encode(), "hall.yaml").plan


def asked_of_ledge(plan: Plan, code: str) -> list[str]:
    """What is to be done about a ledge where something is not checked."""
    found = [each for each in told(plan, code) if each.subject == LEDGE]
    assert all(each.verdict.value == "not checked" for each in found)
    return [each.mend or "" for each in found]


def test_what_stands_on_a_ledge_is_told_with_its_weight() -> None:
    # 1 + 1.55 = 2.55 kg, rounded up.
    assert asked_of_ledge(plan_of(), "heavy-piece") == [
        "add 'weight' to 'ledge', on which 2.6 kg stand; its maker's limit decides"
    ]
    assert asked_of_ledge(plan_of((", weight: 1 kg", "")), "heavy-piece") == [
        "add 'weight' to each piece that stands on it; its maker's limit decides"
    ]


def test_a_ledge_under_too_much_is_told() -> None:
    # 13 + 1.55 = 14.55 kg, and more than 14 kg where not every hole is in a stud.
    (found,) = (
        each
        for each in told(plan_of(("weight: 1 kg", "weight: 13 kg")), "heavy-piece")
        if each.subject == LEDGE
    )
    assert brief(found) == (
        "caution",
        None,
        "14.6 kg and the ledge itself, more than 14 kg where not every hole is known to be in a stud",
    )
    assert found.mend == "get a licensed installer"


@pytest.mark.parametrize(
    ("code", "act"),
    [
        # NEC 300.4(A)(1): 1 1/4 in = 31.75 mm.
        ("deep-fastener", "see that its screws go into a stud by at most 31 mm"),
        (
            "outward-pull",
            "add 'stands_out' and 'weight' to 'ledge', and 'weight' to what stands on it",
        ),
        ("two-persons", "add 'weight' to 'ledge'"),
        ("standing-out", "add 'stands_out' to 'ledge'"),
    ],
)
def test_what_is_asked_for_is_what_a_ledge_may_have(code: str, act: str) -> None:
    assert asked_of_ledge(plan_of(), code) == [act]


WEIGHED = ("every: 30}", "every: 30, weight: 3.45 kg, stands_out: 9}")


def ledge_of(plan: Plan) -> PlacedPiece:
    """The ledge itself."""
    (ledge,) = (piece for piece in plan.pieces if piece.name == LEDGE)
    return ledge


def test_a_ledge_bears_itself_and_what_stands_on_it() -> None:
    # 3.45 + 1 + 1.55 = 6 kg on screws 30 cm apart along 110 cm: four, of 1.5 kg each, 14.71 N.
    ledge = ledge_of(plan_of(WEIGHED))
    assert ledge.weight_kg == 3.45
    assert [mark.load_n for mark in ledge.marks] == pytest.approx([1.5 * 9.80665] * 4)


def test_what_it_bears_is_asked_of_its_screws() -> None:
    # Its middle is at 275 cm, the screws at 230, 260, 290 and 320; studs at 20, 80, … 260, 320. In wood
    # 2 x 1.5 kg, of anchors 4 x 1.5 kg, in steps of 2 kg. How thick the ledge is that the screw goes
    # through is not told, nor how long it must be.
    assert [(line.count, line.what, line.rating) for line in list_shopping(plan_of(WEIGHED))] == [
        (2, "hollow-wall anchor", "6 kg"),
        (
            2,
            "wood screw into the stud, No. 8 (4.2 mm) or thicker, 26–31 mm in the stud",
            "4 kg",
        ),
    ]


def test_an_estimate_of_what_stands_on_it_makes_its_load_one() -> None:
    # Acrylic of 3 mm, 21 x 30 cm: 1180 to 1200, usually 1190 kg a cubic metre: 0.22302, 0.22491, 0.2268
    # kg, and with 3.45 + 1.55 kg a quarter of it on each screw.
    made_of = ("weight: 1 kg", "made_of: {glazing: acrylic 3 mm}")
    plan = plan_of(WEIGHED, made_of)
    load = find_loads(ledge_of(plan), plan)[0]
    assert load is not None
    assert load.down_n == pytest.approx(5.22491 / 4 * 9.80665)
    assert (load.low, load.high) == pytest.approx((5.22302 / 5.22491, 5.2268 / 5.22491))


def test_without_the_weight_of_one_of_them_its_load_is_not_known() -> None:
    ledge = ledge_of(plan_of(WEIGHED, (", weight: 1 kg", "")))
    assert [mark.load_n for mark in ledge.marks] == [None] * 4


def test_how_a_weighed_ledge_is_judged() -> None:
    # The screws are 2 cm above its lower edge, the mass centre taken to be 4.5 cm out: 14.71 x 4.5 / 2 =
    # 33.1 N. It stands out 9 cm = 3 1/2 in. 11.34 kg are 25 lb; 110 cm are less than 48 in.
    plan = plan_of(WEIGHED)
    found = {
        code: [brief(each)[0::2] for each in told(plan, code) if each.subject == LEDGE]
        for code in ("heavy-piece", "standing-out", "two-persons", "outward-pull")
    }
    assert found == {
        "heavy-piece": [("kept", "6.0 kg with what stands on it")],
        "standing-out": [("kept", "90 mm from the wall")],
        "two-persons": [("kept", "3.45 kg, 1100 mm long")],
        "outward-pull": [
            ("not checked", None),
            ("kept", "pulls outward by 3.4 kg (33.1 N)"),
            ("not checked", None),
            ("kept", "pulls outward by 3.4 kg (33.1 N)"),
        ],
    }


def test_a_weighed_ledge_under_too_much_is_told() -> None:
    # 3.45 + 10 + 1.55 = 15 kg, and more than 14 kg where not every hole is in a stud.
    plan = plan_of(WEIGHED, ("weight: 1 kg", "weight: 10 kg"))
    (found,) = (each for each in told(plan, "heavy-piece") if each.subject == LEDGE)
    assert brief(found)[0::2] == (
        "caution",
        "15.0 kg with what stands on it, more than 14 kg where not every hole is known to be in a stud",
    )


def test_a_long_ledge_has_no_glass() -> None:
    assert [each.subject for each in told(plan_of(), "glass-size")] == []


def test_a_ledge_over_people_has_its_own_act_and_so_has_what_stands_on_it() -> None:
    acts = {each.subject: each.mend for each in told(plan_of(), "over-people")}
    standing = "take a light piece behind acrylic, held by a lip along the ledge, or stand it elsewhere"
    assert acts == {
        "Lens drawing": standing,
        "Wick study": standing,
        LEDGE: "set every screw where it holds firmly, or put the ledge elsewhere",
    }


def test_a_ledges_screws_are_bought_as_its_maker_says() -> None:
    (line,) = list_shopping(plan_of())
    assert (line.what, line.rating) == ("screw", "as the ledge's maker says: not checked")


def test_its_template_tells_what_the_ledge_bears() -> None:
    plan = plan_of(("weight: 1 kg", "weight: 13 kg"))
    (ledge,) = (piece for piece in plan.pieces if piece.name == LEDGE)
    notes = SafetyWords(ledge, plan, lambda _: 0).write_cautions()
    told_there = [row.text for note in notes for row in note.blocks[0].rows]
    assert "14.6 kg and the ledge itself, more than 14 kg" in " ".join(told_there)
