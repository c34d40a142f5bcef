"""Plans on which rules are kept and broken at random, for property tests."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import strategies as st

from templater.geometry import Box, Point, Size
from templater.layout.model import Arrangement, LeftRight, Obstacle
from templater.lengths import Unit
from templater.placement.model import PlacedFurniture, PlacedGroup, PlacedPiece, Plan
from tests.builders import INCH
from tests.rules.plans import grouped, hung, obstacle, wall

_CELL = 60 * INCH


def _eighths(low: float, high: float) -> st.SearchStrategy[float]:
    """Lengths in inches, in eighths and now and then a little off, as mm."""
    dust = st.sampled_from((0.0, 0.0, 0.0, 0.013, -0.021))
    count = st.integers(int(low * 8), int(high * 8))
    return st.builds(lambda eighths, off: (eighths / 8 + off) * INCH, count, dust)


@st.composite
def _pieces(draw: st.DrawFn, name: str, left: float, over: PlacedFurniture | None) -> list[PlacedPiece]:
    corner = Point(left + draw(_eighths(1, 30)), draw(_eighths(36, 60)))
    at = Box.of(corner, Size(draw(_eighths(6, 40)), draw(_eighths(6, 48))))
    return [hung(name, at, over=over)]


@st.composite
def _rows(
    draw: st.DrawFn, name: str, left: float, over: PlacedFurniture | None
) -> tuple[PlacedGroup, list[PlacedPiece]]:
    """A row, a column, or, a little out of line, pieces placed one by one."""
    arrange = draw(st.sampled_from((Arrangement.ROW, Arrangement.COLUMN, Arrangement.PLACED)))
    along = Point(left + draw(_eighths(1, 8)), draw(_eighths(36, 44)))
    usual, any_gap = (2.5, 3.0, 3.125, 3.5), (1.0, 2.5, 3.0, 7.0, 12.0)
    gaps = st.sampled_from(draw(st.sampled_from((usual, any_gap))))
    parts = []
    for number in range(draw(st.integers(2, 4))):
        size = Size(draw(_eighths(4, 14)), draw(_eighths(4, 14)))
        aside = draw(_eighths(0, 1)) if arrange is Arrangement.PLACED else 0.0
        is_column = arrange is Arrangement.COLUMN
        at = Box.of(along.moved(aside, 0) if is_column else along.moved(0, aside), size)
        parts.append((f"{name} {number}", at))
        gap = draw(gaps) * INCH
        along = Point(along.x, at.y1 + gap) if is_column else Point(at.x1 + gap, along.y)
    return grouped(name, parts, arrange=arrange, over=over)


@st.composite
def _obstacles(draw: st.DrawFn, name: str, left: float) -> Obstacle:
    at = Box.of(Point(left + draw(_eighths(40, 58)), draw(_eighths(0, 60))), Size(16 * INCH, 40 * INCH))
    return obstacle(name, at, swing=draw(st.sampled_from((None, *LeftRight))))


@st.composite
def plans(draw: st.DrawFn) -> Plan:
    """A wall with a few pieces and groups beside each other, furniture and things in the way."""
    pieces, groups, furniture, obstacles = [], [], [], []
    count = draw(st.integers(1, 3))
    for number in range(count):
        left = number * _CELL
        over = None
        if draw(st.booleans()):
            size = Size(draw(_eighths(20, 56)), draw(_eighths(20, 34)))
            over = PlacedFurniture(f"chest {number}", Box.of(Point(left + INCH, 0.0), size))
            furniture.append(over)
        if draw(st.booleans()):
            groups.append(draw(_rows(f"group {number}", left, over)))
        else:
            pieces += draw(_pieces(f"piece {number}", left, over))
        if draw(st.booleans()):
            obstacles.append(draw(_obstacles(f"window {number}", left)))
    made = wall(pieces, groups, furniture=furniture, obstacles=obstacles)
    units = draw(st.sampled_from((Unit.INCH, Unit.FOOT, Unit.CENTIMETRE, Unit.MILLIMETRE)))
    return replace(
        made, units=units, wall=Size(count * _CELL + draw(_eighths(0, 20)), draw(_eighths(84, 120)))
    )
