"""What to buy for a wall: hooks, fasteners, rail hooks, cords and strips, each with its number."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from templater.layout.model import Hardware
from templater.lengths import Unit, format_both
from templater.mounting.model import Cord, Strips
from templater.mounting.notes import format_strip_rating
from templater.placement.model import PlacedPiece, Plan
from templater.rules.band import Band
from templater.rules.cautions.deep_fastener import DEPTH
from templater.rules.cautions.outward_pull import SCREW_DEEP_MM, SCREW_GAUGE
from templater.rules.closed_hooks import needs_closed_hooks
from templater.rules.fasteners.choose import (
    RATING_FACTOR,
    Fastener,
    Kind,
    bears_at_hole,
    choose_fasteners,
)
from templater.rules.fasteners.load import find_cord_load
from templater.rules.fasteners.withdrawal import find_screw_diameter
from templater.rules.fasteners.wording import (
    NO_WEIGHT,
    format_least,
    format_rating,
    name_fastener,
    round_up_rating,
)
from templater.rules.holding import Holding, find_holding

_AS_MAKER = "as the ledge's maker says: not checked"


@dataclass(frozen=True, slots=True)
class ToBuy:
    """One line of the list; ``count`` is None where it cannot be known.

    ``rating``: the least that its maker must rate each for, or why that cannot be told; empty where
    it has none. ``pieces``: what it is for.
    """

    what: str
    count: int | None
    rating: str
    pieces: tuple[str, ...]

    @property
    def shown_count(self) -> str:
        """The number, or a question mark."""
        return "?" if self.count is None else str(self.count)


def list_shopping(plan: Plan) -> tuple[ToBuy, ...]:
    """The whole list, things of a kind and a rating on one line, those of a kind together."""
    kinds: dict[str, dict[str, list[ToBuy]]] = {}
    for piece in plan.pieces:
        for line in _list_for(piece, plan):
            kinds.setdefault(line.what, {}).setdefault(line.rating, []).append(line)
    return tuple(_add_up(lines) for ratings in kinds.values() for lines in ratings.values())


def _add_up(lines: list[ToBuy]) -> ToBuy:
    counts = [line.count for line in lines]
    known = [count for count in counts if count is not None]
    names = tuple(dict.fromkeys(name for line in lines for name in line.pieces))
    count = sum(known) if len(known) == len(counts) else None
    return ToBuy(lines[0].what, count, lines[0].rating, names)


def _list_for(piece: PlacedPiece, plan: Plan) -> Iterator[ToBuy]:
    """What one piece needs."""
    fasteners = choose_fasteners(piece, plan)
    for fastener in _strengthen(fasteners):
        yield _buy_fastener(fastener, piece, plan)
    for fastener in fasteners:
        yield from _buy_beside(fastener, piece, plan)
    for support in piece.supports:
        if isinstance(support, Strips):
            yield _buy_strips(support, piece, plan)
        else:
            yield from _buy_cord(support, piece, plan)


def _strengthen(fasteners: Sequence[Fastener]) -> Iterator[Fastener]:
    """Of one kind in one piece all as strong as the most loaded, lest they be mixed up."""
    for each in fasteners:
        alike = (other for other in fasteners if other.kind is each.kind)
        yield max(alike, key=lambda fastener: fastener.least_kg or 0.0)


def _buy_fastener(fastener: Fastener, piece: PlacedPiece, plan: Plan) -> ToBuy:
    if fastener.hook is not None:
        what = f"{name_fastener(fastener, plan.units)}{_name_needs(fastener.hook)}"
        return ToBuy(what, 1, _doubt_hook(fastener, plan), (piece.name,))
    if fastener.kind is None:
        why = _AS_MAKER if find_holding(piece, plan) is Holding.LEDGE else NO_WEIGHT
        return ToBuy(_name_unknown(piece, plan), 1, why, (piece.name,))
    rating = NO_WEIGHT if fastener.load is None else format_least(fastener, plan.units)
    size = _size_stud_screw(plan.units) if fastener.kind is Kind.STUD_SCREW else ""
    return ToBuy(f"{fastener.kind.value}{size}", 1, rating, (piece.name,))


def _size_stud_screw(units: Unit) -> str:
    """How thick a screw is, and how deep it goes into a stud: as deep as is counted on, no deeper.

    How much of it stands before the stud, in the board, in a rail or under a ring, is added to that.
    """
    depth = Band(SCREW_DEEP_MM, DEPTH.high).format_range(units)
    thick = f"No. {SCREW_GAUGE} ({find_screw_diameter(SCREW_GAUGE):.1f} mm)"
    return f", {thick} or thicker, {depth} in the stud"


def _buy_beside(fastener: Fastener, piece: PlacedPiece, plan: Plan) -> Iterator[ToBuy]:
    """An anchor or a plug for each screw of a hook that does not hold without."""
    if fastener.hook is not None and fastener.beside is not None:
        kg = fastener.beside_kg
        rating = NO_WEIGHT if kg is None else format_rating(round_up_rating(kg, plan.units), plan.units)
        what = f"{fastener.beside.value}, for {fastener.hook.name}"
        yield ToBuy(what, fastener.hook.holes, rating, (piece.name,))


def _name_unknown(piece: PlacedPiece, plan: Plan) -> str:
    """What a hole takes of which only the way to hang is known, not the load."""
    if find_holding(piece, plan) is not Holding.HOOKS:
        return "screw"
    if needs_closed_hooks(piece, plan):
        return "closed hook"
    return Kind.NAIL.value if piece.hang and bears_at_hole(piece.hang) else "hook or screw"


def _name_needs(hook: Hardware) -> str:
    """By what a hook is fastened: ``, each with a nail``."""
    if hook.needs:
        return f", each with {hook.needs}"
    return f", each with {hook.holes} fasteners" if hook.holes > 1 else ""


def _doubt_hook(fastener: Fastener, plan: Plan) -> str:
    """What is wrong with a hook's own rating; empty where it is strong enough."""
    if fastener.load is None:
        return NO_WEIGHT
    least = format_least(fastener, plan.units)
    if fastener.is_too_weak:
        return f"TOO WEAK: {least} asked for"
    is_rated = fastener.hook is not None and fastener.hook.rating_kg is not None
    return "" if is_rated else f"{least}; its own is not given: not checked"


def _buy_cord(cord: Cord, piece: PlacedPiece, plan: Plan) -> Iterable[ToBuy]:
    """A rail's hook and the cord on it."""
    rating = format_cord_rating(cord, piece, plan.units)
    closed = "closed " if plan.is_earthquake else ""
    yield ToBuy(f"{closed}hook for the picture rail", 1, rating, (piece.name,))
    length = format_both(cord.length_mm, plan.units)
    yield ToBuy(f"cord of {length}, and more for its knots", 1, rating, (piece.name,))


def format_cord_rating(cord: Cord, piece: PlacedPiece, units: Unit) -> str:
    """The least that a rail's hook and its cord must be rated for: ``10 lb``."""
    load = find_cord_load(cord, piece)
    if load is None:
        return NO_WEIGHT
    return format_rating(round_up_rating(load.round_up_kg(units) * RATING_FACTOR, units), units)


def _buy_strips(strips: Strips, piece: PlacedPiece, plan: Plan) -> ToBuy:
    rated = piece.hang.strip_rating_kg if piece.hang else None
    rating = (
        NO_WEIGHT if strips.count is None or rated is None else format_strip_rating(rated, plan.units)
    )
    what = "pair of adhesive strips" if strips.each == "pair" else "adhesive strip"
    return ToBuy(what, strips.count, rating, (piece.name,))
