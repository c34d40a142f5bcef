"""The checked entries of a piece's frame and hardware as the model has them."""

from __future__ import annotations

from collections.abc import Mapping

from templater.errors import Place
from templater.geometry import Size
from templater.layout.frame_schema import MadeOfEntry
from templater.layout.hang_schema import HangEntry, RingsEntry
from templater.layout.model import Hanging, Hardware, MadeOf, Moulding, Ring, Rings
from templater.layout.names import fold_name
from templater.layout.outside_size import find_outside_size
from templater.layout.schema import PieceEntry


def build_size(piece: PieceEntry) -> Size:
    """The outside of a piece's frame, given or from the picture in it."""
    if piece.size is not None:
        return piece.size
    if piece.picture is None:
        raise ValueError(f"{piece.name} has neither size nor picture")
    return find_outside_size(piece.picture, piece.mat, piece.moulding or 0.0, piece.rabbet or 0.0)


def build_hanging(hang: HangEntry | None, hardware: Mapping[str, Hardware], at: Place) -> Hanging | None:
    """What a piece hangs by; ``hardware`` by its folded name."""
    if hang is None:
        return None
    hook = hardware.get(fold_name(hang.hook)) if hang.hook else None
    return Hanging(
        by=hang.by,
        drop_mm=hang.drop,
        rise_mm=hang.rise if hook is None or hang.rise is not None else hook.rise_mm,
        apart_mm=hang.apart,
        offset_mm=hang.offset,
        width_mm=hang.width,
        every_mm=hang.every,
        at=at,
        hooks=hang.hooks,
        spread_mm=hang.spread,
        rings=_build_rings(hang.rings),
        wire_mm=hang.wire,
        measured_at=hang.measured_at,
        balance_mm=hang.balance.right,
        balance_below_mm=hang.balance.below_top,
        teeth_mm=hang.teeth,
        on_studs=hang.studs is not None,
        rail_mm=hang.height,
        cords=hang.cords,
        strip_rating_kg=hang.rating,
        strip_each=hang.each,
        lock_below_mm=None if hang.lock is None else hang.lock.below_top,
        hook=hook,
    )


def _build_rings(rings: RingsEntry | None) -> Rings | None:
    """Both rings, whichever way they were given."""
    if rings is None:
        return None
    if rings.left is not None and rings.right is not None:
        left, right = rings.left, rings.right
        return Rings(Ring(left.from_middle, left.below_top), Ring(right.from_middle, right.below_top))
    ring = Ring((rings.apart or 0.0) / 2, rings.below_top or 0.0)
    return Rings(ring, ring)


def build_made_of(made_of: MadeOfEntry | None, moulding_mm: float | None) -> MadeOf | None:
    """What a piece is made of; ``moulding_mm`` is the width of its moulding given elsewhere."""
    if made_of is None:
        return None
    return MadeOf(made_of.glazing, made_of.mat, made_of.backing, _build_moulding(made_of, moulding_mm))


def _build_moulding(made_of: MadeOfEntry, moulding_mm: float | None) -> Moulding | None:
    entry = made_of.moulding
    if entry is None:
        return None
    return Moulding(entry.wood, entry.width or moulding_mm or 0.0, entry.depth)
