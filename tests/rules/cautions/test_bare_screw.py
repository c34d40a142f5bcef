"""Where the screws and nails of a named hook do not hold in what they meet."""

from __future__ import annotations

from dataclasses import replace

import pytest

from templater.layout.model import Hanger, Surface
from templater.placement.model import Plan
from templater.rules.fasteners.shopping import list_shopping
from templater.scene.template.safety_words import SafetyWords
from tests.rules.cautions.drilled import brief, told
from tests.rules.fasteners.walls import POUND, by, hook, hung_at, only, wall_of

CODE = "bare-screw"
AT = 1000.0
HOLLOW = (AT - 100, AT + 300)
DOUBTFUL = (AT - 20,)


def on_hook(
    needs: str | None,
    surface: Surface | None,
    studs: tuple[float, ...] = (),
    *,
    name: str = "brass hook",
    holes: int = 1,
    pounds: float | None = 10.0,
) -> Plan:
    """A piece on one hook in the middle of it."""
    named = replace(hook(60 * POUND, needs=needs), name=name, holes=holes)
    kg = None if pounds is None else pounds * POUND
    return wall_of(hung_at(AT, by(Hanger.NAIL, hook=named), kg), studs=studs, surface=surface)


@pytest.mark.parametrize(
    ("needs", "surface", "studs", "figure"),
    [
        # Common practice, no source.
        ("a screw", Surface.DRYWALL, HOLLOW, "a screw in the hollow"),
        ("Two Screws", Surface.PLASTER, HOLLOW, "a screw in the hollow"),
        ("a screw", Surface.DRYWALL, DOUBTFUL, "a screw, perhaps in the hollow"),
        ("a screw", Surface.DRYWALL, (), "a screw, perhaps in the hollow"),
        ("a screw", Surface.DRYWALL, (AT,), None),
        ("a screw", None, HOLLOW, "a screw in the hollow"),
        ("a screw", None, (), None),
        ("a screw", Surface.WOOD, HOLLOW, None),
        ("a screw", Surface.MASONRY, (), "a screw in a solid wall"),
        ("a nail", Surface.CONCRETE, (), "a nail in a solid wall"),
        ("a nail", Surface.DRYWALL, HOLLOW, None),
        ("a nail or a screw", Surface.DRYWALL, HOLLOW, None),
        ("a screw and plug", Surface.MASONRY, (), None),
        ("a screw in a hollow-wall anchor", Surface.DRYWALL, HOLLOW, None),
        ("a hardened nail", Surface.CONCRETE, (), None),
        ("a toggle", Surface.DRYWALL, HOLLOW, None),
    ],
)
def test_what_a_screw_or_a_nail_meets(
    needs: str, surface: Surface | None, studs: tuple[float, ...], figure: str | None
) -> None:
    found = told(on_hook(needs, surface, studs), CODE)
    assert [brief(each) for each in found] == ([("caution", "hole 1", figure)] if figure else [])


def test_a_hooks_name_tells_too() -> None:
    plan = on_hook(None, Surface.MASONRY, name="keyhole screw")
    assert brief(*told(plan, CODE)) == ("caution", "hole 1", "a screw in a solid wall")


def test_by_what_a_hook_is_fastened_is_asked_where_it_matters() -> None:
    assert [each.mend for each in told(on_hook(None, Surface.MASONRY), CODE)] == [
        "add what the hook 'needs' to 'hardware'"
    ]
    assert told(on_hook(None, Surface.DRYWALL, (AT,)), CODE) == []


@pytest.mark.parametrize(
    ("pounds", "act"),
    [
        # 4 x 10 lb, in steps of 5 lb.
        (10.0, "put each screw into a hollow-wall anchor, rated 40 lb or more"),
        (None, "put each screw into a hollow-wall anchor"),
    ],
)
def test_what_is_to_be_done(pounds: float | None, act: str) -> None:
    (found,) = told(on_hook("a screw", Surface.DRYWALL, HOLLOW, pounds=pounds), CODE)
    assert found.mend == act


@pytest.mark.parametrize(
    ("surface", "studs", "what"),
    [
        (Surface.DRYWALL, HOLLOW, "hollow-wall anchor, for brass hook"),
        (Surface.DRYWALL, DOUBTFUL, "hollow-wall anchor if it misses the stud, for brass hook"),
        (Surface.MASONRY, (), "masonry plug, for brass hook"),
    ],
)
def test_as_many_are_bought_as_the_hook_has_screws(
    surface: Surface, studs: tuple[float, ...], what: str
) -> None:
    bought = list_shopping(on_hook("two screws", surface, studs, holes=2))
    assert [(line.count, line.what, line.rating) for line in bought] == [
        (1, "brass hook, rated 60 lb, each with two screws", ""),
        (2, what, "40 lb"),
    ]


def test_the_template_tells_it_at_the_hole() -> None:
    plan = on_hook("a screw", Surface.DRYWALL, HOLLOW)
    (note,) = SafetyWords(only(plan), plan, lambda _: 0).write_holes()
    words = " ".join(row.text for row in note.blocks[0].rows)
    assert "brass hook, rated 60 lb: enough, with a hollow-wall anchor" in words
    assert "! a screw in the hollow: put each screw into a hollow-wall anchor" in words


def test_where_the_ground_may_shake_no_anchor_is_bought_for_what_must_be_in_a_stud() -> None:
    # From 20 lb on the caution of earthquakes sends it to a stud, so an anchor would be bought in vain.
    light, heavy = (
        replace(on_hook("a screw", Surface.DRYWALL, HOLLOW, pounds=pounds), is_earthquake=True)
        for pounds in (19.0, 21.0)
    )
    assert [line.what for line in list_shopping(light)][1:] == ["hollow-wall anchor, for brass hook"]
    assert len(list_shopping(heavy)) == 1
    assert "in a stud" in (told(heavy, "earthquake")[0].mend or "")
    assert told(heavy, CODE) == []
