"""Whatever hardware a layout gives, it is refused with words, or every hole is told what it takes."""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from templater.errors import Fault, LayoutError
from templater.pipeline import plan_wall
from templater.placement.model import Plan
from templater.rules.check import check_all
from templater.rules.fasteners.choose import Kind, choose_fasteners
from templater.rules.fasteners.shopping import list_shopping
from templater.rules.fasteners.wording import NO_WEIGHT, format_load, judge_fastener

INCHES = st.integers(1, 40).map(lambda eighths: f"{eighths}/4 in")
WEIGHTS = st.sampled_from(["4 oz", "3 lb", "18 lb", "60 lb"])
HOOKS = st.none() | st.just("brass hook")
HANGS: dict[str, dict[str, st.SearchStrategy[Any]]] = {
    "nail": {"drop": INCHES, "hook": HOOKS},
    "sawtooth": {"drop": INCHES, "teeth": st.none() | st.just("1/8 in"), "hook": HOOKS},
    "wire": {
        "drop": INCHES,
        "hooks": st.just(2),
        "spread": INCHES,
        "rings": st.just({"apart": "12 in", "below_top": "6 in"}),
        "measured_at": st.sampled_from([None, 1, 2]),
        "hook": HOOKS,
    },
    "d-rings": {
        "drop": INCHES,
        "apart": INCHES,
        "lock": st.none() | st.just({"below_top": "19 in"}),
        "hook": HOOKS,
    },
    "keyholes": {"drop": INCHES, "apart": INCHES, "hook": HOOKS},
    "cleat": {"drop": INCHES, "width": st.just("14 in"), "on": st.just("studs")},
    "rail": {"height": st.just("90 in"), "drop": INCHES, "cords": st.just(2), "apart": INCHES},
    "strips": {"rating": st.just("4 lb"), "each": st.sampled_from(["pair", "strip"])},
}
MADE_OF = {"glazing": "glass 2 mm", "mat": "4-ply", "backing": "mdf 3 mm"}


def without_none(entry: dict[str, Any]) -> dict[str, Any]:
    return {key: value for key, value in entry.items() if value is not None}


@st.composite
def layouts(draw: st.DrawFn) -> dict[str, Any]:
    """The layout of one piece on any wall; not every one of them holds."""
    by = draw(st.sampled_from(sorted(HANGS)))
    asked = {key: draw(values) for key, values in HANGS[by].items()}
    surface = draw(st.sampled_from([None, "drywall", "plaster and lath", "concrete", "wood"]))
    studs = draw(st.sampled_from([None, {"first": "8 in", "every": "16 in"}, ["50 in", "62 in"]]))
    wall = {"width": "10 ft", "height": "8 ft", "surface": surface, "studs": studs}
    weight = draw(st.sampled_from(["given", "estimated", "none"]))
    piece = {
        "name": "Fog bell",
        "size": "16 x 20 in",
        "weight": draw(WEIGHTS) if weight == "given" else None,
        "made_of": MADE_OF if weight == "estimated" else None,
        "stands_out": draw(st.none() | INCHES),
        "hang": without_none({"by": by, **asked}),
    }
    hook = {"name": "brass hook", "rise": "1/2 in", "holes": draw(st.integers(1, 3))}
    rated = {**hook, "rating": draw(st.none() | WEIGHTS)}
    return {
        "title": "Keeper's cottage",
        "units": "in",
        "wall": without_none(wall),
        "hardware": [without_none(rated)],
        "pieces": [without_none(piece)],
    }


def plan_or_faults(layout: dict[str, Any]) -> tuple[Plan | None, Sequence[Fault]]:
    """The plan of a layout, or why there is none."""
    try:
        return plan_wall(json.dumps(layout).encode(), "hall.yaml").plan, ()
    except LayoutError as error:
        return None, error.faults


def assert_told(plan: Plan) -> None:
    """Every hole has a fastener, or is said not to be checked; the same of what is to be bought."""
    for piece in plan.pieces:
        fasteners = choose_fasteners(piece, plan)
        assert len(fasteners) == len(piece.marks)
        for fastener in fasteners:
            assert judge_fastener(fastener, plan.units)
            is_known = fastener.load is not None
            assert is_known is (piece.weight_kg is not None)
            assert (format_load(fastener.load, plan.units) == NO_WEIGHT) is not is_known
            is_lock = fastener.kind is Kind.LOCK
            assert is_known or is_lock or "not checked" in judge_fastener(fastener, plan.units)
    bought = list_shopping(plan)
    holes = sum(len(piece.marks) for piece in plan.pieces)
    if holes:
        assert sum(line.count or 0 for line in bought) == holes
    assert all(line.count is None or line.count > 0 for line in bought)


@given(layouts())
@settings(max_examples=150, deadline=None)
def test_any_hardware_is_refused_or_told(layout: dict[str, Any]) -> None:
    plan, faults = plan_or_faults(layout)
    assert all(fault.message and fault.hint for fault in faults)
    if plan is not None:
        assert_told(plan)
        assert {finding.subject for finding in check_all(plan)} == {"Fog bell"}
