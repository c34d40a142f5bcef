"""Reads the ink of an SVG drawing with an XML parser; transformations are followed.

An element, an attribute or a colour that is not known makes the drawing unreadable, so that no ink can
be overlooked and none is taken for seen that is not.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from math import cos, radians, sin
from pathlib import Path
from xml.etree import ElementTree as ET

from templater.geometry import Box, Point, Size
from templater.verify.ink.matrices import PLAIN, Matrix, apply, multiply, stretch
from templater.verify.model import Chain, Ink, Ring, Run, Stroke, UnreadableError

_SVG = "{http://www.w3.org/2000/svg}"
_MM = {"mm": 1.0, "cm": 10.0, "in": 25.4}
_UNSEEN = ("defs", "title", "desc", "metadata")
_LOOKS = {"fill", "stroke", "stroke-width", "stroke-dasharray", "transform"}
_PLACES = {
    "svg": {"width", "height", "viewBox", "version", "baseProfile"},
    "g": {"aria-label", "role"},
    "line": {"x1", "y1", "x2", "y2"},
    "circle": {"cx", "cy", "r"},
    "polyline": {"points"},
    "polygon": {"points"},
}
"""What each element may say besides its looks."""

_UNITS_PER_EM = 1000
"""Letters are drawn in thousandths of an em."""

_BLACK = ("#000", "#000000", "black")
_THINNEST_MM, _WIDEST_MM = 0.1, 2.0
"""A line thinner than this may not be seen; a wider one may hide others."""


@dataclass(frozen=True, slots=True)
class Drawing:
    """An SVG drawing, y up from the line ``top`` of the file; ``view`` is what it shows.

    ``size`` is its physical size, None where it has none.
    """

    ink: Ink
    view: Box
    size: Size | None


def read_svg(path: Path, top: float | None = None) -> Drawing:
    """A drawing in which (x, y) of the file is told as (x, top - y); without top, from the view's foot.

    Raises UnreadableError.
    """
    try:
        root = ET.parse(path).getroot()
        x, y, width, height = map(float, root.attrib["viewBox"].split())
        foot = y + height if top is None else top
        reader = _Reader()
        reader.read(root, (1.0, 0.0, 0.0, -1.0, 0.0, foot), {})
    except (ET.ParseError, KeyError, TypeError, ValueError) as error:
        raise UnreadableError(f"it is no drawing that can be followed ({error})") from error
    view = Box(x, foot - y - height, x + width, foot - y)
    return Drawing(reader.ink, view, _read_size(root))


def _read_size(root: ET.Element) -> Size | None:
    """Width and height in mm, if both have a unit of length."""
    sides = [re.fullmatch(r"([\d.]+)(mm|cm|in)", root.get(key, "")) for key in ("width", "height")]
    lengths = [float(side[1]) * _MM[side[2]] for side in sides if side]
    return Size(*lengths) if len(lengths) == 2 else None


class _Reader:
    """Walks through the elements with the looks that they inherit."""

    def __init__(self) -> None:
        self.ink = Ink()

    def read(self, element: ET.Element, matrix: Matrix, look: Mapping[str, str]) -> None:
        """Take in an element and what it holds. Raises ValueError for one that is not known."""
        tag, given = element.tag.removeprefix(_SVG), element.attrib
        if tag in _UNSEEN:
            return
        if tag not in _PLACES:
            raise ValueError(f"an element that is not known: {tag}")
        if strange := given.keys() - _PLACES[tag] - _LOOKS:
            raise ValueError(f"an attribute that is not known: {min(strange)}")
        if "transform" in given:
            matrix = multiply(_read_transform(given["transform"]), matrix)
        look = {**look, **given}
        if "aria-label" in given:
            self._take_words(element, matrix, look)
        elif tag in ("g", "svg"):
            for child in element:
                self.read(child, matrix, look)
        else:
            self._take(tag, given, matrix, look)

    def _take_words(self, element: ET.Element, matrix: Matrix, look: Mapping[str, str]) -> None:
        """Words, which letters draw and nothing else does."""
        if any(child.tag != f"{_SVG}use" for child in element):
            raise ValueError("words that are drawn by more than letters")
        if look.get("fill") not in _BLACK:
            raise ValueError("words that are not black")
        a, b, c, d, e, f = matrix
        text, em_mm = element.attrib["aria-label"], _UNITS_PER_EM * float((a * a + b * b) ** 0.5)
        self.ink.runs.append(Run(text, Point(e, f), Point(a, b), Point(c, d), em_mm))

    def _take(self, tag: str, given: Mapping[str, str], matrix: Matrix, look: Mapping[str, str]) -> None:
        """A shape that is drawn as a line, or filled."""
        if look.get("fill") in _BLACK and look.get("stroke") == "none":
            self._take_area(tag, given, matrix)
            return
        if look.get("fill") != "none" or look.get("stroke") not in _BLACK:
            raise ValueError(f"neither a black line nor a black area: {tag}")
        grown = stretch(matrix)
        width = float(look["stroke-width"]) * grown
        if not _THINNEST_MM <= width <= _WIDEST_MM:
            raise ValueError("a line too thin to be seen, or so wide that it may hide others")
        points = _read_points(tag, given, matrix)
        if tag == "circle":
            self.ink.rings.append(Ring(points[0], float(given["r"]) * grown, None))
        elif len(points) == 2:
            dash = tuple(float(part) * grown for part in look.get("stroke-dasharray", "").split())
            self.ink.strokes.append(Stroke(points[0], points[1], width, dash, None))
        else:
            closed = points[:1] if tag == "polygon" else ()
            self.ink.chains.append(Chain((*points, *closed)))

    def _take_area(self, tag: str, given: Mapping[str, str], matrix: Matrix) -> None:
        """The box of what is filled."""
        xs, ys = zip(*_read_points(tag, given, matrix), strict=True)
        radius = float(given.get("r", 0)) * stretch(matrix)
        self.ink.areas.append(Box(min(xs), min(ys), max(xs), max(ys)).grown(radius))


def _read_points(tag: str, given: Mapping[str, str], matrix: Matrix) -> tuple[Point, ...]:
    """The points of a shape: a line's ends, a circle's centre, the corners of a chain."""
    if tag == "line":
        x1, y1, x2, y2 = (float(given[key]) for key in ("x1", "y1", "x2", "y2"))
        return apply(matrix, x1, y1), apply(matrix, x2, y2)
    if tag == "circle":
        return (apply(matrix, float(given["cx"]), float(given["cy"])),)
    pairs = (pair.split(",") for pair in given["points"].split())
    return tuple(apply(matrix, float(x), float(y)) for x, y in pairs)


def _read_transform(text: str) -> Matrix:
    """A list of transformations as one (SVG 1.1, 7.6); the last acts first. Raises ValueError."""
    matrix = PLAIN
    for name, body in re.findall(r"(\w+)\s*\(([^)]*)\)", text):
        numbers = [float(number) for number in re.split(r"[\s,]+", body.strip())]
        matrix = multiply(_read_step(name, numbers), matrix)
    return matrix


def _read_step(name: str, numbers: list[float]) -> Matrix:
    """One transformation of a list. Raises ValueError."""
    match name, numbers:
        case "matrix", [a, b, c, d, e, f]:
            return a, b, c, d, e, f
        case "translate", [x, *y] if len(y) < 2:
            return 1.0, 0.0, 0.0, 1.0, x, y[0] if y else 0.0
        case "scale", [x, *y] if len(y) < 2:
            return x, 0.0, 0.0, y[0] if y else x, 0.0, 0.0
        case "rotate", [angle]:
            turn = radians(angle)
            return cos(turn), sin(turn), -sin(turn), cos(turn), 0.0, 0.0
        case _:
            raise ValueError(f"a transformation that is not known: {name}")
