"""Holds the marks of holes on a sheet against the Plan: each where it must be, none elsewhere."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import dist

from templater.geometry import Box, Point
from templater.verify.model import NEAR_MM, Findings
from templater.verify.targets import Target

_SEARCH_MM = 2.0
_EDGE_MM = 0.02
"""A hole so near the edge of what a sheet shows may be seen or not."""


def check_holes(targets: Sequence[Target], holes: Sequence[Point], clip: Box) -> Findings:
    """The marks found on a sheet, and the holes that its part of the template must show."""
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
            faults += _judge(target, hole, number)
            offsets += [dist(point, hole) for point in target if point is not None]
        elif clip.grown(-_EDGE_MM).has(hole):
            faults.append(f"hole {number} is not marked")
    faults += [
        f"a hole is marked where the plan has none, {target.at.x:.2f} mm from the frame's left edge,"
        f" {target.at.y:.2f} mm above its lower one"
        for target in left
    ]
    return Findings(tuple(faults), tuple(offsets))


def _judge(target: Target, hole: Point, number: int) -> Iterator[str]:
    """What is wrong with the mark of one hole."""
    if target.cross is None:
        yield f"hole {number} has a ring and no cross"
        return
    if target.ring is None:
        yield f"hole {number} has a cross and no ring"
        return
    for name, point in (("", target.cross), ("'s ring", target.ring)):
        if dist(point, hole) > NEAR_MM:
            yield (
                f"hole {number}{name} is {dist(point, hole):.3f} mm off:"
                f" {_signed(point.x - hole.x)} across, {_signed(point.y - hole.y)} up"
            )
            return


def _signed(length_mm: float) -> str:
    """A length with its sign, and no minus before nothing."""
    return f"{round(length_mm, 3) + 0.0:+.3f} mm"
