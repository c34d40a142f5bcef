"""Follows the content of a PDF page, operator by operator, and takes in its ink.

ISO 32000-1, Annex A. An operator that is not known, a picture, a layer that can be hidden, or ink that
is not black makes the page unreadable, so that no ink can be overlooked and none is taken for seen
that is not.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

from templater.geometry import Point
from templater.verify.ink.follow_paths import PathFollower
from templater.verify.ink.matrices import PLAIN, Matrix, multiply
from templater.verify.ink.read_fonts import APART, Letters
from templater.verify.ink.resources import Resources
from templater.verify.ink.split_content import PLAIN_INSTRUCTIONS, split_any
from templater.verify.model import Run, UnreadableError

_DEEPEST = 8
"""So many drawings within drawings are followed."""

_LARGEST_MM2 = 25.0**2
"""An em of letters is at most so large."""

_NOT_FOLLOWED = (ArithmeticError, LookupError, TypeError, ValueError)
_SEEN, _UNSEEN = (0, 1, 2), 3
"""Ways to paint letters (ISO 32000-1, table 106)."""


class Follower(PathFollower):
    """Follows all of one page's content."""

    def __init__(self, resources: Resources, matrix: Matrix, *, is_plain: bool) -> None:
        super().__init__(resources, matrix)
        self._is_plain = is_plain
        self._depth = 0
        self._text = PLAIN
        self._goes_on = False
        self._along = 0.0
        self._shown: list[tuple[Letters, float, bytes]] = []  # since then, not yet measured
        self._rules: dict[bytes, Callable[..., None]] = {
            **self._list_state_rules(),
            **self._path_rules,
            **self._list_word_rules(),
            b"": lambda: None,  # the end
            b"Do": self._draw_form,
            # Notes on what is drawn.
            b"BMC": _refuse_layer,
            b"BDC": lambda tag, _properties: _refuse_layer(tag),
            b"MP": lambda _tag: None,
            b"DP": lambda _tag, _properties: None,
            b"EMC": lambda: None,
        }

    def follow(self, stream: Any, content: bytes) -> None:
        """Read all of a page or a form. Raises UnreadableError."""
        depth = len(self._saved)
        if self._is_plain:
            self._follow_plain(content)
        else:
            self._follow_any(stream)
        if len(self._saved) != depth:
            raise UnreadableError("its content is cut off")

    def _follow_plain(self, content: bytes) -> None:
        """Read plain content, in which most instructions are straight lines and words."""
        rules = self._rules
        for found in PLAIN_INSTRUCTIONS.findall(content):
            line, matrix, font, size, leading, words, special, numbers, operator = found
            try:
                if line:
                    self._draw_line(line.split())
                    continue
                if self._paths and operator not in self._path_rules:
                    raise ValueError("a path that is not finished")
                if font:
                    self._set_font(font, float(size))
                    self._state.leading = float(leading)
                    self._set_text(*map(float, matrix.split()))
                    self._show(words)
                elif special:
                    rules[operator](special, *map(float, numbers.split()))
                else:
                    rules[operator](*map(float, numbers.split()))
            except _NOT_FOLLOWED as error:
                raise _refuse((special, numbers, operator)) from error

    def _follow_any(self, stream: Any) -> None:
        """Read any content."""
        for operands, operator in split_any(stream):
            try:
                if self._paths and operator not in self._path_rules:
                    raise ValueError("a path that is not finished")
                self._rules[operator](*operands)
            except _NOT_FOLLOWED as error:
                raise _refuse((*operands, operator)) from error

    def _draw_form(self, name: bytes) -> None:
        """Follow a drawing within the page (ISO 32000-1, 8.10)."""
        form, resources = self._resources.form(name)
        if self._depth == _DEEPEST:
            raise ValueError("drawings within drawings without end")
        outer = self._resources
        self._save()
        self._resources, self._depth = resources, self._depth + 1
        self._transform(*map(float, form.get("/Matrix", PLAIN)))
        x0, y0, x1, y1 = map(float, form.BBox)
        self._rectangle(x0, y0, x1 - x0, y1 - y0)
        self._clips = True
        self._end_path()
        self.follow(form, form.read_bytes() if self._is_plain else b"")
        self._resources, self._depth = outer, self._depth - 1
        self._restore()

    def _list_word_rules(self) -> dict[bytes, Callable[..., None]]:
        return {
            b"BT": lambda: self._set_text(*PLAIN),
            b"ET": lambda: None,
            b"Tf": self._set_font,
            b"Tm": self._set_text,
            b"Td": self._move_text,
            b"TD": self._move_text_and_lead,
            b"TL": self._set_leading,
            b"T*": self._next_line,
            b"Tj": self._show,
            b"TJ": self._show_list,
            b"'": self._show_on_next_line,
            b'"': lambda _word, _letter, token: self._show_on_next_line(token),
            b"Tr": self._set_painting,
            # How far letters stand apart and above their line.
            **dict.fromkeys((b"Tc", b"Tw", b"Tz", b"Ts"), lambda _value: None),
        }

    def _set_font(self, name: bytes, size: float) -> None:
        self._state.letters, self._state.size = self._resources.letters(name), size

    def _set_leading(self, leading: float) -> None:
        self._state.leading = leading

    def _set_painting(self, way: float) -> None:
        if way not in (*_SEEN, _UNSEEN):
            raise ValueError("letters that clip")
        self._state.painting = way

    def _set_text(self, *numbers: float) -> None:
        self._text, self._along, self._goes_on = numbers, 0.0, False
        self._shown.clear()

    def _move_text(self, x: float, y: float) -> None:
        self._set_text(*multiply((1.0, 0.0, 0.0, 1.0, x, y), self._text))

    def _move_text_and_lead(self, x: float, y: float) -> None:
        self._set_leading(-y)
        self._move_text(x, y)

    def _show_on_next_line(self, token: bytes) -> None:
        self._next_line()
        self._show(token)

    def _next_line(self) -> None:
        self._move_text(0.0, -self._state.leading)

    def _show(self, token: bytes) -> None:
        letters = self._letters()
        self._take_words(0.0, letters.spell(token))
        self._shown.append((letters, self._state.size, token))

    def _show_list(self, token: bytes) -> None:
        letters, size = self._letters(), self._state.size
        for along, text in letters.spell_list(token):
            self._goes_on = self._goes_on and abs(along) <= APART
            self._take_words(along * size, text)
            self._goes_on = False
        self._goes_on = True
        self._shown.append((letters, size, token))

    def _letters(self) -> Letters:
        if self._state.letters is None:
            raise ValueError("words without a font")
        return self._state.letters

    def _take_words(self, along: float, text: str) -> None:
        """Take in words; those that go on where the last ones ended are one with them."""
        state, runs = self._state, self.ink.runs
        if state.painting == _UNSEEN:
            return
        if not (state.fills_black and state.strokes_black):
            raise UnreadableError("it holds ink that is not black")
        if self._goes_on:
            runs[-1] = runs[-1]._replace(text=runs[-1].text + text)
            return
        a, b, c, d, e, f = multiply(self._text, state.matrix)
        if abs(a * d - b * c) * state.size**2 > _LARGEST_MM2:
            raise UnreadableError("it holds letters so large that they may hide marks")
        self._along += sum(letters.measure(token) * size for letters, size, token in self._shown)
        self._shown.clear()
        along += self._along
        at, em_mm = Point(e + along * a, f + along * b), state.size * float((a * a + b * b) ** 0.5)
        runs.append(Run(text, at, Point(a, b), Point(c, d), em_mm))
        self._goes_on = True


def _refuse_layer(tag: bytes) -> None:
    if tag == b"/OC":
        raise UnreadableError("it holds a layer that can be hidden")


def _refuse(instruction: Sequence[Any]) -> UnreadableError:
    """What is said of an instruction that cannot be followed, cut short."""
    words = [f"{part:g}".encode() if isinstance(part, float) else bytes(part) for part in instruction]
    told = b" ".join(words)[:80].decode("latin-1").strip()
    return UnreadableError(f"it holds what cannot be followed: {told!r}")
