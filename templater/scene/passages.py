"""Passages of words for reading: headings, paragraphs, lists and boxes, each of a known height.

A passage is drawn from its own top-left corner, the origin; y up, so everything in it lies at
y <= 0. All numbers in mm.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import assert_never

from templater.drawing import Circle, Item, Line, Polyline, Words
from templater.geometry import Box, Point
from templater.lettering import ASCENT, DESCENT, LINE_PITCH, shorten, wrap
from templater.scene.lines import MEDIUM, NORMAL, SMALL
from templater.scene.marks import draw_box

WIDEST = 150.0
"""No line of reading is longer than this: the eye would lose the next one's start."""

INDENT = 5.0
"""How far the words of a list stand right of its marks."""

PADDING = 2.0
"""Clear space between a box and its words."""


@dataclass(frozen=True, slots=True)
class Passage:
    """Something that is kept in one piece when columns are filled.

    ``after_mm`` is the clear space below it; ``needs_mm`` the room that must be left in the
    column (its own height included) for it to start there, so that no heading ends a column.
    """

    items: tuple[Item, ...]
    height_mm: float
    after_mm: float = 2.0
    needs_mm: float = 0.0


def move_item(item: Item, dx: float, dy: float) -> Item:
    """The same line, circle or words elsewhere."""
    match item:
        case Line():
            return replace(item, start=item.start.moved(dx, dy), end=item.end.moved(dx, dy))
        case Polyline():
            return replace(item, points=tuple(point.moved(dx, dy) for point in item.points))
        case Circle():
            return replace(item, centre=item.centre.moved(dx, dy))
        case Words():
            return replace(item, at=item.at.moved(dx, dy))
        case _:
            assert_never(item)


def move_items(items: Iterable[Item], dx: float, dy: float) -> tuple[Item, ...]:
    """A drawing's items, all moved alike."""
    return tuple(move_item(item, dx, dy) for item in items)


def indent_passage(passage: Passage, by_mm: float) -> Passage:
    """The passage further to the right."""
    return replace(passage, items=move_items(passage.items, by_mm, 0.0))


def stack_passages(passages: Sequence[Passage], *, after_mm: float = 2.0) -> Passage:
    """Several passages, one under the other, kept together as one."""
    items: list[Item] = []
    depth = 0.0
    for passage in passages:
        items += move_items(passage.items, 0.0, -depth)
        depth += passage.height_mm + passage.after_mm
    height = depth - passages[-1].after_mm
    return Passage(tuple(items), height, after_mm)


def draw_paragraph(
    text: str,
    width_mm: float,
    *,
    height_mm: float = SMALL,
    bold: bool = False,
    after_mm: float = 2.0,
    most_lines: int | None = None,
) -> Passage:
    """Words broken into lines; past ``most_lines`` they end with an ellipsis."""
    width = min(width_mm, WIDEST) if height_mm == SMALL else width_mm
    lines = wrap(text, height_mm, width, bold)
    if most_lines is not None and len(lines) > most_lines:
        last = shorten(f"{lines[most_lines - 1]}…{lines[most_lines]}", height_mm, width, bold)
        lines = [*lines[: most_lines - 1], last]
    words = tuple(
        Words(Point(0.0, -(ASCENT + number * LINE_PITCH) * height_mm), line, height_mm, bold=bold)
        for number, line in enumerate(lines)
    )
    height = (ASCENT + DESCENT + max(len(lines) - 1, 0) * LINE_PITCH) * height_mm
    return Passage(words, height, after_mm)


def draw_heading(
    text: str, width_mm: float, *, height_mm: float = NORMAL, before_mm: float = 2.0
) -> Passage:
    """A heading in bold that takes some of what follows along to the next column."""
    words = draw_paragraph(text, width_mm, height_mm=height_mm, bold=True)
    height = words.height_mm + before_mm
    return Passage(move_items(words.items, 0.0, -before_mm), height, 1.5, needs_mm=height + 20.0)


def draw_listed(mark: str, text: str, width_mm: float) -> Passage:
    """One entry of a list: its mark, then its words beside it."""
    words = indent_passage(draw_paragraph(text, width_mm - INDENT, after_mm=1.0), INDENT)
    return replace(words, items=(*draw_paragraph(mark, INDENT).items, *words.items))


def draw_list(texts: Iterable[str], width_mm: float) -> list[Passage]:
    """A list with a dot before each entry; space below the last as below a paragraph."""
    entries = [draw_listed("•", text, width_mm) for text in texts]
    return [*entries[:-1], replace(entries[-1], after_mm=2.0)]


def draw_boxed(entries: Iterable[tuple[str, str]], width_mm: float) -> Passage:
    """Words that must not be overlooked, in a box: for each entry a bold line and a paragraph."""
    width = min(width_mm, WIDEST + 2 * PADDING)
    room = width - 2 * PADDING
    paragraphs: list[Passage] = []
    for title, text in entries:
        paragraphs.append(draw_paragraph(title, room, bold=True, after_mm=0.6))
        paragraphs.append(draw_paragraph(text, room, after_mm=1.6))
    inside = stack_passages(paragraphs)
    height = inside.height_mm + 2 * PADDING
    frame = draw_box(Box(0.0, -height, width, 0.0), MEDIUM)
    return Passage((frame, *move_items(inside.items, PADDING, -PADDING)), height, 3.0)
