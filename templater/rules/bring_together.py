"""What brings the parts of a group that hang apart together again, in words that can be carried out."""

from __future__ import annotations

from collections.abc import Sequence

from templater.geometry import Box, Point
from templater.layout.model import Arrangement
from templater.lengths import format_both
from templater.mounting.amounts import SLACK_MM, round_down, round_up, step_mm
from templater.placement.collisions import overlapping_pairs
from templater.placement.model import Plan
from templater.rules.band import Band
from templater.rules.free_wall import hangs_free, list_taken
from templater.rules.moves import format_moves
from templater.rules.spacing import find_gaps, find_nearest, measure_gap, measure_grid
from templater.rules.subject import Subject


def tell_how(subject: Subject, plan: Plan, clusters: Sequence[int], band: Band) -> str:
    """The act that makes one group of its clusters, none of its gaps wider than the band's high end.

    ``clusters`` gives for each part the one that it hangs together with. Where one gap sets all,
    that gap is to be closed; else every part that hangs apart is named with its move.
    """
    gap = _find_common_gap(subject, plan, band) if len(set(clusters)) > 2 else None
    if gap is not None:
        return f"close the gaps to {format_both(gap, plan.units)}"
    return _name_moves(subject, plan, clusters, band.high) or (
        f"hang its parts no more than {format_both(_round(band.high, plan), plan.units)} apart"
    )


def find_link(boxes: Sequence[Box], clusters: Sequence[int]) -> tuple[int, int]:
    """The nearest pair of a part that hangs apart and one of the cluster with the most area."""
    areas: dict[int, float] = {}
    for cluster, box in zip(clusters, boxes, strict=True):
        areas[cluster] = areas.get(cluster, 0.0) + box.width * box.height
    main = max(areas, key=lambda cluster: areas[cluster])
    sides = [int(cluster == main) for cluster in clusters]
    from_main = sum(sides) <= len(sides) / 2
    indices = [index for index, side in enumerate(sides) if bool(side) == from_main]
    links = find_nearest(boxes, sides, indices).items()
    first, second = min(links, key=lambda link: (measure_gap(boxes[link[0]], boxes[link[1]]), link))
    return (second, first) if from_main else (first, second)


def _find_common_gap(subject: Subject, plan: Plan, band: Band) -> float | None:
    """The widest gap, mm, that keeps a group together whose parts all have one gap that is too wide.

    What is small in its cell of a grid is farther from its neighbours than the gap: all gaps are then
    closed by as much as the widest is too wide. None where the gaps of a group are not set by one, or
    where they would have to be narrower than usual.
    """
    gap = min(_list_common_gaps(subject, plan), default=0.0)
    if subject.arrange is not Arrangement.GRID:
        return _round(band.high, plan) if gap > band.high + SLACK_MM else None
    excess = _find_widest_link([box for _, box in subject.parts]) - band.high
    closed = _round(gap - excess, plan)
    return closed if closed >= band.low - SLACK_MM else None


def _list_common_gaps(subject: Subject, plan: Plan) -> list[float]:
    """The gaps of an arrangement that has one for all its parts, mm."""
    asked = [group.gap_mm for group in plan.groups if group.name == subject.name and group.gap_mm > 0]
    match subject.arrange:
        case Arrangement.ROW | Arrangement.COLUMN | Arrangement.STAIR:
            return [gap.mm for gap in find_gaps(subject, plan, low_mm=0.0)]
        case Arrangement.GRID:
            return [*measure_grid([box for _, box in subject.parts]), *asked]
        case Arrangement.CLUSTER:
            return asked
    return []


def _find_widest_link(boxes: Sequence[Box]) -> float:
    """The widest of the gaps that must be bridged to reach every box from the first, mm."""
    widest = 0.0
    away = {index: measure_gap(boxes[0], box) for index, box in enumerate(boxes)}
    at = 0
    while len(away) > 1:
        del away[at]
        at = min(away, key=lambda index: away[index])
        widest = max(widest, away[at])
        away = {index: min(gap, measure_gap(boxes[at], boxes[index])) for index, gap in away.items()}
    return widest


def _name_moves(subject: Subject, plan: Plan, clusters: Sequence[int], gap_mm: float) -> str | None:
    """A move for each cluster that hangs apart, the nearest first; None if any would hang on a thing."""
    boxes, joined, told = [box for _, box in subject.parts], list(clusters), []
    while len(set(joined)) > 1:
        stray, near = find_link(boxes, joined)
        move = _find_move(boxes[stray], boxes[near], gap_mm, step_mm(plan.units))
        moved = [index for index, cluster in enumerate(joined) if cluster == joined[stray]]
        for index in moved:
            boxes[index], joined[index] = boxes[index].moved(*move), joined[near]
        if any(move):
            more = f" and {len(moved) - 1} more" if len(moved) > 1 else ""
            words = format_moves(move.x, move.y, plan.units)
            told.append(f"{subject.parts[stray][0]}{more}: {words}")
    is_clear = not any(overlapping_pairs(boxes))
    if is_clear and hangs_free(boxes, list_taken(plan, subject.pieces), plan):
        return "; ".join(told)
    return None


def _find_move(box: Box, near: Box, gap_mm: float, step: float) -> Point:
    """The move, in whole steps, that leaves a gap of no more than so many mm to another box."""
    dx = _close(box.x0, box.x1, near.x0, near.x1, gap_mm)
    dy = _close(box.y0, box.y1, near.y0, near.y1, gap_mm)
    return Point(*(round_up(by, step) if by > 0 else round_down(by, step) for by in (dx, dy)))


def _close(low: float, high: float, other_low: float, other_high: float, gap_mm: float) -> float:
    """The move along one axis that leaves a gap of no more than so many mm."""
    if other_low - high > gap_mm:
        return other_low - high - gap_mm
    return -max(0.0, low - other_high - gap_mm)


def _round(mm: float, plan: Plan) -> float:
    return round_down(mm, step_mm(plan.units))
