"""Whatever a text holds, it gives a layout that holds together, or faults with places in the file."""

from __future__ import annotations

from random import Random

from hypothesis import given
from hypothesis import strategies as st

from templater.layout.model import Group, Layout, Piece
from templater.layout.read import read_layout
from tests.layout.files import FULL, WIDE
from tests.layout.mutations import INSERTED


def check_coherence(layout: Layout) -> None:
    """All names in a layout are those of its own entries, and each piece hangs once."""
    hung: list[Piece | Group] = [*layout.pieces, *layout.groups]
    names = [each.name for each in hung]
    assert len(set(names)) == len(names)
    members = [name for group in layout.groups for name in group.members]
    assert set(members) <= set(names)
    assert len(set(members)) == len(members)
    pools = [group.open_choice.pool or () for group in layout.groups if group.open_choice]
    assert {name for pool in pools for name in pool} <= set(names)
    things = {each.name for each in layout.furniture}
    things |= {each.name for each in (*layout.openings, *layout.fixtures)}
    for each in hung:
        assert (each.position is not None) <= (each.name not in members)
        if position := each.position:
            named = {position.above, position.beside, position.around, *(position.between or ())}
            assert named <= things | {None, "left end", "right end"}


def judge(content: bytes | str) -> None:
    """Whatever the content, it gives a layout or faults with places within the file."""
    reading = read_layout(content, "hall.yaml")
    assert reading.layout is not None or reading.faults
    if reading.layout is not None:
        check_coherence(reading.layout)
    text = content.decode(errors="replace") if isinstance(content, bytes) else content
    lines = 1 + sum(text.count(end) for end in "\n\r\x85\u2028\u2029")
    for fault in reading.faults:
        assert fault.place is not None
        assert fault.message
        assert fault.hint
        assert (fault.message + fault.hint).isprintable()
        assert fault.place.file == "hall.yaml"
        assert fault.place.column >= 1
        assert 1 <= fault.place.line <= lines


@given(st.text(max_size=200) | st.binary(max_size=200))
def test_any_text_gives_a_layout_or_faults(content: str | bytes) -> None:
    judge(content)


@given(st.text("[]{}&*!|>'\"%@`#,:?- \n\tab1", max_size=80))
def test_any_yaml_like_text_gives_a_layout_or_faults(content: str) -> None:
    judge(content)
    judge(FULL + content)


SNIPPETS = (
    *INSERTED,
    *("0", "-", ",", "1e9", "nan", "9999999 m", "''", "[]", "{}", "\u202e"),
    *("above: ", "beside: ", "between: ", "ceiling: ", "corners: ", "choose: ", "arrange: any, "),
    *("rows: ", "50 %", "place: ", "pieces: ", "units: ", "name: ", "size: ", "hang: ", "wall: "),
    *("Night watch"),
)
"""What is put into a text: signs of YAML, values, and words that mean something here."""


@given(
    st.lists(
        st.tuples(
            st.integers(0, max(len(FULL), len(WIDE))),
            st.integers(0, 12),
            st.sampled_from(SNIPPETS) | st.text(max_size=3),
        ),
        min_size=1,
        max_size=5,
    )
)
def test_any_mutated_layout_gives_a_layout_or_faults(edits: list[tuple[int, int, str]]) -> None:
    for sound in (FULL, WIDE):
        text = sound
        for start, length, snippet in edits:
            text = text[:start] + snippet + text[start + length :]
        judge(text)


@given(st.lists(st.integers(1, len(WIDE.splitlines())), min_size=1, max_size=6), st.randoms())
def test_any_layout_with_lines_missing_or_moved_gives_a_layout_or_faults(
    numbers: list[int], chance: Random
) -> None:
    lines = WIDE.splitlines(keepends=True)
    for number in numbers:
        line = lines.pop(number % len(lines))
        if chance.random() < 0.5:
            lines.insert(chance.randrange(len(lines)), line)
    judge("".join(lines))


VALUES = st.recursive(
    st.sampled_from(
        [
            *("", "0", "5 in", "1 x 2 in", "row", "wire", "Mirror", "oil cabinet", "cleat", "cm", "a4"),
            *("x", "any", "grid", "placed", "ledge", "left", "left end", "60 %", "off", "gap", "3"),
        ]
    ),
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(
            st.sampled_from(
                [
                    *("name", "size", "by", "drop", "left", "above", "pieces", "width", "arrange"),
                    *("beside", "between", "corners", "choose", "from", "count", "ledge", "stair"),
                    *("start", "rows", "ceiling", "rule", "for", "to", "gap", "eye-line", "x"),
                ]
            ),
            inner,
        )
    ),
    max_leaves=8,
)


@given(
    st.dictionaries(
        st.sampled_from(
            [
                *("title", "units", "wall", "pieces", "groups", "furniture", "margin", "datum", "paper"),
                *("openings", "fixtures", "rules", "accept"),
            ]
        ),
        VALUES,
    )
)
def test_any_tree_of_known_keys_gives_a_layout_or_faults(tree: dict[str, object]) -> None:
    judge(str(tree).replace("'", '"'))
    judge(
        "title: Hall\nwall: {width: 1 m, height: 1 m}\n"
        + "\n".join(f"{key}: {value!r}" for key, value in tree.items())
    )
