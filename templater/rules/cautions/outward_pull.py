"""What stands out far from the wall does not pull its screws or nails out.

What it checks:
    The pull straight out of the wall on each hole in a stud: the load x half of ``stands_out`` /
    the height of the hanger above the frame's lower edge, which leans on the wall. It is held
    against what a No. 8 screw 1 in deep in the softest wood for studs gives or, where a picture
    hook with a nail will do, a nail of 1.5 mm, 3/4 in deep; if a ``hook`` has a ``length``, so deep
    as that goes. In other walls more than a tenth of the load is not checked: the maker of what is in
    the hole knows. Nor is it without ``stands_out`` or a weight.

Why:
    A picture bears on its fastener sideways; a deep one also prises it out. What wood gives against
    that: NDS design values, 2850 G² D a inch for screws, 1380 G^(5/2) D for nails (lb, in), which
    are a fifth of what breaks them. The wood is not known: an estimate, for G from 0.35 to 0.55. A
    tenth of the load beside it makes the whole pull greater by 1 in 200: what the rating leaves over
    covers that. Common practice, no source.

Example:
    A case of 8 kg, 200 mm deep, on two screws 300 mm above its lower edge: each is pulled outward
    by 39.2 x 100 / 300 = 13.1 N, and gives 254 N at least: kept.

What to write instead:
    ``stands_out: 2 in`` and ``weight`` in each piece, ``studs`` in ``wall``. Hang a deep piece by
    its top, on a cleat, or hold its lower edge too.

"""

from __future__ import annotations

from collections.abc import Iterator

from templater.mounting.amounts import SLACK_MM
from templater.placement.model import PlacedPiece, Plan
from templater.rules.cautions.caution import Caution, Teller, name_hole
from templater.rules.fasteners.choose import NAILED, Fastener, Kind, choose_fasteners
from templater.rules.fasteners.withdrawal import (
    HARDEST,
    NAIL,
    SCREW,
    SOFTEST,
    find_outward_pull,
    find_screw_diameter,
)
from templater.rules.fasteners.wording import format_force, format_hold
from templater.rules.holding import Holding, find_holding
from templater.rules.holes import HoleWall
from templater.rules.model import Finding

CODE = "outward-pull"

SCREW_GAUGE, SCREW_DEEP_MM = 8, 25.4
"""The screw that is counted on: No. 8, its thread 1 in deep in the wood; common practice, no source."""

NAIL_MM, NAIL_DEEP_MM = 1.5, 19.05
"""The nail of a picture hook, and how deep it goes; common practice, no source."""

SMALL_SHARE = 0.1
"""Of the load; a pull outward that is no more is covered by what a rating leaves over; common practice,
no source."""

_TELL = Teller(CODE, "NDS design values for withdrawal; an estimate, the wood is not known")
_USUAL = Teller(CODE, "common practice, no source")
_ASK_DEPTH = "add 'stands_out' to the piece"
_ASK_WEIGHT = "add 'weight' to the piece, or what it is 'made_of'"
_ASK_LEDGE = "add 'stands_out' and 'weight' to 'ledge', and 'weight' to what stands on it"
_ASK_MAKER = "ask the maker of its fastener whether it holds {} straight out"
_SMALL = "up to a tenth of the load"
_MEND = "hang it higher on its frame or on a cleat, or hold its lower edge too"


def check_outward_pull(piece: PlacedPiece, plan: Plan) -> Iterator[Finding]:
    """Hold the pull out of the wall on each of a piece's holes against what wood gives."""
    fasteners = [each for each in choose_fasteners(piece, plan) if each.kind is not Kind.LOCK]
    if not fasteners:
        return
    if piece.stands_out_mm is None or any(each.load is None for each in fasteners):
        missing = _ASK_DEPTH if piece.stands_out_mm is None else _ASK_WEIGHT
        is_ledge = find_holding(piece, plan) is Holding.LEDGE
        yield _TELL.ask(piece, _ASK_LEDGE if is_ledge else missing)
        return
    for number, (fastener, mark) in enumerate(zip(fasteners, piece.marks, strict=False), start=1):
        above = mark.hang.y - piece.box.y0
        hole = name_hole(number)
        if above <= SLACK_MM:
            yield _TELL.warn(piece, "hangs by its lower edge: it would tip outward", _MEND, other=hole)
        elif fastener.load is not None:
            out = piece.stands_out_mm / 2
            pull = find_outward_pull(fastener.load.most_down_n, out_mm=out, above_mm=above)
            if fastener.wall is HoleWall.STUD:
                yield _judge(fastener, pull, hole, piece, plan)
            elif pull <= SMALL_SHARE * fastener.load.most_down_n:
                told = format_force(pull, plan.units)
                yield _USUAL.clear(piece, f"pulls outward by {told}", _SMALL, other=hole)
            else:
                yield _TELL.ask(piece, _ASK_MAKER.format(format_force(pull, plan.units)), other=hole)


def _judge(fastener: Fastener, pull_n: float, hole: str, piece: PlacedPiece, plan: Plan) -> Finding:
    """What is said of one hole in a stud."""
    least, most = (hold_in_stud(fastener, gravity, plan) for gravity in (SOFTEST, HARDEST))
    figure = f"pulls outward by {format_force(pull_n, plan.units)}"
    band = f"up to {format_hold(least, plan.units)}; {format_hold(most, plan.units)} in hard wood"
    if pull_n > least + SLACK_MM:
        return _TELL.warn(piece, figure, _MEND, band=band, other=hole)
    return _TELL.clear(piece, figure, band, other=hole)


def hold_in_stud(fastener: Fastener, gravity: float, plan: Plan) -> float:
    """The design value of a screw or a nail in a stud, newton."""
    length = fastener.hook.length_mm if fastener.hook else None
    depth = None if length is None else max(length - (plan.board_mm or 0.0), 0.0)
    if _takes_nail(fastener):
        deep = NAIL_DEEP_MM if depth is None else depth
        return NAIL.hold_n(gravity, diameter_mm=NAIL_MM, depth_mm=deep)
    deep = SCREW_DEEP_MM if depth is None else depth
    return SCREW.hold_n(gravity, diameter_mm=find_screw_diameter(SCREW_GAUGE), depth_mm=deep)


def _takes_nail(fastener: Fastener) -> bool:
    """Whether a nail holds it: so do hooks, unless the layout says that they need a screw."""
    if fastener.hook is None:
        return fastener.kind in NAILED
    return "screw" not in (fastener.hook.needs or "").lower()


CAUTION = Caution(CODE, check_outward_pull, str(__doc__), is_of_holes=True)
