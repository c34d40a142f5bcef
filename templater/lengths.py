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

_KILOGRAMS = {
    **dict.fromkeys(("kg",), Fraction(1)),
    **dict.fromkeys(("g",), Fraction(1, 1000)),
    **dict.fromkeys(("lb", "lbs", "pound", "pounds"), Fraction(45359237, 100_000_000)),
    **dict.fromkeys(("oz", "ounce", "ounces"), Fraction(45359237, 1_600_000_000)),
}

_FRACTION = re.compile(r"(?:(\d{1,9})[\s-]+)?(\d{1,6})\s*/\s*(\d{1,6})")
_DECIMAL = re.compile(r"\d{1,12}(?:\.\d{0,12})?|\.\d{1,12}")
_TERM = re.compile(
    r"\s*((?:\d{1,9}[\s-]+)?\d{1,6}\s*/\s*\d{1,6}|\d{1,12}(?:\.\d{0,12})?|\.\d{1,12})"
    r"\s*(''|[a-z]+|[\"″”'′’])?"
)
_EXAMPLES = "write for example 23 5/8 in, 5' 7 1/2\", 60 cm or 304 mm"


class LengthError(ValueError):
    """A text that is not a length; ``hint`` says what to write instead."""

    def __init__(self, message: str, hint: str = _EXAMPLES) -> None:
        super().__init__(message)
        self.hint = hint


def parse_length(text: str, bare_unit: Unit | None = None) -> Fraction:
    """The length in mm, exact; a leading minus is allowed (the caller judges the sign).

    ``bare_unit`` is what a number without a unit means; without it such a number is a fault.
    Raises LengthError.
    """
    plain = _plain(text)
    sign = -1 if plain.startswith(("-", "−")) else 1
    terms = _terms(plain.removeprefix("-").removeprefix("−").lstrip(), text)
    if len(terms) == 1:
        number, unit = terms[0]
        unit = unit or bare_unit
        if unit is None:
            raise LengthError(
                f"{text!r} has no unit",
                f"write the unit (for example {text.strip()} in), or set 'units:' for the whole layout",
            )
        return sign * number * unit.mm
    units = [unit for _, unit in terms]
    if units != [Unit.FOOT, Unit.INCH] or terms[1][0] >= 12:
        raise LengthError(f"{text!r} is not a length")
    return sign * sum((number * unit.mm for number, unit in terms if unit), Fraction(0))


def parse_size(text: str, bare_unit: Unit | None = None) -> tuple[Fraction, Fraction]:
    """Width and height in mm from ``16 x 20 in``; a unit given once serves both.

    Raises LengthError.
    """
    parts = re.split(r"\s*[x×X]\s*", text.strip())
    if len(parts) != 2 or not all(parts):
        raise LengthError(f"{text!r} is not a width and a height", "write for example 16 x 20 in")
    units = [_last_unit(part) for part in parts]
    shared = next((unit for unit in reversed(units) if unit), None) or bare_unit
    width, height = (parse_length(part, unit or shared) for part, unit in zip(parts, units, strict=True))
    return width, height


def parse_weight(text: str) -> Fraction:
    """A mass in kg, exact, from ``6 lb``, ``2 lb 3 oz``, ``2.7 kg`` or ``900 g``. Raises LengthError."""
    hint = "write for example 6 lb, 2 lb 3 oz, 2.7 kg or 900 g"
    plain = _plain(text)
    terms = list(_TERM.finditer(plain))
    names = [term.group(2) for term in terms]
    whole = "".join(term.group(0) for term in terms).strip() == plain
    single = len(names) == 1 and names[0] in _KILOGRAMS
    pounds = len(names) == 2 and str(names[0]).startswith(("lb", "pound")) and str(names[1])[:1] == "o"
    if not whole or not (single or pounds) or not set(names) <= set(_KILOGRAMS):
        raise LengthError(f"{text!r} is not a weight", hint)
    numbers = [_number(term.group(1), text) for term in terms]
    return sum((n * _KILOGRAMS[str(name)] for n, name in zip(numbers, names, strict=True)), Fraction(0))


def _plain(text: str) -> str:
    """Lower case, with fraction characters spelled out and spaces made plain."""
    if "," in text:
        raise LengthError(
            f"{text!r} has a comma", f"write a point for decimals: {text.strip().replace(',', '.')}"
        )
    spelled = []
    for character in text.strip():
        shape = unicodedata.normalize("NFKC", character)
        is_fraction = len(shape) > 1 and "⁄" in shape
        spelled.append(f" {shape} " if is_fraction else character)
    return re.sub(r"\s+", " ", "".join(spelled).replace("⁄", "/")).strip().lower()


def _terms(plain: str, text: str) -> list[tuple[Fraction, Unit | None]]:
    """The numbers of a length, each with its unit."""
    terms: list[tuple[Fraction, Unit | None]] = []
    position = 0
    while position < len(plain):
        match = _TERM.match(plain, position)
        if match is None:
            raise LengthError(f"{text!r} is not a length")
        name = match.group(2)
        if name is not None and name not in _SPELLINGS:
            raise LengthError(f"{text!r} has the unknown unit {name!r}", "use in, ft, cm, mm or m")
        terms.append((_number(match.group(1), text), _SPELLINGS[name] if name else None))
        position = match.end()
    if not terms:
        raise LengthError(f"{text!r} is not a length")
    return terms


def _number(text: str, whole: str) -> Fraction:
    """A decimal, a fraction or a mixed number, exactly."""
    if _DECIMAL.fullmatch(text):
        return Fraction(text)
    match = _FRACTION.fullmatch(text)
    if match is None or int(match.group(3)) == 0:
        raise LengthError(f"{whole!r} is not a length")
    return int(match.group(1) or 0) + Fraction(int(match.group(2)), int(match.group(3)))


def _last_unit(text: str) -> Unit | None:
    """The unit that a length ends with, if any."""
    match = re.search(r"(''|[a-z]+|[\"″”'′’])\s*$", text.lower())
    return _SPELLINGS.get(match.group(1)) if match else None


def format_inches(mm: float) -> str:
    """Inches to the nearest sixteenth, reduced: ``23 5/8 in``."""
    sixteenths = floor(abs(mm) / 25.4 * 16 + 0.5)
    whole, rest = divmod(sixteenths, 16)
    fraction = str(Fraction(rest, 16)) if rest else ""
    number = f"{whole} {fraction}".strip() if whole else fraction or "0"
    return f"{_minus(mm, sixteenths)}{number} in"


def format_millimetres(mm: float) -> str:
    """Whole millimetres: ``600 mm``."""
    whole = floor(abs(mm) + 0.5)
    return f"{_minus(mm, whole)}{whole} mm"


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
    shown = format_length(mm, units)
    return shown if shown.startswith("−") or shown.startswith("0 ") else f"+{shown}"


def _minus(mm: float, rounded: int) -> str:
    """A minus sign for a length that is negative after rounding."""
    return "−" if mm < 0 and rounded else ""
