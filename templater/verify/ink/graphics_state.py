"""What the content of a PDF page sets before it draws: place and scale, lines, colours.

ISO 32000-1, 8.4 and 8.6.
"""

from __future__ import annotations

from collections.abc import Callable
from copy import copy
from dataclasses import dataclass
from typing import Any

from templater.geometry import Box
from templater.verify.ink.matrices import Matrix, multiply, stretch
from templater.verify.ink.read_fonts import Letters
from templater.verify.ink.resources import Resources


@dataclass(slots=True)
class State:
    """What ``q`` saves and ``Q`` brings back; ``width``, ``dash``, ``phase`` in the units of ``matrix``.

    ``width_mm``, ``dash_mm`` and ``phase_mm`` are the same as they measure on the page.
    """

    matrix: Matrix
    width: float = 1.0
    dash: tuple[float, ...] = ()
    phase: float = 0.0
    width_mm: float = 0.0
    dash_mm: tuple[float, ...] = ()
    phase_mm: float = 0.0
    clip: Box | None = None
    letters: Letters | None = None
    size: float = 0.0
    leading: float = 0.0
    painting: float = 0.0
    strokes_black: bool = True
    fills_black: bool = True
    stroke_space: bool = True
    fill_space: bool = True

    def measure(self) -> None:
        """Work out how wide lines are on the page."""
        grown = stretch(self.matrix)
        self.width_mm = self.width * grown
        self.dash_mm = tuple([length * grown for length in self.dash])
        self.phase_mm = self.phase * grown


class StateFollower:
    """Follows the instructions that set something."""

    def __init__(self, resources: Resources, matrix: Matrix) -> None:
        self._resources = resources
        self._state = State(matrix)
        self._state.measure()
        self._saved: list[State] = []

    def _list_state_rules(self) -> dict[bytes, Callable[..., None]]:
        return {
            b"": lambda: None,  # the end
            b"q": self._save,
            b"Q": self._restore,
            b"cm": self._transform,
            b"w": self._set_width,
            b"d": self._set_dash,
            b"gs": self._set_graphics_state,
            # How lines end and join moves no ink.
            **dict.fromkeys((b"J", b"j", b"M", b"i", b"ri"), lambda _value: None),
            **dict.fromkeys((b"g", b"rg"), lambda *levels: self._set_fill(not any(levels))),
            **dict.fromkeys((b"G", b"RG"), lambda *levels: self._set_stroke(not any(levels))),
            b"k": lambda *levels: self._set_fill(levels[3] == 1),
            b"K": lambda *levels: self._set_stroke(levels[3] == 1),
            b"cs": self._set_fill_space,
            b"CS": self._set_stroke_space,
            **dict.fromkeys((b"sc", b"scn"), self._set_fill_levels),
            **dict.fromkeys((b"SC", b"SCN"), self._set_stroke_levels),
        }

    def _save(self) -> None:
        self._saved.append(copy(self._state))

    def _restore(self) -> None:
        self._state = self._saved.pop()

    def _transform(self, *numbers: float) -> None:
        self._state.matrix = multiply(numbers, self._state.matrix)
        self._state.measure()

    def _set_width(self, width: float) -> None:
        self._state.width = width
        self._state.measure()

    def _set_dash(self, lengths: bytes, phase: float) -> None:
        self._state.dash, self._state.phase = tuple(map(float, lengths[1:-1].split())), phase
        self._state.measure()

    def _set_graphics_state(self, name: bytes) -> None:
        for key, value in self._resources.graphics_state(name).items():
            if key == "/LW":
                self._set_width(float(value))
            elif key == "/D":
                self._state.dash, self._state.phase = tuple(map(float, value[0])), float(value[1])
                self._state.measure()
            else:
                raise ValueError(f"a graphics state with {key}")

    def _set_fill(self, is_black: bool) -> None:
        self._state.fills_black, self._state.fill_space = is_black, True

    def _set_stroke(self, is_black: bool) -> None:
        self._state.strokes_black, self._state.stroke_space = is_black, True

    def _set_fill_space(self, name: bytes) -> None:
        self._state.fills_black = self._state.fill_space = self._resources.is_black_at_zero(name)

    def _set_stroke_space(self, name: bytes) -> None:
        self._state.strokes_black = self._state.stroke_space = self._resources.is_black_at_zero(name)

    def _set_fill_levels(self, *levels: Any) -> None:
        self._state.fills_black = self._state.fill_space and not any(levels)

    def _set_stroke_levels(self, *levels: Any) -> None:
        self._state.strokes_black = self._state.stroke_space and not any(levels)
