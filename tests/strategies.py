"""Sound layouts for property tests, and the text of a layout file that says the same.

Lengths are drawn as whole sixteenths of an inch or tenths of a millimetre and kept as fractions
until a value is built, so that each is written with few decimals and read back to the same float.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Any

from hypothesis import strategies as st

from templater.errors import Place
from templater.geometry import Box, Point, Size
from templater.layout.model import (
    Align,
    Arrangement,
    Cells,
    Datum,
    Furniture,
    Group,
    Hanger,
    Hanging,
    Layout,
    LeftRight,
    Margins,
    Obstacle,
    Piece,
    Position,
    Wall,
)
from templater.lengths import Unit
from templater.paper import PAPERS

HERE = Place("hall.yaml", 1, 1)
_SIXTEENTH = Fraction(254, 160)
_TENTH = Fraction(1, 10)
_LETTERS = "abcdefghijklmnopqrstuvwxyzABCDEFGÄÉßñøЖяλ0123456789 '-:#\"&,."
_ROOM = 60
"""Free wall, mm, kept at the floor and ceiling, so that no rise takes a hole off the wall."""

Draw = Callable[[st.SearchStrategy[Fraction]], Fraction]


def lengths(low_mm: float, high_mm: float, step: Fraction) -> st.SearchStrategy[Fraction]:
    """Lengths from low to high, mm, in whole steps (at least one value: the first step from low)."""
    first = -(-Fraction(low_mm) // step)
    last = max(first, Fraction(high_mm) // step)
    return st.integers(int(first), int(last)).map(lambda count: count * step)


def names(count: int) -> st.SearchStrategy[list[str]]:
    """So many names, different even when case is folded and in their letters and digits."""
    stem = st.text(_LETTERS, min_size=1, max_size=24).map(str.strip)
    return st.lists(stem, min_size=count, max_size=count).map(
        lambda stems: [f"{number} {text}".strip() for number, text in enumerate(stems, start=1)]
    )


@dataclass(frozen=True)
class _Extent:
    """The size of a piece as fractions of mm."""

    width: Fraction
    height: Fraction

    @property
    def size(self) -> Size:
        return Size(float(self.width), float(self.height))


@dataclass(frozen=True)
class _Block:
    """One piece, or blocks composed as one.

    ``whole``: the extent of a piece; of a group one that has room for its bounding box.
    """

    whole: _Extent
    parts: tuple[_Block, ...] = ()
    arrange: Arrangement = Arrangement.ROW
    align: Align = Align.CENTRE
    gap: Fraction = Fraction(0)
    spread: Fraction | None = None
    columns: int | None = None
    cells: Cells = Cells.EQUAL
    corners: tuple[tuple[Fraction, Fraction], ...] | None = None

    def corner_points(self) -> Iterator[Point]:
        """The corners, mm."""
        for x, y in self.corners or ():
            yield Point(float(x), float(y))

    @property
    def size(self) -> int:
        """How many pieces and groups it is of."""
        return 1 + sum(part.size for part in self.parts)


@st.composite
def _single(draw: st.DrawFn, step: Fraction, largest_mm: int) -> _Block:
    """One piece."""
    side = lengths(40, largest_mm, step)
    return _Block(_Extent(draw(side), draw(side)))


@st.composite
def _blocks(draw: st.DrawFn, step: Fraction, largest_mm: int, *, is_plain: bool) -> _Block:
    """A piece, or a group of pieces and, unless it is to be plain, of small groups."""
    count = draw(st.sampled_from([1, 1, 2, 3, 4]))
    single = _single(step, largest_mm)
    if count == 1:
        return draw(single)
    inner = st.lists(_single(step, largest_mm // 2), min_size=2, max_size=3).flatmap(
        lambda parts: _composed(tuple(parts), step, is_plain=False)
    )
    part = single if is_plain else st.one_of(single, single, single, inner)
    return draw(_composed(tuple(draw(part) for _ in range(count)), step, is_plain=is_plain))


@st.composite
def _composed(draw: st.DrawFn, parts: tuple[_Block, ...], step: Fraction, *, is_plain: bool) -> _Block:
    """Blocks composed as one."""
    gap = draw(lengths(0.5, 200, step))
    plain, rich = ("row", "column"), ("row", "column", "grid", "placed")
    arrange = draw(st.sampled_from(plain if is_plain else rich))
    if arrange == "grid":
        return _gridded(parts, gap, draw(st.integers(1, len(parts))), draw(st.sampled_from(Cells)))
    if arrange == "placed":
        return _placed(parts, gap, [draw(lengths(0, 300, step)) for _ in parts])
    block = _lined(parts, gap, Arrangement(arrange))
    across = (Align.TOP, Align.BOTTOM) if arrange == "row" else (Align.LEFT, Align.RIGHT)
    block = replace(block, align=draw(st.sampled_from((*across, Align.CENTRE))))
    return block if is_plain or draw(st.booleans()) else _spread(block)


def _lined(parts: tuple[_Block, ...], gap: Fraction, arrange: Arrangement) -> _Block:
    """A row or column."""
    gaps = gap * (len(parts) - 1)
    widths, heights = [each.whole.width for each in parts], [each.whole.height for each in parts]
    if arrange is Arrangement.ROW:
        return _Block(_Extent(sum(widths, gaps), max(heights)), parts, arrange, gap=gap)
    return _Block(_Extent(max(widths), sum(heights, gaps)), parts, arrange, gap=gap)


def _spread(block: _Block) -> _Block:
    """The same row or column spread over a length: its gap at both ends too, if all parts are exact."""
    width, height = block.whole.width, block.whole.height
    if block.arrange is Arrangement.ROW:
        width += 2 * block.gap
        return replace(block, spread=width, whole=_Extent(width, height))
    height += 2 * block.gap
    return replace(block, spread=height, whole=_Extent(width, height))


def _gridded(parts: tuple[_Block, ...], gap: Fraction, columns: int, cells: Cells) -> _Block:
    """A grid: however its cells are measured, none is larger than the largest part."""
    rows = -(-len(parts) // columns)
    width = max(each.whole.width for each in parts) * columns + gap * (columns - 1)
    height = max(each.whole.height for each in parts) * rows + gap * (rows - 1)
    whole = _Extent(width, height)
    return _Block(whole, parts, Arrangement.GRID, gap=gap, columns=columns, cells=cells)


def _placed(parts: tuple[_Block, ...], gap: Fraction, bottoms: list[Fraction]) -> _Block:
    """Parts side by side, each at its own height."""
    corners, x = [], Fraction(0)
    for part, bottom in zip(parts, bottoms, strict=True):
        corners.append((x, bottom))
        x += part.whole.width + gap
    top = max(bottom + part.whole.height for part, bottom in zip(parts, bottoms, strict=True))
    return _Block(_Extent(x - gap, top), parts, Arrangement.PLACED, corners=tuple(corners))


_HANGERS = (
    *(Hanger.WIRE, Hanger.D_RINGS, Hanger.KEYHOLES),
    *(Hanger.SAWTOOTH, Hanger.NAIL, Hanger.CLEAT),
)
"""Those that bear at a drop below the frame's top edge."""


@st.composite
def hangings(draw: st.DrawFn, extent: _Extent, step: Fraction) -> Hanging | None:
    """Hardware that fits a frame, or none."""
    by = draw(st.sampled_from((*_HANGERS, None)))
    if by is None:
        return None
    span = draw(lengths(5, float(extent.width) * 0.9, step))
    aside = float(extent.width - span) / 2
    offset = draw(lengths(-aside, aside, step)) if draw(st.booleans()) else Fraction(0)
    offset = offset if abs(offset) <= (extent.width - span) / 2 else Fraction(0)
    rise = draw(st.none() | lengths(-30, 30, step))
    every = draw(lengths(float(span) / 6, float(span) * 1.5, step))
    return Hanging(
        by=by,
        drop_mm=float(draw(lengths(0, float(extent.height), step))),
        rise_mm=None if rise is None else float(rise),
        apart_mm=float(span) if by in (Hanger.D_RINGS, Hanger.KEYHOLES) else None,
        offset_mm=float(offset),
        width_mm=float(span) if by is Hanger.CLEAT else None,
        every_mm=float(max(every, step)) if by is Hanger.CLEAT else None,
        at=HERE,
    )


_USUAL_GAP = 76.2
"""What the reader assumes where no gap is given: three inches."""

_NOWHERE = Position(None, 177.8, None, None, None, None, None, None, HERE)


@dataclass(frozen=True)
class _Slot:
    """A block and where it goes: its bottom-left corner, and the stretch of wall it has to itself."""

    block: _Block
    left: Fraction
    bottom: Fraction
    width: Fraction


@dataclass(frozen=True)
class _Thing:
    """Something in the way, with so much wall kept free on both sides."""

    kind: str
    extent: _Extent
    pad: Fraction
    bottom: Fraction
    swing: LeftRight | None


@st.composite
def _positions(draw: st.DrawFn, slot: _Slot, wall: _Extent) -> Position:
    """One of the ways to ask for a place without furniture."""
    whole = slot.block.whole
    across = {
        "left_mm": slot.left,
        "centre_mm": slot.left + whole.width / 2,
        "right_mm": wall.width - slot.left - whole.width,
    }
    up = {
        "bottom_mm": slot.bottom,
        "top_mm": slot.bottom + whole.height,
        "eye_line_mm": slot.bottom + whole.height / 2,
    }
    x, y = draw(st.sampled_from(sorted(across))), draw(st.sampled_from(sorted(up)))
    asked: dict[str, Any] = {x: float(across[x]), y: float(up[y])}
    return replace(_NOWHERE, **asked)


@st.composite
def _furniture(draw: st.DrawFn, name: str, slot: _Slot, step: Fraction) -> tuple[Furniture, Position]:
    """Furniture centred under a slot's block, and the position that puts the block above it."""
    width = draw(lengths(20, float(slot.width), step))
    clearance = draw(lengths(1, min(400.0, float(slot.bottom) - 20), step))
    start = slot.left + (slot.block.whole.width - width) / 2
    size = Size(float(width), float(slot.bottom - clearance))
    position = replace(_NOWHERE, above=name, clearance_mm=float(clearance))
    return Furniture(name, float(start), size, HERE, name), position


@st.composite
def _slots(draw: st.DrawFn, blocks: list[_Block], height: Fraction, step: Fraction) -> list[_Slot]:
    """The blocks side by side, each at some height, with some wall left and right of it."""
    slots, start = [], Fraction(0)
    for block in blocks:
        pad = draw(lengths(1, 600, step))
        bottom = draw(lengths(_ROOM + 10, float(height - block.whole.height) - _ROOM, step))
        width = block.whole.width + 2 * pad
        slots.append(_Slot(block, start + pad, bottom, width))
        start += width
    return slots


@st.composite
def layouts(
    draw: st.DrawFn, *, most_blocks: int = 3, largest_mm: int = 700, is_plain: bool = False
) -> Layout:
    """A layout in which nothing is wrong: blocks side by side, each over furniture or free.

    Plain: pieces, rows and columns alone; else there are grids, groups in groups, groups spread or
    placed, and openings and fixtures between the blocks. Beware: the slug of a piece is made up
    here; the layout reader gives its own.
    """
    units = draw(st.sampled_from(Unit))
    step = _SIXTEENTH if units.is_imperial else _TENTH
    block = _blocks(step, largest_mm, is_plain=is_plain)
    blocks = draw(st.lists(block, min_size=1, max_size=most_blocks))
    height = max(block.whole.height for block in blocks) + draw(lengths(3 * _ROOM, 1500, step))
    slots = draw(_slots(blocks, height, step))
    wall = _Extent(sum((slot.width for slot in slots), Fraction(0)), height)
    things = [] if is_plain else draw(st.lists(_things(wall, step), max_size=3))
    texts = draw(names(len(things) + sum(block.size + 1 for block in blocks)))
    obstacles, wall = _line_up(things, texts, wall)
    build = _Build(draw, texts, step)
    standing: list[Furniture] = []
    for slot in slots:
        position = draw(_positions(slot, wall))
        if draw(st.booleans()):
            below, position = draw(_furniture(texts.pop(), slot, step))
            standing.append(below)
        build.add(slot.block, position)
    eye_line = draw(lengths(100, float(height) - 10, step))
    return Layout(
        title=draw(names(1))[0],
        units=units,
        paper=PAPERS[draw(st.sampled_from(sorted(PAPERS)))],
        margins=Margins(),
        lap_mm=10.0,
        wall=Wall(wall.size, HERE),
        eye_line_mm=float(eye_line),
        datum=Datum(
            float(draw(st.sampled_from((eye_line, height / 2)))),
            draw(st.sampled_from((None, "the door's left jamb"))),
        ),
        furniture=tuple(standing),
        pieces=tuple(draw(st.permutations(build.pieces))),
        groups=tuple(draw(st.permutations(build.groups))),
        for_whom=draw(st.sampled_from((None, "the guest house"))),
        from_whom=draw(st.sampled_from((None, "the keeper"))),
        contact=None,
        issue=draw(st.sampled_from((None, "second try"))),
        openings=tuple(each for each in obstacles if each.kind == "window"),
        fixtures=tuple(each for each in obstacles if each.kind != "window"),
    )


class _Build:
    """Gathers the pieces and groups of blocks, inner groups too."""

    def __init__(self, draw: st.DrawFn, texts: list[str], step: Fraction) -> None:
        self._draw = draw
        self._texts = texts
        self._step = step
        self.pieces: list[Piece] = []
        self.groups: list[Group] = []

    def add(self, block: _Block, position: Position | None) -> str:
        """A block and all that is in it; gives its name."""
        name = self._texts.pop()
        if block.parts:
            members = tuple(self.add(part, None) for part in block.parts)
            self.groups.append(_group(name, members, block, position))
        else:
            piece = _piece(self._draw, name, block.whole, self._step)
            self.pieces.append(replace(piece, position=position))
        return name


def _group(name: str, members: tuple[str, ...], block: _Block, position: Position | None) -> Group:
    """A block's parts as a group."""
    is_spread = block.spread is not None or block.corners is not None
    return Group(
        name=name,
        members=members,
        arrange=block.arrange,
        gap_mm=_USUAL_GAP if is_spread else float(block.gap),
        align=block.align,
        position=position,
        at=HERE,
        spread_mm=None if block.spread is None else float(block.spread),
        columns=block.columns,
        cells=block.cells,
        corners=None if block.corners is None else tuple(block.corner_points()),
    )


@st.composite
def _things(draw: st.DrawFn, wall: _Extent, step: Fraction) -> _Thing:
    """Something in the way, not yet at its place along the wall."""
    width, pad = draw(lengths(20, 1200, step)), draw(lengths(1, 600, step))
    bottom = draw(lengths(0, float(wall.height) / 2, step))
    height = draw(lengths(20, float(wall.height - bottom) - 1, step))
    kind = draw(st.sampled_from(("window", "thermostat")))
    swing = draw(st.sampled_from((*LeftRight, None))) if kind == "window" else None
    return _Thing(kind, _Extent(width, height), pad, bottom, swing)


def _line_up(things: list[_Thing], texts: list[str], wall: _Extent) -> tuple[list[Obstacle], _Extent]:
    """Things side by side on a stretch of wall that is added for them; and the longer wall."""
    obstacles, x = [], wall.width
    for thing in things:
        corner = Point(float(x + thing.pad), float(thing.bottom))
        box = Box.of(corner, thing.extent.size)
        obstacles.append(Obstacle(texts.pop(), thing.kind, box, thing.swing, HERE))
        x += thing.extent.width + 2 * thing.pad
    return obstacles, _Extent(x, wall.height)


def _piece(draw: st.DrawFn, name: str, extent: _Extent, step: Fraction) -> Piece:
    """A piece without a position of its own."""
    weight = draw(st.none() | st.integers(1, 5000).map(lambda count: count / 100))
    number = name.split(maxsplit=1)[0]
    return Piece(name, f"piece-{number}", extent.size, weight, draw(hangings(extent, step)), None, HERE)


def write_layout(layout: Layout) -> str:
    """The text of a layout file that says exactly what a layout of ``layouts()`` says.

    Margins and lap are the defaults and are not written.
    """
    head = {
        "title": layout.title,
        "units": layout.units.value,
        "paper": layout.paper.name,
        "eye_line": _mm(layout.eye_line_mm),
        "datum": _without_none(height=_mm(layout.datum.height_mm), at=layout.datum.at_place),
        "for": layout.for_whom,
        "from": layout.from_whom,
        "contact": layout.contact,
        "issue": layout.issue,
        "wall": _size(layout.wall.size),
        "furniture": [
            {"name": item.name, "left": _mm(item.left_mm), **_size(item.size)}
            for item in layout.furniture
        ],
        "openings": [_write_obstacle(each) for each in layout.openings],
        "fixtures": [_write_obstacle(each) for each in layout.fixtures],
        "pieces": [_write_piece(piece) for piece in layout.pieces],
        "groups": [_write_group(group) for group in layout.groups],
    }
    lines = [f"{key}: {_yaml(value)}" for key, value in head.items() if value not in (None, [])]
    return "\n".join(lines) + "\n"


def _write_piece(piece: Piece) -> dict[str, object]:
    place = _write_position(piece.position) if piece.position else None
    return _without_none(
        name=piece.name,
        size=f"{_mm(piece.size.width)} x {_mm(piece.size.height)}",
        weight=None if piece.weight_kg is None else f"{piece.weight_kg!r} kg",
        hang=_write_hanging(piece.hang) if piece.hang else None,
        place=place or None,
    )


def _write_obstacle(obstacle: Obstacle) -> dict[str, object]:
    return _without_none(
        name=obstacle.name,
        kind=obstacle.kind,
        left=_mm(obstacle.box.x0),
        bottom=_mm(obstacle.box.y0),
        **_size(obstacle.box.size),
        swing=obstacle.swing and obstacle.swing.value,
    )


def _write_group(group: Group) -> dict[str, object]:
    keys: dict[str, object] = {
        "name": group.name,
        "pieces": list(group.members),
        "arrange": group.arrange.value,
    }
    if group.spread_mm is not None:
        keys["spread"] = _mm(group.spread_mm)
    elif group.corners is None:
        keys["gap"] = _mm(group.gap_mm)
    if group.arrange in (Arrangement.ROW, Arrangement.COLUMN):
        keys["align"] = group.align.value
    if group.arrange is Arrangement.GRID:
        keys |= {"columns": str(group.columns), "cells": group.cells.value}
    if group.corners is not None:
        keys["corners"] = {
            name: {"left": _mm(corner.x), "bottom": _mm(corner.y)}
            for name, corner in zip(group.members, group.corners, strict=True)
        }
    return {**keys, **(_write_position(group.position) if group.position else {})}


def _write_hanging(hang: Hanging) -> dict[str, object]:
    keys = ("drop", "rise", "apart", "offset", "width", "every")
    measures = {key: getattr(hang, f"{key}_mm") for key in keys}
    return {
        "by": hang.by.value,
        **{key: _mm(value) for key, value in measures.items() if value is not None},
    }


def _write_position(position: Position) -> dict[str, object]:
    if position.above is not None:
        return {"above": position.above, "clearance": _mm(position.clearance_mm)}
    keys = ("left", "centre", "right", "eye_line", "bottom", "top")
    values = {key: getattr(position, f"{key}_mm") for key in keys}
    return {key: _mm(value) for key, value in values.items() if value is not None}


def _size(size: Size) -> dict[str, object]:
    return {"width": _mm(size.width), "height": _mm(size.height)}


def _without_none(**values: object) -> dict[str, object]:
    return {key: value for key, value in values.items() if value is not None}


def _mm(value: float) -> str:
    return f"{value!r} mm"


def _yaml(value: object) -> str:
    """A value in YAML's flow style, which takes JSON's as it is."""
    return json.dumps(value, ensure_ascii=False)
