"""Blocks of words that can be measured before they are placed."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property

from templater.drawing import Item, Words
from templater.geometry import Box, Point, Size
from templater.lettering import ASCENT, DESCENT, text_width, wrap
from templater.scene.lines import SMALL
from templater.scene.template.ink import measure_words

PITCH_RATIO = 1.9
PADDING = 1.5


@dataclass(frozen=True, slots=True)
class Row:
    """One line of words of a block."""

    text: str
    height_mm: float = SMALL
    bold: bool = False


@dataclass(frozen=True)
class Block:
    """Lines of words, left-aligned, top down; ``turned`` blocks read upward."""

    rows: tuple[Row, ...]
    turned: bool = False

    @cached_property
    def size(self) -> Size:
        """The room it takes on paper, padding included, mm."""
        width = max(text_width(row.text, row.height_mm, row.bold) for row in self.rows) + 2 * PADDING
        height = self._depth(len(self.rows)) + DESCENT * self.rows[-1].height_mm + 2 * PADDING
        return Size(height, width) if self.turned else Size(width, height)

    @cached_property
    def ink(self) -> float:
        """The ink that it takes, mm²."""
        return sum(measure_words(row.text, row.height_mm, row.bold) for row in self.rows)

    def lean(self) -> Block:
        """The same with headings no higher than other words."""
        return replace(self, rows=tuple(replace(row, height_mm=SMALL) for row in self.rows))

    def draw(self, box: Box) -> tuple[Item, ...]:
        """The words, in a box of the block's size."""
        return tuple(self._words(index, box) for index in range(len(self.rows)))

    def _words(self, index: int, box: Box) -> Words:
        row = self.rows[index]
        depth = PADDING + self._depth(index + 1)
        if self.turned:
            at = Point(box.x0 + depth, box.y0 + PADDING)
        else:
            at = Point(box.x0 + PADDING, box.y1 - depth)
        return Words(at, row.text, row.height_mm, bold=row.bold, turned=self.turned)

    def _depth(self, count: int) -> float:
        """From the top of the block down to the baseline of a line, without padding."""
        pitches = sum(row.height_mm * PITCH_RATIO for row in self.rows[1:count])
        return ASCENT * self.rows[0].height_mm + pitches


def wrapped(text: str, width_mm: float, height_mm: float = SMALL, bold: bool = False) -> tuple[Row, ...]:
    """A paragraph as rows no wider than asked."""
    return tuple(Row(line, height_mm, bold) for line in wrap(text, height_mm, width_mm, bold))
