"""Faults a user can mend: what is wrong, where it stands and the act that mends it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import IntEnum

from templater.quoting import show_path


class ExitCode(IntEnum):
    """How the command line ends; the same list stands in ``--help`` and the README."""

    DONE = 0
    PROGRAM_FAULT = 1
    USAGE = 2
    LAYOUT = 3
    RULE_BROKEN = 4
    CANNOT_WRITE = 5
    PROOF_FAILED = 6
    INTERRUPTED = 130


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """A place in a file; line and column count from 1."""

    file: str
    line: int = 1
    column: int = 1

    def __str__(self) -> str:
        return f"{show_path(self.file)}:{self.line}:{self.column}"


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing that is wrong: the field, the demand, the value got; then the act that mends it."""

    message: str
    hint: str
    place: Place | None = None

    def __str__(self) -> str:
        where = f"{self.place}: " if self.place else ""
        return f"{where}{self.message}\n  {self.hint}"


class TemplaterError(Exception):
    """The root of all errors that a user can trip; carries every fault found."""

    exit_code = ExitCode.PROGRAM_FAULT

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults = tuple(faults)
        super().__init__("\n".join(str(fault) for fault in self.faults))


class LayoutError(TemplaterError):
    """The layout is missing, cannot be read or cannot be placed."""

    exit_code = ExitCode.LAYOUT


class UsageError(TemplaterError):
    """An option has a value that cannot be used."""

    exit_code = ExitCode.USAGE


class WriteError(TemplaterError):
    """A file or folder cannot be written."""

    exit_code = ExitCode.CANNOT_WRITE
