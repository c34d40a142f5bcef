import pytest

from templater.errors import LayoutError
from templater.layout.read import read_layout
from templater.mounting.mount import mount_pieces
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
