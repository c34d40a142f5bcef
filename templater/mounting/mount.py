"""Finds the hang points, holes and loads of every piece in its own frame."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from templater.errors import Fault
from templater.geometry import Point
from templater.layout.model import Hanger, Hanging, Layout, Piece
from templater.lengths import Unit
from templater.mounting.amounts import SLACK_MM
from templater.mounting.checks import check_hardware
from templater.mounting.hang_points import (
    find_hang_points,
    find_mass_centre,
    find_middle,
    find_reach,
    find_rings,
    given,
    hang_wire,
    share_load,
)
from templater.mounting.model import Cord, Mark, Mount, Strips, WeightEstimate
from templater.mounting.notes import (
    NO_HANGER,
    ON_LEDGE,
    ONE_STUD,
    note_marks,
    note_tipping,
    note_wire,
)
from templater.mounting.statics import STANDARD_GRAVITY, find_statics
from templater.mounting.strips import count_strips
from templater.mounting.weight import estimate_weight
from templater.mounting.wire import Rings


@dataclass(frozen=True, slots=True)
class Mounting:
    """The mount of every piece by its name, and every fault of the hardware found on the way."""

    mounts: Mapping[str, Mount]
    faults: tuple[Fault, ...]


def mount_pieces(layout: Layout) -> Mounting:
    """Find where every piece bears and where its holes go; a faulty hanger gives no marks.

    A cleat on studs has none either: they are found once it is placed, by ``mount_on_studs``.
    """
    mounts: dict[str, Mount] = {}
    faults: list[Fault] = []
    standing = {name for group in layout.groups if group.ledge for name in group.members}
    laden = dict(_load_ledges(layout))
    for piece in layout.pieces:
        found = tuple(check_hardware(piece, layout.units, has_studs=bool(layout.wall.studs)))
        faults.extend(found)
        if piece.name in standing:
            mount = Mount((), (ON_LEDGE,))
        else:
            mount = Mount((), ()) if found else _mount(laden.get(piece.name, piece), layout.units)
        mounts[piece.name] = replace(mount, estimate=_estimate(piece))
    return Mounting(mounts, tuple(faults))


def _load_ledges(layout: Layout) -> Iterator[tuple[str, Piece]]:
    """Each ledge by its name, as heavy as it is with what stands on it: that is what its screws bear.

    Where the weight of one of them is not known, neither is that of them all.
    """
    pieces = {piece.name: piece for piece in layout.pieces}
    for group in layout.groups:
        if group.ledge is not None:
            names = (group.ledge.piece, *group.members)
            weights = [_find_weight(pieces[name]) for name in names if name in pieces]
            known = [weight for weight in weights if weight is not None]
            whole = sum(known) if len(known) == len(names) else None
            yield group.ledge.piece, replace(pieces[group.ledge.piece], weight_kg=whole)


def mount_on_studs(piece: Piece, mount: Mount, studs: Iterable[float], units: Unit) -> Mount:
    """The mount of a cleat that is screwed to the studs behind it; their x in the piece's frame.

    Without a stud behind the rail it has no marks.
    """
    hang = _hang_of(piece)
    middle, y = find_middle(hang, piece.size), piece.size.height - given(hang.drop_mm)
    reach = find_reach(hang) + SLACK_MM
    points = tuple(Point(stud, y) for stud in sorted(set(studs)) if abs(stud - middle) <= reach)
    if not points:
        return mount
    marked = _with_marks(piece, hang, points, units)
    notes = (*marked.notes, ONE_STUD) if len(points) == 1 else marked.notes
    return replace(marked, notes=notes, estimate=mount.estimate)


def _hang_of(piece: Piece) -> Hanging:
    if piece.hang is None:
        raise ValueError(f"{piece.name} has no hanger")
    return piece.hang


def _estimate(piece: Piece) -> WeightEstimate | None:
    """The weight of a piece whose weight is not given, if it is told what it is made of."""
    if piece.weight_kg is not None or piece.made_of is None:
        return None
    return estimate_weight(piece.made_of, piece.size)


def _find_weight(piece: Piece) -> float | None:
    """The weight, kg, given or estimated."""
    estimate = _estimate(piece)
    return piece.weight_kg if estimate is None else estimate.kg


def _find_force(piece: Piece) -> float | None:
    """The weight, newton, given or estimated."""
    weight_kg = _find_weight(piece)
    return None if weight_kg is None else weight_kg * STANDARD_GRAVITY


def _mount(piece: Piece, units: Unit) -> Mount:
    """What holds one piece whose hardware fits its frame."""
    hang = piece.hang
    if hang is None:
        return Mount((), (NO_HANGER,))
    if hang.on_studs:
        return Mount((), ())
    if hang.by is Hanger.STRIPS:
        return _stick(piece, hang)
    rings = find_rings(hang, piece.size)
    if rings is not None:
        return _hang_by_wire(piece, hang, rings, units)
    points = find_hang_points(hang, piece.size)
    if hang.by is Hanger.RAIL:
        return _hang_from_rail(piece, hang, points)
    return _with_marks(piece, hang, points, units)


def _with_marks(piece: Piece, hang: Hanging, points: tuple[Point, ...], units: Unit) -> Mount:
    """Hardware that bears at some points, each with its hole."""
    loads = _find_loads(piece, share_load(points, find_mass_centre(hang, piece.size).x))
    marks = (*_make_marks(hang, points, loads), *_make_lock(piece, hang))
    return Mount(marks, tuple(note_marks(hang, marks, piece.size, units)))


def _find_loads(piece: Piece, shares: Sequence[float]) -> tuple[float | None, ...]:
    force = _find_force(piece)
    return tuple(None if force is None else share * force for share in shares)


def _make_marks(
    hang: Hanging, points: Sequence[Point], loads: Sequence[float | None]
) -> tuple[Mark, ...]:
    """The hole of each hang point, the hook's rise above it."""
    rise = hang.rise_mm or 0.0
    pairs = zip(points, loads, strict=True)
    return tuple(Mark(point, point.moved(0.0, rise), load) for point, load in pairs)


def _make_lock(piece: Piece, hang: Hanging) -> tuple[Mark, ...]:
    """The hole of a security lock, on the piece's middle; it bears nothing."""
    if hang.lock_below_mm is None:
        return ()
    hole = Point(piece.size.width / 2, piece.size.height - hang.lock_below_mm)
    (load,) = _find_loads(piece, (0.0,))
    return (Mark(hole, hole, load, is_lock=True),)


def _hang_by_wire(piece: Piece, hang: Hanging, rings: Rings, units: Unit) -> Mount:
    """A wire whose rings are known: its hooks follow, and all forces."""
    wire = hang_wire(hang, piece.size, rings)
    statics = find_statics(wire, _find_force(piece))
    marks = _make_marks(hang, wire.hooks, _find_loads(piece, statics.down))
    notes = (
        *note_marks(hang, marks, piece.size, units),
        *note_wire(hang, wire, statics, piece.size, units),
    )
    return Mount(marks, notes, statics=statics)


def _hang_from_rail(piece: Piece, hang: Hanging, points: tuple[Point, ...]) -> Mount:
    """Plumb cords from a picture rail, as long as the piece's place on the wall will tell."""
    loads = _find_loads(piece, share_load(points, find_mass_centre(hang, piece.size).x))
    rail = given(hang.rail_mm)
    cords = tuple(Cord(point, rail, load) for point, load in zip(points, loads, strict=True))
    return Mount((), tuple(note_tipping(hang, points, piece.size)), supports=cords)


def _stick(piece: Piece, hang: Hanging) -> Mount:
    """Adhesive strips, enough for the weight or for the most that it may be."""
    estimate = _estimate(piece)
    weight_kg = piece.weight_kg if estimate is None else estimate.high_kg
    count = None if weight_kg is None else count_strips(weight_kg, given(hang.strip_rating_kg))
    return Mount((), (), supports=(Strips(count, hang.strip_each),))
