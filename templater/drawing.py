"""What a drawing is made of: lines, polylines, circles and words, in mm, y up.

A drawing knows no paper, no file format and no layout; every number in it is final.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from typing import TypeAlias

from templater.geometry import Box, Point

Dash: TypeAlias = tuple[float, ...]
"""Lengths of dashes and gaps in turn, mm; empty for a continuous line."""


class Anchor(Enum):
    """Which point of the words stands at the point given: on the baseline in every case."""

    START = "start"
    MIDDLE = "middle"
    END = "end"


@dataclass(frozen=True, slots=True)
class Line:
    """A straight black line, its width in mm."""

    start: Point
    end: Point
    width_mm: float
    dash: Dash = ()

    @property
    def box(self) -> Box:
        """The smallest upright box that holds the line's axis."""
        (x0, y0), (x1, y1) = self.start, self.end
        return Box(min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1))


@dataclass(frozen=True, slots=True)
class Polyline:
    """A chain of straight lines, closed or filled black if asked."""

    points: tuple[Point, ...]
    width_mm: float
    dash: Dash = ()
    closed: bool = False
    filled: bool = False

    @property
    def box(self) -> Box:
        """The smallest upright box that holds all corners."""
        xs = [point.x for point in self.points]
        ys = [point.y for point in self.points]
        return Box(min(xs), min(ys), max(xs), max(ys))


@dataclass(frozen=True, slots=True)
class Circle:
    """A circle, drawn as a line, or filled black if asked."""

    centre: Point
    radius_mm: float
    width_mm: float
    filled: bool = False

    @property
    def box(self) -> Box:
        """The smallest upright box that holds the circle's axis."""
        (x, y), r = self.centre, self.radius_mm
        return Box(x - r, y - r, x + r, y + r)


@dataclass(frozen=True, slots=True)
class Words:
    """One line of lettering; its height is that of the capitals, as ISO 3098 counts it.

    ``turned`` words run upward, to be read from the right-hand side of the sheet.
    """

    at: Point
    text: str
    height_mm: float
    anchor: Anchor = Anchor.START
    bold: bool = False
    turned: bool = False


Item: TypeAlias = Line | Polyline | Circle | Words


@dataclass(frozen=True, slots=True)
class Link:
    """An area of a drawing that leads to a named target elsewhere in the kit."""

    box: Box
    target: str
