"""What the user must be told of a piece's hardware, in whole sentences."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from templater.geometry import Point, Size
from templater.layout.model import Hanger, Hanging
from templater.lengths import Unit, format_both
from templater.mounting.amounts import SLACK_MM, format_at_least, round_down
from templater.mounting.hang_points import (
    find_mass_centre,
    find_middle,
    find_notch,
    find_reach,
    given,
    is_between,
)
from templater.mounting.model import Cord, Mark, Statics, Strips, Support
from templater.mounting.statics import find_steady_spread
from templater.mounting.wire import Wire

NO_HANGER = "No hanger given: this is an outline to look at; it has no hole."
ON_LEDGE = "Stands on the ledge: no hole of its own."
NO_RAIL_RISE = (
    "The crosses are at the rail's bearing edge: its screws' rise is not given. Hold the rail there, and"
    " mark its own holes."
)
AT_ENDS = "An outer screw is at the very end, where wood splits: measure where yours has holes."
LOCKED = "The lowest hole is for the security lock: it bears no weight."
ONE_STUD = "Only one stud is behind the rail: it could turn; move the piece, or use a longer rail."
TIPPING = "Its mass centre is not between its hangers: it would tip; move a hanger or add one."
TOP_HEAVY = "Its wire is tied no higher than its mass centre: only friction keeps it from tipping."

_END_MM = 10.0
"""So near to the end of a rail or a ledge a screw splits it or misses it; common practice, no source."""

_POUND_KG = 0.45359237
"""The pound, kg (exact by its definition of 1959)."""

_TOLD = 0.01
"""Ratings of strips are told to a hundredth of their unit: to a tenth, 12 oz would be 0.7 lb."""

MOST_TENSION = 2.0
"""How many times the weight a wire may pull with before it is worth a word.

Common practice, no source: at twice the weight the wire rises by less than 1 in 4 toward its hook
(sin a = 1/4, 14.5 degrees), pulls hard on small ring screws, and each millimetre by which it
stretches lowers the picture by two.
"""


def note_marks(hang: Hanging, marks: Sequence[Mark], size: Size, units: Unit) -> Iterator[str]:
    """What must be told of hardware with holes, whatever it is."""
    if hang.rise_mm is None and hang.by is Hanger.CLEAT:
        yield NO_RAIL_RISE
    bearing = [mark for mark in marks if not mark.is_lock]
    if hang.by is Hanger.CLEAT and _is_at_end(hang, bearing, size):
        yield AT_ENDS
    yield from _note_outside(bearing, size, units)
    yield from note_tipping(hang, tuple(mark.hang for mark in bearing), size)
    if hang.teeth_mm is not None:
        yield _note_teeth(hang, hang.teeth_mm, size, units)
    if hang.hook is not None and hang.hook.holes > 1:
        yield f"Each {hang.hook.name} takes {hang.hook.holes} fasteners, driven through the hook itself."
    if len(bearing) < len(marks):
        yield LOCKED


def _is_at_end(hang: Hanging, marks: Sequence[Mark], size: Size) -> bool:
    """Whether a screw of a rail or a ledge is at the end of it."""
    middle, reach = find_middle(hang, size), find_reach(hang)
    return any(abs(mark.hang.x - middle) > reach - _END_MM for mark in marks)


def _note_outside(marks: Sequence[Mark], size: Size, units: Unit) -> Iterator[str]:
    """Holes that the frame does not cover."""
    y = marks[0].hole.y
    holes, fasteners = ("hole is", "fastener") if len(marks) == 1 else ("holes are", "fasteners")
    above, below = y - size.height, -y
    if above > SLACK_MM:
        past = f"{format_at_least(above, units)} above the frame's top edge"
        yield f"The {holes} {past}: the {fasteners} will show."
    if below > SLACK_MM:
        past = f"{format_at_least(below, units)} below the frame's bottom edge"
        yield f"The {holes} {past}: the {fasteners} will show."


def note_tipping(hang: Hanging, points: tuple[Point, ...], size: Size) -> Iterator[str]:
    """Hangers that the mass centre is not between."""
    if hang.rings is None and not is_between(points, find_mass_centre(hang, size).x):
        yield TIPPING


def _note_teeth(hang: Hanging, tooth_mm: float, size: Size, units: Unit) -> str:
    """Which notch to hang a sawtooth on, and what the one beside it does.

    Hung t beside the plumb line of its mass centre, which is ``depth`` below the notch, a frame
    turns by atan(t / depth): one side is lower than the other by width x t / depth.
    """
    notch, depth = find_notch(hang), size.height / 2 - given(hang.drop_mm)
    side = "right" if notch > 0 else "left"
    which = "middle notch" if notch == 0 else f"notch {abs(notch)} to the {side} of its middle one"
    told = f"Hang it on the {which}: one notch aside is {format_both(tooth_mm, units)}"
    if depth <= SLACK_MM:
        return f"{told}."
    return f"{told}, and tilts it by {format_both(size.width * tooth_mm / depth, units)} over its width."


def note_wire(hang: Hanging, wire: Wire, statics: Statics, size: Size, units: Unit) -> Iterator[str]:
    """What must be told of a wire whose rings are known."""
    if hang.measured_at not in (None, hang.hooks):
        drop = format_both(size.height - wire.hooks[0].y, units)
        yield f"Drop worked out anew for two hooks: {drop}."
    if max(statics.tensions) > MOST_TENSION:
        times = f"{max(statics.tensions):.1f} times the weight"
        yield f"The wire is so flat that it pulls with {times}: a longer wire pulls less."
    if not wire.rings.is_even:
        needed = f"coefficient {statics.friction:.2f}"
        yield f"Its rings are uneven about its mass centre: friction ({needed}) holds it level."
    elif not statics.is_stable:
        yield from _note_unsteady(wire, units)


def _note_unsteady(wire: Wire, units: Unit) -> Iterator[str]:
    """A frame that friction alone keeps straight, and what mends it."""
    spread = find_steady_spread(wire.rings, wire.length)
    if spread is None:
        yield TOP_HEAVY
    elif len(wire.hooks) == 1:
        best = format_at_least(spread, units)
        yield (
            "On one hook only friction keeps it straight: look now and then. Planned for two hooks, "
            f"best {best} or more apart, it would not move."
        )


def note_supports(supports: Sequence[Support], hang: Hanging | None, units: Unit) -> Iterator[str]:
    """What holds a placed piece without a hole, where there is anything."""
    yield from _note_cords([each for each in supports if isinstance(each, Cord)], units)
    for each in supports:
        if isinstance(each, Strips) and hang is not None:
            yield f"No hole: {describe_strips(each, hang, units)}."


def format_strip_rating(kg: float, units: Unit) -> str:
    """How strong a strip is, never told as stronger: ``4 lb``, ``0.9 kg``."""
    unit, name = (_POUND_KG, "lb") if units.is_imperial else (1.0, "kg")
    return f"{round_down(kg / unit, _TOLD):g} {name}"


def describe_strips(strips: Strips, hang: Hanging, units: Unit) -> str:
    """How many strips to put behind a piece, and how strong each is."""
    if strips.count is None:
        return "how many strips it needs is not known: weigh it, and go by their maker's table"
    rated = format_strip_rating(given(hang.strip_rating_kg), units)
    plural = "" if strips.count == 1 else "s"
    what = f"pair{plural} of adhesive strips" if strips.each == "pair" else f"adhesive strip{plural}"
    return f"{strips.count} {what}, each rated {rated} by its maker"


def _note_cords(cords: Sequence[Cord], units: Unit) -> Iterator[str]:
    """How long the cords of a placed piece are, and from where."""
    if cords:
        count = "a cord" if len(cords) == 1 else f"{len(cords)} cords, each"
        length, height = format_both(cords[0].length_mm, units), format_both(cords[0].rail_mm, units)
        yield f"No hole: {count} of {length} from the rail's hook, {height} above the floor."
