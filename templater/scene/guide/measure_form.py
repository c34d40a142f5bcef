"""A form for a far client: what to measure on the wall and behind each piece, with room to write."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from templater.drawing import Item
from templater.layout.model import Hanger, Layout, Piece
from templater.lengths import Unit, format_length
from templater.scene.guide.flow import Listing, Part, column_width, draw_page_heads, flow
from templater.scene.guide.measure_pictures import SKETCH, draw_apart, draw_drop, draw_rise
from templater.scene.model import Form, PageDrawing
from templater.scene.passages import (
    Passage,
    draw_heading,
    draw_list,
    draw_paragraph,
    indent_passage,
    move_items,
    stack_passages,
)
from templater.scene.tables import Column, Fit

TITLE = "What to measure"

ROW = 8.0
"""Height of a row to write in, mm."""

BLANK_PIECES = 12
BLANK_FURNITURE = 3
BLANK_OBSTACLES = 4
SPARE_ROWS = 2
"""Empty rows after what is known, for what the layout forgot."""

WIDE = 150.0
"""From this width on all that is asked of a piece stands in one row, mm."""

KILOGRAMS_A_POUND = 0.45359237
"""Exact, by the international yard and pound agreement of 1959."""


def draw_measure_form(layout: Layout | None, form: Form) -> tuple[PageDrawing, ...]:
    """The form with what the layout knows filled in; without one, all rows are empty."""
    width = column_width(form)
    first, later = draw_page_heads(TITLE, form)
    parts: list[Part] = [
        *_write_introduction(layout, width),
        *_ask_wall(layout, width),
        *_ask_furniture(layout, width),
        *_ask_obstacles(layout, width),
        *_explain_pieces(width),
        *_ask_pieces(layout, width),
        *_ask_remarks(width),
    ]
    return flow(parts, form, title=TITLE, first_head=first, later_head=later, is_spread=False)


def _write_introduction(layout: Layout | None, width: float) -> list[Passage]:
    """Why, for whom, how to write lengths, and where to send it."""
    sender = layout and ", ".join(word for word in (layout.from_whom, layout.contact) if word)
    texts = [
        layout.title if layout else "Wall or room: ______________________________",
        "Please measure and write in what is empty, and mend what is wrong. From this we make paper"
        " templates at full size that show where each hole goes.",
        "Lengths: to the nearest millimetre, or to 1/16 in. Write the unit with each.",
        "Left and right are always as you see them from the front, facing the wall. If you look at the"
        " back of a piece, left and right change places.",
    ]
    passages = [
        draw_paragraph(text, width, bold=not number, most_lines=None if number else 2)
        for number, text in enumerate(texts)
    ]
    if sender:
        passages.append(draw_paragraph(f"Send it back to: {sender}", width, bold=True))
    return passages


def _ask_wall(layout: Layout | None, width: float) -> list[Part]:
    size = layout.wall.size if layout else None
    cells = (
        ("Wall, width", _show(size.width, layout) if size else ""),
        ("Wall, height", _show(size.height, layout) if size else ""),
        ("I measure in", _name_units(layout.units) if layout else "mm / cm / in"),
    )
    words = (
        "Made of: plasterboard, brick, concrete, wood … Studs: leave them empty where there are none or"
        " you cannot find them. Ceiling: only where it slopes; where it bends, tell under Remarks."
    )
    return [
        draw_heading("The wall", width),
        _ask_once(cells, width),
        draw_paragraph(words, width),
        _ask_once(_describe_wall(layout), width),
    ]


def _describe_wall(layout: Layout | None) -> Sequence[tuple[str, str]]:
    """What it is made of, its studs and its sloping ceiling: what is asked, and what is known of it."""
    wall = layout.wall if layout else None
    studs, ceiling = (wall.studs, wall.ceiling) if wall else ((), ())
    pitches = {round(right - left, 3) for left, right in pairwise(studs)}
    return (
        ("Made of", wall.surface.value if wall and wall.surface else ""),
        ("Left end to middle of first stud", _show(studs[0] if studs else None, layout)),
        ("Stud to stud, middles", _show(pitches.pop() if len(pitches) == 1 else None, layout)),
        ("Ceiling at left end", _show(ceiling[0].y if ceiling else None, layout)),
        ("Ceiling at right end", _show(ceiling[-1].y if ceiling else None, layout)),
    )


def _ask_once(cells: Sequence[tuple[str, str]], width: float) -> Listing:
    """A table of one row: what is asked, and what is known of it."""
    row = tuple(known for _, known in cells)
    return Listing(_share([(name, 1.0) for name, _ in cells], width), (row,), ROW)


def _ask_furniture(layout: Layout | None, width: float) -> list[Part]:
    known = [
        (
            item.name,
            _show(item.left_mm, layout),
            _show(item.size.width, layout),
            _show(item.size.height, layout),
        )
        for item in (layout.furniture if layout else ())
    ]
    rows = _with_blanks(known, 4, SPARE_ROWS if layout else BLANK_FURNITURE)
    columns = (
        ("Furniture at the wall", 2.2),
        ("Wall's left end to its left side", 1.6),
        ("Width", 1.0),
        ("Height", 1.0),
    )
    return [draw_heading("Furniture", width), Listing(_share(columns, width), rows, ROW)]


def _ask_obstacles(layout: Layout | None, width: float) -> list[Part]:
    """What nothing may cover, and what tells where cables and pipes may run."""
    known = [
        (item.name, *(_show(mm, layout) for mm in (item.box.x0, item.box.y0, *item.box.size)))
        for item in ((*layout.openings, *layout.fixtures) if layout else ())
    ]
    rows = _with_blanks(known, 5, SPARE_ROWS if layout else BLANK_OBSTACLES)
    columns = (
        ("What it is", 2.2),
        ("Wall's left end to its left side", 1.6),
        ("Floor to its bottom", 1.2),
        ("Width", 1.0),
        ("Height", 1.0),
    )
    words = "Also taps, vents, thermostats and lamps. Of a door, write on which side it has its hinges."
    return [
        draw_heading("Doors, windows, switches, sockets, heaters", width),
        draw_paragraph(words, width),
        Listing(_share(columns, width), rows, ROW),
    ]


def _explain_pieces(width: float) -> list[Part]:
    """What each column of the pieces means, three of them drawn."""
    texts = (
        "Width and height: the outside of the frame.",
        "Hangs by: wire, two rings (d-rings), two keyholes, sawtooth, a nail under the frame, or a cleat"
        " (a rail).",
        "Drop: pull the wire up, with a finger or the hook, at the place where the hook will hold it."
        " Keep it taut. Measure from the frame's top edge down to the wire.",
        "Drop without a wire: down to the inside top of the ring, the seat of the screw in the keyhole,"
        " the notch of the sawtooth, or the edge that rests on the nail or the rail.",
        "Apart: from the middle of one ring or keyhole to the middle of the other.",
        "Rise: how far the nail or screw of your hook stands above the place where the wire sits in it.",
        "Weight: stand on bathroom scales with the piece and without it. An estimate will do: say so.",
        "If the hanger is not at the middle of the piece, tell under Remarks how far it is off, and to"
        " which side as seen from the front.",
    )
    return [draw_heading("The pieces", width), *draw_list(texts, width), *_draw_sketches(width)]


def _draw_sketches(width: float) -> list[Passage]:
    """The three sketches side by side, or in rows under one another where the column is narrow."""
    sketches = (
        (draw_drop(), "Drop, seen from behind"),
        (draw_apart(), "Apart, seen from behind"),
        (draw_rise(), "Rise, seen from the side"),
    )
    step = SKETCH.width + 4.0
    abreast = max(1, int((width + 4.0) // step))
    blocks = [_draw_sketch(*sketch) for sketch in sketches]
    rows = [blocks[start : start + abreast] for start in range(0, len(blocks), abreast)]
    return [_set_abreast(row, step) for row in rows]


def _set_abreast(row: Sequence[Passage], step_mm: float) -> Passage:
    items = [indent_passage(block, number * step_mm).items for number, block in enumerate(row)]
    together = tuple(item for each in items for item in each)
    return Passage(together, max(block.height_mm for block in row), 4.0)


def _draw_sketch(items: tuple[Item, ...], caption: str) -> Passage:
    """A sketch and what it shows."""
    sketch = Passage(move_items(items, 0.0, -SKETCH.height), SKETCH.height)
    return stack_passages([sketch, draw_paragraph(caption, SKETCH.width, bold=True)])


def _ask_pieces(layout: Layout | None, width: float) -> list[Part]:
    """One table, or on narrow paper two: the sizes, then how they hang."""
    pieces = layout.pieces if layout else ()
    sizes = [(_size_of(piece, layout), _hanging_of(piece, layout)) for piece in pieces]
    names = [f"{number}. {piece.name}" for number, piece in enumerate(pieces, 1)]
    spare = SPARE_ROWS if layout else BLANK_PIECES
    name, size = ("Piece", 2.4), (("Width", 1.0), ("Height", 1.0))
    hanging = (("Hangs by", 1.1), ("Drop", 1.0), ("Apart", 1.0), ("Rise", 1.0))
    weight = (("Weight", 1.0),)
    if width >= WIDE:
        known = [(n, *s[:2], *h, s[2]) for n, (s, h) in zip(names, sizes, strict=True)]
        return [_ask((name, *size, *hanging, *weight), known, spare, width)]
    first = [(n, *s) for n, (s, _) in zip(names, sizes, strict=True)]
    second = [(n, *h) for n, (_, h) in zip(names, sizes, strict=True)]
    return [
        _ask((name, *size, *weight), first, spare, width),
        _ask((name, *hanging), second, spare, width),
    ]


def _ask(
    headings: Sequence[tuple[str, float]],
    known: Sequence[tuple[str, ...]],
    spare: int,
    width: float,
) -> Listing:
    return Listing(_share(headings, width), _with_blanks(known, len(headings), spare), ROW)


def _size_of(piece: Piece, layout: Layout | None) -> tuple[str, str, str]:
    """Width, height and weight, as far as known."""
    kilograms, weight = piece.weight_kg, ""
    if kilograms is not None and layout is not None:
        imperial = layout.units.is_imperial
        number = round(kilograms / KILOGRAMS_A_POUND if imperial else kilograms, 1)
        weight = f"{number:g} {'lb' if imperial else 'kg'}"
    return _show(piece.size.width, layout), _show(piece.size.height, layout), weight


def _hanging_of(piece: Piece, layout: Layout | None) -> tuple[str, str, str, str]:
    """By what it hangs, drop, spacing and rise, as far as known."""
    hang = piece.hang
    if hang is None:
        return "", "", "", ""
    paired = hang.by in (Hanger.D_RINGS, Hanger.KEYHOLES)
    apart = _show(hang.apart_mm, layout) if paired else "–"
    return hang.by.value, _show(hang.drop_mm, layout), apart, _show(hang.rise_mm, layout)


def _show(mm: float | None, layout: Layout | None) -> str:
    """A length in the layout's own system; nothing where it is not known."""
    return format_length(mm, layout.units) if mm is not None and layout is not None else ""


def _name_units(units: Unit) -> str:
    return "inches" if units.is_imperial else "millimetres"


def _with_blanks(
    known: Sequence[tuple[str, ...]], cells: int, spare: int
) -> tuple[tuple[str, ...], ...]:
    return (*known, *[("",) * cells] * spare)


def _share(headings: Sequence[tuple[str, float]], width: float) -> tuple[Column, ...]:
    """Columns that share the width by their weights."""
    total = sum(weight for _, weight in headings)
    return tuple(Column(name, Fit.WRAPPED, width_mm=width * weight / total) for name, weight in headings)


def _ask_remarks(width: float) -> list[Part]:
    """Lines to write on, and what there is no other place for."""
    rows = (("",),) * 3
    heading = (
        "Remarks. Of the wall also: how thick its board is; whether people walk along it, the weather"
        " is behind it or the ground may shake; its year (old paint: lead; old board: asbestos)"
    )
    columns = (Column(heading, Fit.WRAPPED, width_mm=min(width, 190.0)),)
    return [Listing(columns, rows, ROW)]
