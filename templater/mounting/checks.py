"""What of a piece's hardware cannot be as the layout says."""

from __future__ import annotations

from collections.abc import Iterator

from templater.errors import Fault
from templater.layout.model import Hanger, Hanging, Piece
from templater.lengths import Unit, format_both
from templater.mounting.amounts import SLACK_MM, format_at_least
from templater.mounting.hang_points import find_reach, find_rings, given
from templater.mounting.wire_checks import check_wire
from templater.quoting import quote

_MOST_SCREWS = 200
_WIDTH_KEYS = {Hanger.CLEAT: "width", Hanger.WIRE: "spread"}


def check_hardware(piece: Piece, units: Unit, *, has_studs: bool) -> Iterator[Fault]:
    """Every fault of one piece's hardware; ``has_studs``: whether the layout says where studs are."""
    hang = piece.hang
    if hang is None:
        return
    too_many = [*_check_screws(piece, hang)]
    if too_many:
        yield from too_many
        return
    if hang.drop_mm is not None:
        yield from _check_drop(piece, hang, units)
    rings = find_rings(hang, piece.size)
    if rings is None:
        yield from _check_width(piece, hang, units)
    else:
        yield from check_wire(piece, hang, rings, units)
    if hang.lock_below_mm is not None:
        yield from _check_lock(piece, hang, hang.lock_below_mm, units)
    if hang.on_studs and not has_studs:
        yield Fault(
            f"'on: studs' of {quote(piece.name)} needs to know where the wall's studs are",
            "add for example 'studs: {first: 8 in, every: 16 in}' to the wall, or use 'every'",
            hang.at,
        )


def _check_screws(piece: Piece, hang: Hanging) -> Iterator[Fault]:
    """A rail with more screws than anybody drives; nothing else of it is then looked at."""
    if hang.by is Hanger.CLEAT and hang.every_mm is not None:
        spaces = given(hang.width_mm) / hang.every_mm
        if spaces > _MOST_SCREWS:
            yield Fault(
                f"'every' of {quote(piece.name)} gives its rail {spaces:.0f} screws, more than"
                f" {_MOST_SCREWS}",
                "check 'every' and its unit",
                hang.at,
            )


def _check_drop(piece: Piece, hang: Hanging, units: Unit) -> Iterator[Fault]:
    """A hang point above or below the frame."""
    drop = given(hang.drop_mm)
    if not -SLACK_MM <= drop <= piece.size.height + SLACK_MM:
        yield Fault(
            f"'drop' of {quote(piece.name)} must be from 0 to the frame's height, "
            f"{format_both(piece.size.height, units)}; it is {format_both(drop, units)}",
            "measure from the frame's top edge down to where the hanger bears, a wire pulled taut",
            hang.at,
        )


def _check_width(piece: Piece, hang: Hanging, units: Unit) -> Iterator[Fault]:
    """Hardware that reaches past the frame's left or right edge."""
    half = piece.size.width / 2
    reach = find_reach(hang)
    key = _WIDTH_KEYS.get(hang.by, "apart")
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


def _check_lock(piece: Piece, hang: Hanging, below_mm: float, units: Unit) -> Iterator[Fault]:
    """A lock that is not between the hang points and the frame's bottom edge."""
    drop, height = given(hang.drop_mm), piece.size.height
    if not drop + SLACK_MM < below_mm <= height + SLACK_MM:
        yield Fault(
            f"'lock' of {quote(piece.name)} must be below its hangers and within the frame, from "
            f"{format_both(drop, units)} to {format_both(height, units)} below the top edge; "
            f"it is {format_both(below_mm, units)}",
            "measure 'below_top' from the frame's top edge down to the lock's hole",
            hang.at,
        )
