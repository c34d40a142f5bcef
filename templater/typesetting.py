"""Lines of words set into letters: in the typeface where it has them, else in fonts that were given.

A line is set from left to right as it is drawn. Everything is measured in units of the typeface.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass
from functools import cache, cached_property
from itertools import groupby

from templater.given_fonts import GivenFont, Outline, Shaped, move_outline, span_outline
from templater.reading_order import UNSEEN, ReadingOrder, is_joined
from templater.typeface import face

DESCENT = 0.42
"""How far below the baseline a letter may reach, in capital heights (the face's 273 / 660)."""

ASCENT = 1.16
"""How far above the baseline a lower-case ascender or a bracket may reach, in capital heights."""

_SPARE = 0.05
"""What letters of given fonts leave free of a line's height at each side, in capital heights."""

_MOST_TOLD = 12


@dataclass(frozen=True, slots=True, eq=False)
class Glyph:
    """A shape from a given font, for the characters ``text``; one object for one shape."""

    text: str
    advance: float
    outline: Outline


@dataclass(frozen=True, slots=True)
class Part:
    """What stands together on a line, ``at`` from its start: a shape, or words of the typeface."""

    at: float
    text: str
    glyph: Glyph | None = None


@dataclass(frozen=True, slots=True)
class SetLine:
    """A line as it is drawn, from left to right."""

    parts: tuple[Part, ...]
    width: float


@dataclass(frozen=True, slots=True)
class _Run:
    """Characters of one font in the order of reading; without a font, of the typeface."""

    text: str
    font: GivenFont | None
    to_left: bool = False


@dataclass(frozen=True, slots=True)
class _Fit:
    """How much a given font is scaled, and how far lifted, to stand beside the typeface."""

    scale: float
    lift: float


class Typesetter:
    """Sets lines with some fonts beside the typeface, the first that has a letter first.

    ``names`` are the texts that come from the layout: each is ordered by itself, so that a number
    beside a name that runs to the left stays where it is, and the fonts are scaled so that all their
    letters stay within the height of a line.
    """

    def __init__(self, fonts: Sequence[GivenFont] = (), names: Iterable[str] = ()) -> None:
        self.fonts = tuple(fonts)
        self._names = tuple(names)
        self._reading = ReadingOrder(self._names)
        self._lines: dict[tuple[str, bool], SetLine] = {}
        self._glyphs: dict[Shaped, Glyph] = {}

    def set_line(self, text: str, bold: bool = False) -> SetLine:
        """A line of words as it is drawn."""
        width = measure_plain(text, bold)
        if width is not None:
            return SetLine((Part(0.0, text),), width)
        if (text, bold) not in self._lines:
            self._lines[text, bold] = self._set(text, bold)
        return self._lines[text, bold]

    def lacks(self, text: str) -> str:
        """The characters of a text that would be drawn as empty boxes, each once, in order."""
        return "".join(dict.fromkeys(each for each in text if self._is_lacking(each)))

    def tell_lacking(self, texts: Iterable[str]) -> str | None:
        """What to tell of characters that would be empty boxes; None if there are none."""
        lacking = sorted(self.lacks("".join(texts)))
        if not lacking:
            return None
        named = ", ".join(f"U+{ord(each):04X} {each}" for each in lacking[:_MOST_TOLD])
        more = f" and {len(lacking) - _MOST_TOLD} more" if len(lacking) > _MOST_TOLD else ""
        who, mend = "the typeface does not have", "add to the layout 'font:' with the file of a font"
        if self.fonts:
            who, mend = "neither the typeface nor 'font:' has", "add to 'font:' the file of a font"
        return f"empty boxes on paper for letters that {who}: {named}{more}; {mend} that has them"

    def _is_lacking(self, character: str) -> bool:
        return not (
            face().has(character)
            or any(font.draws(character) for font in self.fonts)
            or UNSEEN.match(character)
            or unicodedata.category(character) == "Zs"
        )

    def _set(self, text: str, bold: bool) -> SetLine:
        weight = face(bold)
        parts: list[Part] = []
        at = 0.0
        for run in self._split(text):
            if run.font is None:
                words = _fit_for_print(run.text)
                parts += [Part(at, words)] if words else []
                at += sum(map(weight.advance, words))
                continue
            for glyph in self._shape(run.font, run, bold):
                parts.append(Part(at, glyph.text, glyph))
                at += glyph.advance
        return SetLine(tuple(parts), at)

    def _shape(self, font: GivenFont, run: _Run, bold: bool) -> Iterator[Glyph]:
        """The letters of a run in units of the typeface."""
        fit = self._fits.get(font, _Fit(1.0, 0.0))
        if font is _own_font(False):
            font = _own_font(bold)
        for shaped in font.shape(run.text, to_left=run.to_left, bold=bold):
            if shaped not in self._glyphs:
                outline = move_outline(shaped.outline, 0.0, fit.lift, fit.scale)
                self._glyphs[shaped] = Glyph(shaped.text, shaped.advance * fit.scale, outline)
            yield self._glyphs[shaped]

    def _split(self, text: str) -> Iterator[_Run]:
        """The runs of a line from left to right as they are seen."""
        for words, to_left in self._reading.order(text):
            runs = [
                _Run("".join(clusters), font, to_left)
                for font, clusters in groupby(_part_clusters(words), key=self._choose_font)
            ]
            yield from reversed(runs) if to_left else runs

    def _choose_font(self, cluster: str) -> GivenFont | None:
        """The font of a letter with its marks: the typeface as long as it has a plain letter."""
        seen = UNSEEN.sub("", cluster) or " "
        if all(map(face().has, seen)):
            return None if len(seen) == 1 else _own_font(False)
        wanted = [seen, seen[0]]
        return next((font for text in wanted for font in self.fonts if all(map(font.draws, text))), None)

    @cached_property
    def _fits(self) -> dict[GivenFont, _Fit]:
        """How each font is scaled and lifted, by the letters that the names need of it."""
        runs = [run for name in self._names for run in self._split(name)]
        return {font: _fit_font(font, [run for run in runs if run.font is font]) for font in self.fonts}


def _fit_font(font: GivenFont, runs: Sequence[_Run]) -> _Fit:
    """Capitals as high as the typeface's, and smaller where letters would leave the line."""
    height = face().cap_height
    scale = height / font.cap_height
    spans = [
        span_outline(shaped.outline)
        for run in runs
        for shaped in font.shape(run.text, to_left=run.to_left)
    ]
    low = min((low for low, _ in spans), default=0.0)
    high = max((high for _, high in spans), default=0.0)
    lowest, highest = (_SPARE - DESCENT) * height, (ASCENT - _SPARE) * height
    if high > low:
        scale = min(scale, (highest - lowest) / (high - low))
    lift = max(0.0, lowest - low * scale) + min(0.0, highest - high * scale)
    return _Fit(scale, lift)


@cache
def measure_plain(text: str, bold: bool) -> int | None:
    """The width of a line that the typeface has every letter of; None of any other line."""
    weight = face(bold)
    if not all(weight.has(each) and not unicodedata.combining(each) for each in text):
        return None
    return sum(map(weight.advance, text))


def _fit_for_print(words: str) -> str:
    """Words of the typeface, without what is unseen; a space that it lacks is its own space."""
    return "".join(
        " " if unicodedata.category(each) == "Zs" and not face().has(each) else each
        for each in UNSEEN.sub("", words)
    )


def _part_clusters(words: str) -> list[str]:
    """Letters, each with the marks on it."""
    clusters: list[str] = []
    for character in words:
        if clusters and is_joined(character):
            clusters[-1] += character
        else:
            clusters.append(character)
    return clusters


@cache
def _own_font(bold: bool) -> GivenFont:
    """A weight of the typeface as a font that is shaped, for letters with marks on them."""
    return GivenFont(face(bold).path.read_bytes())


# The default may be shared: without fonts it only remembers how it set words.
_CURRENT: ContextVar[Typesetter] = ContextVar("typesetter", default=Typesetter())  # noqa: B039


def current_typesetter() -> Typesetter:
    """By what words are measured and drawn now."""
    return _CURRENT.get()


@contextmanager
def set_by(typesetter: Typesetter) -> Iterator[None]:
    """Measure and draw all words of the block by this typesetter, in this thread."""
    before = _CURRENT.set(typesetter)
    try:
        yield
    finally:
        _CURRENT.reset(before)


def set_line(text: str, bold: bool = False) -> SetLine:
    """A line of words as it is drawn."""
    return _CURRENT.get().set_line(text, bold)
