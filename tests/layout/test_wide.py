"""What the keys of arrangements, things in the way and rules become in the layout."""

import pytest

from templater.errors import Place
from templater.geometry import Box, Point, Size
from templater.layout.model import (
    Acceptance,
    Arrangement,
    Cells,
    Hanger,
    Hanging,
    Ledge,
    LeftRight,
    OpenChoice,
    RuleSetting,
    Stair,
)
from templater.layout.read import read_layout
from tests.layout.files import WIDE, change, read_sound

IN = 25.4
LAYOUT = read_sound(WIDE)
GROUPS = {group.name: group for group in LAYOUT.groups}
PIECES = {piece.name: piece for piece in LAYOUT.pieces}


def mm(inches: float) -> float:
    return pytest.approx(inches * IN)  # type: ignore[return-value]


def test_a_sloping_ceiling_gives_the_walls_height() -> None:
    assert LAYOUT.wall.size == (mm(600), mm(108))
    assert LAYOUT.wall.ceiling == (
        (0, mm(108)),
        (mm(480), mm(108)),
        (mm(600), mm(72)),
    )
    assert all(isinstance(point, Point) for point in LAYOUT.wall.ceiling)


def test_openings_and_fixtures() -> None:
    window, door = LAYOUT.openings
    assert (window.name, window.kind, window.swing) == ("sash window", "window", None)
    assert window.box == (mm(40), mm(30), mm(76), mm(80))
    # Its right edge is 120 in from the right end of a wall of 600 in; it stands on the floor.
    assert door.box == (mm(448), 0, mm(480), mm(80))
    assert (door.kind, door.swing) == ("door", LeftRight.RIGHT)
    (thermostat,) = LAYOUT.fixtures
    assert isinstance(thermostat.box, Box)
    assert thermostat.box == (mm(98), mm(57.5), mm(102), mm(62.5))
    assert (thermostat.kind, thermostat.swing) == ("thermostat", None)
    assert thermostat.at == Place("hall.yaml", 10, 5)


def test_a_placed_group_within_a_spread_row() -> None:
    pair, big = GROUPS["pair"], GROUPS["big"]
    assert (pair.arrange, pair.members, pair.position) == (Arrangement.PLACED, ("A", "B"), None)
    assert pair.corners == ((0, 0), (mm(11), mm(3)))
    assert (big.members, big.spread_mm) == (("pair", "C"), mm(50))
    assert big.position is not None
    assert big.position.between == ("landing door", "right end")


def test_a_position_beside_something() -> None:
    position = PIECES["F"].position
    assert position is not None
    assert (position.beside, position.side) == ("sash window", LeftRight.RIGHT)
    assert (position.clearance_mm, position.top_mm) == (mm(4), mm(70))


def test_a_grid_of_rows_has_as_many_columns_as_they_need() -> None:
    assert (GROUPS["six"].columns, GROUPS["six"].cells) == (1, Cells.TRUE)
    three = read_sound(
        change("[D, E], arrange: grid, rows: 2", "[D, E, G], arrange: grid, rows: 2", SPARE)
    )
    # Three pieces in two rows: two above, one below.
    assert next(group for group in three.groups if group.name == "six").columns == 2


SPARE = WIDE.replace("pieces: [G]", "pieces: [M]").replace(", M]}, arrange", "]}, arrange")
"""With M on the ledge and in no pool, so that G is free."""


def test_a_ledge_is_a_piece_of_its_own() -> None:
    rest = GROUPS["rest"]
    assert rest.ledge == Ledge("rest ledge", 1397)
    assert rest.members == ("G",)
    ledge = LAYOUT.pieces[-1]
    at = Place("hall.yaml", 35, 12)
    assert (ledge.name, ledge.slug, ledge.at) == ("rest ledge", "rest-ledge", at)
    assert (ledge.size, ledge.weight_kg, ledge.position) == (Size(1219.2, 38.1), None, None)
    assert ledge.hang == Hanging(Hanger.CLEAT, 19.05, 0, None, 0, 1219.2, 406.4, at)


def test_a_ledge_takes_no_name_that_something_has() -> None:
    text = WIDE.replace("name: F,", "name: Rest LEDGE,").replace("name: six", "name: rest ledge 2")
    layout = read_sound(text)
    assert layout.pieces[-1].name == "rest ledge 3"
    assert len({piece.slug for piece in layout.pieces}) == len(layout.pieces)
    slugs = read_sound(WIDE.replace("name: F,", "name: Rest-ledge,")).pieces
    assert [piece.slug for piece in slugs if "ledge" in piece.slug] == ["rest-ledge", "rest-ledge-2"]


def test_a_stair() -> None:
    assert GROUPS["up"].stair == Stair(190.5, 254, Point(7620, 381), LeftRight.LEFT)


def test_a_cluster_with_an_open_gap() -> None:
    heap = GROUPS["heap"]
    assert heap.target == (mm(40), mm(30))
    assert heap.open_choice == OpenChoice(arrange=False, gap=True, pool=None, count=None)
    assert (heap.members, heap.gap_mm) == (("I",), mm(3))


def test_pools() -> None:
    pick, too = GROUPS["pick"], GROUPS["pick too"]
    assert pick.open_choice == OpenChoice(True, False, ("J", "K", "L"), 2)
    assert too.open_choice == OpenChoice(False, True, ("K", "L", "M"), None)
    assert (pick.members, pick.arrange, too.arrange) == ((), Arrangement.ROW, Arrangement.COLUMN)
    assert [PIECES[name].position for name in "JKLM"] == [None] * 4


def test_nothing_is_open_unless_the_layout_says_so() -> None:
    assert {name for name, group in GROUPS.items() if group.open_choice} == {"heap", "pick", "pick too"}


def test_rules_and_acceptances() -> None:
    assert LAYOUT.rules == (
        RuleSetting("gap", True, mm(2), mm(5), Place("hall.yaml", 45, 8)),
        RuleSetting("eye-line", False, None, None, Place("hall.yaml", 46, 13)),
        RuleSetting("near-miss", True, None, None, Place("hall.yaml", 47, 14)),
        RuleSetting("balance", True, None, 12.5, Place("hall.yaml", 44, 12)),
    )
    assert LAYOUT.accepted == (
        Acceptance("eye-line", "pick", "the stairs put the eye higher here", Place("hall.yaml", 49, 5)),
    )


@pytest.mark.parametrize(
    ("old", "new", "lost_groups", "lost_pieces"),
    [
        # What refers to a faulty entry goes with it, and so does all that is in it or around it.
        ("name: C, size: 10 x 10", "name: C, size: 0", {"pair", "big"}, {"A", "B", "C"}),
        ("corners: {B: {left: 11", "corners: {B: {left: -1", {"pair", "big"}, {"A", "B", "C"}),
        ("bottom: 30, width: 36", "bottom: 30, width: 0", set(), {"F"}),
        ("swing: right", "swing: out", {"big", "pair"}, {"A", "B", "C"}),
        ("name: J, size: 10 x 10", "name: J, size: 0", {"pick"}, {"J"}),
        ("thick: 1 1/2", "thick: 0", {"rest"}, {"G", "rest ledge"}),
        ("pieces: [A, B]", "pieces: [A, big]", {"pair", "big"}, {"A", "C"}),
        ("balance: {to: 12.5 %}", "balance: {to: 12.5}", set(), set()),
        ("rule: eye-line", "rule: eyeline", set(), set()),
    ],
)
def test_with_faults_the_sound_part_is_kept(
    old: str, new: str, lost_groups: set[str], lost_pieces: set[str]
) -> None:
    reading = read_layout(change(old, new, WIDE), "hall.yaml")
    assert reading.faults
    assert reading.layout is not None
    assert GROUPS.keys() - {group.name for group in reading.layout.groups} == lost_groups
    kept = {piece.name for piece in reading.layout.pieces}
    assert PIECES.keys() - kept == lost_pieces
    members = {name for group in reading.layout.groups for name in group.members}
    assert members <= kept | {group.name for group in reading.layout.groups}
