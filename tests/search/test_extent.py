from dataclasses import replace

import pytest

from templater.errors import LayoutError
from templater.layout.model import Arrangement
from templater.layout.read import read_layout
from templater.mounting.mount import mount_pieces
from templater.search import extent
from templater.search.extent import EFFORT, Allowance
from templater.search.model import Settlement
from templater.search.settle import settle_groups

HEAD = "title: Hall\nunits: mm\nwall: {width: 90 m, height: 3 m}\npieces:\n"


def settle(pieces: int, groups: str) -> str:
    """What is told of so many pieces and some groups that leave something open."""
    names = "".join(f"- {{name: p{number}, size: 90 x 90}}\n" for number in range(pieces))
    layout = read_layout(f"{HEAD}{names}groups:\n{groups}", "hall.yaml").layout
    assert layout is not None
    with pytest.raises(LayoutError) as caught:
        settle_groups(layout, mount_pieces(layout).mounts)
    return str(caught.value)


def list_names(count: int) -> str:
    return ", ".join(f"p{number}" for number in range(count))


def test_a_search_among_too_many_pieces_is_refused() -> None:
    # Four lines and 301 pieces come before `groups:`, so the group is in line 307.
    assert settle(301, "- {name: g, pieces: [p1, p2], arrange: any}\n") == (
        "hall.yaml:307:3: 301 pieces are too many for a search, at most 300\n"
        "  settle this group yourself, or search in a layout of this part of the wall alone"
    )


@pytest.mark.parametrize("asked", ["arrange: any", "arrange: cluster, gap: any"])
def test_a_cluster_of_too_many_pieces_is_not_sought_with_every_gap(asked: str) -> None:
    assert settle(25, f"- {{name: g, {asked}, pieces: [{list_names(25)}]}}\n") == (
        "hall.yaml:31:3: 'g' has 25 pieces, at most 24 can be sought\n"
        "  say how it is arranged and its gap, or divide it into several groups"
    )


def test_too_many_open_groups_are_refused() -> None:
    groups = "".join(f"- {{name: g{n}, pieces: [p{n}], arrange: row, gap: any}}\n" for n in range(21))
    # Four lines, 21 pieces, `groups:`; the 21st group is in line 47.
    assert settle(21, groups) == (
        "hall.yaml:47:3: 21 groups leave something open, at most 20 can be sought\n"
        "  settle this one and those that follow"
    )


def search(groups: str, *, pieces: int = 2) -> tuple[Settlement, ...]:
    """The open groups of so many pieces, settled."""
    names = "".join(f"- {{name: p{number}, size: 90 x {90 + number}}}\n" for number in range(pieces))
    layout = read_layout(f"{HEAD}{names}groups:\n{groups}", "hall.yaml").layout
    assert layout is not None
    return settle_groups(layout, mount_pieces(layout).mounts)


PAIR = "- {name: pair, arrange: row, gap: any, pieces: [p0, p1]}\n"


def test_a_search_that_is_not_cut_short_says_nothing() -> None:
    (settlement,) = search(PAIR)
    assert settlement.advice is None


def test_a_search_that_is_cut_short_tries_the_likeliest_and_says_so(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    # Ten gaps, 55 to 100 mm by fives; each way costs two pieces. The three nearest to 3 in (76.2
    # mm) are 75, 80 and 70 mm; 75 mm is the nearest.
    monkeypatch.setattr(extent, "EFFORT", 7)
    (settlement,) = search(PAIR)
    assert settlement.choice.group.gap_mm == 75
    assert settlement.advice == (
        "of 10 ways to hang 'pair' the 3 likeliest were tried, because so much is open in this layout"
    )


def test_one_way_is_tried_at_least(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(extent, "EFFORT", 0)
    (settlement,) = search(PAIR)
    assert settlement.advice is not None
    assert "the 1 likeliest" in settlement.advice


def test_what_a_way_costs() -> None:
    (pair,) = search(PAIR)
    row, allowance = pair.choice.group, Allowance(groups=2, pieces=40)
    assert allowance.effort == EFFORT // 2
    assert allowance.find_cost(row) == 40
    trio = replace(row, members=("p0", "p1", "p2"), arrange=Arrangement.CLUSTER)
    assert allowance.find_cost(trio) == 40 + 10 * 3**4
    five = replace(trio, members=("p0", "p1", "p2", "p3", "p4"))
    assert allowance.find_cost(five) == 40 + 8_000 + 400 * 5


@pytest.mark.parametrize(("groups", "longest"), [(1, 16), (2, 15), (3, 14), (4, 14), (5, 13), (20, 11)])
def test_pools_are_compared_in_fewer_sets_the_more_of_them_there_are(groups: int, longest: int) -> None:
    assert Allowance(groups, 10).shorten_pool(is_wide=True) == longest
    assert Allowance(groups, 10).shorten_pool(is_wide=False) == longest - 4
