"""Files that appear whole or not at all, and replace others only when complete."""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from errno import EISDIR
from pathlib import Path

from templater.errors import Fault, WriteError
from templater.quoting import show_path
from templater.to_files.durable import settle_file
from templater.to_files.held_signals import heed_what_was_asked, note_in_place, signals_held
from templater.to_files.refusal import cannot_write
from templater.to_files.workplace import workplace

_WRITABLE = "name a place that can be written"
_ELSEWHERE = "give another name or place, or move that file away"


def write_new_file(path: Path, content: bytes) -> None:
    """Write a file that must not exist yet; it appears whole. Raises WriteError."""
    if not path.parent.is_dir():
        error = FileNotFoundError(2, os.strerror(2))
        raise cannot_write(path, error, _WRITABLE)
    try:
        with workplace(path) as place:
            place.new.write_bytes(content)
            settle_file(place.new)
            heed_what_was_asked()
            with signals_held():
                _put_where_nothing_is(place.new, path)
                note_in_place(path)
    except FileExistsError as error:
        message = f"{show_path(path)} exists already"
        raise WriteError([Fault(message, "give another name, or move it away")]) from error
    except OSError as error:
        raise cannot_write(path, error, _WRITABLE) from error


def _put_where_nothing_is(new: Path, path: Path) -> None:
    """Give a file its name in one step, unless that name is taken. Raises OSError."""
    try:
        os.link(new, path)
    except FileExistsError:
        raise
    except OSError:  # a file system without links
        path.touch(exist_ok=False)
        new.replace(path)


@contextmanager
def whole_file(
    path: Path, is_ours: Callable[[Path], bool], *, patience_s: float = 0.0
) -> Iterator[Path]:
    """A new file beside ``path`` to fill; it takes that name when all went well.

    What stands there is replaced only if it is of the program's own making; where a link stands, the
    file it leads to. Waits so long for another run that writes there. Raises WriteError.
    """
    check_is_replaceable_file(path, is_ours)
    real = path.resolve()
    try:
        with workplace(real, patience_s=patience_s) as place:
            yield place.new
            if real.exists():
                check_is_replaceable_file(path, is_ours)  # once more, for making it took a while
                shutil.copymode(real, place.new)
            settle_file(place.new)
            heed_what_was_asked()
            with signals_held():
                place.new.replace(real)
                note_in_place(path)
    except OSError as error:
        raise cannot_write(path, error, _WRITABLE) from error


def check_is_replaceable_file(path: Path, is_ours: Callable[[Path], bool]) -> None:
    """Refuse a file that this program did not make, in the place of one that it would.

    Raises WriteError.
    """
    try:
        if path.is_dir():
            raise IsADirectoryError(EISDIR, os.strerror(EISDIR))
        if not path.exists() or (path.is_file() and is_ours(path)):
            return
    except OSError as error:
        raise cannot_write(path, error, _WRITABLE) from error
    message = f"{show_path(path)} was not made by this program, or was changed since"
    raise WriteError([Fault(f"{message}, so it is left as it is", _ELSEWHERE)])
