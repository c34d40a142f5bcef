"""Where measured printers are kept: one file in the user's own configuration folder."""

from __future__ import annotations

from pathlib import Path

import platformdirs

from templater.errors import Fault, UsageError, WriteError
from templater.printing.calibration import (
    Calibration,
    PrinterFileError,
    format_printers,
    parse_printers,
)
from templater.quoting import find_nearest, list_words, quote, show_path, suggest
from templater.to_files.file import whole_file

_PATIENCE_S = 10.0
"""How long a run waits for others that keep a printer at the same time."""


def find_store() -> Path:
    """The file's place; on Linux in ``$XDG_CONFIG_HOME``, or ``~/.config`` without it."""
    return platformdirs.user_config_path("templater", appauthor=False) / "printers.json"


def read_printers(store: Path) -> tuple[Calibration, ...]:
    """All printers that are kept; none where there is no file yet. Raises UsageError."""
    try:
        return parse_printers(store.read_text("utf-8"))
    except FileNotFoundError:
        return ()
    except OSError as error:
        fault = Fault(
            f"cannot read {show_path(store)}: {error.strerror or error}", "make that file readable"
        )
        raise UsageError([fault]) from error
    except (UnicodeDecodeError, PrinterFileError) as error:
        hint = "mend that file, or move it away and measure again: templater calibrate"
        raise UsageError([Fault(f"{show_path(store)} is damaged: {error}", hint)]) from error


def read_printer(store: Path, name: str) -> Calibration:
    """The printer of a name. Raises UsageError."""
    printers = {printer.name: printer for printer in read_printers(store)}
    if name in printers:
        return printers[name]
    message = f"--printer is {quote(name)}, which has not been measured"
    message += suggest(find_nearest(name, printers))
    hint = "measure it first: templater calibrate"
    if printers:
        hint = f"known are {list_words([quote(known) for known in printers], 'and')}; {hint}"
    raise UsageError([Fault(message, hint)])


def keep_printer(store: Path, printer: Calibration) -> bool:
    """Keep a printer, in place of an older one of its name; tells whether there was one.

    The file is written whole or not at all, and no other run comes between reading and writing it.
    Raises UsageError where it is damaged, and WriteError.
    """
    try:
        with whole_file(store, Path.is_file, patience_s=_PATIENCE_S) as building:
            # What cannot be read as printers is not replaced.
            printers = {known.name: known for known in read_printers(store)}
            is_known = printer.name in printers
            printers[printer.name] = printer
            building.write_text(format_printers(printers.values()), encoding="utf-8")
    except WriteError as error:
        hint = "make that folder one that you can write to"
        raise WriteError([Fault(fault.message, hint) for fault in error.faults]) from error
    return is_known
