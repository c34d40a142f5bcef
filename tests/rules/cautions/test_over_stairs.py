"""Where somebody must work over stairs to hang a piece."""

from __future__ import annotations

from dataclasses import replace

import pytest

from templater.geometry import Box, Point
from templater.layout.model import LeftRight, Stair
from templater.placement.model import PlacedFurniture, PlacedPiece, Plan
from templater.rules.hole_notes import describe_pieces
from tests.builders import inches
from tests.rules.cautions.drilled import drilled, told
from tests.rules.plans import box, grouped, obstacle, wall

# The first edge 7 1/2 in up and 30 in from the left end; from there 7 1/2 in up in each 10 in.
FLIGHT = Stair(inches(7.5), inches(10), Point(inches(30), inches(7.5)), LeftRight.RIGHT)


def beside_stairs(*pieces: PlacedPiece, stair: Stair = FLIGHT) -> Plan:
    """A wall of 200 in with pieces and a flight that one of its groups hangs along."""
    flight, members = grouped("flight", [("Six gulls", box(60, 80, 10, 10))])
    return wall(pieces, [(replace(flight, stair=stair), members)])


def at(x: float, y: float) -> PlacedPiece:
    """A piece with one hole, so many inches from the left end and above the floor."""
    return drilled((inches(x), inches(y)), at=box(x - 5, y - 5, 10, 10))


def names_told(plan: Plan) -> list[str]:
    return [found.subject for found in told(plan, "over-stairs")]


@pytest.mark.parametrize(
    ("x", "y", "is_over"),
    [
        # At 80 in the edges are 7 1/2 + 50 x 3/4 = 45 in above the floor.
        (80, 96, True),
        (80, 45.1, True),
        (80, 44.9, False),
        # 7 1/2 - 10 x 3/4 = 0 in at 20 in: there the floor begins.
        (20.1, 60, True),
        (20, 60, False),
        (10, 60, False),
    ],
)
def test_a_hole_above_the_edges_of_the_steps(x: float, y: float, *, is_over: bool) -> None:
    plan = beside_stairs(at(x, y))
    assert ("Tide chart" in names_told(plan)) is is_over


def test_stairs_that_go_up_to_the_left() -> None:
    flight = replace(FLIGHT, up=LeftRight.LEFT)
    assert "Tide chart" not in names_told(beside_stairs(at(80, 60), stair=flight))
    assert "Tide chart" in names_told(beside_stairs(at(10, 60), stair=flight))


def test_a_piece_without_a_hole_is_hung_there_all_the_same() -> None:
    assert names_told(beside_stairs()) == ["Six gulls"]


def test_what_to_do_is_told_on_the_template() -> None:
    words = describe_pieces(beside_stairs(at(80, 96)))["tide chart"]
    assert words == (
        "over the stairs: set no common ladder on the steps: take a platform or a ladder made for"
        " stairs, as its maker says, or a scaffold, and a second person",
    )


@pytest.mark.parametrize("kind", ["stairs", "attic staircase", "Stairway"])
def test_over_a_thing_that_is_stairs(kind: str) -> None:
    below = Box(0, 0, 1000, 900)
    for plan in (
        wall([drilled()], furniture=[PlacedFurniture("way up", below, kind)]),
        wall([drilled()], obstacles=[obstacle("way up", below, kind=kind)]),
    ):
        assert names_told(plan) == ["Tide chart"]
    assert names_told(wall([drilled()], furniture=[PlacedFurniture("way up", below, "chest")])) == []
