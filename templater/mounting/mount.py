"""Finds the hang points, holes and loads of every piece in its own frame."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import floor
from typing import assert_never

from templater.errors import Fault
from templater.geometry import Point, Size
from templater.layout.model import Hanger, Hanging, Layout, Piece
from templater.lengths import Unit, format_both
from templater.mounting.amounts import SLACK_MM, format_at_least
from templater.mounting.model import Mark, Mount
from templater.quoting import quote

STANDARD_GRAVITY = 9.80665
"""Newton per kilogram: the standard value fixed by the 3rd CGPM (1901)."""

NO_HANGER = "No hanger given: this is an outline to look at; it has no hole."
ON_LEDGE = "Stands on the ledge: no hole of its own."
NO_HOOK_RISE = "Hook's rise not given, 0 assumed: measure your hook."
NO_RAIL_RISE = "Screws' rise not given, 0 assumed: measure your rail."


@dataclass(frozen=True, slots=True)
class Mounting:
    """The mount of every piece by its name, and every fault of the hardware found on the way."""

    mounts: Mapping[str, Mount]
    faults: tuple[Fault, ...]


def mount_pieces(layout: Layout) -> Mounting:
    """Find where every piece bears and where its holes go; a faulty hanger gives no marks."""
    mounts: dict[str, Mount] = {}
    faults: list[Fault] = []
    standing = {name for group in layout.groups if group.ledge for name in group.members}
    for piece in layout.pieces:
        found = tuple(_check_hang(piece, layout.units))
        faults.extend(found)
        if piece.name in standing:
            mounts[piece.name] = Mount((), (ON_LEDGE,))
        else:
            mounts[piece.name] = Mount((), ()) if found else _mount(piece, layout.units)
    return Mounting(mounts, tuple(faults))


def _mount(piece: Piece, units: Unit) -> Mount:
    """The marks and notes of one piece whose hardware fits its frame."""
    if piece.hang is None:
        return Mount((), (NO_HANGER,))
    rise = piece.hang.rise_mm or 0.0
    points = find_hang_points(piece.hang, piece.size)
    load = None if piece.weight_kg is None else piece.weight_kg * STANDARD_GRAVITY / len(points)
    marks = tuple(Mark(point, point.moved(0.0, rise), load) for point in points)
    return Mount(marks, tuple(_notes(piece.hang, marks, piece.size, units)))


def find_hang_points(hang: Hanging, size: Size) -> tuple[Point, ...]:
    """Where the hardware bears, left to right, from the frame's bottom-left corner.

    A hang point lies ``drop`` below the frame's top edge, so on the wall it is at the height
    centre + frame height / 2 - drop. Sources of that formula: Hilliard Art Museum, "How does the
    artwork get on the wall" (60 in midline); Outdoor Photographer, "The Art of Exhibition".
    """
    middle, y = size.width / 2 + hang.offset_mm, size.height - hang.drop_mm
    return tuple(Point(middle + aside, y) for aside in _spread(hang))


def _spread(hang: Hanging) -> tuple[float, ...]:
    """How far each hang point lies right of the hardware's middle, left to right."""
    match hang.by:
        case Hanger.WIRE | Hanger.SAWTOOTH | Hanger.NAIL:
            return (0.0,)
        case Hanger.D_RINGS | Hanger.KEYHOLES:
            return (-_half_width(hang), _half_width(hang))
        case Hanger.CLEAT:
            every = _given(hang.every_mm)
            spaces = floor(_given(hang.width_mm) / every + 1e-9)
            return tuple((screw - spaces / 2) * every for screw in range(spaces + 1))
        case _:
            assert_never(hang.by)


def _half_width(hang: Hanging) -> float:
    """How far the hardware reaches to each side of its middle, mm."""
    if hang.by is Hanger.CLEAT:
        return _given(hang.width_mm) / 2
    if hang.by in (Hanger.D_RINGS, Hanger.KEYHOLES):
        return _given(hang.apart_mm) / 2
    return 0.0


def _given(value: float | None) -> float:
    """A measure that the layout's reader demands of this kind of hanger."""
    if value is None:
        raise ValueError("d-rings and keyholes need apart_mm; a cleat needs width_mm and every_mm")
    return value


def _check_hang(piece: Piece, units: Unit) -> Iterator[Fault]:
    """What of the hardware cannot lie within the frame."""
    hang = piece.hang
    if hang is None:
        return
    if not -SLACK_MM <= hang.drop_mm <= piece.size.height + SLACK_MM:
        yield Fault(
            f"'drop' of {quote(piece.name)} must be from 0 to the frame's height, "
            f"{format_both(piece.size.height, units)}; it is {format_both(hang.drop_mm, units)}",
            "measure from the frame's top edge down to where the hanger bears, a wire pulled taut",
            hang.at,
        )
    yield from _check_width(piece, hang, units)


def _check_width(piece: Piece, hang: Hanging, units: Unit) -> Iterator[Fault]:
    """Hardware that reaches past the frame's left or right edge."""
    half = piece.size.width / 2
    reach = _half_width(hang)
    key = "width" if hang.by is Hanger.CLEAT else "apart"
    if reach > half + SLACK_MM:
        yield Fault(
            f"'{key}' of {quote(piece.name)} is {format_at_least(2 * (reach - half), units)} more than "
            f"the frame's width, {format_both(2 * half, units)}",
            f"measure '{key}' again, or correct the piece's 'size' (width first)",
            hang.at,
        )
    elif abs(hang.offset_mm) + reach > half + SLACK_MM:
        edge = "right" if hang.offset_mm > 0 else "left"
        outside = format_at_least(abs(hang.offset_mm) + reach - half, units)
        yield Fault(
            f"'offset' of {quote(piece.name)} takes its hanger {outside} past the frame's {edge} edge",
            "measure from the frame's middle, to the right as seen from the front "
            "(what is measured from behind is swapped)",
            hang.at,
        )


def _notes(hang: Hanging, marks: tuple[Mark, ...], size: Size, units: Unit) -> Iterator[str]:
    """What the user must be told of this hardware."""
    if hang.rise_mm is None and hang.by is Hanger.WIRE:
        yield NO_HOOK_RISE
    if hang.rise_mm is None and hang.by is Hanger.CLEAT:
        yield NO_RAIL_RISE
    y = marks[0].hole.y
    holes, fasteners = ("hole is", "fastener") if len(marks) == 1 else ("holes are", "fasteners")
    above, below = y - size.height, -y
    if above > SLACK_MM:
        past = f"{format_at_least(above, units)} above the frame's top edge"
        yield f"The {holes} {past}: the {fasteners} will show."
    if below > SLACK_MM:
        past = f"{format_at_least(below, units)} below the frame's bottom edge"
        yield f"The {holes} {past}: the {fasteners} will show."
