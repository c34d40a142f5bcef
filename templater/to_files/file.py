"""Files that appear whole or not at all, and replace others only when complete."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from templater.errors import Fault, WriteError
from templater.quoting import show_path
from templater.to_files.durable import settle_file
from templater.to_files.held_signals import signals_held
from templater.to_files.refusal import cannot_write
from templater.to_files.workplace import workplace


def write_new_file(path: Path, content: bytes) -> None:
    """Write a file that must not exist yet; it appears whole. Raises WriteError."""
    if not path.parent.is_dir():
        error = FileNotFoundError(2, os.strerror(2))
        raise cannot_write(path, error, "name a place that can be written")
    try:
        with workplace(path) as place:
            place.new.write_bytes(content)
            settle_file(place.new)
            _put_where_nothing_is(place.new, path)
    except FileExistsError as error:
        message = f"{show_path(path)} exists already"
        raise WriteError([Fault(message, "give another name, or move it away")]) from error
    except OSError as error:
        raise cannot_write(path, error, "name a place that can be written") from error


def _put_where_nothing_is(new: Path, path: Path) -> None:
    """Give a file its name in one step, unless that name is taken. Raises OSError."""
    try:
        os.link(new, path)
    except FileExistsError:
        raise
    except OSError:  # a file system without links
        with signals_held():
            path.touch(exist_ok=False)
            new.replace(path)


@contextmanager
def whole_file(path: Path, signature: bytes, *, patience_s: float = 0.0) -> Iterator[Path]:
    """A new file beside ``path`` to fill; it takes that name when all went well.

    What stands there is replaced only if it is a file of the same kind, known by the bytes it begins
    with; where a link stands, the file it leads to. Waits so long for another run that writes there.
    Raises WriteError.
    """
    _check_is_same_kind(path, signature)
    real = path.resolve()
    try:
        with workplace(real, patience_s=patience_s) as place:
            yield place.new
            if real.exists():
                shutil.copymode(real, place.new)
            settle_file(place.new)
            place.new.replace(real)
    except OSError as error:
        raise cannot_write(path, error) from error


def _check_is_same_kind(path: Path, signature: bytes) -> None:
    """Refuse to replace a file of another kind, such as a layout named by mistake."""
    try:
        with path.open("rb") as stream:
            beginning = stream.read(len(signature))
    except FileNotFoundError:
        return
    except OSError as error:
        raise cannot_write(path, error) from error
    if beginning != signature:
        raise refuse_other_kind(path)


def refuse_other_kind(path: Path) -> WriteError:
    """The fault of a file that this program did not write, in the place of one that it would."""
    message = f"{show_path(path)} is another kind of file, so it is left as it is"
    return WriteError([Fault(message, "give another place with --out, or move that file away")])
