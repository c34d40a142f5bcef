"""What single values of a layout may be: lengths, sizes, weights, papers and texts.

Each kind reads the text of the file into what the program uses (mm, kg) and says what is wrong
with it in words that complete a sentence about its key.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated, TypeVar

from pydantic import PlainValidator, ValidationInfo
from pydantic_core import PydanticCustomError

from templater.geometry import Size
from templater.lengths import LengthError, Unit, parse_length, parse_size, parse_weight
from templater.paper import Paper, parse_paper
from templater.quoting import quote

EMPTY = ("has no value", "write one after the colon, or remove the key")
"""An empty value is refused, since it may be a line that somebody meant to finish."""

EMPTY_ENTRY = "write one in its place, or remove its dash or comma"
"""What mends an entry of a list that is empty."""

_EXAMPLES = {
    "a length": "23 5/8 in",
    "a width and a height": "16 x 20 in",
    "a weight": "6 lb",
    "a paper": "a4",
}
"""What may be written where a value of a kind is due."""

BARE_UNIT = "bare_unit"
"""The key of the validation context under which the unit of bare numbers is handed in."""

DEFAULT_GAP_MM = 76.2
"""Between the pieces of a group, three inches."""

_CHECK = "check the number and its unit"
_MAX_TEXT = 120
_MAX_ISSUE = 24
_MAX_KILOGRAMS = 10_000

_Value = TypeVar("_Value")


def fail(message: str, hint: str) -> PydanticCustomError:
    """The error whose message follows the name of the key: ``'drop' needs a length, but …``."""
    return PydanticCustomError("layout", "{message}", {"message": message, "hint": hint})


def show_value(raw: object) -> str:
    """A raw value as a message names it."""
    if isinstance(raw, str):
        return quote(raw)
    return "a list" if isinstance(raw, list) else "a mapping"


def filled_text(raw: object, demand: str) -> str:
    """The text of a value that must be one and not empty; ``demand`` says what it should be."""
    if not isinstance(raw, str):
        example = f", for example {_EXAMPLES[demand]}" if demand in _EXAMPLES else " in its place"
        raise fail(f"needs {demand}, but is {show_value(raw)}", f"write one value{example or ' there'}")
    if not raw.strip():
        raise fail(*EMPTY)
    return raw


def _parsed(raw: object, demand: str, parse: Callable[[str], _Value]) -> _Value:
    """The value that a parser of lengths finds in the text."""
    try:
        return parse(filled_text(raw, demand))
    except LengthError as error:
        raise fail(f"needs {demand}, but {error}", error.hint) from None


def _bare_unit(info: ValidationInfo) -> Unit | None:
    return (info.context or {}).get(BARE_UNIT)


@dataclass(frozen=True, slots=True)
class _Range:
    """From where to where a length may lie, mm; ``limit`` is the upper end in words."""

    low: float
    high: float
    limit: str
    above_zero: bool = False

    def check(self, length: Fraction, raw: object) -> float:
        """The length, if it lies within the range."""
        if self.above_zero and length <= 0:
            raise fail(f"must be more than 0, but is {show_value(raw)}", _CHECK)
        if length < 0 <= self.low:
            raise fail(f"must not be negative, but is {show_value(raw)}", _CHECK)
        if length > self.high:
            raise fail(f"must be at most {self.limit}, but is {show_value(raw)}", _CHECK)
        if length < self.low:
            raise fail(f"must be at least −{self.limit}, but is {show_value(raw)}", _CHECK)
        return float(length)


_WALL = _Range(0, 10_000_000, "10 km", above_zero=True)
_ON_WALL = _Range(0, 10_000_000, "10 km")
_EXTENT = _Range(0, 100_000, "100 m", above_zero=True)
_DISTANCE = _Range(0, 100_000, "100 m")
_SIGNED = _Range(-100_000, 100_000, "100 m")
_SHEET_EDGE = _Range(0, 50, "50 mm")
_THICKNESS = _Range(0, 100, "100 mm", above_zero=True)


def _read_length(raw: object, info: ValidationInfo, allowed: _Range) -> float:
    length = _parsed(raw, "a length", lambda text: parse_length(text, _bare_unit(info)))
    return allowed.check(length, raw)


def read_sheet_edge(raw: object, info: ValidationInfo) -> float:
    """A margin or a lap, mm."""
    return _read_length(raw, info, _SHEET_EDGE)


def read_distance(raw: object, info: ValidationInfo) -> float:
    """A distance on the wall, mm; it may be 0."""
    return _read_length(raw, info, _DISTANCE)


def read_signed_distance(raw: object, info: ValidationInfo) -> float:
    """A distance to one side or the other, mm."""
    return _read_length(raw, info, _SIGNED)


def read_thickness(raw: object, info: ValidationInfo) -> float:
    """How thick a sheet is, mm."""
    return _read_length(raw, info, _THICKNESS)


def read_wall_position(raw: object, info: ValidationInfo) -> float:
    """How far along or up the wall something is, mm."""
    return _read_length(raw, info, _ON_WALL)


def read_wall_length(raw: object, info: ValidationInfo) -> float:
    """The wall's own width or height, mm."""
    return _read_length(raw, info, _WALL)


def _length(allowed: _Range) -> PlainValidator:
    def read(raw: object, info: ValidationInfo) -> float:
        return _read_length(raw, info, allowed)

    return PlainValidator(read, json_schema_input_type=str)


def _size(allowed: _Range) -> PlainValidator:
    def read(raw: object, info: ValidationInfo) -> Size:
        sides = _parsed(raw, "a width and a height", lambda text: parse_size(text, _bare_unit(info)))
        return Size(*(allowed.check(side, raw) for side in sides))

    return PlainValidator(read, json_schema_input_type=str)


def _text(longest: int) -> PlainValidator:
    def read(raw: object) -> str:
        text = unicodedata.normalize("NFC", filled_text(raw, "a text").strip())
        if len(text) > longest:
            raise fail(f"has {len(text)} characters, more than {longest}", "shorten it")
        if unseen := next(filter(is_unseen, text), None):
            raise fail(f"has the character {quote(unseen)}, which cannot be printed", "remove it")
        if not any(unicodedata.category(character)[0] in "LNPS" for character in text):
            raise fail("has nothing that can be seen", "write a word")
        return text

    return PlainValidator(read, json_schema_input_type=str)


def is_unseen(character: str) -> bool:
    """Whether it is a line end, a control, a lone surrogate or an invisible mark of direction.

    The two joiners of Arabic and Indic scripts shape the letters beside them and may stay.
    """
    return (
        unicodedata.category(character) in {"Cc", "Cf", "Cs", "Zl", "Zp"}
        and character not in "\u200c\u200d"
    )


def _read_weight(raw: object) -> float:
    kilograms = _parsed(raw, "a weight", parse_weight)
    if not 0 < kilograms <= _MAX_KILOGRAMS:
        raise fail(
            f"must be more than 0 and at most {_MAX_KILOGRAMS} kg, but is {show_value(raw)}",
            _CHECK,
        )
    return float(kilograms)


def _read_paper(raw: object, info: ValidationInfo) -> Paper:
    return _parsed(raw, "a paper", lambda text: parse_paper(text, _bare_unit(info)))


WallLength = Annotated[float, _length(_WALL)]
WallPosition = Annotated[float, _length(_ON_WALL)]
Extent = Annotated[float, _length(_EXTENT)]
Distance = Annotated[float, _length(_DISTANCE)]
SignedDistance = Annotated[float, _length(_SIGNED)]
SheetEdge = Annotated[float, PlainValidator(read_sheet_edge, json_schema_input_type=str)]
Outside = Annotated[Size, _size(_EXTENT)]
Weight = Annotated[float, PlainValidator(_read_weight, json_schema_input_type=str)]
PaperName = Annotated[Paper, PlainValidator(_read_paper, json_schema_input_type=str)]
Text = Annotated[str, _text(_MAX_TEXT)]
IssueText = Annotated[str, _text(_MAX_ISSUE)]
