"""Holds the marks of holes on a sheet against the Plan: each where it must be, none elsewhere."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import dist

from templater.geometry import Box, Point
from templater.verify.model import NEAR_MM, Findings
from templater.verify.targets import Target
from templater.verify.template_marks import ARM_MM, RING_MM

_SEARCH_MM = 2.0
_EDGE_MM = 0.02
"""A hole so near the edge of what a sheet shows may be seen or not."""

_LENGTH_MM = 0.05
"""So much longer or shorter may a cross or a ring be drawn."""

_COVER_MM = 1.5
"""What is filled so near the middle of a mark hides it."""


def check_holes(
    targets: Sequence[Target], holes: Sequence[Point], clip: Box, areas: Sequence[Box]
) -> Findings:
    """The marks found on a sheet, and the holes that its part of the template must show.

    ``areas`` are filled with black.
    """
    left = list(targets)
    faults: list[str] = []
    offsets: list[float] = []
    for number, hole in enumerate(holes, 1):
        if not clip.grown(_EDGE_MM).has(hole):
            continue
        near = [target for target in left if dist(target.at, hole) <= _SEARCH_MM]
        if near:
            target = min(near, key=lambda one: dist(one.at, hole))
            left.remove(target)
            faults += _judge(target, hole, f"hole {number}", clip)
            offsets += [dist(point, hole) for point in target.points]
        elif clip.grown(-_EDGE_MM).has(hole):
            faults.append(f"hole {number} is not marked")
        middle = Box(*hole, *hole).grown(_COVER_MM)
        faults += [f"hole {number} is covered with black" for area in areas if area.meets(middle)][:1]
    faults += [
        f"a hole is marked where the plan has none, {target.at.x:.2f} mm from the frame's left edge,"
        f" {target.at.y:.2f} mm above its lower one"
        for target in left
    ]
    return Findings(tuple(faults), tuple(offsets))


def _judge(target: Target, hole: Point, name: str, clip: Box) -> Iterator[str]:
    """What is wrong with the mark of one hole."""
    cross, ring = target.cross, target.ring
    if cross is None:
        yield f"{name} has a ring and no cross"
        return
    if ring is None:
        yield f"{name} has a cross and no ring"
        return
    for part, point in ((name, cross.at), (f"{name}'s ring", ring.centre)):
        if dist(point, hole) > NEAR_MM:
            yield (
                f"{part} is {dist(point, hole):.3f} mm off:"
                f" {_signed(point.x - hole.x)} across, {_signed(point.y - hole.y)} up"
            )
            return
    if not cross.seen.holds(_around(hole, ARM_MM).common(clip), slack=_LENGTH_MM):
        yield f"{name}'s cross is partly hidden or too short"
    if abs(ring.radius_mm - RING_MM) > _LENGTH_MM:
        yield f"{name}'s ring is {2 * ring.radius_mm:.2f} mm wide, not {2 * RING_MM:.2f} mm"
    elif ring.clip and not ring.clip.holds(_around(hole, RING_MM).common(clip), slack=_LENGTH_MM):
        yield f"{name}'s ring is partly hidden"


def _around(hole: Point, reach_mm: float) -> Box:
    return Box(*hole, *hole).grown(reach_mm)


def _signed(length_mm: float) -> str:
    """A length with its sign, and no minus before nothing."""
    return f"{round(length_mm, 3) + 0.0:+.3f} mm"
