import re
from contextlib import suppress
from fractions import Fraction
from typing import Any

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.lengths import (
    LengthError,
    Unit,
    find_unit,
    format_both,
    format_inches,
    format_length,
    format_millimetres,
    format_other,
    format_signed,
    parse_length,
    parse_size,
    parse_weight,
)
from templater.paper import parse_paper

UNITS: Any = pint.UnitRegistry(non_int_type=Fraction)
PINT_NAMES = {
    Unit.INCH: "inch",
    Unit.FOOT: "foot",
    Unit.CENTIMETRE: "centimeter",
    Unit.MILLIMETRE: "millimeter",
    Unit.METRE: "meter",
}


def in_millimetres(number: Fraction, unit: Unit) -> Fraction:
    """By the units library, whose definitions are not ours."""
    converted: Fraction = UNITS.Quantity(number, PINT_NAMES[unit]).to("millimeter").magnitude
    return converted


@pytest.mark.parametrize(
    ("text", "number", "unit"),
    [
        ("23 5/8 in", Fraction(189, 8), Unit.INCH),
        ('23 5/8"', Fraction(189, 8), Unit.INCH),
        ("23⅝″", Fraction(189, 8), Unit.INCH),
        ("23-5/8 inches", Fraction(189, 8), Unit.INCH),
        ("23 5⁄8 in.", Fraction(189, 8), Unit.INCH),
        ("½ in", Fraction(1, 2), Unit.INCH),
        (".5 IN", Fraction(1, 2), Unit.INCH),
        ("5' 7 1/2\"", Fraction(135, 2), Unit.INCH),
        ("5′7½″", Fraction(135, 2), Unit.INCH),
        ("5'7''", Fraction(67), Unit.INCH),
        ("2 ft 3 in", Fraction(27), Unit.INCH),
        ("2 feet 3 inches", Fraction(27), Unit.INCH),
        ("8 ft", Fraction(8), Unit.FOOT),
        ("60 cm", Fraction(60), Unit.CENTIMETRE),
        ("1.2 m", Fraction(6, 5), Unit.METRE),
        ("304 mm", Fraction(304), Unit.MILLIMETRE),
        ("304\u00a0mm", Fraction(304), Unit.MILLIMETRE),
        ("133.35000000000002 mm", Fraction("133.35000000000002"), Unit.MILLIMETRE),
        ("-1/2 in", Fraction(-1, 2), Unit.INCH),
        ("−1 1/2 in", Fraction(-3, 2), Unit.INCH),
        ("+1/2 in", Fraction(1, 2), Unit.INCH),
        ("0 mm", Fraction(0), Unit.MILLIMETRE),
    ],
)
def test_every_spelling_is_read_exactly(text: str, number: Fraction, unit: Unit) -> None:
    assert parse_length(text) == in_millimetres(number, unit)


@given(
    st.integers(0, 10**6),
    st.integers(1, 63),
    st.sampled_from((2, 4, 8, 16, 32, 64)),
    st.sampled_from(list(Unit)),
)
def test_mixed_numbers_are_read_exactly(whole: int, top: int, bottom: int, unit: Unit) -> None:
    expected = in_millimetres(whole + Fraction(top, bottom), unit)
    assert parse_length(f"{whole} {top}/{bottom} {unit.value}") == expected
    assert parse_length(f"{whole} {top}/{bottom}", unit) == expected


@given(st.decimals(0, 10**6, places=6), st.sampled_from(list(Unit)))
def test_decimals_are_read_exactly(number: object, unit: Unit) -> None:
    assert parse_length(f"{number} {unit.value}") == in_millimetres(Fraction(str(number)), unit)


@pytest.mark.parametrize(
    ("text", "message", "hint"),
    [
        (
            "16",
            "'16' has no unit",
            "write the unit, for example 16 in, or set 'units:' for the whole layout",
        ),
        ("2,25 in", "'2,25 in' has a decimal comma", "write a point: 2.25 in"),
        (
            "1,200 mm",
            "'1,200 mm' has a decimal comma",
            "write a point: 1.200 mm; or if thousands are meant: 1200 mm",
        ),
        (
            "4mm, 5mm",
            "'4mm, 5mm' is not a length",
            "write for example 23 5/8 in, 5' 7 1/2\", 60 cm or 304 mm",
        ),
        ("6 furlongs", "'6 furlongs' has the unknown unit 'furlongs'", "use in, ft, cm, mm or m"),
        ("1e3 mm", "'1e3 mm' has the unknown unit 'e'", "use in, ft, cm, mm or m"),
    ],
)
def test_a_fault_says_what_to_write(text: str, message: str, hint: str) -> None:
    with pytest.raises(LengthError) as caught:
        parse_length(text)
    assert (str(caught.value), caught.value.hint) == (message, hint)


@pytest.mark.parametrize(
    "text",
    [
        *(
            "",
            " ",
            "in",
            "nan",
            ".nan",
            "NaN mm",
            "inf",
            ".inf",
            "1/0 in",
            "--1 in",
            "1 - 2 in",
            "1 2 in",
        ),
        *(
            "5' 12\"",
            "1.5 ft 3 in",
            "3 in 2 ft",
            "1 m 20 cm",
            "2 ft 3",
            "5 in 3 in",
            "0x10 mm",
            "1_000 mm",
        ),
        *("٣ in", "²/3 in", "9" * 61 + " mm", "1 in x", "in 5", "twelve", "1/2/3 in", "$5", "5%"),
    ],
)
def test_what_is_no_length_is_refused(text: str) -> None:
    with pytest.raises(LengthError):
        parse_length(text)


@given(st.text(max_size=80))
def test_any_text_is_a_length_or_a_fault(text: str) -> None:
    for parse in (parse_length, parse_size, parse_weight):
        with suppress(LengthError):
            parse(text)


@pytest.mark.parametrize("character", "a1 x,.\"'½-/")
def test_a_huge_text_is_refused_without_long_thought(character: str) -> None:
    """Were the time to grow with the square of the length, this would take days."""
    for parse in (parse_length, parse_size, parse_weight, parse_paper):
        for text in (character * 1_000_000, f"1 x {character * 1_000_000}!", f"1{character} " * 300_000):
            with pytest.raises(LengthError):
                parse(text)


@pytest.mark.parametrize(
    ("text", "width", "height"),
    [
        ("16 x 20 in", "406.4", "508"),  # 16 · 25.4 and 20 · 25.4
        ('16" × 20"', "406.4", "508"),
        ("16 in x 20", "406.4", "508"),
        ("16x20in", "406.4", "508"),
        ("1 ft 4 in X 20 in", "406.4", "508"),
        ("1.2 m x 80 cm", "1200", "800"),
        ("23 5/8 x 31½ in", "600.075", "800.1"),
    ],
)
def test_sizes(text: str, width: str, height: str) -> None:
    assert parse_size(text) == (Fraction(width), Fraction(height))


def test_a_size_of_bare_numbers_needs_the_layouts_unit() -> None:
    assert parse_size("16 x 20", Unit.CENTIMETRE) == (Fraction(160), Fraction(200))
    with pytest.raises(LengthError, match=r"^'16 x 20' has no unit$"):
        parse_size("16 x 20")


@pytest.mark.parametrize("text", ["16 in", "16 x", "x 20 in", "16 x 20 x 3 in", "16 by 20 in", "x"])
def test_what_is_no_size_is_refused(text: str) -> None:
    with pytest.raises(LengthError) as caught:
        parse_size(text)
    assert str(caught.value) == f"{text!r} is not a width and a height"


@pytest.mark.parametrize(
    ("text", "number", "unit"),
    [
        ("6 lb", Fraction(6), "pound"),
        ("6 1/2 lbs", Fraction(13, 2), "pound"),
        ("2 lb 3 oz", Fraction(35), "ounce"),
        ("12 oz", Fraction(12), "ounce"),
        ("2.7 kg", Fraction(27, 10), "kilogram"),
        ("900 g", Fraction(900), "gram"),
    ],
)
def test_weights_are_read_exactly(text: str, number: Fraction, unit: str) -> None:
    assert parse_weight(text) == UNITS.Quantity(number, unit).to("kilogram").magnitude


@pytest.mark.parametrize(
    "text", ["6", "6 stone", "-6 lb", "lb", "2 oz 3 lb", "2 kg 3 oz", "nan kg", "6 in"]
)
def test_what_is_no_weight_is_refused(text: str) -> None:
    with pytest.raises(LengthError) as caught:
        parse_weight(text)
    assert str(caught.value) == f"{text!r} is not a number with kg, g, lb or oz"


@pytest.mark.parametrize(
    ("text", "unit"),
    [
        ("16 ft 4 in", Unit.INCH),
        ("5'", Unit.FOOT),
        ("6.2 m", Unit.METRE),
        ("16", None),
        ("6 stone", None),
    ],
)
def test_the_unit_that_a_text_ends_with(text: str, unit: Unit | None) -> None:
    assert find_unit(text) is unit


@pytest.mark.parametrize(
    ("mm", "inches", "millimetres"),
    [
        (600.075, "23 5/8 in", "600 mm"),
        (25.4, "1 in", "25 mm"),
        (12.7, "1/2 in", "13 mm"),
        (0.0, "0 in", "0 mm"),
        (0.79, "0 in", "1 mm"),  # 1/32 in is 0.79375 mm
        (0.8, "1/16 in", "1 mm"),
        (25.0, "1 in", "25 mm"),  # 0.984 in
        (-38.1, "−1 1/2 in", "−38 mm"),
        (-0.1, "0 in", "0 mm"),
        (304.8, "12 in", "305 mm"),
    ],
)
def test_lengths_as_shown(mm: float, inches: str, millimetres: str) -> None:
    assert format_inches(mm) == inches
    assert format_millimetres(mm) == millimetres
    assert format_length(mm, Unit.FOOT) == format_other(mm, Unit.METRE) == inches
    assert format_both(mm, Unit.INCH) == f"{inches} ({millimetres})"
    assert format_both(mm, Unit.CENTIMETRE) == f"{millimetres} ({inches})"


def test_a_half_is_rounded_up_however_it_was_worked_out() -> None:
    # 8 + 15 11/16 ÷ 2 ± 5 1/2 in: 10 11/32 and 21 11/32, which lie 11 in apart; 11/32 is 5 1/2 of 16.
    left, width, ring = 8 * 25.4, 15.6875 * 25.4, 5.5 * 25.4
    for middle in (left + width / 2, (left + (left + width)) / 2):
        shown = [format_inches(middle - ring), format_inches(middle + ring)]
        assert shown == ["10 3/8 in", "21 3/8 in"]
    assert format_inches(21.34375 * 25.4 - 1e-9) == "21 3/8 in"
    # A gap of 2 1/2 in is 63.5 mm, between edges at 40 in and 42 1/2 in as well.
    for gap in (63.5, 42.5 * 25.4 - 40 * 25.4, 63.5 - 1e-9):
        assert format_millimetres(gap) == "64 mm"


def test_what_is_below_by_a_half_is_shown_as_its_height_is() -> None:
    # 1436.5 mm is 63.5 mm below 1500 mm, and 1437 is 63 below it.
    assert (format_millimetres(1436.5), format_signed(-63.5, Unit.MILLIMETRE)) == ("1437 mm", "−63 mm")
    # 58 27/32 in is 1 5/32 in below 60 in: 58 7/8 and 1 1/8.
    height, away = 58.84375 * 25.4, -1.15625 * 25.4
    assert (format_inches(height), format_signed(away, Unit.INCH)) == ("58 7/8 in", "−1 1/8 in")


@given(st.integers(0, 100_000), st.floats(-1e-7, 1e-7))
def test_whole_heights_and_halves_from_a_whole_datum_add_up(halves: int, trace: float) -> None:
    for step, units in ((0.5, Unit.MILLIMETRE), (25.4 / 32, Unit.INCH)):
        height, datum = halves * step + trace, 1905.0 if units is Unit.MILLIMETRE else 60 * 25.4
        shown = parse_length(format_length(height, units)) - Fraction(datum)
        assert abs(float(parse_length(format_signed(height - datum, units)) - shown)) < 1e-6


def test_signed_lengths_as_shown() -> None:
    shown = [format_signed(mm, Unit.INCH) for mm in (152.4, -152.4, 0.0, 12.7)]
    assert shown == ["+6 in", "−6 in", "0 in", "+1/2 in"]


@given(st.floats(-10_000_000, 10_000_000))
def test_reading_what_was_shown_gives_the_same_length(mm: float) -> None:
    """Within half of the step shown: 1/32 in and 0.5 mm, and a float's own error at 10 km."""
    assert abs(float(parse_length(format_inches(mm))) - mm) <= 25.4 / 32 + 1e-6
    assert abs(float(parse_length(format_millimetres(mm))) - mm) <= 0.5 + 1e-6


@given(st.integers(-1_000_000, 1_000_000))
def test_sixteenths_and_millimetres_survive_unchanged(count: int) -> None:
    sixteenths = Fraction(254, 160) * count
    assert parse_length(format_inches(float(sixteenths))) == sixteenths
    assert parse_length(format_millimetres(float(count))) == count


@given(st.floats(0, 10_000_000))
def test_fractions_of_an_inch_are_reduced(mm: float) -> None:
    fraction = re.search(r"(\d+)/(\d+)", format_inches(mm))
    if fraction:
        top, bottom = map(int, fraction.groups())
        assert top % 2 == 1
        assert bottom in (2, 4, 8, 16)
