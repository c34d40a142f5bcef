"""What ``calibrate`` does: the page of rulers, what was measured on it, the printers that are kept."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict, replace
from itertools import chain
from pathlib import Path

from templater.errors import Fault, UsageError
from templater.geometry import Size
from templater.layout.model import Margins
from templater.lengths import parse_length
from templater.options import parse_short, read_option
from templater.paper import PAPERS, Paper, parse_paper
from templater.pipeline import write_calibration
from templater.printing.calibration import Calibration, find_flaw_in_length, find_flaw_in_name
from templater.printing.model import Printer
from templater.quoting import find_nearest, list_words, quote, show_path, suggest
from templater.sheets.calibration import SHORTEST_RULER_MM, list_rulers
from templater.to_files.printer_store import find_store, keep_printer, read_printer, read_printers


def find_printer(name: str) -> Printer:
    """A printer that has been measured. Raises UsageError."""
    return read_printer(find_store(), name).printer


def write_page(paper_text: str | None, name: str | None, out: Path | None) -> str:
    """Write the page of rulers, for a printer that is named as a proof of it; what to tell the user.

    Raises UsageError and WriteError.
    """
    paper = _read_paper(paper_text)
    printer = None if name is None else find_printer(name)
    path = out or Path("calibrate.pdf" if printer is None else "calibrate-proof.pdf")
    write_calibration(paper, printer, path)
    if printer is None:
        return f"{show_path(path)}: print it at 100 %, measure its rulers; it says what to type then"
    return f"{show_path(path)}: print it on {printer.name!r} at 100 %; every ruler must measure true"


def keep_measured(
    name: str | None, measured: Sequence[str], paper_text: str | None, margin_texts: Sequence[str]
) -> str:
    """Keep what was measured on the page of rulers; what to tell the user.

    Raises UsageError and WriteError.
    """
    asked = list_rulers(_read_paper(paper_text))
    lengths = Size(*(float(read_option("--measured", text, parse_length)) for text in measured))
    margins = _read_margins(margin_texts)
    if faults := [*_judge_name(name), *_judge_lengths(asked, lengths)]:
        raise UsageError(faults)
    calibration = Calibration(name or "", asked, lengths, margins)
    store = find_store()
    was_known = keep_printer(store, calibration)
    done = "measured anew" if was_known else "kept"
    return (
        f"{_describe(calibration)}\n{done} in {show_path(store)}\n"
        f"next: templater calibrate --printer {quote(calibration.name)}, to prove it"
    )


def describe_printers() -> str:
    """All printers that are kept, and where. Raises UsageError."""
    store = find_store()
    lines, shown = [_describe(printer) for printer in read_printers(store)], show_path(store)
    return "\n".join([*lines, f"kept in {shown}" if lines else f"no printer is kept in {shown} yet"])


def _describe(calibration: Calibration) -> str:
    """A printer on one line."""
    printer = calibration.printer
    margins = ", ".join(f"{side} {mm:g}" for side, mm in asdict(printer.margins).items())
    return (
        f"{printer.name}: across {printer.across:.4f}, along {printer.along:.4f}; margins {margins} mm"
    )


def _read_paper(text: str | None) -> Paper:
    """The paper, if it has room for rulers that tell something."""
    paper: Paper = read_option("--paper", text, parse_paper) or PAPERS["letter"]
    if list_rulers(paper).width < SHORTEST_RULER_MM:
        message = f"--paper is {paper.name}, too small for rulers by which a printer can be measured"
        raise UsageError([Fault(message, "measure it on larger paper: --paper a4 or --paper letter")])
    return paper


def _judge_name(name: str | None) -> list[Fault]:
    if name is None:
        return [
            Fault("--measured needs a name for the printer", 'for example: --printer "study inkjet"')
        ]
    flaw = find_flaw_in_name(name)
    return [Fault(f"--printer: {flaw}", 'give a short one, for example "study inkjet"')] if flaw else []


def _judge_lengths(asked: Size, measured: Size) -> list[Fault]:
    """What is wrong with the measured lengths, the likeliest mistakes named."""
    flaws = [
        (side, flaw)
        for side, asked_mm, measured_mm in zip(("across", "down"), asked, measured, strict=True)
        if (flaw := find_flaw_in_length(asked_mm, measured_mm))
    ]
    hint = "was it printed at 'Actual size' (100 %)? for other paper than A4 or Letter give its --paper"
    if not any(find_flaw_in_length(*pair) for pair in zip(asked, reversed(measured), strict=True)):
        hint = "give the length across first, then the one down"
    return [Fault(f"--measured, {side}: {flaw}", hint) for side, flaw in flaws]


def _read_margins(texts: Sequence[str]) -> Margins:
    """Margins from ``6mm``, for every edge, or ``left=4mm`` for one or, between commas, for some."""
    margins = Margins()
    sides = tuple(asdict(margins))
    for text in chain.from_iterable(text.split(",") if "=" in text else [text] for text in texts):
        side, is_one, length = text.strip().rpartition("=")
        value = read_option("--margin", length, parse_short)
        if is_one and side not in sides:
            message = f"--margin: {quote(side)} is no edge{suggest(find_nearest(side, sides))}"
            raise UsageError([Fault(message, f"use {list_words(sides)}, for example left=4mm")])
        margins = replace(margins, **dict.fromkeys([side] if is_one else sides, value))
    return margins
