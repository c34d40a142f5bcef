"""An independent reader of what the program writes: the ink of a PDF page or an SVG drawing, in mm.

It shares no code and no constant with the writers. A PDF page is read from its content stream with
the whole stack of transformations; an operator it does not know is an error, so that no ink can be
overlooked. y runs up in all results.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field, replace
from functools import cache
from math import atan2, cos, degrees, dist, hypot, radians, sin
from typing import Any
from xml.etree import ElementTree as ET

import pikepdf

from templater.geometry import Box, Point

MM_PER_POINT = 25.4 / 72  # a point is 1/72 in (ISO 32000-1, 8.3.2.3)
CAPITALS_PER_EM = 0.66  # Source Sans: capitals of 660 units in an em of 1000, by its makers' table

SVG = "{http://www.w3.org/2000/svg}"
XLINK = "{http://www.w3.org/1999/xlink}"

Matrix = tuple[float, float, float, float, float, float]
_PLAIN: Matrix = (1, 0, 0, 1, 0, 0)


@dataclass(frozen=True, slots=True)
class Stroke:
    """A straight line."""

    start: Point
    end: Point
    width_mm: float
    dash: tuple[float, ...]
    clip: Box | None

    @property
    def length_mm(self) -> float:
        """From end to end."""
        return dist(self.start, self.end)

    @property
    def box(self) -> Box:
        """What its axis spans."""
        return box_of((self.start, self.end))


@dataclass(frozen=True, slots=True)
class Ring:
    """A circle."""

    centre: Point
    radius_mm: float
    width_mm: float
    filled: bool
    clip: Box | None

    @property
    def box(self) -> Box:
        """What its axis spans."""
        return Box(*self.centre, *self.centre).grown(self.radius_mm)


@dataclass(frozen=True, slots=True)
class Outline:
    """A chain of straight lines."""

    points: tuple[Point, ...]
    closed: bool
    filled: bool
    width_mm: float
    dash: tuple[float, ...]
    clip: Box | None

    @property
    def box(self) -> Box:
        """What its axes span."""
        return box_of(self.points)


@dataclass(frozen=True, slots=True)
class Run:
    """One line of lettering: where its baseline starts and ends, and how tall its capitals are."""

    text: str
    start: Point
    end: Point
    capital_mm: float
    font: str
    clip: Box | None

    @property
    def angle(self) -> float:
        """The direction in which it reads, degrees."""
        return degrees(atan2(self.end.y - self.start.y, self.end.x - self.start.x))

    @property
    def box(self) -> Box:
        """From the baseline to the top of the capitals."""
        length = dist(self.start, self.end) or 1.0
        ux, uy = (self.end.x - self.start.x) / length, (self.end.y - self.start.y) / length
        up = (-uy * self.capital_mm, ux * self.capital_mm)
        return box_of((self.start, self.end, self.start.moved(*up), self.end.moved(*up)))


@dataclass(slots=True)
class Ink:
    """All that is drawn on one page or in one drawing."""

    size: tuple[float, float]
    strokes: list[Stroke] = field(default_factory=list)
    rings: list[Ring] = field(default_factory=list)
    outlines: list[Outline] = field(default_factory=list)
    runs: list[Run] = field(default_factory=list)

    @property
    def text(self) -> str:
        """All words, a line each."""
        return "\n".join(run.text for run in self.runs)


def box_of(points: Iterable[Point]) -> Box:
    """The smallest upright box round points."""
    xs, ys = zip(*points, strict=True)
    return Box(min(xs), min(ys), max(xs), max(ys))


def visible(mark: Stroke) -> Box | None:
    """What is left of a level or upright line within its clip box."""
    if mark.clip is None:
        return mark.box
    seen = mark.box.common(mark.clip)
    return seen if seen.x0 <= seen.x1 and seen.y0 <= seen.y1 else None


# --- transformations ------------------------------------------------------------------------------


def _times(first: Matrix, then: Matrix) -> Matrix:
    """The one matrix that does what both do (row vectors, as PDF and SVG write them)."""
    a, b, c, d, e, f = first
    g, h, i, j, k, m = then
    return (
        a * g + b * i,
        a * h + b * j,
        c * g + d * i,
        c * h + d * j,
        e * g + f * i + k,
        e * h + f * j + m,
    )


def _apply(matrix: Matrix, x: float, y: float) -> Point:
    a, b, c, d, e, f = matrix
    return Point(a * x + c * y + e, b * x + d * y + f)


def _scale_of(matrix: Matrix) -> float:
    """How much lengths grow; the two axes must agree."""
    across, up = hypot(*matrix[:2]), hypot(*matrix[2:4])
    if abs(across - up) > 1e-6 * across:
        raise ValueError(f"lengths across and up differ: {matrix}")
    return across


# --- PDF ------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Font:
    """How the bytes of a PDF string read, and how wide each is in ems."""

    name: str
    letters: dict[int, str]
    widths: dict[int, float]


@dataclass(frozen=True, slots=True)
class _State:
    """What ``q`` saves and ``Q`` brings back; lengths in the units of ``matrix``."""

    matrix: Matrix = (MM_PER_POINT, 0, 0, MM_PER_POINT, 0, 0)
    width: float = 1.0
    dash: tuple[float, ...] = ()
    clip: Box | None = None
    font: _Font | None = None
    font_size: float = 0.0
    leading: float = 0.0


def read_pdf_page(page: pikepdf.Page, printed: tuple[float, float] = (1.0, 1.0)) -> Ink:
    """The ink of a page, mm from the bottom-left of its MediaBox.

    ``printed`` is what a printer makes of a millimetre across the page and up it.
    """
    x0, y0, x1, y1 = (float(side) * MM_PER_POINT for side in page.mediabox)
    across, up = printed
    reader = _PageReader(Ink(((x1 - x0) * across, (y1 - y0) * up)), _fonts(page))
    reader.state = replace(reader.state, matrix=(MM_PER_POINT * across, 0, 0, MM_PER_POINT * up, 0, 0))
    for instruction in pikepdf.parse_content_stream(page):
        reader.take(str(instruction.operator), list(instruction.operands))
    if reader.saved:
        raise ValueError("a q without its Q")
    return reader.ink


def _fonts(page: pikepdf.Page) -> dict[str, _Font]:
    fonts: dict[str, Any] = dict(page.resources.get("/Font", {}).items())
    return {name: _read_font(font) for name, font in fonts.items()}


def _read_font(font: Any) -> _Font:
    first = int(font.FirstChar)
    widths = {first + at: float(width) / 1000 for at, width in enumerate(font.Widths)}
    letters = _read_cmap(font.ToUnicode.read_bytes().decode("ascii"))
    return _Font(str(font.BaseFont), letters, widths)


def _read_cmap(text: str) -> dict[int, str]:
    """What each byte means (ISO 32000-1, 9.10.3)."""
    letters: dict[int, str] = {}
    for body in re.findall(r"beginbfchar(.*?)endbfchar", text, re.DOTALL):
        for code, letter in re.findall(r"<(\w+)>\s*<(\w+)>", body):
            letters[int(code, 16)] = _utf16(letter)
    for body in re.findall(r"beginbfrange(.*?)endbfrange", text, re.DOTALL):
        for low, _, listed, start in re.findall(
            r"<(\w+)>\s*<(\w+)>\s*(?:\[(.*?)\]|<(\w+)>)", body, re.DOTALL
        ):
            if start:
                raise ValueError("a range of letters from a start is not expected")
            for at, letter in enumerate(re.findall(r"<(\w*)>", listed)):
                letters[int(low, 16) + at] = _utf16(letter)
    return letters


def _utf16(text: str) -> str:
    return bytes.fromhex(text).decode("utf-16-be")


class _PageReader:
    """Follows the operators of one content stream."""

    def __init__(self, ink: Ink, fonts: dict[str, _Font]) -> None:
        self.ink, self.fonts = ink, fonts
        self.state = _State()
        self.saved: list[_State] = []
        self.paths: list[list[tuple[str, tuple[Point, ...]]]] = []
        self.clips = False
        self.text_matrix = self.line_matrix = _PLAIN
        self.rules: dict[str, Callable[..., None]] = {
            "q": lambda: self.saved.append(self.state),
            "Q": self._restore,
            "cm": lambda *m: self._set(matrix=_times(_matrix(m), self.state.matrix)),
            "w": lambda width: self._set(width=width),
            "d": lambda dash, _phase: self._set(dash=tuple(map(float, dash))),
            "m": lambda x, y: self.paths.append([("m", (self._at(x, y),))]),
            "l": lambda x, y: self.paths[-1].append(("l", (self._at(x, y),))),
            "c": self._curve,
            "re": self._rectangle,
            "h": lambda: self.paths[-1].append(("h", ())),
            "S": lambda: self._paint(filled=False),
            "s": self._close_and_paint,
            "f": lambda: self._paint(filled=True),
            "f*": lambda: self._paint(filled=True),
            "n": self._end_path,
            "W": self._clip_next,
            "W*": self._clip_next,
            "BT": lambda: self._set_line(_PLAIN),
            "ET": lambda: None,
            "Tf": lambda name, size: self._set(font=self.fonts[str(name)], font_size=size),
            "Tm": lambda *m: self._set_line(_matrix(m)),
            "Td": lambda x, y: self._set_line(_times((1, 0, 0, 1, x, y), self.line_matrix)),
            "TL": lambda leading: self._set(leading=leading),
            "T*": lambda: self._set_line(_times((1, 0, 0, 1, 0, -self.state.leading), self.line_matrix)),
            "Tj": self._show,
            # Ends, joins and black: they do not move ink.
            **dict.fromkeys(("J", "j", "M"), lambda _value: None),
            **dict.fromkeys(("rg", "RG"), _must_be_black),
            **dict.fromkeys(("g", "G"), _must_be_black),
        }

    def take(self, operator: str, operands: list[Any]) -> None:
        """Follow one operator; KeyError for one that is not known."""
        if operator in ("Tf", "Tj", "d"):
            self.rules[operator](*operands)
        else:
            self.rules[operator](*map(float, operands))

    def _set(self, **changes: Any) -> None:
        changes = {key: float(v) if key in ("width", "font_size") else v for key, v in changes.items()}
        self.state = replace(self.state, **changes)

    def _restore(self) -> None:
        self.state = self.saved.pop()

    def _at(self, x: float, y: float) -> Point:
        return _apply(self.state.matrix, x, y)

    def _curve(self, *numbers: float) -> None:
        points = tuple(self._at(*numbers[at : at + 2]) for at in (0, 2, 4))
        self.paths[-1].append(("c", points))

    def _rectangle(self, x: float, y: float, width: float, height: float) -> None:
        corners = ((x, y), (x + width, y), (x + width, y + height), (x, y + height))
        first, *rest = (self._at(*corner) for corner in corners)
        self.paths.append([("m", (first,)), *(("l", (point,)) for point in rest), ("h", ())])

    def _clip_next(self) -> None:
        self.clips = True

    def _close_and_paint(self) -> None:
        self.paths[-1].append(("h", ()))
        self._paint(filled=False)

    def _end_path(self) -> None:
        if self.clips:
            (path,) = self.paths
            box = box_of(point for _, points in path for point in points)
            old = self.state.clip
            self._set(clip=box if old is None else box.common(old))
        self.paths, self.clips = [], False

    def _paint(self, *, filled: bool) -> None:
        scale = _scale_of(self.state.matrix)
        width = self.state.width * scale
        dash = tuple(length * scale for length in self.state.dash)
        for path in self.paths:
            _add_path(self.ink, path, filled=filled, width=width, dash=dash, clip=self.state.clip)
        self._end_path()

    def _set_line(self, matrix: Matrix) -> None:
        self.text_matrix = self.line_matrix = matrix

    def _show(self, string: Any) -> None:
        font, size = self.state.font, self.state.font_size
        if font is None:
            raise ValueError("text without a font")
        codes = bytes(string)
        advance = sum(font.widths[code] for code in codes) * size
        matrix = _times(self.text_matrix, self.state.matrix)
        run = Run(
            text="".join(font.letters[code] for code in codes),
            start=_apply(matrix, 0, 0),
            end=_apply(matrix, advance, 0),
            capital_mm=size * CAPITALS_PER_EM * _scale_of(matrix),
            font=font.name,
            clip=self.state.clip,
        )
        self.text_matrix = _times((1, 0, 0, 1, advance, 0), self.text_matrix)
        self.ink.runs.append(run)


def _must_be_black(*levels: float) -> None:
    if any(levels):
        raise ValueError(f"a colour other than black: {levels}")


def _matrix(numbers: Sequence[float]) -> Matrix:
    a, b, c, d, e, f = map(float, numbers)
    return a, b, c, d, e, f


def _add_path(
    ink: Ink,
    path: list[tuple[str, tuple[Point, ...]]],
    *,
    filled: bool,
    width: float,
    dash: tuple[float, ...],
    clip: Box | None,
) -> None:
    """Tell what a path is: a circle of four curves, a straight line, or a chain of lines."""
    kinds = "".join(kind for kind, _ in path)
    if kinds.rstrip("h") == "mcccc":
        centre, radius = _circle([points for _, points in path if points])
        ink.rings.append(Ring(centre, radius, width, filled, clip))
        return
    if "c" in kinds:
        raise ValueError(f"curves that are no circle: {kinds}")
    points = tuple(point for _, some in path for point in some)
    if kinds == "ml" and not filled:
        start, end = points
        ink.strokes.append(Stroke(start, end, width, dash, clip))
    else:
        ink.outlines.append(Outline(points, kinds.endswith("h"), filled, width, dash, clip))


def _circle(pieces: list[tuple[Point, ...]]) -> tuple[Point, float]:
    """Centre and radius of four curves, which must make a circle within a thousandth of the radius."""
    ends = [piece[-1] for piece in pieces[1:]]
    centre = Point(sum(end.x for end in ends) / 4, sum(end.y for end in ends) / 4)
    radius = dist(centre, ends[0])
    start = pieces[0][0]
    for one, two, end in pieces[1:]:
        middle = Point(
            *((a + 3 * b + 3 * c + d) / 8 for a, b, c, d in zip(start, one, two, end, strict=True))
        )
        for point in (end, middle):
            if abs(dist(centre, point) - radius) > 1e-3 * radius:
                raise ValueError("four curves that are no circle")
        start = end
    return centre, radius


# --- SVG ------------------------------------------------------------------------------------------


@dataclass(slots=True)
class SvgReading:
    """An SVG drawing: its ink, the box it shows, its physical size and the glyphs it defines."""

    ink: Ink
    view: Box
    width_mm: float
    height_mm: float
    glyphs: list[str]
    tags: set[str]


def read_svg(text: str, top: float) -> SvgReading:
    """The drawing with y up: a point of the file (x, y) is told as (x, ``top`` - y), in user units."""
    root = ET.fromstring(text)
    x, y, width, height = map(float, root.attrib["viewBox"].split())
    reading = SvgReading(
        ink=Ink((width, height)),
        view=Box(x, top - y - height, x + width, top - y),
        width_mm=_physical(root.attrib["width"]),
        height_mm=_physical(root.attrib["height"]),
        glyphs=[path.attrib["id"] for path in root.iterfind(f".//{SVG}defs/{SVG}path")],
        tags={element.tag.removeprefix(SVG) for element in root.iter()},
    )
    reader = _SvgReader(reading.ink, root)
    reader.read(root, (1, 0, 0, -1, 0, top), {}, None)
    return reading


def _physical(text: str) -> float:
    number, unit = re.fullmatch(r"([\d.]+)([a-z]+)", text).groups()  # type: ignore[union-attr]
    return float(number) * {"mm": 1.0, "in": 25.4}[unit]


class _SvgReader:
    """Walks through the elements with their inherited looks."""

    def __init__(self, ink: Ink, root: ET.Element) -> None:
        self.ink = ink
        self.by_id = {element.attrib["id"]: element for element in root.iter() if "id" in element.attrib}

    def read(self, element: ET.Element, matrix: Matrix, look: dict[str, str], clip: Box | None) -> None:
        """Take in an element and what it holds."""
        tag = element.tag.removeprefix(SVG)
        if tag in ("defs", "title", "desc", "clipPath"):
            return
        matrix = _times(_transform(element.attrib.get("transform", "")), matrix)
        keys = ("fill", "stroke", "stroke-width", "stroke-dasharray")
        look = look | {key: element.attrib[key] for key in keys if key in element.attrib}
        if "clip-path" in element.attrib:
            clip = self._clip(element.attrib["clip-path"], matrix)
        if "aria-label" in element.attrib:
            self._words(element, matrix, clip)
        elif tag in ("svg", "g"):
            for child in element:
                self.read(child, matrix, look, clip)
        else:
            self._shape(tag, element, matrix, look, clip)

    def _clip(self, reference: str, matrix: Matrix) -> Box:
        (rectangle,) = self.by_id[reference.removeprefix("url(#").removesuffix(")")]
        x, y, width, height = (float(rectangle.attrib[key]) for key in ("x", "y", "width", "height"))
        return box_of((_apply(matrix, x, y), _apply(matrix, x + width, y + height)))

    def _shape(
        self, tag: str, element: ET.Element, matrix: Matrix, look: dict[str, str], clip: Box | None
    ) -> None:
        scale = _scale_of(matrix)
        filled = look["fill"] != "none"
        if {look["fill"], look["stroke"]} != {"none", "#000"}:
            raise ValueError(f"neither a black line nor a black area: {look}")
        width = float(look.get("stroke-width", 0)) * scale
        dash = tuple(float(part) * scale for part in look.get("stroke-dasharray", "").split())
        match tag:
            case "line":
                x1, y1, x2, y2 = (float(element.attrib[key]) for key in ("x1", "y1", "x2", "y2"))
                ends = _apply(matrix, x1, y1), _apply(matrix, x2, y2)
                self.ink.strokes.append(Stroke(*ends, width, dash, clip))
            case "circle":
                x, y, radius = (float(element.attrib[key]) for key in ("cx", "cy", "r"))
                self.ink.rings.append(Ring(_apply(matrix, x, y), radius * scale, width, filled, clip))
            case "polyline" | "polygon":
                pairs = [pair.split(",") for pair in element.attrib["points"].split()]
                points = tuple(_apply(matrix, float(x), float(y)) for x, y in pairs)
                closed = tag == "polygon"
                self.ink.outlines.append(Outline(points, closed, filled, width, dash, clip))
            case _:
                raise ValueError(f"an element that is not known: {tag}")

    def _words(self, element: ET.Element, matrix: Matrix, clip: Box | None) -> None:
        """Letters by reference; the run's ends come from the ink of the first and last letter."""
        boxes = []
        for use in element.iterfind(f"{SVG}use"):
            letter = self.by_id[use.attrib[f"{XLINK}href"].removeprefix("#")]
            moved = _times((1, 0, 0, 1, float(use.attrib.get("x", 0)), 0), matrix)
            points = _path_points(letter.attrib["d"])
            boxes.append([_apply(moved, *point) for point in points])
        if not boxes:
            return
        scale = _scale_of(matrix)
        start = _apply(matrix, float(element[0].attrib.get("x", 0)), 0)
        far = max((point for box in boxes for point in box), key=lambda point: dist(start, point))
        angle = atan2(matrix[1], matrix[0])
        along = (far.x - start.x) * cos(angle) + (far.y - start.y) * sin(angle)
        end = start.moved(along * cos(angle), along * sin(angle))
        # The outlines are in font units, a thousand of them to the em.
        capital = CAPITALS_PER_EM * 1000 * scale
        self.ink.runs.append(Run(element.attrib["aria-label"], start, end, capital, "outlines", clip))


@cache
def _path_points(data: str) -> list[tuple[float, float]]:
    """Every point that a glyph's path names (corners and controls)."""
    points: list[tuple[float, float]] = []
    x = y = 0.0
    for command, body in re.findall(r"([MLHVQCZ])([^MLHVQCZ]*)", data):
        numbers = [float(number) for number in re.findall(r"-?[\d.]+", body)]
        if command == "H":
            pairs = [(number, y) for number in numbers]
        elif command == "V":
            pairs = [(x, number) for number in numbers]
        else:
            pairs = list(zip(numbers[::2], numbers[1::2], strict=True))
        points += pairs
        if pairs:
            x, y = pairs[-1]
    return points


def _transform(text: str) -> Matrix:
    """An SVG transform list as one matrix."""
    matrix = _PLAIN
    for name, body in re.findall(r"(\w+)\(([^)]*)\)", text):
        numbers = [float(number) for number in re.split(r"[ ,]+", body.strip())]
        match name, numbers:
            case "translate", [x, y]:
                step: Matrix = (1, 0, 0, 1, x, y)
            case "scale", [x, y]:
                step = (x, 0, 0, y, 0, 0)
            case "rotate", [angle]:
                turn = radians(angle)
                step = (cos(turn), sin(turn), -sin(turn), cos(turn), 0, 0)
            case _:
                raise ValueError(f"a transformation that is not known: {name}({body})")
        matrix = _times(step, matrix)
    return matrix
