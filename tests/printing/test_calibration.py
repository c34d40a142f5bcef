"""What was measured of printers, and the file in which it is kept."""

from __future__ import annotations

import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.geometry import Size
from templater.layout.model import Margins
from templater.printing.calibration import (
    Calibration,
    PrinterFileError,
    find_flaw_in_length,
    find_flaw_in_name,
    format_printers,
    parse_printers,
)

INKJET = Calibration(
    "study inkjet", Size(180.0, 240.0), Size(178.9, 239.1), Margins(4.0, 4.0, 3.0, 13.0)
)


def test_a_printer_that_prints_short_gets_factors_above_one() -> None:
    printer = INKJET.printer
    # 180 / 178.9 = 1.0061487; 240 / 239.1 = 1.0037641
    assert (printer.across, printer.along) == (1.006149, 1.003764)
    assert (printer.name, printer.margins, printer.rulers) == (
        "study inkjet",
        INKJET.margins,
        INKJET.asked,
    )


@pytest.mark.parametrize(("measured", "off"), [(189.1, "5.1"), (170.9, "5.1"), (18.0, "90.0")])
def test_a_length_more_than_five_percent_off_is_no_printers_doing(measured: float, off: str) -> None:
    flaw = find_flaw_in_length(180.0, measured)
    assert flaw is not None
    assert f"is {off} % off" in flaw


@pytest.mark.parametrize("measured", [171.1, 180.0, 188.9])
def test_a_length_within_five_percent_is_believed(measured: float) -> None:
    assert find_flaw_in_length(180.0, measured) is None


@pytest.mark.parametrize("name", ["", " lamp", "lamp  room", "a\nb", "a\tb", "x" * 31, "a\u200bb"])
def test_a_name_that_cannot_stand_on_a_sheet_is_refused(name: str) -> None:
    assert find_flaw_in_name(name) is not None


def _lengths(around: float) -> st.SearchStrategy[float]:
    return st.floats(around * 0.951, around * 1.049)


@st.composite
def _calibrations(draw: st.DrawFn) -> Calibration:
    names = st.text(st.characters(categories=("L", "N", "P", "S")), min_size=1, max_size=30)
    k = draw(st.integers(4, 30))
    asked = Size(30.0 * k, 40.0 * k)
    measured = Size(draw(_lengths(asked.width)), draw(_lengths(asked.height)))
    margins = Margins(*(draw(st.floats(0, 50)) for _ in range(4)))
    return Calibration(draw(names), asked, measured, margins)


@given(st.lists(_calibrations(), max_size=4, unique_by=lambda printer: printer.name))
def test_what_is_written_is_read_again(printers: list[Calibration]) -> None:
    assert parse_printers(format_printers(printers)) == tuple(printers)


def _changed(**changes: Any) -> str:
    """The file with one printer, some of its values changed, or left out where None."""
    content = json.loads(format_printers([INKJET]))
    content["printers"][0].update(changes)
    content["printers"][0] = {k: v for k, v in content["printers"][0].items() if v is not None}
    return json.dumps(content)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("", "it is not JSON"),
        ("{", "it is not JSON"),
        ("[" * 100_000, "it is not JSON"),
        ("[]", "its 'schema' is not 'templater-printers/1'"),
        ('{"schema": "templater-printers/2"}', "its 'schema' is not 'templater-printers/1'"),
        ('{"schema": "templater-printers/1"}', "'printers' is not a list"),
        ('{"schema": "templater-printers/1", "printers": [3]}', "printer 1 has no 'name'"),
        (_changed(name=None), "printer 1 has no 'name'"),
        (_changed(name="x" * 31), "has 31 letters"),
        (_changed(asked_mm=None), "'across' of 'asked_mm' is not a number"),
        (_changed(asked_mm={"across": 180}), "'down' of 'asked_mm' is not a number"),
        (_changed(asked_mm={"across": 0, "down": 240}), "a length asked for is not above 0"),
        (
            _changed(measured_mm={"across": "180", "down": 240}),
            "'across' of 'measured_mm' is not a number",
        ),
        (
            _changed(measured_mm={"across": True, "down": 240}),
            "'across' of 'measured_mm' is not a number",
        ),
        (_changed(measured_mm={"across": 18, "down": 240}), "18 mm where the page has 180 mm"),
        (_changed(measured_mm={"across": float("nan"), "down": 240}), "'across' of 'measured_mm'"),
        (
            _changed(margin_mm={"left": 4, "right": 4, "top": 3}),
            "'bottom' of 'margin_mm' is not a number",
        ),
        (
            _changed(margin_mm={"left": 4, "right": 4, "top": 3, "bottom": 51}),
            "a margin is not from 0 to 50 mm",
        ),
        (format_printers([INKJET, INKJET]), "two printers have the name 'study inkjet'"),
    ],
)
def test_a_damaged_file_is_told_of(text: str, told: str) -> None:
    with pytest.raises(PrinterFileError) as raised:
        parse_printers(text)
    assert told in str(raised.value)


@given(st.text(max_size=60))
def test_no_chance_text_is_a_file_of_printers(text: str) -> None:
    with pytest.raises(PrinterFileError):
        parse_printers(text)
