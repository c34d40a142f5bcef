"""Holds the outline of a sheet against the Plan."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from templater.geometry import Box
from templater.verify.model import NEAR_MM
from templater.verify.straight import Straight
from templater.verify.stretches import Stretch, leave
from templater.verify.template_marks import RING_MM, TemplateMarks

_SEARCH_MM = 2.0
_OUTLINE_WIDTH = 0.35
_WIDTH_OFF = 0.03
_HOLE_GAP_MM = RING_MM + 2.0
"""So near a hole the outline may be left out."""

_SLACK_MM = 0.02


class Edge(NamedTuple):
    """An edge of the piece as far as a sheet shows it, and the lines that draw it.

    ``length`` is the whole edge's.
    """

    name: str
    place: float
    length: float
    span: Stretch
    lines: tuple[Straight, ...]
    gaps: tuple[float, ...]


def list_edges(
    level: Sequence[Straight], upright: Sequence[Straight], clip: Box, marks: TemplateMarks
) -> list[Edge]:
    """The edges of the piece that a sheet shows; ``gaps`` are where holes lie on them or near."""
    width, height = marks.size
    across, up = (clip.x0, clip.x1), (clip.y0, clip.y1)
    turned = [(y, x) for x, y in marks.holes]
    found = []
    for name, place, end, lines, span, shown, holes in (
        ("left", 0.0, height, upright, up, across, turned),
        ("right", width, height, upright, up, across, turned),
        ("lower", 0.0, width, level, across, up, marks.holes),
        ("upper", height, width, level, across, up, marks.holes),
    ):
        low, high = max(0.0, span[0]), min(end, span[1])
        if shown[0] - NEAR_MM / 10 <= place <= shown[1] + NEAR_MM / 10 and low < high:
            edge = tuple(line for line in lines if _may_be(line, place, low, high))
            gaps = tuple(along for along, aside in holes if abs(aside - place) < _HOLE_GAP_MM)
            found.append(Edge(f"the outline's {name} edge", place, end, (low, high), edge, gaps))
    return found


def _may_be(line: Straight, place: float, low: float, high: float) -> bool:
    """Whether a line is a part of the edge at a place, perhaps a little off."""
    return (
        abs(line.across - place) <= _SEARCH_MM
        and abs(line.width_mm - _OUTLINE_WIDTH) <= _WIDTH_OFF
        and line.seen is not None
        and line.seen[0] < high
        and low < line.seen[1]
    )


def check_edges(edges: Iterable[Edge]) -> Iterator[str]:
    """Which edges are not where they must be."""
    for edge in edges:
        off = max((abs(line.across - edge.place) for line in edge.lines), default=0.0)
        if off > NEAR_MM:
            yield f"{edge.name} is {off:.3f} mm off"
        seen = [line.seen for line in edge.lines if line.seen is not None]
        past = max((max(-low, high - edge.length) for low, high in seen), default=0.0)
        if past > NEAR_MM:
            yield f"{edge.name} runs {past:.3f} mm past its corner"


def check_edges_whole(edges: Iterable[Edge]) -> Iterator[str]:
    """Which edges are not whole between the holes on them."""
    for edge in edges:
        parts = [line.seen for line in edge.lines if line.seen is not None]
        parts += [(gap - _HOLE_GAP_MM, gap + _HOLE_GAP_MM) for gap in edge.gaps]
        for low, _ in leave(edge.span, parts, _SLACK_MM):
            yield f"{edge.name} is not drawn from {low:.1f} mm on"
            break
