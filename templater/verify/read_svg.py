"""Reads the ink of an SVG drawing with an XML parser; transformations are followed."""

from __future__ import annotations

import re
from dataclasses import dataclass
from math import cos, radians, sin
from pathlib import Path
from xml.etree import ElementTree as ET

from templater.geometry import Box, Point, Size
from templater.verify.matrices import PLAIN, Matrix, apply, multiply, stretch
from templater.verify.model import Chain, Ink, Ring, Run, Stroke, UnreadableError

_SVG = "{http://www.w3.org/2000/svg}"
_MM = {"mm": 1.0, "cm": 10.0, "in": 25.4}
_UNSEEN = ("defs", "title", "desc", "metadata")
_NOT_FOLLOWED = {"style", "class", "display", "visibility", "opacity", "clip-path", "mask"}


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
        reader = _Reader(root)
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

    def __init__(self, root: ET.Element) -> None:
        self.ink = Ink()
        self._root = root

    def read(self, element: ET.Element, matrix: Matrix, look: dict[str, str]) -> None:
        """Take in an element and what it holds. Raises ValueError for one that is not known."""
        tag = element.tag.removeprefix(_SVG)
        if tag in _UNSEEN:
            return
        if strange := _NOT_FOLLOWED & element.attrib.keys():
            raise ValueError(f"an attribute that is not known: {min(strange)}")
        if "transform" in element.attrib:
            matrix = multiply(_read_transform(element.attrib["transform"]), matrix)
        look = look | element.attrib
        if "aria-label" in element.attrib:
            a, b, c, d, _, _ = matrix
            self.ink.runs.append(Run(element.attrib["aria-label"], Point(a, b), Point(c, d)))
        elif tag == "g" or element is self._root:
            for child in element:
                self.read(child, matrix, look)
        elif look.get("fill") == "none":
            self._take(tag, element.attrib, matrix, look)

    def _take(self, tag: str, given: dict[str, str], matrix: Matrix, look: dict[str, str]) -> None:
        """A shape that is drawn as a line."""
        grown = stretch(matrix)
        if tag == "line":
            x1, y1, x2, y2 = (float(given[key]) for key in ("x1", "y1", "x2", "y2"))
            dash = tuple(float(part) * grown for part in look.get("stroke-dasharray", "").split())
            width = float(look["stroke-width"]) * grown
            ends = apply(matrix, x1, y1), apply(matrix, x2, y2)
            self.ink.strokes.append(Stroke(*ends, width, dash, None))
        elif tag == "circle":
            x, y, radius = (float(given[key]) for key in ("cx", "cy", "r"))
            self.ink.rings.append(Ring(apply(matrix, x, y), radius * grown, None))
        elif tag in ("polyline", "polygon"):
            pairs = [pair.split(",") for pair in given["points"].split()]
            points = [apply(matrix, float(x), float(y)) for x, y in pairs]
            closed = [points[0]] if tag == "polygon" else []
            self.ink.chains.append(Chain((*points, *closed)))
        else:
            raise ValueError(f"an element that is not known: {tag}")


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
        case "translate", [x, *y]:
            return 1.0, 0.0, 0.0, 1.0, x, y[0] if y else 0.0
        case "scale", [x, *y]:
            return x, 0.0, 0.0, y[0] if y else x, 0.0, 0.0
        case "rotate", [angle]:
            turn = radians(angle)
            return cos(turn), sin(turn), -sin(turn), cos(turn), 0.0, 0.0
        case _:
            raise ValueError(f"a transformation that is not known: {name}")
