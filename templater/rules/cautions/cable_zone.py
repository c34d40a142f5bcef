"""A hole is drilled where no cable is likely.

What it checks:
    Whether a hole is level with or plumb over or under a switch, a socket, a thermostat or a
    light, with no door or window across the way between; with ``region: uk`` also across them, and
    whether it is within 150 mm of the ceiling or of the wall's ends. Without such a fixture in the
    layout it is not checked.

Why:
    Cables run straight, along the edges of a wall and to what they serve. In the United Kingdom
    BS 7671, regulation 522.6.202, allows them less than 50 mm deep only there; elsewhere it is
    common practice, no source: none runs through a doorway. It is a likelihood: a cable may be
    anywhere.

Example:
    A wall of 2400 by 2400 mm in the United Kingdom. A hole 140 mm from the left end: caution, as
    is one 140 mm under the ceiling. One 160 mm under it is clear. One plumb over a switch,
    however high: caution.

What to write instead:
    The ``kind`` of each fixture: switch, socket, thermostat, light; ``region: uk``. Move the piece,
    or hang it by other hardware. Whatever is found here, use a detector; local codes and licensed
    trades decide.

"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from templater.geometry import Box, Point
from templater.layout.model import Region
from templater.lengths import format_length
from templater.mounting.amounts import SLACK_MM
from templater.placement.ceiling import find_headroom
from templater.placement.model import PlacedPiece, Plan
from templater.rules.cautions.caution import Caution, Teller, name_hole
from templater.rules.cautions.things import VOID, WIRED, Thing, list_things
from templater.rules.model import Finding

CODE = "cable-zone"

EDGE_MM = 150.0
"""So far from the ceiling and from an angle of two walls cables may run; BS 7671, 522.6.202."""

_MEND = "look for a cable with a detector first; if in doubt, do not drill"
_ASK = "add the switches, sockets and lights of this wall to 'fixtures'"
_USUAL = Teller(CODE, "common practice, no source")
_UK = Teller(CODE, "BS 7671, 522.6.202")


def check_cable_zone(piece: PlacedPiece, plan: Plan) -> Iterator[Finding]:
    """Hold each hole of a piece against where cables are likely."""
    teller = _UK if plan.region is Region.UK else _USUAL
    things = [thing for thing in list_things(plan) if not thing.is_furniture]
    wired = [thing for thing in things if thing.is_of(WIRED)]
    unknown = [thing for thing in things if not thing.is_known]
    for number, mark in enumerate(piece.marks, start=1):
        zones = list(find_zones(mark.hole, plan, wired))
        if zones:
            yield teller.warn(piece, "; ".join(zones), _MEND, other=name_hole(number))
            continue
        for thing in unknown:
            if _find_line(mark.hole, thing.box) and not _is_cut_off(mark.hole, thing.box, plan):
                yield teller.ask(piece, thing.ask_kind, other=name_hole(number))
    if piece.marks and not wired:
        yield teller.ask(piece, _ASK)


def find_zones(hole: Point, plan: Plan, wired: Sequence[Thing]) -> Iterator[str]:
    """The likely zones that a hole is in, in words."""
    if plan.region is Region.UK:
        yield from _find_edges(hole, plan)
    for thing in wired:
        way = _find_line(hole, thing.box)
        if way and not _is_cut_off(hole, thing.box, plan):
            yield f"{way} {thing.name}"


def _find_edges(hole: Point, plan: Plan) -> Iterator[str]:
    """The zones along the ceiling and the wall's ends."""
    ceiling = find_headroom(plan.ceiling, plan.wall.height, hole.x, hole.x)
    for off, where in (
        (ceiling - hole.y, "under the ceiling"),
        (hole.x, "from the left end"),
        (plan.wall.width - hole.x, "from the right end"),
    ):
        if off <= EDGE_MM + SLACK_MM:
            yield f"{format_length(off, plan.units)} {where}"


def _find_line(hole: Point, box: Box) -> str | None:
    """How a hole is in line with a thing, if it is; edges belong to the strip."""
    if box.x0 - SLACK_MM <= hole.x <= box.x1 + SLACK_MM:
        return "plumb over" if hole.y > box.centre.y else "plumb under"
    if box.y0 - SLACK_MM <= hole.y <= box.y1 + SLACK_MM:
        return "level with"
    return None


def _is_cut_off(hole: Point, box: Box, plan: Plan) -> bool:
    """Whether a door or a window lies across the whole way between a hole and a thing in line with it.

    The zones of the United Kingdom go on beyond it.
    """
    if plan.region is Region.UK:
        return False
    voids = [
        thing.box
        for thing in list_things(plan)
        if not thing.is_furniture and thing.words <= VOID  # a door chime is no door
    ]
    if box.x0 - SLACK_MM <= hole.x <= box.x1 + SLACK_MM:
        low, high = sorted((hole.y, box.centre.y))
        return any(_spans(each, box, 0) and low < each.y1 and each.y0 < high for each in voids)
    low, high = sorted((hole.x, box.centre.x))
    return any(_spans(each, box, 1) and low < each.x1 and each.x0 < high for each in voids)


def _spans(void: Box, box: Box, axis: int) -> bool:
    """Whether an opening is at least as wide (axis 0) or as high (1) as a thing, all of it."""
    return void[axis] <= box[axis] + SLACK_MM and box[axis + 2] <= void[axis + 2] + SLACK_MM


CAUTION = Caution(CODE, check_cable_zone, str(__doc__), is_of_holes=True)
