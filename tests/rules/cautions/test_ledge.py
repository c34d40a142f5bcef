"""What is said of a ledge and of what stands on it: acts that can be followed there."""

from __future__ import annotations

import pytest

from templater.pipeline import plan_wall
from templater.placement.model import Plan
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
        "add the ledge's own weight to the 2.6 kg that stand on it; its maker's limit decides"
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
        ("outward-pull", "ask its maker what its screws must hold against a pull straight out"),
        # 25 lb = 11.34 kg; common practice, no source.
        ("two-persons", "weigh the ledge; heavier than 11 kg, lift it together with somebody"),
        # 4 in = 101.6 mm; ADA 2010 Standards, 307.2.
        (
            "standing-out",
            "see that it stands out from the wall by at most 101 mm, and what is on it too",
        ),
    ],
)
def test_no_key_is_asked_for_that_a_ledge_does_not_have(code: str, act: str) -> None:
    assert asked_of_ledge(plan_of(), code) == [act]


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
