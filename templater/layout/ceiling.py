"""A wall's ceiling where it slopes, and the wall's height, which then is the ceiling's highest point."""

from __future__ import annotations

from itertools import pairwise
from typing import Annotated

from pydantic import AfterValidator, PlainValidator, ValidationInfo
from pydantic_core import PydanticKnownError

from templater.geometry import Point
from templater.layout.choices import read_pair
from templater.layout.values import fail, read_wall_length, read_wall_position, show_value

_EXAMPLE = "[[0, 9 ft], [16 ft, 6 ft]]"
_UNKNOWN_MM = 1.0
"""Stands for a height that cannot be known, since the ceiling that gives it has a fault."""


def _read_point(raw: object, info: ValidationInfo) -> Point:
    """How far from the wall's left end, and how high the ceiling is there."""
    x, y = read_pair(raw, "points of a distance and a height each", _EXAMPLE)
    return Point(read_wall_position(x, info), read_wall_length(y, info))


CeilingPoint = Annotated[Point, PlainValidator(_read_point, json_schema_input_type=list[str])]


def _check_line(points: list[CeilingPoint], info: ValidationInfo) -> list[CeilingPoint]:
    """The points, which must run from one end of the wall to the other."""
    if len(points) < 2:
        raise fail(f"needs at least two points, but has {len(points)}", f"write for example {_EXAMPLE}")
    for number, (before, after) in enumerate(pairwise(points), start=2):
        if after.x <= before.x:
            message = f"has a point {number} that is not right of point {number - 1}"
            raise fail(message, "list the points from the wall's left end to its right end")
    if points[0].x != 0:
        raise fail("does not start at the wall's left end", "give the first point the distance 0")
    if points[-1].x != info.data.get("width", points[-1].x):
        message = "does not end at the wall's right end"
        raise fail(message, "give the last point the wall's 'width' as its distance")
    return points


def _read_height(raw: object, info: ValidationInfo) -> float:
    """The height as given, or the ceiling's highest point."""
    points: list[Point] | None = info.data.get("ceiling", [])
    if raw is None and points is None:
        raise PydanticKnownError("missing")
    if not points:
        return _UNKNOWN_MM if raw is None else read_wall_length(raw, info)
    highest = max(point.y for point in points)
    if raw is not None and read_wall_length(raw, info) != highest:
        message = f"is {show_value(raw)}, but the ceiling's highest point is not"
        raise fail(message, "remove 'height', or mend the ceiling")
    return highest


Ceiling = Annotated[list[CeilingPoint], AfterValidator(_check_line)]
"""Points from the wall's left end to its right end."""

WallHeight = Annotated[float, PlainValidator(_read_height, json_schema_input_type=str)]
"""To stand after ``width`` and ``ceiling``; without it the ceiling gives the height."""
