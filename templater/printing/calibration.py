"""Printers that have been measured, as they are kept in a file of JSON: read, checked and shown."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import asdict, dataclass
from math import isfinite
from typing import Any

from templater.geometry import Size
from templater.layout.model import Margins
from templater.printing.model import Printer
from templater.quoting import quote

SCHEMA = "templater-printers/1"
"""The file's format."""

MOST_OFF = 0.05
"""A printer that is off by more than this part was set to another scale, or measured wrongly."""

MOST_MARGIN_MM = 50.0
"""No printer leaves more blank."""

LONGEST_NAME = 30
"""A printer's name stands on every sheet."""


class PrinterFileError(ValueError):
    """The text is not a file of printers; the message says where it is wrong."""


@dataclass(frozen=True, slots=True)
class Calibration:
    """What was measured on a printed portrait page: how long its rulers are, across and down."""

    name: str
    asked: Size
    measured: Size
    margins: Margins

    @property
    def printer(self) -> Printer:
        """The printer with its factors, which a millionth more or less would not change on paper."""
        across, along = (
            round(asked / measured, 6) for asked, measured in zip(self.asked, self.measured, strict=True)
        )
        return Printer(self.name, across, along, self.margins, self.asked)


def find_flaw_in_name(name: str) -> str | None:
    """What is wrong with a printer's name, if anything."""
    if not name or name != " ".join(name.split()) or not name.isprintable():
        return f"the name {quote(name)} is empty, or has blanks that are not seen"
    if len(name) > LONGEST_NAME:
        return f"the name {quote(name)} has {len(name)} letters, at most {LONGEST_NAME} stand on a sheet"
    return None


def find_flaw_in_length(asked_mm: float, measured_mm: float) -> str | None:
    """What is wrong with a measured length, if anything."""
    if not isfinite(measured_mm) or abs(measured_mm / asked_mm - 1) > MOST_OFF:
        off = abs(measured_mm / asked_mm - 1) * 100
        return (
            f"{measured_mm:g} mm where the page has {asked_mm:g} mm is {off:.1f} % off;"
            f" no printer is off by more than {MOST_OFF * 100:.0f} %"
        )
    return None


def parse_printers(text: str) -> tuple[Calibration, ...]:
    """The printers of a file. Raises PrinterFileError."""
    try:
        content = json.loads(text)
    except (ValueError, RecursionError) as error:
        raise PrinterFileError(f"it is not JSON ({error})") from error
    if not isinstance(content, dict) or content.get("schema") != SCHEMA:
        raise PrinterFileError(f"its 'schema' is not {SCHEMA!r}")
    entries = content.get("printers")
    if not isinstance(entries, list):
        raise PrinterFileError("'printers' is not a list")
    printers = tuple(_parse_printer(entry, number) for number, entry in enumerate(entries, 1))
    names = [printer.name for printer in printers]
    if twice := sorted({name for name in names if names.count(name) > 1}):
        raise PrinterFileError(f"two printers have the name {quote(twice[0])}")
    return printers


def _parse_printer(entry: object, number: int) -> Calibration:
    where = f"printer {number}"
    if not isinstance(entry, dict) or not isinstance(entry.get("name"), str):
        raise PrinterFileError(f"{where} has no 'name'")
    name = entry["name"]
    if flaw := find_flaw_in_name(name):
        raise PrinterFileError(f"{where}: {flaw}")
    asked = Size(*_parse_lengths(entry, "asked_mm", ("across", "down"), where))
    measured = Size(*_parse_lengths(entry, "measured_mm", ("across", "down"), where))
    for asked_mm, measured_mm in zip(asked, measured, strict=True):
        if asked_mm <= 0 or (flaw := find_flaw_in_length(asked_mm, measured_mm)):
            raise PrinterFileError(f"{where}: {flaw or 'a length asked for is not above 0'}")
    margins = Margins(*_parse_lengths(entry, "margin_mm", tuple(asdict(Margins())), where))
    if not all(0 <= margin <= MOST_MARGIN_MM for margin in asdict(margins).values()):
        raise PrinterFileError(f"{where}: a margin is not from 0 to {MOST_MARGIN_MM:.0f} mm")
    return Calibration(name, asked, measured, margins)


def _parse_lengths(
    entry: Mapping[str, Any], key: str, sides: Sequence[str], where: str
) -> Iterable[float]:
    """The lengths of one key in the order of its sides."""
    lengths = entry.get(key)
    for side in sides:
        value = lengths.get(side) if isinstance(lengths, dict) else None
        if isinstance(value, bool) or not isinstance(value, int | float) or not isfinite(value):
            raise PrinterFileError(f"{where}: {side!r} of {key!r} is not a number")
        yield float(value)


def format_printers(printers: Iterable[Calibration]) -> str:
    """The file's text; parsed again it gives the same printers."""
    entries = [
        {
            "name": printer.name,
            "asked_mm": {"across": printer.asked.width, "down": printer.asked.height},
            "measured_mm": {"across": printer.measured.width, "down": printer.measured.height},
            "margin_mm": asdict(printer.margins),
        }
        for printer in printers
    ]
    return json.dumps({"schema": SCHEMA, "printers": entries}, indent=1, ensure_ascii=False) + "\n"
