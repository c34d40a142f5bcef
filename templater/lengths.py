"""Lengths as people write them, read exactly and shown back in both systems of units.

``23 5/8 in``, ``23⅝″``, ``5' 7 1/2"``, ``2 ft 3 in``, ``60 cm``, ``1.2 m``, ``304 mm``. Reading
gives an exact fraction of a millimetre (1 in = 25.4 mm, exact since 1959), so that a value is
rounded once, when it becomes a float.
"""

from __future__ import annotations

import re
import unicodedata
from enum import Enum
from fractions import Fraction
from math import floor

from templater.quoting import quote


class Unit(Enum):
    """A unit of length that a layout may use for bare numbers."""

    INCH = "in"
    FOOT = "ft"
    CENTIMETRE = "cm"
    MILLIMETRE = "mm"
    METRE = "m"

    @property
    def mm(self) -> Fraction:
        """How many millimetres it is, exactly."""
        return _MILLIMETRES[self]

    @property
    def is_imperial(self) -> bool:
        """Whether people who use it read inches first."""
        return self in (Unit.INCH, Unit.FOOT)


_MILLIMETRES = {
    Unit.INCH: Fraction(254, 10),
    Unit.FOOT: Fraction(3048, 10),
    Unit.CENTIMETRE: Fraction(10),
    Unit.MILLIMETRE: Fraction(1),
    Unit.METRE: Fraction(1000),
}

_SPELLINGS = {
    **dict.fromkeys(("in", "inch", "inches", '"', "″", "”", "''"), Unit.INCH),
    **dict.fromkeys(("ft", "foot", "feet", "'", "′", "’"), Unit.FOOT),
    **dict.fromkeys(("cm", "centimetre", "centimetres", "centimeter", "centimeters"), Unit.CENTIMETRE),
    **dict.fromkeys(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), Unit.MILLIMETRE),
    **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), Unit.METRE),
}

_POUND = Fraction(45359237, 100_000_000)
_OUNCE = _POUND / 16
_KILOGRAMS = {
    **dict.fromkeys(("kg", "kilogram", "kilograms"), Fraction(1)),
    **dict.fromkeys(("g", "gram", "grams"), Fraction(1, 1000)),
    **dict.fromkeys(("lb", "lbs", "pound", "pounds"), _POUND),
    **dict.fromkeys(("oz", "ounce", "ounces"), _OUNCE),
}

_TRACE = 1e-6
"""A half that the arithmetic of floats has missed by so little is a half, in sixteenths and in mm."""

_LONGEST_TEXT = 60
_NUMBER = r"\d+(?:\.\d*)?|\.\d+"
_FRACTION = r"(?:\d+(?: | ?- ?))?\d+ ?/ ?\d+"
_UNIT = r"''|[a-z]+\.?|[\"″”'′’]"
_TERM = re.compile(rf"({_FRACTION}|{_NUMBER}) ?({_UNIT})? ?", re.ASCII)
_LENGTHS = "write for example 23 5/8 in, 5' 7 1/2\", 60 cm or 304 mm"
_WEIGHTS = "write for example 6 lb, 2 lb 3 oz, 2.7 kg or 900 g"


class LengthError(ValueError):
    """A text that is not a length, size, weight or paper; ``hint`` says what to write instead."""

    def __init__(self, message: str, hint: str = _LENGTHS) -> None:
        super().__init__(message)
        self.hint = hint


class MissingUnitError(LengthError):
    """A number without a unit, where no unit is agreed on."""


def parse_length(text: str, bare_unit: Unit | None = None) -> Fraction:
    """The length in mm, exact; a leading sign is allowed (the caller judges it).

    ``bare_unit`` is what a number without a unit means; without it such a number is a fault.
    Raises LengthError.
    """
    plain = _plain(text)
    sign = -1 if plain[:1] in ("-", "−") else 1
    terms = _terms(plain[1:].lstrip() if plain[:1] in ("-", "−", "+") else plain)
    match [(number, _length_unit(name, text)) for number, name in terms]:
        case [(number, unit)]:
            return sign * number * _known(unit or bare_unit, text).mm
        case [(feet, Unit.FOOT), (inches, Unit.INCH)] if inches < 12 and feet.denominator == 1:
            return sign * (feet * Unit.FOOT.mm + inches * Unit.INCH.mm)
    raise LengthError(f"{quote(text)} is not a length")


def parse_size(text: str, bare_unit: Unit | None = None) -> tuple[Fraction, Fraction]:
    """Width and height in mm from ``16 x 20 in``; a unit given once serves both.

    Raises LengthError.
    """
    parts = [part.strip() for part in re.split("[x×X]", text)]
    if len(parts) != 2 or not all(parts):
        raise LengthError(f"{quote(text)} is not a width and a height", "write for example 16 x 20 in")
    width, height = parts
    shared = _known(find_unit(height) or find_unit(width) or bare_unit, text)
    return parse_length(width, shared), parse_length(height, shared)


def parse_weight(text: str) -> Fraction:
    """A mass in kg, exact, from ``6 lb``, ``2 lb 3 oz``, ``2.7 kg`` or ``900 g``. Raises LengthError."""
    match [(number, _KILOGRAMS.get(name)) for number, name in _terms(_plain(text))]:
        case [(number, Fraction() as kilograms)]:
            return number * kilograms
        case [(pounds, kilograms), (ounces, other)] if (kilograms, other) == (_POUND, _OUNCE):
            return pounds * _POUND + ounces * _OUNCE
    raise LengthError(f"{quote(text)} is not a number with kg, g, lb or oz", _WEIGHTS)


def find_unit(text: str) -> Unit | None:
    """The unit that a length or a size ends with, if any."""
    match = re.search(rf"({_UNIT})\s*$", text[-_LONGEST_TEXT:].lower())
    return _SPELLINGS.get(match.group(1).rstrip(".")) if match else None


def _plain(text: str) -> str:
    """Lower case, with fraction characters spelled out and single, plain spaces."""
    if re.search(r"\d,\d", text):
        raise LengthError(f"{quote(text)} has a decimal comma", mend_comma(text))
    if len(text) > _LONGEST_TEXT:
        return ""
    spelled = []
    for character in text:
        shape = unicodedata.normalize("NFKC", character)
        spelled.append(f" {shape} " if "⁄" in shape and len(shape) > 1 else character)
    return re.sub(r"\s+", " ", "".join(spelled).replace("⁄", "/")).strip().lower()


def mend_comma(text: str) -> str:
    """What to write instead of a comma; before three digits it may have marked the thousands."""
    plain = _repeatable(text)
    if plain is None:
        return _LENGTHS
    point = f"write a point: {plain.replace(',', '.')}"
    if re.search(r",\d{3}(?!\d)", plain):
        return f"{point}; or if thousands are meant: {plain.replace(',', '')}"
    return point


def _repeatable(text: str) -> str | None:
    """The text as a hint may repeat it; None if it is long or has something that cannot be seen."""
    plain = " ".join(text.split())
    return plain if len(plain) <= _LONGEST_TEXT and plain.isprintable() else None


def _terms(plain: str) -> list[tuple[Fraction, str]]:
    """The numbers of a plain text, each with the name of its unit; none if it is anything else."""
    terms = []
    position = 0
    while position < len(plain):
        match = _TERM.match(plain, position)
        number = _number(match.group(1)) if match else None
        if match is None or number is None:
            return []
        terms.append((number, (match.group(2) or "").rstrip(".")))
        position = match.end()
    return terms


def _number(text: str) -> Fraction | None:
    """A decimal, a fraction or a mixed number, exactly; None for a division by zero."""
    if "/" not in text:
        return Fraction(text)
    *whole, top, bottom = (int(digits) for digits in re.findall(r"\d+", text))
    return sum(whole) + Fraction(top, bottom) if bottom else None


def _length_unit(name: str, text: str) -> Unit | None:
    """The unit of that name; None where no unit is written."""
    if name and name not in _SPELLINGS:
        raise LengthError(f"{quote(text)} has the unknown unit {quote(name)}", "use in, ft, cm, mm or m")
    return _SPELLINGS.get(name)


def _known(unit: Unit | None, text: str) -> Unit:
    """The unit, which must be known by now."""
    if unit is None:
        plain = _repeatable(text) or "16"
        hint = f"write the unit, for example {plain} in, or set 'units:' for the whole layout"
        raise MissingUnitError(f"{quote(text)} has no unit", hint)
    return unit


def format_inches(mm: float) -> str:
    """Inches to the nearest sixteenth, reduced; a half of one is rounded up: ``23 5/8 in``."""
    sixteenths = _round(mm / 25.4 * 16)
    whole, rest = divmod(abs(sixteenths), 16)
    fraction = str(Fraction(rest, 16)) if rest else ""
    number = f"{whole} {fraction}".strip() if whole else fraction or "0"
    return f"{_minus(sixteenths)}{number} in"


def format_millimetres(mm: float) -> str:
    """Whole millimetres; a half of one is rounded up: ``600 mm``."""
    whole = _round(mm)
    return f"{_minus(whole)}{abs(whole)} mm"


def format_length(mm: float, units: Unit) -> str:
    """The length in the layout's own system of units."""
    return format_inches(mm) if units.is_imperial else format_millimetres(mm)


def format_other(mm: float, units: Unit) -> str:
    """The length in the system that the layout does not use."""
    return format_millimetres(mm) if units.is_imperial else format_inches(mm)


def format_both(mm: float, units: Unit) -> str:
    """The layout's own system first, the other in brackets: ``66 in (1676 mm)``."""
    return f"{format_length(mm, units)} ({format_other(mm, units)})"


def format_signed(mm: float, units: Unit) -> str:
    """As format_length, with a sign also when positive: ``+6 in``."""
    return _with_sign(format_length(mm, units))


def format_signed_both(mm: float, units: Unit, joint: str = " ") -> str:
    """As format_both, both signed: ``+6 in (+152 mm)``; ``joint`` stands between them."""
    return f"{format_signed(mm, units)}{joint}({_with_sign(format_other(mm, units))})"


def _with_sign(shown: str) -> str:
    """A plus before what has no minus and is not nothing."""
    return shown if shown.startswith("−") or shown.startswith("0 ") else f"+{shown}"


def _round(number: float) -> int:
    """The nearest whole number, of a half the one above: then −63.5 from 1500 is shown as 1436.5 is.

    Two ways to work out the same half are shown alike.
    """
    return floor(number + 0.5 + _TRACE)


def _minus(rounded: int) -> str:
    """A minus sign for a length that is negative after rounding."""
    return "−" if rounded < 0 else ""
