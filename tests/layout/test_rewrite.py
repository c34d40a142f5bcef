"""What is chosen is written into the layout's text, and every other byte stays."""

import re
from collections.abc import Mapping
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templater.errors import LayoutError
from templater.layout.model import Arrangement, Layout
from templater.layout.rewrite import settle_groups
from templater.layout.written import Written, write_choice, write_length
from templater.lengths import Unit, parse_length
from tests.layout.files import WIDE, read_sound

HEAD = """\
# The keeper's bench.
title: Keeper's cottage   # on every sheet
units: in
wall: {width:   16 ft, height: 8 ft}
furniture: [{name: bench, left: 40, width: 80, height: 30}]
pieces:
  - {name: Tide chart, size: 16 x 20}
  - {name: "Gull, study", size: 16 x 20}   # the big one
  - {name: Kelp print, size: 16 x 20}
groups:
  # Over the bench.
"""
TAIL = """
  - {name: other, pieces: [Kelp print], arrange: row}   # elsewhere
# The end.
"""
FLOW = (
    "  - {name: over bench, choose: {from: [Tide chart,  # first\n"
    '      "Gull, study"], count: any}, arrange: any, gap:  any, above: bench}   # tail'
)
BLOCK = """\
  - name: over bench   # its name
    gap: any     # let it
    # which
    choose:
      from:
        - Tide chart   # first
        - "Gull, study"
      count: any

    # how
    arrange: any # any way
    above: bench # there"""
ROW: dict[str, Written] = {"pieces": ["Tide chart", "Gull, study"], "arrange": "row", "gap": "3 1/2 in"}
PLACED: dict[str, Written] = {
    "pieces": ["Tide chart"],
    "arrange": "placed",
    "corners": {"Tide chart": {"left": "0 in", "bottom": "1/2 in"}},
}


def settle_group(text: str, group: str, settled: Mapping[str, Written]) -> str:
    return settle_groups(text, {group: settled})


def settle(group: str, settled: dict[str, Written]) -> str:
    """The group's new text, what is around it being unchanged."""
    new = settle_group(HEAD + group + TAIL, "Over BENCH", settled)
    assert new.startswith(HEAD)
    assert new.endswith(TAIL)
    return new[len(HEAD) : len(new) - len(TAIL)]


def test_a_row_in_the_flow_style() -> None:
    assert settle(FLOW, ROW) == (
        "  # first\n"
        '  - {name: over bench, pieces: [Tide chart, "Gull, study"], arrange: row, gap: 3 1/2 in,'
        " above: bench}   # tail"
    )


def test_a_row_in_the_block_style() -> None:
    assert settle(BLOCK, ROW) == (
        "  - name: over bench   # its name\n"
        "    gap: 3 1/2 in     # let it\n"
        "    # which\n"
        "    # first\n"
        '    pieces: [Tide chart, "Gull, study"]\n'
        "\n"
        "    # how\n"
        "    arrange: row # any way\n"
        "    above: bench # there"
    )


def test_corners_take_the_place_of_the_gap() -> None:
    assert settle(FLOW, PLACED) == (
        "  # first\n"
        "  - {name: over bench, pieces: [Tide chart], arrange: placed,"
        " corners: {Tide chart: {left: 0 in, bottom: 1/2 in}}, above: bench}   # tail"
    )
    assert settle(BLOCK, PLACED) == (
        "  - name: over bench   # its name\n"
        "    # let it\n"
        "    # which\n"
        "    # first\n"
        "    pieces: [Tide chart]\n"
        "\n"
        "    # how\n"
        "    arrange: placed # any way\n"
        "    corners: {Tide chart: {left: 0 in, bottom: 1/2 in}}\n"
        "    above: bench # there"
    )


def test_a_first_key_that_leaves_makes_room_for_the_next() -> None:
    group = (
        "  - gap: any   # g\n"
        "    width: 50\n"
        "    height: 30\n"
        "    arrange: cluster\n"
        '    pieces: [Tide chart, "Gull, study"]   # as they are\n'
        "    name: over bench"
    )
    both: dict[str, Written] = {
        "arrange": "placed",
        "pieces": ["Tide chart", "Gull, study"],
        "corners": {name: {"left": left, "bottom": "0 in"} for name, left in CORNERS.items()},
    }
    assert settle(group, both) == (
        "  # g\n"
        "  - arrange: placed\n"
        "    corners: {Tide chart: {left: 0 in, bottom: 0 in},"
        ' "Gull, study": {left: 18 in, bottom: 0 in}}\n'
        '    pieces: [Tide chart, "Gull, study"]   # as they are\n'
        "    name: over bench"
    )


CORNERS = {"Tide chart": "0 in", "Gull, study": "18 in"}


def test_columns_take_the_place_of_rows() -> None:
    group = "  - {name: over bench, pieces: [Tide chart], arrange: grid, rows: 1, gap: any}"
    settled: dict[str, Written] = {"columns": "1", "gap": "2 in"}
    assert settle(group, settled) == (
        "  - {name: over bench, pieces: [Tide chart], arrange: grid, columns: 1, gap: 2 in}"
    )


def test_long_lists_are_written_on_several_lines() -> None:
    names = [f"Signal flag of the harbour number {number}" for number in range(1, 5)]
    head = HEAD.replace(
        "groups:", "".join(f"  - {{name: {name}, size: 1 x 1}}\n" for name in names) + "groups:"
    )
    settled: dict[str, Written] = {
        "pieces": names,
        "arrange": "placed",
        "corners": {
            name: {"left": f"{number} in", "bottom": "0 in"} for number, name in enumerate(names)
        },
    }
    for group in (FLOW, BLOCK):
        new = settle_group(head + group + TAIL, "over bench", settled)
        assert max(len(line) for line in new.splitlines()) <= 120
        layout = read_sound(new)
        assert layout.groups[0].members == tuple(names)
        assert layout.groups[0].corners == ((0, 0), (25.4, 0), (50.8, 0), (76.2, 0))


@pytest.mark.parametrize("newline", ["\r\n", "\r"])
@pytest.mark.parametrize("group", [FLOW, BLOCK])
def test_line_ends_and_the_byte_order_mark_stay(newline: str, group: str) -> None:
    text = "\ufeff" + (HEAD + group + TAIL)
    new = settle_group(text.replace("\n", newline), "over bench", ROW)
    assert new == settle_group(text, "over bench", ROW).replace("\n", newline)
    assert new.startswith("\ufeff# The")


def test_characters_beyond_the_first_plane_move_nothing() -> None:
    head = HEAD.replace("cottage", "c\u00f6ttage \U0001f4a1 \u4e2d").replace("bench.", "b\U0001f4a1nch.")
    new = settle_group(head + FLOW + TAIL, "over bench", ROW)
    assert new == settle_group(HEAD + FLOW + TAIL, "over bench", ROW).replace(HEAD, head)


def test_groups_that_share_a_pool_are_settled_together() -> None:
    settled: dict[str, dict[str, Written]] = {
        "pick": {"pieces": ["K", "L"], "arrange": "row"},
        "pick too": {"pieces": ["M"], "gap": "2 in"},
    }
    layout = read_sound(settle_groups(WIDE, settled))
    assert [group.members for group in layout.groups if group.name in settled] == [("K", "L"), ("M",)]
    assert layout.groups[-1].gap_mm == 50.8
    with pytest.raises(LayoutError) as caught:
        settle_group(WIDE, "pick", settled["pick"])
    assert str(caught.value) == (
        "what was chosen for 'pick' cannot be written into the layout: 'from' names 'K', which is in the"
        " group 'pick' already\n  write the group out key by key, without & and *, and try again"
    )


@pytest.mark.parametrize(
    ("old", "new", "reason"),
    [
        ("  - {name: over bench", "  - *there", "it is not written out under 'groups'"),
        ("gap:  any", "gap: &open any", "'*open' refers to nothing above it"),
    ],
)
def test_what_aliases_share_is_not_changed(old: str, new: str, reason: str) -> None:
    text = HEAD + FLOW + "\n  - {name: other, pieces: [Kelp print], arrange: row, gap: *open}\n"
    if "&" not in new:
        text = HEAD + "  - *there\n"
    with pytest.raises(LayoutError, match=re.escape(reason)):
        settle_group(text.replace(old, new), "over bench", ROW)


@given(st.floats(0, 30_000), st.sampled_from(Unit))
def test_a_written_length_reads_back(mm: float, unit: Unit) -> None:
    assert float(parse_length(write_length(mm, unit))) == pytest.approx(mm, abs=2e-6)


def test_lengths_are_written_in_the_layouts_own_units() -> None:
    assert write_length(3.5 * 25.4, Unit.INCH) == "3 1/2 in"
    assert write_length(0, Unit.FOOT) == "0 in"
    assert write_length(100, Unit.INCH) == "100 mm"
    assert write_length(88.9, Unit.CENTIMETRE) == "88.9 mm"
    assert write_length(0, Unit.MILLIMETRE) == "0 mm"


def settled_as(layout: Layout, arrange: Arrangement, columns: int | None) -> dict[str, Written]:
    (group,) = [each for each in layout.groups if each.name == "over bench"]
    members = ("Gull, study", "Tide chart")
    chosen = replace(group, members=members, arrange=arrange, columns=columns, gap_mm=63.5)
    return write_choice(chosen, layout.units)


@pytest.mark.parametrize("group", [FLOW, BLOCK])
@pytest.mark.parametrize(
    ("arrange", "columns"),
    [
        (Arrangement.ROW, None),
        (Arrangement.COLUMN, None),
        (Arrangement.GRID, 2),
        (Arrangement.CLUSTER, None),
    ],
)
def test_a_choice_is_read_back(group: str, arrange: Arrangement, columns: int | None) -> None:
    text = HEAD + group + TAIL
    layout = read_sound(settle_group(text, "over bench", settled_as(read_sound(text), arrange, columns)))
    chosen = layout.groups[0]
    assert (chosen.members, chosen.open_choice) == (("Gull, study", "Tide chart"), None)
    assert (chosen.arrange, chosen.columns, chosen.gap_mm) == (arrange, columns, 63.5)
    assert chosen.position is not None
    assert chosen.position.above == "bench"


KEYS = {
    "name": "over bench",
    "choose": '{from: [Tide chart, "Gull, study"]}',
    "arrange": "any",
    "gap": "any",
    "above": "bench",
    "clearance": "7 in",
}


@settings(max_examples=80, deadline=None)
@given(
    st.permutations(list(KEYS)),
    st.lists(st.sampled_from(["", "  # a: {b", ' # "c', "\t#\u00e9\U0001f4a1"]), min_size=6, max_size=6),
    st.booleans(),
    st.sampled_from([ROW, PLACED]),
)
def test_every_comment_stays_whatever_the_order(
    order: list[str], comments: list[str], is_flow: bool, settled: dict[str, Written]
) -> None:
    ends = [f"{',' if is_flow else ''}{comment}\n" for comment in comments]
    lines = [f"    {key}: {KEYS[key]}{end}" for key, end in zip(order, ends, strict=True)]
    group = "  - {\n" + "".join(lines) + "    }" if is_flow else "  -\n" + "".join(lines)
    new = settle(group, settled)
    kept = [comment.strip() for comment in comments if comment]
    assert sorted(re.findall(r"#.*", new)) == sorted(kept)
    assert [key for key in order if key not in ("choose", "arrange", "gap")] == [
        key
        for key in re.findall(r"^ *(?:- )?(\w+):", new, re.MULTILINE)
        if key in ("name", "above", "clearance")
    ]
