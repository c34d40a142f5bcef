"""Sound layouts for property tests, and the text of a layout file that says the same.

Lengths are drawn as whole sixteenths of an inch or tenths of a millimetre and kept as fractions
until a value is built, so that each is written with few decimals and read back to the same float.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Any

from hypothesis import strategies as st

from templater.errors import Place
from templater.geometry import Size
from templater.layout.model import (
    Align,
    Arrangement,
    Datum,
    Furniture,
    Group,
    Hanger,
    Hanging,
    Layout,
    Margins,
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
    """Extents placed as one, how they are composed, and the extent of the whole."""

    extents: tuple[_Extent, ...]
    arrange: Arrangement
    align: Align
    gap: Fraction
    whole: _Extent


@st.composite
def _blocks(draw: st.DrawFn, step: Fraction, largest_mm: int) -> _Block:
    side = lengths(40, largest_mm, step)
    extents = tuple(
        _Extent(draw(side), draw(side)) for _ in range(draw(st.sampled_from([1, 1, 2, 3, 4])))
    )
    arrange = draw(st.sampled_from((Arrangement.ROW, Arrangement.COLUMN)))
    in_row = arrange is Arrangement.ROW
    across = (Align.TOP, Align.BOTTOM) if in_row else (Align.LEFT, Align.RIGHT)
    gap = draw(lengths(0.5, 200, step))
    gaps = gap * (len(extents) - 1)
    widths, heights = [each.width for each in extents], [each.height for each in extents]
    whole = (
        _Extent(sum(widths, gaps), max(heights)) if in_row else _Extent(max(widths), sum(heights, gaps))
    )
    return _Block(extents, arrange, draw(st.sampled_from((*across, Align.CENTRE))), gap, whole)


@st.composite
def hangings(draw: st.DrawFn, extent: _Extent, step: Fraction) -> Hanging | None:
    """Hardware that fits a frame, or none."""
    by = draw(st.sampled_from((*Hanger, None)))
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


_NOWHERE = Position(None, 177.8, None, None, None, None, None, None, HERE)


@dataclass(frozen=True)
class _Slot:
    """A block and where it goes: its bottom-left corner, and the stretch of wall it has to itself."""

    block: _Block
    left: Fraction
    bottom: Fraction
    width: Fraction


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
    return Furniture(name, float(start), size, HERE), position


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
def layouts(draw: st.DrawFn, *, most_blocks: int = 3, largest_mm: int = 700) -> Layout:
    """A layout in which nothing is wrong: blocks side by side, each over furniture or free.

    Beware: the slug of a piece is made up here; the layout reader gives its own.
    """
    units = draw(st.sampled_from(Unit))
    step = _SIXTEENTH if units.is_imperial else _TENTH
    blocks = draw(st.lists(_blocks(step, largest_mm), min_size=1, max_size=most_blocks))
    height = max(block.whole.height for block in blocks) + draw(lengths(3 * _ROOM, 1500, step))
    slots = draw(_slots(blocks, height, step))
    wall = _Extent(sum((slot.width for slot in slots), Fraction(0)), height)
    texts = draw(names(sum(len(block.extents) + 2 for block in blocks)))
    pieces: list[Piece] = []
    groups: list[Group] = []
    standing: list[Furniture] = []
    for slot in slots:
        position = draw(_positions(slot, wall))
        if draw(st.booleans()):
            below, position = draw(_furniture(texts.pop(), slot, step))
            standing.append(below)
        members = [_piece(draw, texts.pop(), extent, step) for extent in slot.block.extents]
        if len(members) == 1:
            members = [replace(members[0], position=position)]
        else:
            groups.append(_group(texts.pop(), members, slot.block, position))
        pieces.extend(members)
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
        pieces=tuple(draw(st.permutations(pieces))),
        groups=tuple(groups),
        for_whom=draw(st.sampled_from((None, "the guest house"))),
        from_whom=draw(st.sampled_from((None, "the keeper"))),
        contact=None,
        issue=draw(st.sampled_from((None, "second try"))),
    )


def _group(name: str, members: list[Piece], block: _Block, position: Position) -> Group:
    """A block's pieces as a group."""
    ordered = tuple(member.name for member in members)
    return Group(name, ordered, block.arrange, float(block.gap), block.align, position, HERE)


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


def _write_group(group: Group) -> dict[str, object]:
    return {
        "name": group.name,
        "pieces": list(group.members),
        "arrange": group.arrange.value,
        "gap": _mm(group.gap_mm),
        "align": group.align.value,
        **_write_position(group.position),
    }


def _write_hanging(hang: Hanging) -> dict[str, object]:
    keys = ("rise", "apart", "offset", "width", "every")
    measures = {key: getattr(hang, f"{key}_mm") for key in keys}
    return {
        "by": hang.by.value,
        "drop": _mm(hang.drop_mm),
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
