"""What of a wire and its rings cannot be, told one thing at a time: the next follows from it."""

from __future__ import annotations

from collections.abc import Iterator

from templater.errors import Fault
from templater.layout.model import Hanging, Piece, Ring
from templater.lengths import Unit, format_both
from templater.mounting.amounts import SLACK_MM, format_at_least
from templater.mounting.hang_points import find_spread, find_wire_length, hang_wire
from templater.mounting.wire import Rings, find_least_length
from templater.quoting import quote

_MEASURE_AGAIN = "measure again, or correct the piece's 'size' (width first)"


def check_wire(piece: Piece, hang: Hanging, rings: Rings, units: Unit) -> Iterator[Fault]:
    """The first fault of a wire whose rings are given."""
    for find in (_find_ring_outside, _find_lopsided, _find_spread_wide, _find_drop_low, _find_short):
        if told := find(piece, hang, rings, units):
            yield Fault(*told, hang.at)
            return
    above = hang_wire(hang, piece.size, rings).hooks[0].y - piece.size.height
    if above > SLACK_MM:
        yield Fault(
            f"the wire of {quote(piece.name)} would bear {format_at_least(above, units)} above the "
            "frame's top edge",
            "shorten the wire, or tie it lower",
            hang.at,
        )


def _find_ring_outside(piece: Piece, hang: Hanging, _: Rings, units: Unit) -> tuple[str, str] | None:
    """A ring that is not on the frame."""
    if hang.rings is None:
        return None
    for side, ring in (("left", hang.rings.left), ("right", hang.rings.right)):
        if past := _say_where(ring, piece, units):
            return f"the {side} ring of {quote(piece.name)} would be {past}", _MEASURE_AGAIN
    return None


def _say_where(ring: Ring, piece: Piece, units: Unit) -> str | None:
    aside = ring.from_middle_mm - piece.size.width / 2
    below = ring.below_top_mm - piece.size.height
    if aside > SLACK_MM:
        return f"{format_at_least(aside, units)} outside the frame"
    return f"{format_at_least(below, units)} below the frame" if below > SLACK_MM else None


def _find_lopsided(piece: Piece, _: Hanging, rings: Rings, units: Unit) -> tuple[str, str] | None:
    """A mass centre that hangs beside the rings, not between them."""
    left, right = rings.mass.x - rings.left.x, rings.right.x - rings.mass.x
    outside = max(-left, -right)
    if outside < -SLACK_MM:
        return None
    side = "left" if left < right else "right"
    return (
        f"the mass centre of {quote(piece.name)} must be between its rings; it is "
        f"{format_both(max(outside, 0.0), units)} past the {side} one",
        "correct 'rings' or 'balance'",
    )


def _find_spread_wide(piece: Piece, hang: Hanging, rings: Rings, units: Unit) -> tuple[str, str] | None:
    """Hooks farther apart than the rings."""
    spread = find_spread(hang)
    if spread <= rings.apart + SLACK_MM:
        return None
    return (
        f"'spread' of {quote(piece.name)} must be at most what its rings are apart, "
        f"{format_both(rings.apart, units)}; it is {format_both(spread, units)}",
        "bring the hooks closer to each other",
    )


def _find_drop_low(piece: Piece, hang: Hanging, rings: Rings, units: Unit) -> tuple[str, str] | None:
    """A wire that bears no higher than it is tied."""
    if hang.drop_mm is None:
        return None
    limit = piece.size.height - max(rings.left.y, rings.right.y)
    if hang.drop_mm < limit - SLACK_MM:
        return None
    return (
        f"'drop' of {quote(piece.name)} must be less than how far its rings are below the frame's "
        f"top edge, {format_both(limit, units)}; it is {format_both(hang.drop_mm, units)}",
        "measure it with the wire pulled up at its hooks, taut",
    )


def _find_short(piece: Piece, hang: Hanging, rings: Rings, units: Unit) -> tuple[str, str] | None:
    """A wire that does not reach from ring to ring over its hooks."""
    least = find_least_length(rings, find_spread(hang))
    length = find_wire_length(hang, piece.size, rings)
    if length > least + SLACK_MM:
        return None
    return (
        f"the wire of {quote(piece.name)} must be longer than the straight way between its rings, "
        f"{format_both(least, units)}; it is {format_both(length, units)}",
        "measure the wire from ring to ring, or tie a longer one",
    )
