"""Follows the paths of a PDF page's content, and takes in what they draw (ISO 32000-1, 8.5)."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from templater.geometry import Box, Point
from templater.verify.ink.graphics_state import StateFollower
from templater.verify.ink.matrices import Matrix, apply
from templater.verify.ink.rectangles import read_rectangle
from templater.verify.ink.resources import Resources
from templater.verify.ink.rings import read_ring
from templater.verify.model import Chain, Ink, Stroke, UnreadableError

THINNEST_MM = 0.1
WIDEST_MM = 2.0
"""A line thinner than this may not be seen; a wider one is an area that may hide others."""

_PATH_STEPS = (b"n", b"m", b"l", b"S")


class PathFollower(StateFollower):
    """Follows the instructions that draw lines and areas; ``ink`` is what was drawn so far."""

    def __init__(self, resources: Resources, matrix: Matrix) -> None:
        super().__init__(resources, matrix)
        self.ink = Ink()
        self._path_rules = self._list_path_rules()
        self._paths: list[tuple[list[str], list[Point]]] = []
        self._clips = False

    def _list_path_rules(self) -> dict[bytes, Callable[..., None]]:
        return {
            b"m": self._move,
            b"l": self._line,
            b"c": self._curve,
            b"v": lambda *numbers: self._half_curve(None, *numbers),
            b"y": lambda x1, y1, x3, y3: self._curve(x1, y1, x3, y3, x3, y3),
            b"re": self._rectangle,
            b"h": self._close,
            b"S": self._stroke,
            b"s": lambda: self._close_and(self._stroke),
            **dict.fromkeys((b"f", b"F", b"f*"), self._fill),
            **dict.fromkeys((b"B", b"B*"), self._fill_and_stroke),
            **dict.fromkeys((b"b", b"b*"), lambda: self._close_and(self._fill_and_stroke)),
            b"n": self._end_path,
            b"W": self._clip_next,
            b"W*": self._clip_next,
        }

    def _draw_line(self, parts: Sequence[bytes]) -> None:
        """A straight line from its first instruction to its last, the commonest of all."""
        if self._paths or self._clips:
            self._draw_line_in_steps(parts)
            return
        state = self._state
        if not THINNEST_MM <= state.width_mm <= WIDEST_MM or not state.strokes_black:
            self._check_stroke()
        x0, y0, _, x1, y1, _, _ = parts[-7:]
        ends = apply(state.matrix, float(x0), float(y0)), apply(state.matrix, float(x1), float(y1))
        self.ink.strokes.append(Stroke(*ends, state.width_mm, state.dash_mm, state.clip, state.phase_mm))

    def _draw_line_in_steps(self, parts: Sequence[bytes]) -> None:
        """The same where a path was begun before."""
        given: list[float] = []
        for part in parts:
            if part in _PATH_STEPS:
                self._path_rules[part](*given)
                given = []
            else:
                given.append(float(part))

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

    def _half_curve(self, _first: None, *numbers: float) -> None:
        """A curve whose first control point is its start."""
        kinds, points = self._paths[-1]
        kinds.append("c")
        x2, y2, x3, y3 = numbers
        points += (points[-1], *(apply(self._state.matrix, x, y) for x, y in ((x2, y2), (x3, y3))))

    def _rectangle(self, x: float, y: float, width: float, height: float) -> None:
        corners = ((x, y), (x + width, y), (x + width, y + height), (x, y + height))
        points = [apply(self._state.matrix, *corner) for corner in corners]
        self._paths.append((["m", "l", "l", "l", "h"], points))

    def _close(self) -> None:
        self._paths[-1][0].append("h")

    def _close_and(self, paint: Callable[[], None]) -> None:
        self._close()
        paint()

    def _clip_next(self) -> None:
        self._clips = True

    def _end_path(self) -> None:
        """Forget the path; where it is to clip, which only an upright rectangle may, do that."""
        if self._clips:
            ((kinds, corners),) = self._paths
            closed = corners if len(corners) == 5 else [*corners, corners[0]]
            if "c" in kinds or (box := read_rectangle(closed)) is None:
                raise ValueError("a clip that is no upright rectangle")
            old = self._state.clip
            self._state.clip = box if old is None else box.common(old)
        self._paths, self._clips = [], False

    def _check_stroke(self) -> None:
        """Refuse a line that may not be seen, or that is as wide as an area. Raises UnreadableError."""
        if not self._state.strokes_black:
            raise UnreadableError("it holds ink that is not black")
        if self._state.width_mm < THINNEST_MM:
            raise UnreadableError("it holds a line too thin to be seen")
        if self._state.width_mm > WIDEST_MM:
            raise UnreadableError("it holds a line so wide that it may hide others")

    def _stroke(self) -> None:
        self._take_strokes()
        self._end_path()

    def _fill(self) -> None:
        self._take_areas()
        self._end_path()

    def _fill_and_stroke(self) -> None:
        self._take_areas()
        self._stroke()

    def _take_areas(self) -> None:
        """Take in what is filled, by its box: an area marks no hole, but may hide one."""
        if not self._state.fills_black:
            raise UnreadableError("it holds ink that is not black")
        clip = self._state.clip
        for _, points in self._paths:
            xs, ys = [x for x, _ in points], [y for _, y in points]
            box = Box(min(xs), min(ys), max(xs), max(ys))
            if clip is None or box.meets(clip):
                self.ink.areas.append(box if clip is None else box.common(clip))

    def _take_strokes(self) -> None:
        """Take in each part of the path: a straight line, four curves, or a chain of straight lines."""
        self._check_stroke()
        state, ink = self._state, self.ink
        for kinds, points in self._paths:
            is_closed = kinds[-1] == "h"
            steps = kinds[:-1] if is_closed else kinds
            if "h" in steps:
                raise ValueError("a path that goes on where it was closed")
            if steps == ["m", "l"]:
                start, end = points
                look = (state.width_mm, state.dash_mm, state.clip, state.phase_mm)
                ink.strokes.append(Stroke(start, end, *look))
            elif steps == ["m", "c", "c", "c", "c"]:
                ink.rings.append(read_ring(points, state.clip))
            elif "c" in steps:
                raise ValueError("curves that are no circle")
            elif len(points) > 1:
                ink.chains.append(Chain((*points, points[0]) if is_closed else tuple(points)))
