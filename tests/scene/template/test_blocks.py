from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.drawing import Words
from templater.geometry import Box, Point
from templater.lettering import text_width, words_box
from templater.scene.lines import NORMAL, SMALL
from templater.scene.template.blocks import Block, Row, wrapped

TEXTS = st.text("AaÄgjQ |[]", min_size=1, max_size=20)
ROWS = st.lists(
    st.builds(Row, TEXTS, st.sampled_from((SMALL, NORMAL)), st.booleans()), min_size=1, max_size=6
)


def words_in(block: Block) -> list[Words]:
    return [item for item in block.draw(Box.of(Point(3, 7), block.size)) if isinstance(item, Words)]


@given(ROWS, st.booleans())
def test_words_stay_in_the_box_that_was_measured(rows: list[Row], turned: bool) -> None:
    block = Block(tuple(rows), turned)
    box = Box.of(Point(3, 7), block.size)
    assert all(box.holds(words_box(words), slack=1e-6) for words in words_in(block))


@pytest.mark.parametrize("turned", [False, True])
def test_rows_do_not_touch(turned: bool) -> None:
    block = Block((Row("Åpj", NORMAL, bold=True), Row("Åpj"), Row("Åpj")), turned)
    first, second, third = (words_box(words) for words in words_in(block))
    assert not first.meets(second)
    assert not second.meets(third)


def test_a_turned_block_is_as_high_as_the_other_is_wide() -> None:
    rows = (Row("CENTRE LINE"), Row("from the wall's left end"))
    level, turned = Block(rows).size, Block(rows, turned=True).size
    assert (turned.width, turned.height) == (level.height, level.width)


def test_rows_read_top_down_and_turned_ones_left_to_right() -> None:
    rows = (Row("first"), Row("second"))
    first, second = words_in(Block(rows))
    assert first.at.y > second.at.y
    first, second = words_in(Block(rows, turned=True))
    assert first.at.x < second.at.x


def test_a_paragraph_keeps_to_its_width_and_loses_no_word() -> None:
    text = "This hole could not be kept clear of a seam: tape with care."
    rows = wrapped(text, 40, bold=True)
    assert all(text_width(row.text, SMALL, bold=True) <= 40 for row in rows)
    assert " ".join(row.text for row in rows) == text
