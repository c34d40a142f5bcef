"""What is said when a disk refuses."""

from __future__ import annotations

from pathlib import Path

from templater.errors import Fault, WriteError
from templater.quoting import show_path
from templater.to_files.workplace import name_workplace


def cannot_write(
    path: Path, error: OSError, hint: str = "give a place that can be written with --out"
) -> WriteError:
    """The fault of a file or folder that the system does not let us write.

    Where even the workplace could not be removed, it is named.
    """
    hint = "; ".join((hint, *tell_left_behind(path)))
    return WriteError([Fault(f"cannot write {show_path(path)}: {error.strerror or error}", hint)])


def tell_left_behind(path: Path) -> tuple[str, ...]:
    """What the user must be told of a workplace that could not be removed."""
    left = name_workplace(path)
    return (f"{show_path(left)} is left behind: delete it",) if left.exists() else ()
