"""Points, sizes and boxes in millimetres, x to the right and y up, whatever the origin."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple


class Point(NamedTuple):
    """A point, mm."""

    x: float
    y: float

    def moved(self, dx: float, dy: float) -> Point:
        """The point moved by (dx, dy) mm."""
        return Point(self.x + dx, self.y + dy)


ORIGIN = Point(0.0, 0.0)
"""Where the axes meet."""


class Size(NamedTuple):
    """Width across and height up, mm."""

    width: float
    height: float

    @property
    def diagonal(self) -> float:
        """Corner to corner, mm."""
        return float((self.width**2 + self.height**2) ** 0.5)


class Box(NamedTuple):
    """An upright rectangle from its bottom-left to its top-right corner, mm."""

    x0: float
    y0: float
    x1: float
    y1: float

    @classmethod
    def of(cls, corner: Point, size: Size) -> Box:
        """The box of a size with its bottom-left corner at a point."""
        return cls(corner.x, corner.y, corner.x + size.width, corner.y + size.height)

    @classmethod
    def around(cls, boxes: Iterable[Box]) -> Box:
        """The smallest box that holds all boxes given (at least one)."""
        x0, y0, x1, y1 = zip(*boxes, strict=True)
        return cls(min(x0), min(y0), max(x1), max(y1))

    @property
    def width(self) -> float:
        """Width, mm."""
        return self.x1 - self.x0

    @property
    def height(self) -> float:
        """Height, mm."""
        return self.y1 - self.y0

    @property
    def size(self) -> Size:
        """Width and height, mm."""
        return Size(self.width, self.height)

    @property
    def centre(self) -> Point:
        """The middle of the box."""
        return Point((self.x0 + self.x1) / 2, (self.y0 + self.y1) / 2)

    @property
    def corner(self) -> Point:
        """The bottom-left corner."""
        return Point(self.x0, self.y0)

    def moved(self, dx: float, dy: float) -> Box:
        """The box moved by (dx, dy) mm."""
        return Box(self.x0 + dx, self.y0 + dy, self.x1 + dx, self.y1 + dy)

    def grown(self, by: float) -> Box:
        """The box with every side moved outward by so many mm."""
        return Box(self.x0 - by, self.y0 - by, self.x1 + by, self.y1 + by)

    def overlap(self, other: Box) -> Size:
        """Width and height that both share; zero or negative where they do not meet (mm)."""
        return Size(
            min(self.x1, other.x1) - max(self.x0, other.x0),
            min(self.y1, other.y1) - max(self.y0, other.y0),
        )

    def meets(self, other: Box) -> bool:
        """Whether the two share an area."""
        return self.x0 < other.x1 and other.x0 < self.x1 and self.y0 < other.y1 and other.y0 < self.y1

    def common(self, other: Box) -> Box:
        """The area both share; only of use where they meet."""
        return Box(
            max(self.x0, other.x0),
            max(self.y0, other.y0),
            min(self.x1, other.x1),
            min(self.y1, other.y1),
        )

    def holds(self, other: Box, slack: float = 0.0) -> bool:
        """Whether the other box lies inside this one, within a slack in mm."""
        return (
            other.x0 >= self.x0 - slack
            and other.y0 >= self.y0 - slack
            and other.x1 <= self.x1 + slack
            and other.y1 <= self.y1 + slack
        )

    def has(self, point: Point) -> bool:
        """Whether the point lies in the box or on its edge."""
        return self.x0 <= point.x <= self.x1 and self.y0 <= point.y <= self.y1
