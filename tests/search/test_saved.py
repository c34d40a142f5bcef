from __future__ import annotations

import pytest

from templater.errors import LayoutError
from templater.layout.set_aside import set_aside_pieces
from templater.pipeline import plan_wall
from templater.rules.check import check_rules
from templater.rules.model import Verdict
from templater.search.saved import save_choices
from tests.search.walls import read, settle

POOL = """\
# Over the boot bench.
title: Keeper's cottage, stair hall   # on every sheet
units: in
wall: {width: 16 ft 4 in, height: 8 ft}
furniture:
  - {name: boot bench, left: 30 in, width: 80 in, height: 34 in}
pieces:
  # the first of four
  - name: Tide chart   # in oak
    size: 25 x 20 in

    hang: {by: wire, drop: 2 1/4 in, rise: 1/2 in}
  - {name: Kelp print, size: 14 x 20 in}
  - {name: Gull study, size: 25 x 20 in}  # small
  -   name: "Lamp \\u0072oom"
      size: 9 x 20 in
groups:
  # a pair
  - name: bench pair
    choose: {from: [Tide chart, Kelp print, Gull study, Lamp room], count: 2}  # two of four
    arrange: row   # in a row
    gap: any
    above: boot bench
# the end
"""

# Two thirds of 80 in are 53 1/3 in: 25 + 3 1/4 + 25 = 53 1/4 in is the nearest of all.
SAVED = """\
# Over the boot bench.
title: Keeper's cottage, stair hall   # on every sheet
units: in
wall: {width: 16 ft 4 in, height: 8 ft}
furniture:
  - {name: boot bench, left: 30 in, width: 80 in, height: 34 in}
pieces:
  # the first of four
  - name: Tide chart   # in oak
    size: 25 x 20 in

    hang: {by: wire, drop: 2 1/4 in, rise: 1/2 in}
  # - {name: Kelp print, size: 14 x 20 in}
  - {name: Gull study, size: 25 x 20 in}  # small
  # -   name: "Lamp \\u0072oom"
  #     size: 9 x 20 in
groups:
  # a pair
  - name: bench pair
    pieces: [Tide chart, Gull study]  # two of four
    arrange: row   # in a row
    gap: 3 1/4 in
    above: boot bench
# the end
"""


def _save(text: str) -> str:
    return save_choices(text, read(text), settle(text))


def test_the_choice_is_written_and_all_else_stays() -> None:
    assert _save(POOL) == SAVED


def test_line_ends_and_mark_stay() -> None:
    text = "\ufeff" + POOL.replace("\n", "\r\n")
    assert _save(text) == "\ufeff" + SAVED.replace("\n", "\r\n")


def test_what_was_saved_hangs_where_it_was_proposed_and_keeps_the_rules() -> None:
    wall = plan_wall(SAVED.encode(), "saved.yaml")
    proposed = settle(POOL)[0].choice.plan
    assert {piece.name: piece.box for piece in wall.plan.pieces} == {
        piece.name: piece.box for piece in proposed.pieces
    }
    assert not [each for each in check_rules(wall.plan) if each.verdict is Verdict.BROKEN]


def test_a_grid_and_a_cluster_are_written_with_their_keys() -> None:
    text = (
        POOL.replace("arrange: row ", "arrange: any ")
        .replace("count: 2", "count: 4")
        .replace("25 x 20", "14 x 20")
    )
    text = text.replace("9 x 20", "14 x 20")
    for number, way in enumerate(settle(text)[0].proposals, 1):
        saved = save_choices(text, read(text), settle(text, number))
        wall = plan_wall(saved.encode(), "saved.yaml")
        (group,) = wall.layout.groups
        kept = ("arrange", "columns", "cells", "members")
        assert [getattr(group, key) for key in kept] == [getattr(way.group, key) for key in kept]
        assert group.gap_mm == pytest.approx(way.group.gap_mm, abs=1e-9)
        assert [piece.box for piece in wall.plan.pieces] == [
            pytest.approx(piece.box, abs=1e-6) for piece in way.plan.pieces
        ]


# --- pieces set aside -----------------------------------------------------------------------------

BRACKETS = """\
title: t
wall: {width: 4 m, height: 3 m}
pieces: [{name: A, size: 1 x 1 m}, {name: B, size: 2 x 2 m}, # two
  {name: C, size: 1 x 1 m, place: {left: 2 m}}]
"""


def test_a_list_in_brackets_loses_the_piece_to_a_comment() -> None:
    assert set_aside_pieces(BRACKETS, ["B"]) == (
        "title: t\n"
        "wall: {width: 4 m, height: 3 m}\n"
        "# not chosen: {name: B, size: 2 x 2 m}\n"
        "pieces: [{name: A, size: 1 x 1 m}, {name: C, size: 1 x 1 m, place: {left: 2 m}}]\n"
    )


def test_nothing_to_set_aside_changes_nothing() -> None:
    assert set_aside_pieces(BRACKETS, []) == BRACKETS


def test_a_piece_that_something_else_names_cannot_be_set_aside() -> None:
    text = BRACKETS + "accept:\n  - {rule: eye-line, for: B, because: it is tall}\n"
    with pytest.raises(LayoutError) as raised:
        set_aside_pieces(text, ["B"])
    assert "what is not chosen ('B') cannot be set aside: 'for' names 'B'" in str(raised.value)


def test_two_groups_that_share_a_pool_are_saved() -> None:
    text = POOL.replace("25 x 20", "20 x 20").replace(
        "# the end",
        "  - name: far pair\n"
        "    choose: {from: [Tide chart, Kelp print, Gull study, Lamp room], count: 2}\n"
        "    arrange: row\n"
        "    gap: 3\n"
        "    left: 130",
    )
    wall = plan_wall(_save(text).encode(), "saved.yaml")
    members = [name for group in wall.layout.groups for name in group.members]
    assert sorted(members) == ["Gull study", "Kelp print", "Lamp room", "Tide chart"]
