"""Reads the ink of a PDF page, with the whole stack of transformations.

pikepdf opens the file; what its pages' content says is followed here, operator by operator
(ISO 32000-1, Annex A). One that is not known, a picture or a colour makes the page unreadable, so
that no ink can be overlooked.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from copy import copy
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from templater.geometry import ORIGIN, Box, Point, Size
from templater.printing.model import UNSCALED, Scale
from templater.verify.matrices import PLAIN, Matrix, apply, multiply, stretch
from templater.verify.model import Chain, Ink, Ring, Run, Stroke, UnreadableError
from templater.verify.read_fonts import read_letters, read_string

if TYPE_CHECKING:
    import pikepdf

MM_PER_POINT = 25.4 / 72

_INSTRUCTIONS = re.compile(
    rb"""(?> \s++ | %[^\r\n]*+ )*+
    ( \( (?> [^()\\]++ | \\. | \( (?> [^()\\]++ | \\. )*+ \) )*+ \)   # words; brackets in pairs
    | <[0-9A-Fa-f\s]*+> | \[ [-+.\d\s]*+ \] | /[^\s()<>\[\]{}/%]*+ )?+
    ( [-+.\d\s]*+ )
    ( [A-Za-z][A-Za-z0-9*]*+ | \S | \Z )""",
    re.DOTALL | re.VERBOSE,
)
"""Words, a list or a name if any, then numbers, then the operator: in turn, to the end."""


@contextmanager
def open_pdf(path: Path) -> Iterator[PdfReader]:
    """A PDF to be read page by page. Raises UnreadableError."""
    import pikepdf

    try:
        with pikepdf.open(path) as document:
            yield PdfReader(document)
    except pikepdf.PdfError as error:
        raise UnreadableError(f"it is no PDF that can be read ({error})") from error


class PdfReader:
    """Reads the pages of one document; fonts that pages share are read once."""

    def __init__(self, document: pikepdf.Pdf) -> None:
        self._pages = list(document.pages)
        self._fonts: dict[tuple[int, int], dict[int, str]] = {}

    @property
    def count(self) -> int:
        """How many pages there are."""
        return len(self._pages)

    def read_paper(self, number: int) -> Size:
        """The paper of a page counted from 1, mm. Raises UnreadableError where it is not plain."""
        page = self._pages[number - 1]
        x0, y0, x1, y1 = (float(side) * MM_PER_POINT for side in page.mediabox)
        if (x0, y0) != (0.0, 0.0):
            raise UnreadableError("its paper does not begin at 0, 0")
        if [float(side) for side in page.cropbox] != [float(side) for side in page.mediabox]:
            raise UnreadableError("it is cropped")
        if page.obj.get("/UserUnit", 1) != 1:
            raise UnreadableError("its unit is not 1/72 in (it has a UserUnit)")
        if _inherited(page.obj, "/Rotate"):
            raise UnreadableError("it is turned (it has a Rotate)")
        return Size(x1, y1)

    def read_ink(self, number: int, scale: Scale = UNSCALED, origin: Point = ORIGIN) -> Ink:
        """The ink of a page counted from 1, mm after a printer with these factors has printed it.

        It is told from a point of the page, which is given in mm of the file. Raises UnreadableError.
        """
        page = self._pages[number - 1]
        content = page.obj.get("/Contents")
        parts = [] if content is None else list(content) if _is_list(content) else [content]
        (across, up), (x, y) = scale, origin
        millimetres = (MM_PER_POINT / across, 0.0, 0.0, MM_PER_POINT / up, -x / across, -y / up)
        reader = _Reader(self._read_fonts(page), millimetres)
        reader.follow(b"\n".join(part.read_bytes() for part in parts))
        return reader.ink

    def _read_fonts(self, page: pikepdf.Page) -> dict[bytes, dict[int, str]]:
        """The letters of each font of a page, by the name that its content uses."""
        fonts: dict[bytes, dict[int, str]] = {}
        for name, font in page.resources.get("/Font", {}).items():
            if font.objgen not in self._fonts or font.objgen == (0, 0):
                self._fonts[font.objgen] = read_letters(font)
            fonts[name.encode()] = self._fonts[font.objgen]
        return fonts


def _is_list(content: Any) -> bool:
    import pikepdf

    return isinstance(content, pikepdf.Array)


def _inherited(node: Any, key: str) -> Any:
    """What a page says, or the nodes above it."""
    while node is not None:
        if key in node:
            return node[key]
        node = node.get("/Parent")
    return None


@dataclass(slots=True)
class _State:
    """What ``q`` saves and ``Q`` brings back; lengths in the units of ``matrix``."""

    matrix: Matrix
    width: float = 1.0
    dash: tuple[float, ...] = ()
    clip: Box | None = None
    letters: dict[int, str] | None = None
    leading: float = 0.0


class _Reader:
    """Follows one page's content."""

    def __init__(self, fonts: dict[bytes, dict[int, str]], matrix: Matrix) -> None:
        self.ink = Ink()
        self._fonts = fonts
        self._state = _State(matrix)
        self._saved: list[_State] = []
        self._paths: list[tuple[list[str], list[Point]]] = []
        self._clips = False
        self._text = PLAIN
        self._rules: dict[bytes, Callable[..., None]] = {
            b"": lambda: None,  # the end
            b"q": self._save,
            b"Q": self._restore,
            b"cm": self._transform,
            b"w": self._set_width,
            b"d": self._set_dash,
            b"m": self._move,
            b"l": self._line,
            b"c": self._curve,
            b"re": self._rectangle,
            b"h": lambda: self._paths[-1][0].append("h"),
            b"S": self._draw,
            b"s": self._close_and_draw,
            b"f": self._end_path,  # an area marks no hole
            b"f*": self._end_path,
            b"n": self._end_path,
            b"W": self._clip_next,
            b"W*": self._clip_next,
            b"BT": lambda: self._set_text(*PLAIN),
            b"ET": lambda: None,
            b"Tf": self._set_font,
            b"Tm": self._set_text,
            b"Td": self._move_text,
            b"TL": self._set_leading,
            b"T*": lambda: self._move_text(0.0, -self._state.leading),
            b"Tj": self._show,
            # Ends and joins of lines do not move ink; all of it must be black.
            **dict.fromkeys((b"J", b"j", b"M"), lambda _value: None),
            **dict.fromkeys((b"g", b"G", b"rg", b"RG"), _refuse_colour),
        }

    def follow(self, content: bytes) -> None:
        """Read all of it. Raises UnreadableError."""
        rules = self._rules
        for special, numbers, operator in _INSTRUCTIONS.findall(content):
            try:
                rule = rules[operator]
                if special:
                    rule(special, *map(float, numbers.split()))
                elif numbers:
                    rule(*map(float, numbers.split()))
                else:
                    rule()
            except (ArithmeticError, LookupError, TypeError, ValueError) as error:
                told = (special + b" " + numbers + operator)[:80].decode("latin-1").strip()
                raise UnreadableError(f"it holds what cannot be followed: {told!r}") from error
        if self._saved:
            raise UnreadableError("its content is cut off")

    def _save(self) -> None:
        self._saved.append(copy(self._state))

    def _restore(self) -> None:
        self._state = self._saved.pop()

    def _transform(self, *numbers: float) -> None:
        self._state.matrix = multiply(numbers, self._state.matrix)

    def _set_width(self, width: float) -> None:
        self._state.width = width

    def _set_dash(self, lengths: bytes, _phase: float) -> None:
        self._state.dash = tuple(map(float, lengths[1:-1].split()))

    # --- paths ---

    def _move(self, x: float, y: float) -> None:
        self._paths.append((["m"], [apply(self._state.matrix, x, y)]))

    def _line(self, x: float, y: float) -> None:
        kinds, points = self._paths[-1]
        kinds.append("l")
        points.append(apply(self._state.matrix, x, y))

    def _curve(self, *numbers: float) -> None:
        kinds, points = self._paths[-1]
        kinds.append("c")
        pairs = zip(numbers[::2], numbers[1::2], strict=True)
        points += (apply(self._state.matrix, x, y) for x, y in pairs)

    def _rectangle(self, x: float, y: float, width: float, height: float) -> None:
        corners = ((x, y), (x + width, y), (x + width, y + height), (x, y + height))
        points = [apply(self._state.matrix, *corner) for corner in corners]
        self._paths.append((["m", "l", "l", "l", "h"], points))

    def _clip_next(self) -> None:
        self._clips = True

    def _end_path(self) -> None:
        """Forget the path; where it is to clip, which only an upright rectangle may, do that."""
        if self._clips:
            ((_, corners),) = self._paths
            (x0, y0), _, (x1, y1), _ = corners
            box = Box(min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1))
            old = self._state.clip
            self._state.clip = box if old is None else box.common(old)
        self._paths, self._clips = [], False

    def _close_and_draw(self) -> None:
        self._paths[-1][0].append("h")
        self._draw()

    def _draw(self) -> None:
        """Take in each part of the path: a straight line, four curves, or a chain of straight lines."""
        state, ink = self._state, self.ink
        for kinds, points in self._paths:
            if kinds == ["m", "l"]:
                start, end = points
                grown = stretch(state.matrix)
                dash = tuple([length * grown for length in state.dash]) if state.dash else ()
                ink.strokes.append(Stroke(start, end, state.width * grown, dash, state.clip))
            elif kinds[:5] == ["m", "c", "c", "c", "c"]:
                ink.rings.append(read_ring(points, state.clip))
            elif "c" in kinds:
                raise ValueError("curves that are no circle")
            else:
                closed = [points[0]] if kinds[-1] == "h" else []
                ink.chains.append(Chain((*points, *closed)))
        self._end_path()

    # --- words ---

    def _set_font(self, name: bytes, _size: float) -> None:
        self._state.letters = self._fonts[name]

    def _set_leading(self, leading: float) -> None:
        self._state.leading = leading

    def _set_text(self, *numbers: float) -> None:
        self._text = numbers

    def _move_text(self, x: float, y: float) -> None:
        self._text = multiply((1.0, 0.0, 0.0, 1.0, x, y), self._text)

    def _show(self, token: bytes) -> None:
        letters = self._state.letters
        if letters is None:
            raise ValueError("words without a font")
        text = read_string(token).decode("latin-1").translate(letters)
        a, b, c, d, _, _ = multiply(self._text, self._state.matrix)
        self.ink.runs.append(Run(text, Point(a, b), Point(c, d)))


def _refuse_colour(*levels: float) -> None:
    if any(levels):
        raise ValueError("a colour other than black")


def read_ring(points: list[Point], clip: Box | None) -> Ring:
    """The circle that a start and four curves make. Raises ValueError where it is not round."""
    ends = points[3::3]
    centre = Point(sum(end.x for end in ends) / 4, sum(end.y for end in ends) / 4)
    radius = _distance(centre, points[0])
    for first in (0, 3, 6, 9):
        one, two, three, four = points[first : first + 4]
        half = Point(
            (one.x + 3 * two.x + 3 * three.x + four.x) / 8,
            (one.y + 3 * two.y + 3 * three.y + four.y) / 8,
        )
        if max(abs(_distance(centre, point) - radius) for point in (half, four)) > 0.002 * radius:
            raise ValueError("four curves that are no circle")
    return Ring(centre, radius, clip)


def _distance(one: Point, other: Point) -> float:
    return float(((one.x - other.x) ** 2 + (one.y - other.y) ** 2) ** 0.5)
